import type * as v from 'valibot';
import { isUnit, unitOf } from '../units/index.ts';
import { checkShape } from './check-shape.ts';
import { inFileOrder, type ReadResult } from './problem.ts';
import { vocabularyFiles } from './schema.ts';
import { SourceFile } from './source-file.ts';
import { checkBodyOf } from './check-body.ts';
import { nearestText, unknownUnit } from './names.ts';
import { roadSayings } from './read-road.ts';
import type { Vocabulary } from './vocabulary.ts';

const NAMES = ['limits', 'instruments', 'access', 'layout', 'tools', 'checks', 'road'] as const;
/** Came later: visits keep the vocabulary they were begun with, and older ones have none. */
const LATER: readonly string[] = ['road'];

/** What was read last: trees, packs and drafts come one after the other with the same files, which take as long as a tree. */
let last: { readonly files: Readonly<Record<string, string>>; readonly result: ReadResult<Vocabulary> } | null = null;

/**
 * Reads the vocabulary files. The same files again give the same result, without being read again.
 *
 * @param files  file name ("limits.yaml", with or without folder) → text; all six of limits, instruments, access, layout, tools, checks; `road` may be missing.
 * @returns the vocabulary, or every problem of every file with its place.
 */
export function readVocabulary(files: Readonly<Record<string, string>>): ReadResult<Vocabulary> {
  if (!last || !sameFiles(last.files, files)) last = { files: { ...files }, result: readAnew(files) };
  return last.result;
}

function sameFiles(one: Readonly<Record<string, string>>, other: Readonly<Record<string, string>>): boolean {
  const names = Object.keys(one);
  return names.length === Object.keys(other).length && names.every((name) => one[name] === other[name]);
}

function readAnew(files: Readonly<Record<string, string>>): ReadResult<Vocabulary> {
  const sources = new Map<string, SourceFile>();
  const source = (name: string): SourceFile => {
    const found = sources.get(name);
    if (found) return found;
    const path = Object.keys(files).find((each) => each === `${name}.yaml` || each.endsWith(`/${name}.yaml`));
    const made = new SourceFile(path ?? `trees/vocabulary/${name}.yaml`, path === undefined ? '[]' : files[path]!);
    if (path === undefined && !LATER.includes(name))
      made.error('missing-file', [], `The vocabulary has no file ${name}.yaml. Add it, even if it holds only [].`);
    sources.set(name, made);
    return made;
  };
  const part = <K extends (typeof NAMES)[number]>(name: K): v.InferOutput<(typeof vocabularyFiles)[K]> | null => {
    const file = source(name);
    const data = file.data();
    return data === undefined ? null : checkShape(file, vocabularyFiles[name], data ?? []);
  };
  const parts = {
    limits: part('limits'),
    instruments: part('instruments'),
    access: part('access'),
    layout: part('layout'),
    tools: part('tools'),
    checks: part('checks'),
    road: part('road'),
  };
  for (const name of NAMES) reportDuplicates(source(name), parts[name] ?? []);

  const features = source('layout');
  (parts.layout ?? []).forEach(({ id, values, together = [] }, i) => {
    together.forEach((value, t) => {
      if (!values.some((each) => each.value === value))
        features.error(
          'unknown-feature-value',
          [i, 'together', t],
          `"${String(value)}" is not a value of "${id}". Allowed: ${values.map((each) => String(each.value)).join(', ')}.`,
        );
    });
  });
  const instruments = source('instruments');
  (parts.instruments ?? []).forEach((each, i) => {
    if (!isUnit(each.unit)) instruments.error('unknown-unit', [i, 'unit'], unknownUnit(each.unit));
    if (each.inchParts !== undefined && isUnit(each.unit) && unitOf(each.unit).id !== 'in')
      instruments.error(
        'fraction-without-inches',
        [i, 'inchParts'],
        `"${each.id}" reads ${unitOf(each.unit).id}, and only inches are divided in fractions. Take inchParts out, or write the unit "in".`,
      );
    if (each.range[0] >= each.range[1])
      instruments.error(
        'empty-range',
        [i, 'range'],
        `The range of "${each.id}" runs from ${each.range[0]} to ${each.range[1]}. Write the lower figure first.`,
      );
  });
  const access = source('access');
  const states = parts.access ?? [];
  states.forEach((state, i) => {
    const before = states.slice(0, i).map((each) => each.id);
    if (state.parent !== undefined && !before.includes(state.parent)) {
      access.error(
        'unknown-parent',
        [i, 'parent'],
        `"${state.parent}" is not an access state declared above "${state.id}". Parents stand before their children.`,
      );
    }
    state.forbids.forEach((forbidden, k) => {
      if (!states.some((each) => each.id === forbidden))
        access.error(
          'unknown-access',
          [i, 'forbids', k],
          `"${forbidden}" is not an access state.${nearestText(
            forbidden,
            states.map((each) => each.id),
          )}`,
        );
    });
  });
  const checks = (parts.checks ?? []).map((each, i) =>
    checkBodyOf(each, {
      file: source('checks'),
      path: [i],
      states: parts.access,
      instruments: parts.instruments,
      limits: parts.limits,
    }),
  );

  const road = roadSayings(parts.road ?? [], source('road'), new Map(checks.map((each) => [each.id, each])));

  const problems = inFileOrder([...sources.values()].flatMap((file) => file.problems));
  if (problems.some((problem) => problem.level === 'error')) return { value: null, problems };
  return {
    problems,
    value: {
      limits: new Map(
        parts.limits!.map(({ disagreement, figures, ...limit }) => [
          limit.id,
          {
            ...limit,
            ...(figures === undefined ? {} : { figures }),
            ...(disagreement === undefined ? {} : { disagreement }),
          },
        ]),
      ),
      instruments: new Map(
        parts.instruments!.map(({ inchParts, ...each }) => [
          each.id,
          { ...each, unit: unitOf(each.unit).id, ...(inchParts === undefined ? {} : { inchParts }) },
        ]),
      ),
      access: states.map(({ open, close, parent, ...state }) => ({
        ...state,
        openMinutes: open,
        closeMinutes: close,
        ...(parent === undefined ? {} : { parent }),
      })),
      layout: parts.layout!.map(({ usual, together, ...feature }) => ({
        ...feature,
        ...(usual === undefined ? {} : { usual }),
        ...(together === undefined ? {} : { together }),
      })),
      tools: parts.tools!,
      checks: new Map(checks.map((each) => [each.id, each])),
      road,
    },
  };
}

function reportDuplicates(file: SourceFile, entries: readonly { readonly id: string }[]): void {
  const lines = new Map<string, number>();
  entries.forEach(({ id }, i) => {
    const first = lines.get(id);
    if (first === undefined) lines.set(id, file.lineOf([i, 'id']));
    else
      file.error(
        'declared-twice',
        [i, 'id'],
        `"${id}" is declared already on line ${first}. Every id is declared once.`,
      );
  });
}
