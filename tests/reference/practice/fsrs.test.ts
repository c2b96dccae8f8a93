import { describe, expect, it } from 'vitest';
import { afterAnswer, recallAt, type DrillGrade, type Memory } from '../../../shared/practice/drills/index.ts';

/*
 * Published example values of the model of memory, reached through our own adapter.
 *
 * Source: the test files of ts-fsrs, https://github.com/open-spaced-repetition/ts-fsrs, packages/fsrs/__tests__/FSRS-6.test.ts
 * (intervals, first answers, retrievability at the due date); the memory state is the one of fsrs-rs,
 * https://github.com/open-spaced-repetition/fsrs-rs, src/inference.rs at 037345f, which that file quotes.
 */
const START = Date.UTC(2022, 11, 29, 12, 30);
const DAY = 86_400_000;

describe('[DRI-8] the published values of FSRS-6', () => {
  it('thirteen answers, each when the card is due, give the published intervals', () => {
    const grades: DrillGrade[] = [
      ...Array<DrillGrade>(6).fill('good'),
      'again',
      'again',
      ...Array<DrillGrade>(5).fill('good'),
    ];
    let memory: Memory | null = null;
    const days = grades.map((grade) => {
      memory = afterAnswer(memory, grade, memory?.due ?? START);
      return memory.scheduledDays;
    });
    expect(days).toEqual([0, 2, 11, 46, 163, 498, 0, 0, 2, 4, 7, 12, 21]);
  });

  it('six answers at given distances give the published stability and difficulty', () => {
    const steps: [DrillGrade, number][] = [
      ['again', 0],
      ['good', 0],
      ['good', 1],
      ['good', 3],
      ['good', 8],
      ['good', 21],
    ];
    let memory: Memory | null = null;
    let at = START;
    for (const [grade, days] of steps) {
      at += days * DAY;
      memory = afterAnswer(memory, grade, at);
    }
    expect(memory!.stabilityDays).toBeCloseTo(53.62691, 4);
    expect(memory!.difficulty).toBeCloseTo(6.3574867, 4);
  });

  it.each([
    ['again', 0.212, 6.4133, 0],
    ['hard', 1.2931, 5.11217071, 0],
    ['good', 2.3065, 2.11810397, 0],
    ['easy', 8.2956, 1, 8],
  ] as const)('a first answer "%s"', (grade, stability, difficulty, days) => {
    const memory = afterAnswer(null, grade, START);
    expect(memory.stabilityDays).toBeCloseTo(stability, 8);
    expect(memory.difficulty).toBeCloseTo(difficulty, 8);
    expect(memory.scheduledDays).toBe(days);
  });

  it('retrievability when the card is due', () => {
    const recalls = (['again', 'hard', 'good', 'easy'] as const).map((grade) => {
      const memory = afterAnswer(null, grade, Date.UTC(2023, 11, 1, 4, 5));
      return recallAt(memory, memory.due);
    });
    expect(recalls).toEqual([1, 1, 1, 0.9024733]);
  });
});
