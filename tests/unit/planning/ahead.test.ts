import { expect, it } from 'vitest';
import { loadTrees } from '../../../electron/cli/load-trees.ts';
import { defaultCosts, lookAhead, rankChecks, whileOpen, type Situation } from '../../../shared/planning/index.ts';
import { beliefAfter, farStart, farTables } from '../../../shared/planning/ahead/far-tables.ts';
import { beliefModel, posterior, type Finding } from '../../../shared/inference/index.ts';

const { trees, vocabulary } = await loadTrees({ only: ['air-leaks-when-brake-held', 'growl-through-floor-at-speed'] });
const tree = trees.get('air-leaks-when-brake-held')!.value!;
const growl = trees.get('growl-through-floor-at-speed')!.value!;

const situation = (findings: readonly Finding[] = [], of = tree): Situation => ({
  tree: of,
  vocabulary: vocabulary!,
  who: 'mechanic',
  layout: {},
  findings,
  stopAnswers: {},
  corrections: [],
  access: [],
  costs: defaultCosts('mechanic'),
});

it('[PLA-32] the tables that look far ahead move the belief as one finding more does, damping included', () => {
  const grouped = tree.checks.filter(({ group }) => group !== undefined);
  const two = grouped.flatMap((a) => grouped.filter((b) => b !== a && b.group === a.group).map((b) => [a, b] as const));
  expect(two.length).toBeGreaterThan(0);
  for (const [a, b] of two) {
    const first: Finding = { id: 'a', check: a.id, value: { kind: 'result', result: a.results[0]!.id } };
    const second: Finding = { id: 'b', check: b.id, value: { kind: 'result', result: b.results[0]!.id } };
    const { problem } = rankChecks(situation([first]), null);
    const tables = farTables(
      problem,
      tree.checks.map(() => true),
    );
    const ours = beliefAfter(tables, farStart(problem), tree.checks.indexOf(b), 0);
    const theirs = posterior(beliefModel(tree, {}), [first, second]).probability;
    ours.forEach((p, c) => expect(p).toBeCloseTo(theirs[c]!, 9));
  }
});

it('[PLA-33] the better answer is never dearer than acting, by its own reckoning, and no plan is below the bound', () => {
  const ahead = lookAhead(situation(), null)!;
  expect(ahead.best).toBeGreaterThanOrEqual(0);
  expect(ahead.checks[ahead.best]!.cost).toBeLessThan(ahead.act * 1.02);
  for (const { cost } of ahead.checks) expect(cost).toBeGreaterThan(ahead.bound);
  const ranked = rankChecks(situation(), null, ahead);
  expect(ranked.options[0]!.check).toBe(ahead.checks[ahead.best]!.check);
  expect(ranked.stop).toMatchObject({ kind: 'check', option: { check: ahead.checks[ahead.best]!.check } });
  expect(lookAhead(situation(), null)).toEqual(ahead);
});

it('[PLA-34] an owner, who corrects nothing, is answered by the one-step rule alone', () => {
  expect(lookAhead({ ...situation(), who: 'owner-no-tools', costs: defaultCosts('owner-no-tools') }, null)).toBeNull();
});

it('[PLA-35] what is offered while the coach is open needs no more opening, and nothing is offered when nothing is opened', () => {
  let offered = 0;
  for (const check of growl.checks) {
    const ranking = rankChecks(situation([], growl), null);
    const option = ranking.options.find((each) => each.check === check.id && !each.blocked);
    if (!option) continue;
    const also = whileOpen({ ...ranking, stop: { kind: 'check', option, why: 'saves' } });
    if (option.accessMinutes === 0) expect(also).toEqual([]);
    expect(also.length).toBeLessThanOrEqual(2);
    for (const { check: other, spares } of also) {
      expect(other).not.toBe(check.id);
      expect(spares).toBeGreaterThan(0);
    }
    offered += also.length;
  }
  expect(offered).toBeGreaterThan(0);
});
