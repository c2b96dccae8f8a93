import { expect, it } from 'vitest';
import { crashRounds } from '../crash/rounds.ts';
import { seededRandom } from '../../shared/planning/evaluation/random.ts';

/** Real starts and real kills; `npm run crash` does two hundred. */
const KILLS = 40;

it(`[HOST-20] killed ${KILLS} times while entries stream in, it loses none that was answered and doubles none`, async () => {
  const report = await crashRounds(KILLS, seededRandom(7));
  expect(report.kills).toBe(KILLS);
  // The kills did hit writing: entries were answered in most rounds, and calls were under way when it ended.
  expect(report.acknowledged).toBeGreaterThan(KILLS);
  expect(report.unanswered).toBeGreaterThan(KILLS / 2);
}, 240_000);
