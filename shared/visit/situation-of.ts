import type { Finding } from '../inference/index.ts';
import type { Tree } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';
import { defaultCosts, type Situation } from '../planning/index.ts';
import { holdOf } from './hold.ts';
import { findingValue } from './recorded-value.ts';
import type { ComplaintState, VisitState } from './state.ts';

/**
 * A complaint of a visit as the planner takes it. Of findings of one check at one place the latest stands; a finding
 * that this tree cannot use (unknown result, impossible reading) carries no weight.
 */
export function situationOf(
  visit: VisitState,
  complaint: ComplaintState,
  tree: Tree,
  vocabulary: Vocabulary,
): Situation {
  const latest = new Map<string, Finding>();
  for (const { id, check: checkId, value, site } of complaint.trail) {
    const check = tree.checks.find((each) => each.id === checkId);
    const used = check && findingValue(check, value, vocabulary);
    if (!used) continue;
    const place = `${checkId}@${site ?? ''}`;
    latest.delete(place);
    latest.set(place, { id, check: checkId, value: used, ...(site === undefined ? {} : { site }) });
  }
  const hold = holdOf(visit);
  return {
    tree,
    vocabulary,
    who: visit.who,
    ...(visit.tools ? { tools: visit.tools } : {}),
    layout: visit.layout,
    layoutNotKnown: visit.layoutNotKnown,
    findings: [...latest.values()],
    stopAnswers: complaint.stopAnswers,
    corrections: complaint.corrections,
    access: complaint.access,
    costs: { ...defaultCosts(visit.who), ...visit.costs },
    ...(hold ? { hold } : {}),
  };
}
