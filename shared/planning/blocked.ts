import { fitOf } from '../knowledge/layout.ts';
import { isOwner, ROLES, type Check } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';
import type { Blocked, DriveVerdict } from './assessment.ts';
import { isMet } from './clear-result.ts';
import type { Situation } from './situation.ts';
import { beliefNow } from './standing.ts';
import type { Finding } from '../inference/index.ts';

/** Words by who and what kinds of tools; asked for at every check of every simulated coach. */
const known = new WeakMap<Vocabulary['tools'], Map<string, ReadonlySet<string>>>();

/** Words of `Check.tools` that somebody has at hand. */
export function wordsAtHand(
  { tools }: Pick<Vocabulary, 'tools'>,
  { who, tools: own }: Pick<Situation, 'who' | 'tools'>,
): ReadonlySet<string> {
  const key = own ? JSON.stringify(own) : who;
  const sets = known.get(tools) ?? new Map<string, ReadonlySet<string>>();
  known.set(tools, sets);
  const before = sets.get(key);
  if (before) return before;
  const kinds = tools.filter((kind) => (own ? own.includes(kind.id) : kind.usualFor.includes(who)));
  const words = new Set(kinds.flatMap((kind) => kind.covers));
  sets.set(key, words);
  return words;
}

/**
 * Why a check cannot be offered to this person now; null when it can.
 *
 * @param findings  those that stand.
 * @param verdict   a coach that must stay put, or that a rule lets only creep, is not taken on the road; null = not asked.
 */
export function blockedReason(
  check: Check,
  situation: Situation,
  findings: readonly Finding[],
  verdict: DriveVerdict | null,
  atHand: ReadonlySet<string>,
  checks: ReadonlyMap<string, Check>,
): Blocked | null {
  if (findings.some((finding) => finding.check === check.id)) return { kind: 'done' };
  const fit = fitOf(check.when, situation.layout);
  if (fit.fits === 'no') return { kind: 'layout', feature: fit.feature, known: true };
  // Before who and with what: nobody takes a coach on the road that has to stay.
  if (verdict && situation.vocabulary.access.find(({ id }) => id === check.access)?.moves) {
    const ruled =
      verdict.fired.some((rule) => rule.verdict !== 'drive-and-book') ||
      (verdict.hold !== undefined && verdict.hold.verdict !== 'drive-and-book');
    if (verdict.verdict === 'stay-put' || ruled) return { kind: 'verdict' };
    if (isOwner(situation.who) && verdict.openQuestions.length > 0) return { kind: 'triage' };
  }
  if (ROLES.indexOf(check.who) > ROLES.indexOf(situation.who)) return { kind: 'who', needs: check.who };
  const missing = check.tools.filter((word) => !atHand.has(word));
  if (missing.length > 0) return { kind: 'tools', missing };
  if (!isMet(check.requires, checks, findings)) return { kind: 'requires' };
  if (fit.fits === 'unknown') return { kind: 'layout', feature: fit.feature, known: false };
  return null;
}

/**
 * Why a check that was made already cannot be made once more by this person now, its own finding aside; null when it can.
 *
 * @param verdict  as in `blockedReason`: a look at the same thing again is no reason to take a held coach on the road.
 */
export function blockedAgain(check: Check, situation: Situation, verdict: DriveVerdict): Blocked | null {
  const others = beliefNow(situation).findings.filter((finding) => finding.check !== check.id);
  const checks = new Map(situation.tree.checks.map((each) => [each.id, each]));
  return blockedReason(check, situation, others, verdict, wordsAtHand(situation.vocabulary, situation), checks);
}
