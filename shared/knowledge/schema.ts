/** Shape of the knowledge files on disk. What belongs together across values is checked by `read-tree.ts` and the lint. */
import * as v from 'valibot';
import { CALCULATION_IDS } from '../measuring/index.ts';
import { INCH_PARTS } from '../units/index.ts';
import { CHECK_HAZARDS, ROLES, SITE_KINDS, VERDICTS } from './tree.ts';
import { STATUSES } from './vocabulary.ts';

const id = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'an id: lower-case letters, digits and single hyphens'),
);
const text = v.pipe(v.string(), v.trim(), v.minLength(1, 'some text'));
const texts = v.array(text);
const minutes = v.pipe(v.number(), v.minValue(0, 'minutes, 0 or more'), v.maxValue(10_000, 'minutes, at most 10000'));
const layoutValue = v.union([v.string(), v.boolean()]);
const when = v.record(id, v.pipe(v.array(layoutValue), v.minLength(1, 'at least one value')));
const bound = v.nullable(v.pipe(v.number(), v.finite('a finite number')));
const range = v.tuple([bound, bound]);
const prerequisite = v.strictObject({ check: id, results: v.pipe(v.array(id), v.minLength(1, 'at least one result')) });
const trusted = v.pipe(
  v.number(),
  v.minValue(0.5, 'a share from 0.5, no better than a coin, to 1'),
  v.maxValue(1, 'a share, at most 1'),
);
/** How far a proof is trusted where its tree does not say: one road test misses a fault that comes and goes. Judgement. */
const PROOF_TRUST = { sensitivity: 0.9, specificity: 0.98 } as const;
const fileName = v.pipe(v.string(), v.regex(/^[a-z0-9-]+\.svg$/, 'a plain .svg file name'));

const result = v.strictObject({
  id,
  label: text,
  /** Asks for the place. */
  where: v.optional(v.literal(true)),
  says: v.optional(texts),
  range: v.optional(range),
});
const measure = v.strictObject({ unit: text, of: v.optional(v.string(), ''), instrument: id });

/** The calculation that makes the reading from raw observations, and what the check settles beforehand. */
const calculation = v.strictObject({ use: v.picklist(CALCULATION_IDS), set: v.optional(v.record(id, id), {}) });

const checkBody = {
  id,
  name: text,
  who: v.picklist(ROLES),
  tools: v.optional(texts, []),
  minutes,
  access: id,
  hazards: v.optional(v.array(v.picklist(CHECK_HAZARDS)), []),
  site: v.optional(v.picklist(SITE_KINDS)),
  cautions: v.optional(texts, []),
  steps: v.pipe(texts, v.minLength(1, 'at least one step')),
  timer: v.optional(
    v.pipe(v.number(), v.minValue(5, 'seconds, 5 or more'), v.maxValue(86_400, 'seconds, at most a day')),
  ),
  varies: v.optional(text),
  limits: v.optional(v.array(id), []),
  measure: v.optional(measure),
  calculation: v.optional(calculation),
  results: v.pipe(v.array(result), v.minLength(2, 'at least two results')),
};

/** A likelihood as written: a number, a word of the verbal scale, or "rest". */
const likelihood = v.record(v.string(), v.record(v.string(), v.union([v.number(), v.string()])));

const inTree = {
  group: v.optional(id),
  requires: v.optional(v.array(prerequisite), []),
  settles: v.optional(v.array(id), []),
  when: v.optional(when, {}),
  appliesTo: v.optional(v.string(), ''),
  likelihood,
};

const ownCheck = v.strictObject({ ...checkBody, ...inTree });
const sharedInstance = v.strictObject({ id, shared: id, ...inTree });

const weight = v.pipe(v.number(), v.minValue(0.01, 'a weight above 0'), v.maxValue(1000, 'a weight of at most 1000'));

const cause = v.strictObject({
  id,
  name: text,
  plain: text,
  weight,
  weightIf: v.optional(v.array(v.strictObject({ when, weight }))),
  hazard: v.picklist(['none', 'nuisance', 'damage', 'danger']),
  urgency: text,
  byExclusion: v.optional(v.boolean(), false),
  when: v.optional(when, {}),
  appliesTo: v.optional(v.string(), ''),
  correction: v.strictObject({
    does: text,
    parts: v.optional(texts, []),
    hours: v.tuple([
      v.pipe(v.number(), v.minValue(0, 'hours, 0 or more')),
      v.pipe(v.number(), v.minValue(0, 'hours, 0 or more')),
    ]),
    alsoWhileOpen: v.optional(texts, []),
    rebuildOrReplace: v.optional(v.string(), ''),
    access: v.optional(id),
  }),
});

export const treeFile = v.strictObject({
  format: v.literal('droplight-tree/1'),
  id,
  version: v.pipe(v.number(), v.integer('a whole number'), v.minValue(1, '1 or more')),
  title: text,
  when: v.optional(when, {}),
  unlisted: v.pipe(v.number(), v.minValue(0.01, 'a share from 0.01'), v.maxValue(0.5, 'a share up to 0.5')),
  phrases: v.pipe(texts, v.minLength(1, 'at least one phrase')),
  confusedWith: v.optional(v.array(v.strictObject({ complaint: v.optional(id), text })), []),
  boundary: v.optional(v.string(), ''),
  causes: v.pipe(v.array(cause), v.minLength(1, 'at least one cause')),
  checks: v.pipe(
    v.array(v.lazy((input) => (isShared(input) ? sharedInstance : ownCheck))),
    v.minLength(1, 'at least one check'),
  ),
  teaching: v.array(v.strictObject({ check: id, why: text })),
  stopRules: v.array(
    v.strictObject({
      id,
      verdict: v.picklist(VERDICTS),
      when: text,
      why: text,
      ask: text,
      now: v.optional(v.string(), ''),
      covers: v.optional(v.array(id), []),
      firedBy: v.optional(v.array(prerequisite), []),
    }),
  ),
  proofs: v.array(
    v.strictObject({
      after: v.string(),
      steps: texts,
      wait: text,
      minutes,
      access: id,
      sensitivity: v.optional(trusted, PROOF_TRUST.sensitivity),
      specificity: v.optional(trusted, PROOF_TRUST.specificity),
    }),
  ),
  leadsTo: v.optional(
    v.array(v.strictObject({ complaint: id, when: text, firedBy: v.optional(v.array(prerequisite), []) })),
    [],
  ),
  wrongDiagnoses: v.optional(texts, []),
  exceptions: v.optional(v.array(v.strictObject({ rule: id, at: text, why: text })), []),
  pictures: v.optional(
    v.array(
      v.strictObject({ file: fileName, title: text, alt: text, check: id, results: v.optional(v.array(id), []) }),
    ),
    [],
  ),
});

function isShared(input: unknown): boolean {
  return typeof input === 'object' && input !== null && 'shared' in input;
}

export type TreeFile = v.InferOutput<typeof treeFile>;

const status = v.picklist(STATUSES);
/** A figure or statement as a source prints it. */
const said = { value: text, source: text, status };

export const vocabularyFiles = {
  limits: v.array(
    v.strictObject({
      id,
      quantity: text,
      ...said,
      figures: v.optional(
        v.pipe(v.array(v.strictObject({ of: text, value: text })), v.minLength(1, 'at least one figure')),
      ),
      disagreement: v.optional(
        v.strictObject({
          others: v.pipe(v.array(v.strictObject(said)), v.minLength(1, 'at least one other source')),
          taken: text,
        }),
      ),
    }),
  ),
  instruments: v.array(
    v.strictObject({
      id,
      name: text,
      unit: text,
      uncertainty: v.pipe(v.number(), v.minValue(0, '0 or more')),
      range: v.tuple([v.number(), v.number()]),
      inchParts: v.optional(v.picklist(INCH_PARTS)),
      source: text,
      status,
    }),
  ),
  access: v.array(
    v.strictObject({
      id,
      name: text,
      means: text,
      parent: v.optional(id),
      open: minutes,
      close: minutes,
      forbids: v.optional(v.array(id), []),
      moves: v.optional(v.boolean(), false),
    }),
  ),
  layout: v.array(
    v.strictObject({
      id,
      ask: text,
      values: v.pipe(
        v.array(v.strictObject({ value: layoutValue, label: text })),
        v.minLength(2, 'at least two values'),
      ),
      usual: v.optional(layoutValue),
      together: v.optional(v.pipe(v.array(layoutValue), v.minLength(2, 'at least two values'))),
    }),
  ),
  tools: v.array(v.strictObject({ id, name: text, covers: texts, usualFor: v.array(v.picklist(ROLES)) })),
  checks: v.array(v.strictObject(checkBody)),
  road: v.array(
    v.strictObject({
      id,
      noted: v.optional(
        v.pipe(v.array(v.strictObject({ row: id, choices: v.array(id) })), v.minLength(1, 'at least one note')),
      ),
      gauge: v.optional(
        v.strictObject({ of: id, take: v.picklist(['highest', 'lowest', 'last']), afterMin: v.optional(minutes) }),
      ),
      says: v.pipe(
        v.array(
          v.union([
            v.strictObject({ tree: id, check: id, result: v.optional(id), shared: v.optional(v.undefined()) }),
            v.strictObject({
              shared: id,
              result: v.optional(id),
              tree: v.optional(v.undefined()),
              check: v.optional(v.undefined()),
            }),
          ]),
        ),
        v.minLength(1, 'at least one check'),
      ),
    }),
  ),
};
