import type { ExerciseSummary, WorkedExercise } from './log.ts';

/** How simulated coaches of one complaint, or with one hidden cause, were worked. */
export interface WorkedStanding {
  readonly tree: string;
  /** Hidden cause; null for the complaint as a whole. */
  readonly cause: string | null;
  /** Exercises worked to their end. */
  readonly ended: number;
  readonly right: number;
  readonly unsafe: number;
  /** Mean of the scores, 0 to 100. */
  readonly score: number;
  readonly standing: 'shaky' | 'coming' | 'solid' | 'new';
}

/** Fewer exercises than this say nothing, and no more than the last of them count. Judgement, as the bounds below are. */
const ENOUGH = 3;
const LAST = 5;
const SOLID_SCORE = 70;
const SHAKY_SCORE = 40;

/**
 * How the exercises that were worked to their end stand, by complaint and by hidden cause: the shakiest first, what was
 * worked too seldom last. One unsafe choice among the last makes it shaky, whatever the score.
 */
export function workedStandings(worked: readonly WorkedExercise[]): readonly WorkedStanding[] {
  const groups = new Map<
    string,
    { readonly of: Pick<WorkedStanding, 'tree' | 'cause'>; readonly ended: ExerciseSummary[] }
  >();
  for (const { begun, summary } of worked) {
    if (!summary) continue;
    for (const cause of [null, summary.cause]) {
      const key = `${begun.tree} ${cause ?? ''}`;
      const group = groups.get(key) ?? { of: { tree: begun.tree, cause }, ended: [] };
      groups.set(key, group);
      group.ended.push(summary);
    }
  }
  const order = ['shaky', 'coming', 'solid', 'new'];
  return [...groups.values()]
    .map(({ of, ended }) => ({
      ...of,
      ended: ended.length,
      right: ended.filter(({ right }) => right).length,
      unsafe: ended.filter(({ how }) => how === 'stopped').length,
      score: meanScore(ended),
      standing: standingOf(ended),
    }))
    .sort(
      (a, b) =>
        order.indexOf(a.standing) - order.indexOf(b.standing) || a.score - b.score || (a.tree < b.tree ? -1 : 1),
    );
}

function meanScore(ended: readonly ExerciseSummary[]): number {
  return ended.reduce((sum, { score }) => sum + score, 0) / ended.length;
}

function standingOf(ended: readonly ExerciseSummary[]): WorkedStanding['standing'] {
  if (ended.length < ENOUGH) return 'new';
  const last = ended.slice(-LAST);
  const score = meanScore(last);
  const missed = last.filter(({ right }) => !right).length;
  if (last.some(({ how }) => how === 'stopped') || score < SHAKY_SCORE || missed * 2 > last.length) return 'shaky';
  return score >= SOLID_SCORE && missed === 0 ? 'solid' : 'coming';
}
