/** What a note of the road test says about the complaints: `trees/vocabulary/road.yaml`. */
import type * as v from 'valibot';
import { nearestText } from './names.ts';
import { ROAD_GAUGES, ROAD_ROWS } from './road-sheet.ts';
import type { vocabularyFiles } from './schema.ts';
import type { Path, SourceFile } from './source-file.ts';
import type { RoadSaying, SharedCheck } from './vocabulary.ts';

type Written = v.InferOutput<(typeof vocabularyFiles)['road']>[number];

/**
 * The entries as the program uses them. Reports to `file`: `unknown-road-row`, `unknown-road-choice`, `unknown-road-gauge`,
 * `road-says-nothing` (neither notes nor a gauge, or both), and for shared checks `unknown-shared-check`, `unknown-result`.
 * Checks of one tree are held against that tree by the lint (`road-says-unknown`).
 */
export function roadSayings(
  entries: readonly Written[],
  file: SourceFile,
  checks: ReadonlyMap<string, SharedCheck>,
): RoadSaying[] {
  return entries.map((entry, i): RoadSaying => {
    if ((entry.noted === undefined) === (entry.gauge === undefined)) {
      file.error(
        'road-says-nothing',
        [i, 'id'],
        `"${entry.id}" needs either notes of the sheet (noted) or one gauge (gauge), not both and not none.`,
      );
    }
    entry.noted?.forEach((note, k) => lookAtNote(note, [i, 'noted', k], file));
    if (entry.gauge && !ROAD_GAUGES.some(({ id }) => id === entry.gauge?.of)) {
      const gauges = ROAD_GAUGES.map(({ id }) => id);
      file.error(
        'unknown-road-gauge',
        [i, 'gauge', 'of'],
        `"${entry.gauge.of}" is no gauge of the road sheet.${nearestText(entry.gauge.of, gauges)}`,
      );
    }
    entry.says.forEach((said, k) => {
      if (said.shared !== undefined) lookAtShared(said.shared, said.result, [i, 'says', k], file, checks);
    });
    const { id, noted = [], gauge, says } = entry;
    return {
      id,
      noted,
      ...(gauge
        ? {
            gauge: {
              of: gauge.of,
              take: gauge.take,
              ...(gauge.afterMin === undefined ? {} : { afterMin: gauge.afterMin }),
            },
          }
        : {}),
      says: says.map((said) => {
        const result = said.result === undefined ? {} : { result: said.result };
        return said.shared === undefined
          ? { tree: said.tree, check: said.check, ...result }
          : { shared: said.shared, check: said.shared, ...result };
      }),
    };
  });
}

function lookAtNote(
  note: { readonly row: string; readonly choices: readonly string[] },
  path: Path,
  file: SourceFile,
): void {
  const row = ROAD_ROWS.find(({ id }) => id === note.row);
  if (!row) {
    const rows = ROAD_ROWS.map(({ id }) => id);
    file.error(
      'unknown-road-row',
      [...path, 'row'],
      `"${note.row}" is no row of the road sheet.${nearestText(note.row, rows)}`,
    );
    return;
  }
  const known = row.choices.map(({ id }) => id);
  note.choices.forEach((choice, c) => {
    if (known.includes(choice)) return;
    file.error(
      'unknown-road-choice',
      [...path, 'choices', c],
      `"${choice}" cannot be noted in the row "${row.id}".${nearestText(choice, known)} Possible: ${known.join(', ')}.`,
    );
  });
}

function lookAtShared(
  shared: string,
  result: string | undefined,
  path: Path,
  file: SourceFile,
  checks: ReadonlyMap<string, SharedCheck>,
): void {
  const check = checks.get(shared);
  if (!check) {
    file.error(
      'unknown-shared-check',
      [...path, 'shared'],
      `"${shared}" is not declared in checks.yaml.${nearestText(shared, checks.keys())}`,
    );
    return;
  }
  const known = check.results.map(({ id }) => id);
  if (result !== undefined && !known.includes(result)) {
    file.error(
      'unknown-result',
      [...path, 'result'],
      `"${result}" is no result of "${shared}".${nearestText(result, known)}`,
    );
  }
}
