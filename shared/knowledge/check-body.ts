import type * as v from 'valibot';
import { isUnit, unitOf } from '../units/index.ts';
import { nearestText, unknownUnit } from './names.ts';
import type { vocabularyFiles } from './schema.ts';
import type { Path, SourceFile } from './source-file.ts';
import type { SharedCheck } from './vocabulary.ts';

export type CheckBody = v.InferOutput<(typeof vocabularyFiles)['checks']>[number];

/** What the body of a check may refer to, and where it stands. Null: that file cannot be read, which is reported there. */
export interface BodyContext {
  readonly file: SourceFile;
  readonly path: Path;
  readonly states: readonly { readonly id: string }[] | null;
  readonly instruments: readonly { readonly id: string; readonly unit: string }[] | null;
  readonly limits: readonly { readonly id: string }[] | null;
}

/** The part of a check that is the same in every tree, with its references held against the vocabulary. */
export function checkBodyOf(body: CheckBody, context: BodyContext): SharedCheck {
  const { file, path, states, instruments, limits } = context;
  const at = (...steps: (string | number)[]): Path => [...path, ...steps];
  if (states && !states.some((state) => state.id === body.access)) {
    file.error(
      'unknown-access',
      at('access'),
      `"${body.access}" is not an access state.${nearestText(
        body.access,
        states.map((state) => state.id),
      )}`,
    );
  }
  body.limits.forEach((limit, i) => {
    if (limits && !limits.some((each) => each.id === limit))
      file.error(
        'unknown-limit',
        at('limits', i),
        `"${limit}" is not declared in limits.yaml.${nearestText(
          limit,
          limits.map((each) => each.id),
        )}`,
      );
  });
  const seen = new Set<string>();
  body.results.forEach((result, i) => {
    if (seen.has(result.id))
      file.error(
        'declared-twice',
        at('results', i, 'id'),
        `Result "${result.id}" is declared twice in check "${body.id}".`,
      );
    seen.add(result.id);
    if (result.where && body.site === undefined)
      file.error(
        'where-without-site',
        at('results', i, 'where'),
        `"${result.id}" asks for the place, but check "${body.id}" is done at one place. Add site: wheel-end (or another kind of place), or take where out.`,
      );
    if (result.range && !body.measure)
      file.error(
        'range-without-unit',
        at('results', i, 'range'),
        `"${result.id}" has a range, but check "${body.id}" measures nothing. Add measure: { unit, of, instrument }, or take the range out.`,
      );
  });
  let measure: SharedCheck['measure'];
  if (body.measure) {
    const { unit, instrument } = body.measure;
    const tool = instruments?.find((each) => each.id === instrument);
    if (!isUnit(unit)) file.error('unknown-unit', at('measure', 'unit'), unknownUnit(unit));
    if (instruments && !tool)
      file.error(
        'unknown-instrument',
        at('measure', 'instrument'),
        `"${instrument}" is not declared in instruments.yaml.${nearestText(
          instrument,
          instruments.map((each) => each.id),
        )}`,
      );
    if (isUnit(unit) && tool && isUnit(tool.unit)) {
      if (unitOf(unit).quantity !== unitOf(tool.unit).quantity)
        file.error(
          'instrument-measures-something-else',
          at('measure', 'instrument'),
          `"${instrument}" reads ${unitOf(tool.unit).id}, but the check is in ${unitOf(unit).id}. Name an instrument that reads the same quantity.`,
        );
      measure = { ...body.measure, unit: unitOf(unit).id };
    }
  }
  const { timer, site, results, varies, calculation } = body;
  return {
    id: body.id,
    name: body.name,
    who: body.who,
    tools: body.tools,
    minutes: body.minutes,
    access: body.access,
    hazards: body.hazards,
    cautions: body.cautions,
    steps: body.steps,
    limits: body.limits,
    results: results.map(({ id, label, where, says, range }) => ({
      id,
      label,
      range: range ?? null,
      ...(where === undefined ? {} : { where }),
      ...(says === undefined ? {} : { says }),
    })),
    ...(timer === undefined ? {} : { timerS: timer }),
    ...(site === undefined ? {} : { site }),
    ...(varies === undefined ? {} : { varies }),
    ...(measure === undefined ? {} : { measure }),
    ...(calculation === undefined ? {} : { calculation }),
  };
}
