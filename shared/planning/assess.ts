import { fitOf } from '../knowledge/layout.ts';
import { UNLISTED } from '../knowledge/tree.ts';
import type { Advice, Assessment, CheckOption } from './assessment.ts';
import { conclusionOf } from './conclusion.ts';
import { openDoors } from './doors.ts';
import { rankChecks, type Ranking } from './next-check.ts';
import { inSentence, reasonFor } from './reason.ts';
import type { Situation } from './situation.ts';
import { driveVerdict } from './verdict.ts';
import { beliefModel } from '../inference/index.ts';

export interface AssessOptions {
  /** Do not ask the stop-rule questions first (command line, evaluation): they stay open in the verdict. */
  readonly skipTriage?: boolean;
}

/**
 * What to advise in a situation: belief, drive verdict, and the one thing to do now. Pure and deterministic.
 *
 * @throws {ReadingError} for a finding whose reading no band of its check expects.
 */
export function assess(situation: Situation, options: AssessOptions = {}): Assessment {
  const { tree } = situation;
  const verdict = driveVerdict(situation, beliefModel(tree, situation.layout));
  const ranking = rankChecks(situation, options.skipTriage ? null : verdict);
  const { problem, stop } = ranking;
  const belief = problem.belief(problem.start);
  const best = stop.kind === 'check' ? stop.option : ranking.options.find((option) => !option.blocked);
  const nextCheck = best ? { option: best, reason: reasonFor(ranking, best, tree) } : null;
  const leading = conclusionOf(situation, ranking, becauseOf(situation, ranking));
  return {
    belief: problem.model.causeIds
      .map((cause, c) => ({ cause, probability: belief[c]! }))
      .sort((a, b) => b.probability - a.probability),
    verdict,
    advice: adviceOf(),
    nextCheck,
    options: ranking.options,
    leading,
    leftOut: leftOut(situation),
    doors: openDoors(situation),
  };

  function adviceOf(): Advice {
    const question = verdict.openQuestions[0];
    if (question !== undefined && !options.skipTriage) return { kind: 'triage', rule: question };
    const feature = options.skipTriage ? null : layoutWorthAsking(situation, ranking.options, best);
    if (feature !== null) return { kind: 'layout', feature };
    if (stop.kind === 'check') return { kind: 'check', option: stop.option, reason: nextCheck!.reason };
    const { first } = ranking.actNow;
    const corrects = first.kind === 'correct';
    const towed = first.kind === 'decide' && problem.decisions[first.decision]!.id === 'stay-put';
    if (corrects && leading.cause !== UNLISTED) return { kind: 'conclude', conclusion: leading };
    return {
      kind: 'hand-over',
      conclusion: leading,
      reason: handOverReason(situation, leading.cause === UNLISTED, towed),
    };
  }
}

/** A layout question comes first when a check that hangs on it would be worth more than the best one that does not. */
function layoutWorthAsking(
  { layoutNotKnown = [] }: Situation,
  options: readonly CheckOption[],
  best: CheckOption | undefined,
): string | null {
  const hanging = options
    .flatMap(({ blocked, saves }) =>
      blocked?.kind === 'layout' && !blocked.known && !layoutNotKnown.includes(blocked.feature)
        ? [{ feature: blocked.feature, saves }]
        : [],
    )
    .sort((a, b) => b.saves - a.saves)[0];
  return hanging && hanging.saves > Math.max(0, best?.saves ?? 0) ? hanging.feature : null;
}

function handOverReason({ who }: Situation, unlisted: boolean, towed: boolean): string {
  if (towed)
    return 'Park it and have it towed: by the costs that are set, that is the cheapest that is left. A licensed mechanic takes over, with these findings in hand.';
  if (unlisted)
    return 'What was found fits nothing in this list well. Somebody who can look further should take over, with these findings in hand.';
  return who === 'mechanic' || who === 'apprentice'
    ? 'No check that can be done here is worth its time any more, and acting on these odds would cost more than asking a specialist.'
    : 'You have found out what can be found without a workshop. A licensed mechanic takes over, with these findings in hand.';
}

function becauseOf({ tree }: Situation, ranking: Ranking): string {
  if (ranking.stop.kind === 'check') {
    const check = tree.checks.find(({ id }) => ranking.stop.kind === 'check' && id === ranking.stop.option.check)!;
    return `Not settled yet: the next look would be “${inSentence(check.name)}”.`;
  }
  if (ranking.exact) return 'Every order of what is left was worked out: none costs less on average than acting now.';
  return ranking.stop.proven
    ? 'No check left could save more than it costs, even if it told everything.'
    : 'No check left is likely to save more than it costs.';
}

/** Causes and checks that do not apply to this coach. */
function leftOut({ tree, layout }: Situation): Assessment['leftOut'] {
  return [
    ...tree.causes.map((cause) => ({ kind: 'cause' as const, id: cause.id, fit: fitOf(cause.when, layout) })),
    ...tree.checks.map((check) => ({ kind: 'check' as const, id: check.id, fit: fitOf(check.when, layout) })),
  ].flatMap(({ kind, id, fit }) => (fit.fits === 'no' ? [{ kind, id, feature: fit.feature }] : []));
}
