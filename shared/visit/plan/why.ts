import { evidenceLedger, type BeliefModel, type Finding } from '../../inference/index.ts';
import type { Check } from '../../knowledge/tree.ts';
import type { PinnedTree } from '../pinned-tree.ts';
import type { ComplaintState, TrailFinding } from '../state.ts';
import type { Reason } from './plan.ts';

/** Below this a finding hardly matters; decibans. The bound of the words for evidence. */
const MATTERS = 1;

/** A finding of a trail in words, with its reading, its limits and its photos. */
export function reasonOf(check: Check, finding: TrailFinding, decibans?: number): Reason {
  const { value, site, photos, at, by } = finding;
  const said =
    value.kind === 'result'
      ? `: ${check.results.find(({ id }) => id === value.result)?.label ?? value.result}`
      : value.kind === 'not-sure'
        ? ': not sure'
        : value.kind === 'cant-do'
          ? ': could not be done'
          : '';
  return {
    text: `${check.name}${said}`,
    ...(site === undefined ? {} : { place: site }),
    ...(value.kind === 'reading' ? { reading: { value: value.reading.value, unit: value.reading.unit } } : {}),
    limits: check.limits,
    photos,
    ...(decibans === undefined ? {} : { decibans }),
    at,
    by,
  };
}

/**
 * Why a cause is in the plan: the findings that speak for it, strongest first, then the safety questions answered yes that
 * stand guard over it.
 *
 * @param findings  those that counted when the cause was taken, in order.
 */
export function reasonsFor(
  { tree }: PinnedTree,
  complaint: ComplaintState,
  model: BeliefModel,
  findings: readonly Finding[],
  cause: string,
  excluded: ReadonlySet<string>,
): Reason[] {
  if (!model.causeIds.includes(cause)) return [];
  const lines = evidenceLedger(model, findings, cause, excluded)
    .lines.filter(({ decibans }) => decibans > 0)
    .sort((a, b) => b.decibans - a.decibans);
  const strong = lines.filter(({ decibans }) => decibans >= MATTERS);
  const reasons = (strong.length > 0 ? strong : lines).flatMap(({ finding: id, check: checkId, decibans }) => {
    const check = tree.checks.find((each) => each.id === checkId);
    const finding = complaint.trail.find((each) => each.id === id);
    return check && finding ? [reasonOf(check, finding, decibans)] : [];
  });
  const answers = tree.stopRules
    .filter(({ id, covers }) => complaint.stopAnswers[id] === 'yes' && covers.includes(cause))
    .map(({ ask }): Reason => ({ text: `${ask} Answered yes.`, limits: [], photos: [], at: '', by: '' }));
  return [...reasons, ...answers];
}
