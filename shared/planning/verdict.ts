import { posterior, type BeliefModel, type Finding } from '../inference/index.ts';
import { fitOf } from '../knowledge/layout.ts';
import { takesIn } from '../knowledge/places.ts';
import { VERDICTS, type Cause, type Check, type StopRule, type Tree, type Verdict } from '../knowledge/tree.ts';
import type { DriveVerdict, FiredRule } from './assessment.ts';
import { clearResult, possibleResults } from './clear-result.ts';
import { dangerThreshold } from './costs.ts';
import type { Hold, Situation } from './situation.ts';
import { standing } from './standing.ts';

/** Belief in a danger cause from which it is treated as found, for the advice to drive. Judgement. */
const AS_GOOD_AS_FOUND = 0.5;
/** Belief below which a settling check that came out against a cause rules it out. Judgement. */
const RULED_OUT = 0.01;

const GENERAL: Readonly<Record<Verdict, string>> = {
  'stay-put':
    'Leave the coach where it stands. Set the parking brake, chock a wheel, keep people away from traffic, and call a licensed mechanic or a tow.',
  'creep-to-safe-place':
    'Go slowly to the nearest place off the road, no farther, and call a licensed mechanic from there.',
  'drive-and-book': 'Drive gently and attentively, stop at any change, and book a licensed workshop now.',
};

/** What a verdict asks for when no rule says anything more exact. */
export function generalAdvice(verdict: Verdict): string {
  return GENERAL[verdict];
}

/** The stricter of two verdicts. */
export function stricter(a: Verdict, b: Verdict): Verdict {
  return VERDICTS.indexOf(a) <= VERDICTS.indexOf(b) ? a : b;
}

/** A verdict made at least as strict as what holds the coach; never milder. Without a hold it stays as it is. */
function underHold(verdict: DriveVerdict, hold: Hold | undefined): DriveVerdict {
  if (!hold) return verdict;
  if (hold.verdict === verdict.verdict || stricter(hold.verdict, verdict.verdict) !== hold.verdict) {
    return { ...verdict, hold };
  }
  return { ...verdict, verdict: hold.verdict, because: hold.because, doNow: hold.doNow || GENERAL[hold.verdict], hold };
}

/**
 * May the coach move? What a sheet of the visit found holds it at least so strictly (PLA-37); for the rest `complaintVerdict`.
 */
export function driveVerdict(situation: Situation, model: BeliefModel): DriveVerdict {
  return underHold(complaintVerdict(situation, model), situation.hold);
}

/**
 * May the coach move, by this complaint? A rule in force beats any belief; the strictest rule wins. Without one, "creep" holds until every
 * question of the stricter rules is answered and the belief in danger causes has fallen below half the threshold.
 */
function complaintVerdict(situation: Situation, model: BeliefModel): DriveVerdict {
  const { tree } = situation;
  const checks = new Map(tree.checks.map((check) => [check.id, check]));
  const rules = tree.stopRules.filter((rule) => applies(rule, tree, situation));
  const guards = rules.filter((rule) => rule.verdict !== 'drive-and-book');
  const fired = rules
    .flatMap((rule): FiredRule[] => {
      const by = firing(rule, situation, checks).find((each) => !isLifted(rule, each, situation, model, checks));
      return by ? [{ rule: rule.id, verdict: rule.verdict, by }] : [];
    })
    .sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict));
  const openQuestions = byStrictness(guards)
    .filter(
      (rule) =>
        situation.stopAnswers[rule.id] === undefined &&
        !fired.some((each) => each.rule === rule.id) &&
        !answeredByCheck(rule, situation, checks),
    )
    .map(({ id }) => id);
  const unsure = guards.filter(
    (rule) => situation.stopAnswers[rule.id] === 'not-sure' && !answeredByCheck(rule, situation, checks),
  );
  const threshold = dangerThreshold(situation.costs);
  const danger = dangerOverTime(situation, model, threshold);

  const strictest = fired.find((each) => each.verdict !== 'drive-and-book');
  const rule = strictest && tree.stopRules.find(({ id }) => id === strictest.rule);
  const base = { fired, dangerShare: danger.share, threshold, openQuestions };
  const found = foundDanger(tree, danger);
  if (rule && (!found || stricter(rule.verdict, found.verdict) === rule.verdict)) {
    return {
      ...base,
      verdict: rule.verdict,
      because: `${capital(rule.why)}. This alone decides, whatever the odds.`,
      doNow: rule.now || GENERAL[rule.verdict],
    };
  }
  if (found) {
    return {
      ...base,
      verdict: found.verdict,
      because: `The likeliest cause by far can hurt people: ${lower(found.cause.name)}.`,
      doNow: GENERAL[found.verdict],
    };
  }
  if (openQuestions.length > 0) {
    const many = openQuestions.length;
    return {
      ...base,
      verdict: 'creep-to-safe-place',
      because: `${many} safety question${many === 1 ? ' is' : 's are'} not answered yet.`,
      doNow: GENERAL['creep-to-safe-place'],
    };
  }
  if (unsure.length > 0) {
    return {
      ...base,
      verdict: 'creep-to-safe-place',
      because: `One safety question could not be answered: ${unsure[0]!.ask}`,
      doNow: GENERAL['creep-to-safe-place'],
    };
  }
  if (danger.open) {
    const share = Math.max(1, Math.round(danger.share * 100));
    const limit = Math.round(threshold * 100);
    return {
      ...base,
      verdict: 'creep-to-safe-place',
      because: `Causes that can hurt people still hold ${share} in 100 of the belief; ${
        danger.share >= threshold
          ? `${limit} is the limit`
          : `at ${limit} the coach is held, and let go again only below half of that`
      }.`,
      doNow: GENERAL['creep-to-safe-place'],
    };
  }
  return {
    ...base,
    verdict: 'drive-and-book',
    because:
      'No stop rule is met, and nothing found points to a cause that can hurt people. What was not looked at is not known.',
    doNow: GENERAL['drive-and-book'],
  };
}

/** A rule is left out when every cause it guards over cannot exist on this coach. */
function applies(rule: StopRule, tree: Tree, { layout }: Situation): boolean {
  if (rule.covers.length === 0) return true;
  return rule.covers.some((id) => {
    const cause = tree.causes.find((each) => each.id === id);
    return !cause || fitOf(cause.when, layout).fits !== 'no';
  });
}

function byStrictness(rules: readonly StopRule[]): StopRule[] {
  return [...rules].sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict));
}

/** All that fires a rule: the answer, and each finding at whatever place. */
function firing(rule: StopRule, situation: Situation, checks: ReadonlyMap<string, Check>): FiredRule['by'][] {
  const found = situation.findings.flatMap((finding): FiredRule['by'][] => {
    const check = checks.get(finding.check);
    const entry = check && rule.firedBy.find((each) => each.check === finding.check);
    const result = entry && possibleResults(check, finding).find((each) => entry.results.includes(each));
    return result === undefined ? [] : [{ kind: 'finding', finding: finding.id, check: finding.check, result }];
  });
  return situation.stopAnswers[rule.id] === 'yes' ? [{ kind: 'answer' }, ...found] : found;
}

/**
 * A check that would fire the rule was done with a clear result that does not. A place that could not be judged leaves the
 * question open, whatever was seen at the others (PLA-43).
 */
function answeredByCheck(rule: StopRule, situation: Situation, checks: ReadonlyMap<string, Check>): boolean {
  return rule.firedBy.some(({ check, results }) => {
    const known = checks.get(check);
    if (!known) return false;
    const made = situation.findings.filter((finding) => finding.check === check);
    const passes = (finding: Finding): boolean =>
      clearResult(known, finding) !== null && !possibleResults(known, finding).some((each) => results.includes(each));
    return made.some(passes) && made.every((finding) => finding.site === undefined || passes(finding));
  });
}

/**
 * A finding really rules the danger out: every cause that the rule covers is corrected and proven, or settled against. What
 * fired it at one place is settled by a look at that place, not at another (PLA-43).
 */
function isLifted(
  rule: StopRule,
  by: FiredRule['by'],
  situation: Situation,
  model: BeliefModel,
  checks: ReadonlyMap<string, Check>,
): boolean {
  if (rule.covers.length === 0) return false;
  const { findings, excluded } = standing(model, situation);
  const belief = posterior(model, findings, excluded).probability;
  const place = by.kind === 'finding' ? situation.findings.find(({ id }) => id === by.finding)?.site : undefined;
  return rule.covers.every((cause) => {
    const column = model.causeIds.indexOf(cause);
    if (column < 0) return true;
    if (situation.corrections.some((each) => each.cause === cause && each.proof === 'gone')) return true;
    const settled = findings.some((finding) => {
      const check = checks.get(finding.check);
      const here = place === undefined || finding.site === undefined || takesIn(finding.site, place);
      return here && check !== undefined && check.settles.includes(cause) && clearResult(check, finding) !== null;
    });
    return settled && belief[column]! < RULED_OUT;
  });
}

/**
 * Whether belief in danger causes has not been let go of: not fallen below half the threshold since it last reached it.
 * It alone depends on the order of the findings.
 */
export function dangerOpen(situation: Situation, model: BeliefModel): boolean {
  return dangerOverTime(situation, model, dangerThreshold(situation.costs)).open;
}

interface DangerOverTime {
  readonly share: number;
  /** Not yet fallen below half the threshold since it last reached it. */
  readonly open: boolean;
  readonly belief: Float64Array;
  readonly model: BeliefModel;
  /** Put right, with a proof that held. */
  readonly cured: ReadonlySet<string>;
}

/**
 * Belief in danger causes, followed over the findings in order, so that one lucky answer does not make it milder. A cause
 * whose part was seen to be bad and whose proof held has explained the complaint: no belief is left for its rivals, until
 * something is found after it (PLA-40).
 */
function dangerOverTime(situation: Situation, model: BeliefModel, threshold: number): DangerOverTime {
  const { findings, excluded } = standing(model, situation);
  const cured = new Set(situation.corrections.filter(({ proof }) => proof === 'gone').map(({ cause }) => cause));
  const dangerous = model.causeIds.map(
    (id) => !cured.has(id) && situation.tree.causes.find((cause) => cause.id === id)?.hazard === 'danger',
  );
  const shareAfter = (some: readonly Finding[]): { share: number; belief: Float64Array } => {
    const belief = posterior(model, some, excluded).probability;
    return { belief, share: belief.reduce((sum, p, c) => (dangerous[c] ? sum + p : sum), 0) };
  };
  const last = situation.corrections.at(-1);
  if (last?.proof === 'gone' && last.partSeen === 'bad' && findings.every(({ id }) => last.findingsBefore.includes(id)))
    return { share: 0, open: false, belief: shareAfter(findings).belief, model, cured };
  let now = shareAfter([]);
  let open = now.share >= threshold / 2;
  for (let i = 1; i <= findings.length; i++) {
    now = shareAfter(findings.slice(0, i));
    open = open ? now.share >= threshold / 2 : now.share >= threshold;
  }
  return { share: now.share, open, belief: now.belief, model, cured };
}

/** A danger cause as good as found, with the strictest verdict among the rules that guard over it. */
function foundDanger(tree: Tree, danger: DangerOverTime): { cause: Cause; verdict: Verdict } | null {
  for (const cause of tree.causes) {
    const column = danger.model.causeIds.indexOf(cause.id);
    if (cause.hazard !== 'danger' || danger.cured.has(cause.id) || column < 0 || !danger.open) continue;
    if (danger.belief[column]! < AS_GOOD_AS_FOUND) continue;
    return { cause, verdict: strictestGuard(tree, cause.id) };
  }
  return null;
}

/** Strictest verdict among the rules that guard over a cause; "creep" when none does. */
export function strictestGuard(tree: Tree, cause: string): Verdict {
  return tree.stopRules
    .filter((rule) => rule.covers.includes(cause))
    .reduce<Verdict>((verdict, rule) => stricter(verdict, rule.verdict), 'creep-to-safe-place');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1).replace(/[.\s]+$/, '');
}

function lower(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
