import { expect, it } from 'vitest';
import { agreementOf } from '../../shared/practice/agreement.ts';
import { practiceTree } from '../unit/practice/exercises.ts';

/** All trees with 10,000 exercises each: `npm run practice-check`. */
it.each(['air-leaks-when-brake-held', 'coach-wont-roll-free', 'weak-engine-brake'])(
  '[PRA-8] %s: the planner playing itself costs what the evaluation says',
  async (id) => {
    const agreement = agreementOf(await practiceTree(id), { exercises: 12, seed: 7 });
    // On the same coach to the minute; on coaches drawn apart from each other within three standard errors.
    expect(agreement.largestGap).toBeLessThan(1e-9);
    expect(Math.abs(agreement.z)).toBeLessThan(3);
    expect(agreement.practiceError).toBeGreaterThan(0);
  },
);
