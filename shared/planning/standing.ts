import {
  beliefModel,
  posterior,
  resultWeights,
  type BeliefModel,
  type Finding,
  type Posterior,
} from '../inference/index.ts';
import type { Situation } from './situation.ts';

/** Findings and causes that count now, after corrections that did not end the complaint. */
export interface Standing {
  readonly findings: readonly Finding[];
  /** Causes corrected in vain: out of the question. */
  readonly excluded: ReadonlySet<string>;
  /** Findings set aside until they are made again. */
  readonly stale: ReadonlySet<string>;
}

/**
 * What counts after corrections. A corrected cause whose proof failed is excluded. When its part was seen to be bad, the
 * fault was real and there is a second one: answers which that cause explained say nothing about the second fault, so
 * they are set aside and asked again; the others stand.
 *
 * @source Measured on a model of slow air build-up: starting again after a confirmed correction costs less than keeping
 *   the old answers, and nearly as little as weighing pairs of faults.
 */
export function standing(model: BeliefModel, situation: Pick<Situation, 'findings' | 'corrections'>): Standing {
  const excluded = new Set<string>();
  const stale = new Set<string>();
  for (const correction of situation.corrections) {
    if (correction.proof !== 'still-there') continue;
    excluded.add(correction.cause);
    if (correction.partSeen !== 'bad') continue;
    for (const finding of situation.findings) {
      if (correction.findingsBefore.includes(finding.id) && explains(model, finding, correction.cause))
        stale.add(finding.id);
    }
  }
  return { excluded, stale, findings: situation.findings.filter(({ id }) => !stale.has(id)) };
}

/** Whether a cause makes a finding at least as likely as the causes do on average. */
function explains(model: BeliefModel, finding: Finding, cause: string): boolean {
  const table = model.tables.get(finding.check);
  const weights = table && resultWeights(table, finding);
  const column = model.causeIds.indexOf(cause);
  if (!table || !weights || column < 0) return false;
  let own = 0;
  let mean = 0;
  weights.forEach((weight, r) => {
    own += weight * table.likelihood[r]![column]!;
    mean += weight * table.expected[r]!;
  });
  return own >= mean;
}

/** What is believed in a situation, and what it rests on. */
export interface BeliefNow extends Standing {
  readonly model: BeliefModel;
  readonly now: Posterior;
}

/** The belief of a situation: findings that stand, corrected causes left out. */
export function beliefNow(situation: Pick<Situation, 'tree' | 'layout' | 'findings' | 'corrections'>): BeliefNow {
  const model = beliefModel(situation.tree, situation.layout);
  const found = standing(model, situation);
  return { ...found, model, now: posterior(model, found.findings, found.excluded) };
}
