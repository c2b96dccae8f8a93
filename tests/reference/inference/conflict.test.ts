import { expect, it } from 'vitest';
import { conflictIn } from '../../../shared/inference/index.ts';
import { found, referenceTree } from './slow-air.ts';

/** Values by enumeration on the slow-air model, worked out apart from this program (conflict measure of Jensen et al. 1991). */
const { model, table } = referenceTree('m5-slow-air-imperfect.json');
const outcome = (check: string, word: string): string =>
  table.checks.find(({ id }) => id === check)!.outcomes.find((each) => each.includes(word))!;

it('[INF-17] a hiss and a second gauge that differs disagree by 1.7797 bits, and are named', () => {
  const hiss = found('listen_purge', outcome('listen_purge', 'hiss'));
  const gauge = found('second_gauge', outcome('second_gauge', 'differ'));
  const conflict = conflictIn(model, [hiss, gauge])!;
  expect(conflict.bits).toBeCloseTo(1.7797, 3);
  expect([...conflict.findings].sort()).toEqual(['listen_purge', 'second_gauge']);
  expect(conflict.pair).not.toBeNull();
  expect(conflict.twoShare).toBeGreaterThan(0);
  expect(conflict.twoShare).toBeLessThan(1);
});

it('[INF-17] a hiss and a fast leak-down fit together', () => {
  const hiss = found('listen_purge', outcome('listen_purge', 'hiss'));
  expect(conflictIn(model, [hiss, found('leak_down', outcome('leak_down', 'fast'))])).toBeNull();
  expect(conflictIn(model, [hiss])).toBeNull();
});
