import { expect, it } from 'vitest';
import { adviceWay } from '../../shared/planning/evaluation/index.ts';
import { agreementOf } from '../../shared/practice/agreement.ts';
import { practiceTree } from '../unit/practice/exercises.ts';

/** All sixteen trees with 10,000 exercises each: `npm run practice-check`. */
it.each(['air-leaks-when-brake-held', 'coach-wont-roll-free', 'weak-engine-brake'])(
  '[PRA-8] [PRA-12] %s: the planner playing itself costs what the evaluation says, and no more than the taught order',
  async (id) => {
    const agreement = agreementOf(await practiceTree(id), adviceWay(), { exercises: 60, coaches: 60, seed: 7 });
    // On the same coach to the minute; on coaches drawn apart from each other within three standard errors.
    expect(agreement.largestGap).toBeLessThan(1e-9);
    expect(Math.abs(agreement.z)).toBeLessThan(3);
    expect(agreement.practice.error).toBeGreaterThan(0);
    expect(agreement.taughtMore.mean).toBeGreaterThan(0);
  },
);
