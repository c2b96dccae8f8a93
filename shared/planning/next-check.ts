import { isOwner, type Check } from '../knowledge/tree.ts';
import { entropyOf, mutualInformation } from '../inference/index.ts';
import type { LookedAhead } from './ahead/looked-ahead.ts';
import { wholePlan, type WholePlan } from './ahead/whole-plan.ts';
import { accessMinutes } from './access.ts';
import type { Blocked, CheckOption, DriveVerdict } from './assessment.ts';
import { blockedReason, wordsAtHand } from './blocked.ts';
import { checkCost, worthOfCheck } from './one-step.ts';
import type { ActNow } from './problem.ts';
import type { Situation } from './situation.ts';
import { treeProblem, type TreeProblem } from './tree-problem.ts';

/** Two checks whose values are closer than this share of the cost that is left, or than a minute, are equally good. Judgement. */
const TIE_SHARE = 0.01;
const TIE_MINUTES = 1;

/** A saving below this is none: minutes. */
const NOTHING = 1e-9;

/** Everything the planner worked out for a situation. */
export interface Ranking {
  readonly problem: TreeProblem;
  readonly actNow: ActNow;
  /** Worked out to the end in every order (PLA-45): `saves` and `actNow` are what the best plan costs, and none is cheaper. */
  readonly exact: boolean;
  /** Expected cost if the cause were known now: no plan can cost less. */
  readonly bound: number;
  /** Offered checks best first, then blocked ones in file order. */
  readonly options: readonly CheckOption[];
  /** What to do by cost alone. */
  readonly stop: StopDecision;
  /** Checks of which `saves` is what they save in the end, as far as was looked; null when nobody has looked ahead. */
  readonly lookedAt: ReadonlySet<string> | null;
}

export type StopDecision =
  /** A check is worth more than it costs. */
  | { readonly kind: 'check'; readonly option: CheckOption; readonly why: 'saves' | 'settles' }
  /** Nothing cheaper is left than acting. `proven` = no check could pay for itself. */
  | { readonly kind: 'act'; readonly proven: boolean };

/**
 * Ranks the checks of a tree by what they are worth. Where few enough states can follow, that is what the best plan with the check
 * first saves against acting now (PLA-45). Else by the rule of PLA-39: what a check saves if none is made after it, and its share
 * of the open question (information / entropy) of what knowing the cause would save; the first alone is blind to checks that pay only
 * together with others.
 *
 * @source One-step look-ahead: Heckerman, Breese & Rommelse 1995 (opening pages read). The share of knowing is a rule of our own,
 *   measured against it (SPEC.md).
 * @param verdict  null leaves the drive verdict out of what can be offered.
 * @param ahead    what looking many steps ahead said of the same situation: it decides between checks, and between a check
 *   and acting. No rule of safety hangs on it.
 */
export function rankChecks(
  situation: Situation,
  verdict: DriveVerdict | null,
  ahead: LookedAhead | null = null,
): Ranking {
  const { tree, vocabulary } = situation;
  const checks = new Map(tree.checks.map((check) => [check.id, check]));
  const atHand = wordsAtHand(vocabulary, situation);
  const blocked = new Map<string, Blocked | null>();
  const problem = treeProblem(situation, (check) => blocked.get(check.id) === null);
  for (const check of tree.checks)
    blocked.set(check.id, blockedReason(check, situation, problem.start.findings, verdict, atHand, checks));

  const belief = problem.belief(problem.start);
  // An owner corrects nothing: what ends the matter there is the drive decision.
  const whole = isOwner(situation.who) ? null : wholePlan(problem, usableChecks(problem, blocked));
  const actNow = whole?.act ?? problem.actNow(belief, problem.stage);
  const bound = boundOf(problem);
  const knowing = { worth: actNow.cost - bound, bits: entropyOf(belief) };
  const all = tree.checks.map((check, k) =>
    inTheEnd(optionOf(problem, check, k, actNow.cost, knowing, blocked.get(check.id) ?? null), whole),
  );
  const offered = inOrderOfWorth(
    all.filter((option) => !option.blocked),
    tree.checks,
    actNow.cost,
  );
  const ranked = ahead ? inOrderOfForecast(offered, ahead) : offered;
  return {
    problem,
    actNow,
    exact: whole !== null,
    bound,
    options: [...ranked, ...all.filter((option) => option.blocked)],
    stop: stopDecision(situation, problem, ranked, { actNow, bound, exact: whole !== null }, ahead),
    lookedAt: ahead && new Set(ahead.checks.map(({ check }) => check)),
  };
}

/** Checks that this person could do, prerequisites aside: a later answer may open them. */
export function usableChecks({ checksOf }: TreeProblem, blocked: ReadonlyMap<string, Blocked | null>): boolean[] {
  return checksOf.map(({ id }) => {
    const kind = blocked.get(id)?.kind;
    return kind === undefined || kind === 'requires' || kind === 'done';
  });
}

/** The same with what the check saves when the best plan follows it. */
function inTheEnd(option: CheckOption, whole: WholePlan | null): CheckOption {
  const cost = whole?.costs.get(option.check);
  return whole && cost !== undefined ? { ...option, saves: whole.act.cost - cost } : option;
}

/** Checks that were looked at first, the advised one at the head, each with what it saves in the end; then the others. */
function inOrderOfForecast(offered: readonly CheckOption[], { checks, act, best }: LookedAhead): CheckOption[] {
  const costs = new Map(checks.map(({ check, cost }) => [check, cost]));
  const advised = checks[best]?.check;
  const looked = offered
    .flatMap((option): CheckOption[] => {
      const cost = costs.get(option.check);
      return cost === undefined ? [] : [{ ...option, saves: act - cost }];
    })
    .sort((a, b) => Number(b.check === advised) - Number(a.check === advised) || b.saves - a.saves);
  return [...looked, ...offered.filter(({ check }) => !costs.has(check))];
}

/** What knowing the cause for certain would save, and how many bits are missing for it. */
interface Knowing {
  readonly worth: number;
  readonly bits: number;
}

function optionOf(
  problem: TreeProblem,
  check: Check,
  k: number,
  actCost: number,
  knowing: Knowing,
  blocked: Blocked | null,
): CheckOption {
  const { access, stage } = problem;
  const opening = accessMinutes(access, stage.access, problem.checks[k]!.need);
  const table = problem.model.tables.get(check.id)!;
  const { share } = problem.outlook(problem.start, k);
  const bits = mutualInformation(problem.belief(problem.start), table.likelihood);
  const savesAlone = blocked?.kind === 'done' ? 0 : actCost - checkCost(problem, problem.start, problem.stage, k);
  const cost = check.minutes + opening;
  const saves = worthOfCheck(savesAlone, { bits, open: knowing.bits, knowing: knowing.worth, cost });
  return {
    check: check.id,
    minutes: check.minutes,
    accessMinutes: opening,
    saves: blocked?.kind === 'done' ? 0 : saves,
    savesAlone,
    bits,
    resultShares: Array.from(share),
    ...(blocked ? { blocked } : {}),
  };
}

/** Best first. Among those as good as the best: fewer hazards, then less time, then the order of the file. */
function inOrderOfWorth(options: readonly CheckOption[], checks: readonly Check[], costLeft: number): CheckOption[] {
  const sorted = [...options].sort((a, b) => b.saves - a.saves);
  const best = sorted[0];
  if (!best) return [];
  const tie = tieMinutes(costLeft);
  const equals = sorted.filter((option) => best.saves - option.saves <= tie && (option.saves > 0 || best.saves <= 0));
  const place = new Map(checks.map((check, i) => [check.id, i]));
  const hazards = (option: CheckOption): number => checks[place.get(option.check)!]!.hazards.length;
  equals.sort(
    (a, b) =>
      hazards(a) - hazards(b) ||
      a.minutes + a.accessMinutes - (b.minutes + b.accessMinutes) ||
      place.get(a.check)! - place.get(b.check)!,
  );
  return [...equals, ...sorted.filter((option) => !equals.includes(option))];
}

/** Checks whose values lie no farther apart than this are equally good. */
export function tieMinutes(costLeft: number): number {
  return Math.max(TIE_MINUTES, TIE_SHARE * costLeft);
}

/** Σ belief · cost when the cause is known: a lower bound of every plan's cost (linear in the belief). */
function boundOf(problem: TreeProblem): number {
  const belief = problem.belief(problem.start);
  let bound = 0;
  for (let c = 0; c < belief.length; c++) {
    if (belief[c]! > 0) bound += belief[c]! * problem.whenKnown(c);
  }
  return bound;
}

/**
 * Check or act. Acting now is proven best when the value of knowing the cause for certain is no more than the cheapest
 * check. A cause that can hurt people, and one that is only what is
 * left, is not acted on before what settles it (or its near rivals) has been looked at, where this person can.
 *
 * @source Provable stopping: V_act − h_PI ≤ min c, every policy that starts with a check costs at least c + h_PI.
 */
function stopDecision(
  situation: Situation,
  problem: TreeProblem,
  offered: readonly CheckOption[],
  { actNow, bound, exact }: Pick<Ranking, 'actNow' | 'bound' | 'exact'>,
  ahead: LookedAhead | null,
): StopDecision {
  const cost = (option: CheckOption): number => option.minutes + option.accessMinutes;
  const best = offered[0];
  if (ahead) {
    if (best && best.check === ahead.checks[ahead.best]?.check) return { kind: 'check', option: best, why: 'saves' };
  } else if (best && best.saves > NOTHING) return { kind: 'check', option: best, why: 'saves' };
  const settling = settlingFirst(situation, problem, offered, actNow);
  if (settling) return { kind: 'check', option: settling, why: 'settles' };
  const knowing = actNow.cost - bound;
  const cheapest = Math.min(...offered.map(cost));
  if (exact || knowing <= cheapest) return { kind: 'act', proven: true };
  return { kind: 'act', proven: false };
}

/** The settling check that has to come before acting on the leading cause; null when there is none that can be done. */
function settlingFirst(
  situation: Situation,
  problem: TreeProblem,
  offered: readonly CheckOption[],
  actNow: ActNow,
): CheckOption | null {
  const belief = problem.belief(problem.start);
  if (actNow.first.kind !== 'correct') return null;
  const cause = problem.causesOf[actNow.first.correction]!;
  const column = problem.model.causeIds.indexOf(cause.id);
  const wanted = cause.byExclusion
    ? problem.causesOf
        .filter((rival) => rival !== cause && belief[problem.model.causeIds.indexOf(rival.id)]! * 3 >= belief[column]!)
        .map(({ id }) => id)
    : cause.hazard === 'danger'
      ? [cause.id]
      : [];
  const tree = situation.tree;
  const done = new Set(problem.start.findings.map((finding) => finding.check));
  for (const id of wanted) {
    const settlers = tree.checks.filter((check) => check.settles.includes(id));
    if (settlers.some((check) => done.has(check.id))) continue;
    const option = offered.find((each) => settlers.some((check) => check.id === each.check));
    if (option) return option;
  }
  return null;
}
