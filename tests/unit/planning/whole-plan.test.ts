import { describe, expect, it } from 'vitest';
import { lookAhead, rankChecks, type Situation } from '../../../shared/planning/index.ts';
import { beliefModel, posterior, type Finding } from '../../../shared/inference/index.ts';
import type { Tree } from '../../../shared/knowledge/index.ts';
import { statesAtMost } from '../../../shared/planning/ahead/exact.ts';
import { blank } from './compile/walked.ts';
import { cause, check, silentChecks, tree } from './small-tree.ts';
import { shippedTrees } from '../../shipped-trees.ts';

const { vocabulary } = await shippedTrees();

/** Three causes, the rarest dearest to correct; no two looks overlap, nothing has to be opened. */
const CAUSES = [
  cause('hose', 50),
  cause('valve', 30),
  cause('pump', 20, {
    correction: { does: 'Renew it', parts: [], hours: [3, 3], alsoWhileOpen: [], rebuildOrReplace: '' },
  }),
];
const row = (hit: number): number[] => [hit, 1 - hit];
const LOOKS = [
  check('listen', ['hiss', 'still'], [row(0.8), row(0.4), row(0.1)], { minutes: 5 }),
  check('soap', ['froth', 'none'], [row(0.7), row(0.6), row(0.1)], { minutes: 9 }),
  check('gauge', ['falls', 'holds'], [row(0.3), row(0.8), row(0.6)], { minutes: 15 }),
  check('feel', ['warm', 'cold'], [row(0.2), row(0.3), row(0.9)], { minutes: 12 }),
];
const small = tree(CAUSES, LOOKS, { unlistedShare: 0.05 });
const situation = (of: Tree, findings: readonly Finding[] = []): Situation =>
  blank(of, vocabulary!, 'mechanic', { findings });

const found = (id: string, result: string): Finding => ({ id, check: id, value: { kind: 'result', result } });

/**
 * Least expected cost by writing out every order, with nothing of the planner: belief from the formula of Bayes alone, an hour or
 * three and 10 minutes of proof for a correction, 240 for a wrong part, handing over as the costs say.
 */
function byHand(findings: readonly Finding[], failed: readonly string[]): number {
  const model = beliefModel(small, {});
  const belief = posterior(model, findings, new Set(failed)).probability;
  const { handOver, wrongPart } = situation(small).costs;
  const minutes = [60, 60, 180];
  const mean = (0.95 * (50 * 60 + 30 * 60 + 20 * 180)) / 100;
  let least = handOver + belief.reduce((sum, p, c) => sum + p * (minutes[c] ?? mean), 0);
  CAUSES.forEach(({ id }, c) => {
    if (failed.includes(id)) return;
    const left = 1 - belief[c]!;
    const then = left > 1e-12 ? left * (wrongPart + byHand(findings, [...failed, id])) : 0;
    least = Math.min(least, minutes[c]! + 10 + then);
  });
  for (const look of LOOKS) {
    if (findings.some((each) => each.check === look.id)) continue;
    const { likelihood } = model.tables.get(look.id)!;
    let cost = look.minutes;
    look.results.forEach(({ id }, r) => {
      const share = belief.reduce((sum, p, c) => sum + p * likelihood[r]![c]!, 0);
      cost += share * byHand([...findings, found(look.id, id)], failed);
    });
    least = Math.min(least, cost);
  }
  return least;
}

describe('[PLA-45] a complaint that is small enough is worked out to the end', () => {
  it('costs what writing out every order gives, at the start and after a finding', () => {
    for (const findings of [[], [found('listen', 'hiss')]] as Finding[][]) {
      const ranking = rankChecks(situation(small, findings), null);
      expect(ranking.exact).toBe(true);
      const [best] = ranking.options;
      const ours = Math.min(ranking.actNow.cost, ranking.actNow.cost - best!.saves);
      expect(ours).toBeCloseTo(byHand(findings, []), 6);
    }
  });

  it('after a correction in vain as well', () => {
    const vain: Situation = {
      ...situation(small),
      corrections: [{ cause: 'hose', partSeen: 'good', proof: 'still-there', findingsBefore: [] }],
    };
    const ranking = rankChecks(vain, null);
    const ours = Math.min(ranking.actNow.cost, ranking.actNow.cost - ranking.options[0]!.saves);
    expect(ours).toBeCloseTo(byHand([], ['hose']), 6);
  });

  it('a result that is not clear counts by what it leaves open, and does not stand for a state that another walk was in', () => {
    const sure = rankChecks(situation(small, [found('listen', 'hiss')]), null);
    const unsure = rankChecks(situation(small, [{ id: 'listen', check: 'listen', value: { kind: 'not-sure' } }]), null);
    const again = rankChecks(situation(small, [found('listen', 'hiss')]), null);
    expect(unsure.actNow.cost).not.toBeCloseTo(sure.actNow.cost, 3);
    expect(again.actNow).toEqual(sure.actNow);
    expect(again.options).toEqual(sure.options);
  });

  it('looking ahead says the same, and that none costs less', () => {
    const ranking = rankChecks(situation(small), null);
    const ahead = lookAhead(situation(small), null)!;
    expect(ahead.exact).toBe(true);
    expect(Math.min(ahead.act, ...ahead.checks.map(({ cost }) => cost))).toBeCloseTo(byHand([], []), 6);
    expect(ahead.checks[ahead.best]!.check).toBe(ranking.stop.kind === 'check' ? ranking.stop.option.check : null);
    expect(ahead.bound).toBeLessThan(byHand([], []));
  });

  it('a larger one is not, nor one whose owner corrects nothing', () => {
    expect(statesAtMost([2, 2, 2, 2], 3)).toBe(3 ** 4 * 2 ** 3);
    const large = tree(CAUSES, [...LOOKS, ...silentChecks(CAUSES.length)], { unlistedShare: 0.05 });
    expect(rankChecks(situation(large), null).exact).toBe(false);
    expect(rankChecks(blank(small, vocabulary!, 'owner-basic-tools'), null).exact).toBe(false);
  });
});
