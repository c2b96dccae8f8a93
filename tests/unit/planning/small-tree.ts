import type { Cause, Check, StopRule, Tree } from '../../../shared/knowledge/index.ts';

/** Pieces of a tree for tests; every number is invented for the test. */
export function cause(id: string, weight: number, more: Partial<Cause> = {}): Cause {
  return {
    id,
    name: id,
    plain: id,
    weight,
    hazard: 'none',
    urgency: 'weeks',
    byExclusion: false,
    when: {},
    appliesTo: '',
    correction: { does: 'Renew it', parts: [], hours: [1, 1], alsoWhileOpen: [], rebuildOrReplace: '' },
    ...more,
  };
}

/** A check with two or more results; rows = causes. */
export function check(
  id: string,
  results: readonly string[],
  likelihood: readonly (readonly number[])[],
  more: Partial<Check> = {},
): Check {
  return {
    id,
    name: id,
    who: 'owner-no-tools',
    tools: [],
    minutes: 5,
    access: 'parked',
    when: {},
    appliesTo: '',
    hazards: [],
    requires: [],
    settles: [],
    cautions: ['Take care.'],
    steps: ['Look.'],
    limits: [],
    results: results.map((result) => ({ id: result, label: result, range: null })),
    likelihood,
    pictures: [],
    ...more,
  };
}

/** Checks that tell nothing, so many that a tree with them is too large to be worked out to the end. */
export function silentChecks(causes: number): Check[] {
  const row = [1 / 3, 1 / 3, 1 / 3];
  return Array.from({ length: 8 }, (_, i) =>
    check(
      `silent-${i}`,
      ['x', 'y', 'z'],
      Array.from({ length: causes }, () => row),
    ),
  );
}

export function tree(causes: readonly Cause[], checks: readonly Check[], more: Partial<Tree> = {}): Tree {
  return {
    id: 'small',
    version: 1,
    title: 'Small',
    phrases: [],
    when: {},
    confusedWith: [],
    boundary: '',
    unlistedShare: 1e-15,
    causes,
    checks,
    teaching: [],
    stopRules: [],
    proofs: [{ after: '*', steps: [], wait: '', minutes: 10, access: 'parked', sensitivity: 1, specificity: 1 }],
    leadsTo: [],
    wrongDiagnoses: [],
    exceptions: [],
    ...more,
  };
}

export function stopRule(id: string, verdict: StopRule['verdict'], more: Partial<StopRule> = {}): StopRule {
  return { id, verdict, when: id, why: id, ask: `${id}?`, now: '', covers: [], firedBy: [], ...more };
}
