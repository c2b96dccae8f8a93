import { beforeAll, describe, expect, it } from 'vitest';
import type { PinnedTree } from '../../../shared/visit/index.ts';
import { renewProposal } from '../../../shared/visit/plan/renew-while-open.ts';
import { rebuildChoice } from '../../../shared/visit/plan/rebuild.ts';
import { AIR, GROWL, growlConcluded, item, planned, planTrees } from '../../unit/visit/plan/visit.ts';

/**
 * Hours worked out by hand from the minutes that the vocabulary declares (open + close, judgement):
 *
 *   chocked 3 + 2 = 5 · chocked and raised 25 + 15 = 40 · wheel off 20 + 25 = 45 · hub open 25 + 35 = 60
 *   under the coach 15 + 10 = 25
 *
 * to the hub 5 + 40 + 45 + 60 = 150, to the brake 5 + 40 + 45 = 90, under the coach 5 + 25 = 30.
 */
let trees: ReadonlyMap<string, PinnedTree>;
beforeAll(async () => {
  trees = await planTrees();
});

it('the figures this file reckons with are those of the vocabulary and of the tree', () => {
  const { tree, vocabulary } = trees.get(GROWL)!;
  const minutes = (id: string): number => {
    const state = vocabulary.access.find((each) => each.id === id)!;
    return state.openMinutes + state.closeMinutes;
  };
  expect(['chocked', 'chocked-raised', 'wheel-off', 'hub-open', 'under-coach'].map(minutes)).toEqual([
    5, 40, 45, 60, 25,
  ]);
  expect(tree.causes.find(({ id }) => id === 'front-bearing')?.correction.hours).toEqual([3, 6]);
  expect(trees.get(AIR)!.tree.causes.find(({ id }) => id === 'relay-valve')?.correction.hours).toEqual([0.7, 1.8]);
});

describe('[PLN-3] plan hours, by hand', () => {
  it('bearing, seal, drum and lining of one wheel: the hub is opened once', () => {
    const { plan } = planned(trees, growlConcluded(), [
      item('seal', 'left front'),
      item('drum', 'left front'),
      item('lining', 'left front'),
    ]);
    // Bearing: 3 to 6 h with access = 180 to 360 min; less 150 = 30 to 210. The seal comes with it.
    // Drum 30 to 75, lining 60 to 150, both without access.
    expect(plan.lines.map(({ id, minutes, accessMinutes }) => [id, minutes, accessMinutes])).toEqual([
      ['item:drum-left-front', [30, 75], 90],
      ['item:lining-left-front', [60, 150], 90],
      ['complaint:g:front-bearing', [30, 210], 150],
    ]);
    // Own 30 + 60 + 30 = 120 to 75 + 150 + 210 = 435. Access once: 150. Apart: 150 + 90 + 90 = 330, so 180 are saved.
    expect(plan.hours).toMatchObject({
      own: [120, 435],
      access: 150,
      total: [270, 585],
      apart: [450, 765],
      saved: 180,
    });
    expect(plan.hours.shared.map(({ step, lines }) => [step.state, step.place, lines])).toEqual([
      ['chocked', '', 3],
      ['chocked-raised', 'front axle', 3],
      ['wheel-off', 'left front', 3],
    ]);
  });

  it('both ends of an axle share the lift alone; another axle shares the chocks alone', () => {
    const { plan } = planned(
      trees,
      [],
      [item('drum', 'left front'), item('drum', 'right front'), item('drum', 'left drive')],
    );
    // Chocks 5, front lift 40, drive lift 40, three wheels 3 × 45 = 135: 220. Apart 3 × 90 = 270.
    expect(plan.hours).toMatchObject({ own: [90, 225], access: 220, total: [310, 445], saved: 50 });
  });

  it('a job of an axle has both wheels off', () => {
    const { plan } = planned(trees, [], [item('lining', 'drive axle')]);
    // Chocks 5, lift 40, two wheels 90 = 135.
    expect(plan.hours).toMatchObject({ own: [60, 150], access: 135, total: [195, 285], saved: 0 });
  });

  it('under the coach and at the wheel share the chocks', () => {
    const { plan } = planned(
      trees,
      [{ kind: 'conclusion.accepted', complaint: 'a', cause: 'relay-valve' }],
      [item('drum', 'left front')],
    );
    // Relay valve 42 to 108 min with access; less 30 leaves 12 to 78, and 12 is under the least of 15.
    expect(plan.lines.find(({ id }) => id === 'complaint:a:relay-valve')?.minutes).toEqual([15, 78]);
    // Own 15 + 30 = 45 to 78 + 75 = 153; access 90 + 25 = 115; apart 90 + 30 = 120.
    expect(plan.hours).toMatchObject({ own: [45, 153], access: 115, total: [160, 268], saved: 5 });
  });

  it('hours of a tree that does not say what is opened are counted whole, and share nothing', () => {
    const { plan, line } = planned(trees, [
      { kind: 'conclusion.accepted', complaint: 'a', cause: 'service-diaphragm' },
    ]);
    // 0.8 to 2.5 h = 48 to 150 min.
    expect(line('service-diaphragm')).toMatchObject({ minutes: [48, 150], accessKnown: false, accessMinutes: 0 });
    expect(plan.hours).toMatchObject({ total: [48, 150], access: 0 });
  });
});

/**
 * Renew now or wait, by hand over the formulas
 *   P = 1 − exp[(t/η)^β − ((t + H)/η)^β], F(H) = 1 − exp[−(H/η)^β],
 *   K = part + (open + access)·rate + roadside, now = part + open·rate + F(H)·K, wait = P·K, break-even = now/K.
 * The probabilities were computed with SciPy and R; the costs follow by hand.
 */
describe('[PLN-7] renew while open, by hand', () => {
  const setting = {
    accessMinutes: 720,
    bases: new Map([
      ['labour-rate', 110],
      ['roadside', 1500],
      ['horizon-miles', 50],
    ]),
    items: [],
    place: 'left drive',
  };
  const figures = { 'part-cost': 120, 'open-hours': 0.5, life: 300 } as const;

  it('at 250 thousand miles of 300: 188.83 now against 1029.69 later', () => {
    const { weighed, advice, inputs } = renewProposal('pinion seal', { ...figures, age: 250 }, setting);
    // K = 120 + 0.5·110 + 12·110 + 1500 = 2995; F(50) = 1 − exp(−(1/6)³) = 0.004619; now = 175 + 0.004619·2995 = 188.83.
    // P = 1 − exp((5/6)³ − 1) = 0.343804; wait = 0.343804·2995 = 1029.69; break-even 188.83/2995 = 0.06305.
    const once = weighed[1]!;
    expect(once.life).toEqual({ shape: 3, scale: 300 });
    expect(once.result.costNow).toBeCloseTo(188.83, 2);
    expect(once.result.costWait).toBeCloseTo(1029.69, 2);
    expect(once.result.breakEven).toBeCloseTo(188.83 / 2995, 5);
    // Over half and twice the life as well: K·(1 − exp((250/150)³ − 2³)) and K·(1 − exp((250/600)³ − (1/2)³)).
    expect(weighed[0]!.result.costWait).toBeCloseTo(2995 * (1 - Math.exp((5 / 3) ** 3 - 8)), 2);
    expect(weighed[2]!.result.costWait).toBeCloseTo(2995 * (1 - Math.exp((5 / 12) ** 3 - 1 / 8)), 2);
    // Twice the life: 2995·0.0513 = 153.55 against 175 + 2995·0.000579 = 176.73, within 20 in 100, so no clear winner there.
    expect(weighed.map(({ result }) => result.cheaper)).toEqual(['now', 'now', 'no-clear-winner']);
    expect(advice).toBe('depends');
    expect(inputs.find(({ id }) => id === 'shape')).toMatchObject({ value: 3, from: 'judged' });
    expect(inputs.find(({ id }) => id === 'access-hours')).toMatchObject({ value: 12, from: 'access-tree' });
  });

  it('at 60 thousand miles: 188.83 now against 121.16 later, so wait', () => {
    const { weighed } = renewProposal('pinion seal', { ...figures, age: 60 }, setting);
    expect(weighed[1]!.result.costNow).toBeCloseTo(188.83, 2);
    expect(weighed[1]!.result.costWait).toBeCloseTo(121.16, 2);
    expect(weighed[1]!.result.cheaper).toBe('wait');
  });

  it('rebuild or replace: 1164 against 1666, break-even at a comeback of 34.8 in 100', () => {
    const given = {
      'rebuild-cost': 900,
      'rebuild-comeback': 12,
      'replace-cost': 1600,
      'replace-comeback': 3,
      'again-cost': 1400,
    } as const;
    // A comeback costs 1400 + 800 = 2200: 900 + 0.12·2200 = 1164; 1600 + 0.03·2200 = 1666; 0.03 + 700/2200 = 0.34818.
    const { result } = rebuildChoice('Exchange it', false, given, 800);
    expect(result?.rebuildCost).toBeCloseTo(1164, 6);
    expect(result?.replaceCost).toBeCloseTo(1666, 6);
    expect(result?.breakEvenComeback).toBeCloseTo(0.34818, 5);
    expect(result?.cheaper).toBe('rebuild');
    // With a replacement at 1300: 1366 against 1164, 14.8 in 100 apart: no clear winner.
    expect(rebuildChoice('Exchange it', false, { ...given, 'replace-cost': 1300 }, 800).result?.cheaper).toBe(
      'no-clear-winner',
    );
  });
});
