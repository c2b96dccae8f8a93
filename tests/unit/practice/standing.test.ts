import { describe, expect, it } from 'vitest';
import {
  brierOverTime,
  workedStandings,
  type ExerciseSummary,
  type WorkedExercise,
} from '../../../shared/practice/index.ts';

/** An exercise that ended so. */
function worked(score: number, how: ExerciseSummary['how'] = 'proven', tree = 'one', cause = 'seal'): WorkedExercise {
  const right = how === 'proven';
  const figures = { clock: 60, bill: 60, plannerBill: 60, plannerClock: 60, wrongParts: 0, hints: 0 };
  return {
    exercise: 'x',
    begun: {
      ...{ id: 'b', v: 1, at: '2026-01-01T00:00:00Z', by: '', exercise: 'x' },
      kind: 'practice.begun',
      tree,
      treeHash: 'c0'.repeat(32),
      source: { from: 'code', code: 'C' },
    },
    choices: [],
    summary: { ...figures, cause, how, right, score, checks: [], forecasts: [] },
  };
}
const standingOf = (...exercises: WorkedExercise[]) => workedStandings(exercises)[0]?.standing;

describe('[PRA-21] how exercises stand', () => {
  it.each([
    ['solid', [worked(80), worked(75), worked(90)]],
    ['coming', [worked(60), worked(65), worked(50)]],
    ['coming', [worked(90), worked(90), worked(90, 'handed-over')]],
    ['shaky', [worked(30), worked(35), worked(20)]],
    ['shaky', [worked(100), worked(100), worked(100), worked(0, 'stopped')]],
    ['new', [worked(100), worked(100)]],
  ] as const)('%s', (standing, exercises) => {
    expect(standingOf(...exercises)).toBe(standing);
  });

  it('an unsafe choice is past after five that were not', () => {
    expect(standingOf(worked(0, 'stopped'), ...[80, 80, 80, 80, 80].map((score) => worked(score)))).toBe('solid');
  });

  it('complaints and causes stand apart, the shakiest first; what was not ended counts nowhere', () => {
    const unended = { ...worked(10), summary: null };
    const all = workedStandings([
      ...[90, 90, 90].map((score) => worked(score, 'proven', 'one', 'seal')),
      ...[10, 10, 10].map((score) => worked(score, 'given-up', 'two', 'hose')),
      unended,
    ]);
    expect(all.map(({ tree, cause, ended, standing }) => [tree, cause, ended, standing])).toEqual([
      ['two', null, 3, 'shaky'],
      ['two', 'hose', 3, 'shaky'],
      ['one', null, 3, 'solid'],
      ['one', 'seal', 3, 'solid'],
    ]);
  });

  it('the last five forecasts beside those before, from ten on', () => {
    const bold = { share: 0.9, right: false };
    const fair = { share: 0.9, right: true };
    expect(brierOverTime(Array.from({ length: 9 }, () => fair))).toBe('');
    const better = brierOverTime([bold, bold, bold, bold, bold, fair, fair, fair, fair, fair]);
    expect(better).toContain('0.81 before, 0.01 over the last 5. You know better than before');
    const worse = brierOverTime([fair, fair, fair, fair, fair, bold, bold, bold, bold, bold]);
    expect(worse).toContain('0.01 before, 0.81 over the last 5. You know less well');
  });
});
