/**
 * Expected values: one-way sensitivity worked out by full enumeration with another program from the same invented tables
 * (posterior vectors and theory page, sections 4.1 and 4.2). The Asia network is Lauritzen & Spiegelhalter, JRSS B 50, 1988.
 */
import { describe, expect, it } from 'vitest';
import {
  combined,
  crossingOf,
  firmnessOf,
  linesThrough,
  posterior,
  shareAt,
  type Deviation,
} from '../../../shared/inference/index.ts';
import { found, referenceTree } from './slow-air.ts';

const { tree, model } = referenceTree('m5-slow-air-imperfect.json');
const HISS = [found('listen_purge', 'hiss')];
const LIKE = model.tables.get('listen_purge')!.likelihood[0]!;
const weights = model.prior.map((p, c) => p * LIKE[c]!);
const column = (id: string): number => model.causeIds.indexOf(id);
const purge = column('purge_valve');

/** Weights when P(hiss | cause) is x. */
const whenLikelihood = (id: string) => (x: number) =>
  weights.map((each, c) => (c === column(id) ? model.prior[c]! * x : each));

describe('[INF-12] one number changed: a quotient of two lines', () => {
  it('P(purge | hiss) as a function of P(hiss | purge)', () => {
    const lines = linesThrough(whenLikelihood('purge_valve'));
    expect(lines[purge]!.slope).toBeCloseTo(0.28, 9);
    expect(lines[purge]!.intercept).toBeCloseTo(0, 9);
    const all = combined(lines, () => 1);
    expect(all.slope).toBeCloseTo(0.28, 9);
    expect(all.intercept).toBeCloseTo(0.0677, 9);
    const { value, derivative } = shareAt(lines, purge, 0.85);
    expect(value).toBeCloseTo(0.77854105332, 9);
    expect(derivative).toBeCloseTo(0.202841037194, 9);
  });
  it('P(purge | hiss) as a function of P(hiss | chamber leak)', () => {
    const lines = linesThrough(whenLikelihood('chamber_leak'));
    const all = combined(lines, () => 1);
    expect(all.slope).toBeCloseTo(0.27, 9);
    expect(all.intercept).toBeCloseTo(0.2787, 9);
    expect(shareAt(lines, purge, 0.1).derivative).toBeCloseTo(-0.687622127564, 9);
    expect(crossingOf(lines[purge]!, lines[column('chamber_leak')]!)).toBeCloseTo(0.881481481481, 9);
  });
  it('P(purge | hiss) as a function of its prior, the others in proportion', () => {
    const prior = model.prior[purge]!;
    const lines = linesThrough((x) =>
      weights.map((each, c) => (c === purge ? x * LIKE[c]! : (each * (1 - x)) / (1 - prior))),
    );
    const all = combined(lines, () => 1);
    expect(all.slope).toBeCloseTo(0.7559722222222222, 9);
    expect(all.intercept).toBeCloseTo(0.0940277777777778, 9);
    expect(shareAt(lines, purge, 0.28).derivative).toBeCloseTo(0.855232547695, 9);
    expect(shareAt(lines, purge, 0.099602765926).value).toBeCloseTo(0.5, 9);
    expect(shareAt(lines, purge, 0.498894620486).value).toBeCloseTo(0.9, 9);
  });
  it('Asia network: P(lung | asia, dysp) as a function of P(bronc | smoke)', () => {
    // Unnormalised weights of lung = yes and no by enumeration of the published tables, given asia = yes and dysp = yes.
    const both = (x: number): number[] => {
      const sum = [0, 0];
      for (const smoke of [true, false])
        for (const tub of [true, false])
          for (const lung of [true, false])
            for (const bronc of [true, false]) {
              const pBronc = smoke ? x : 0.3;
              const pLung = smoke ? 0.1 : 0.01;
              const dysp = tub || lung ? (bronc ? 0.9 : 0.7) : bronc ? 0.8 : 0.1;
              const p =
                0.01 * 0.5 * (tub ? 0.05 : 0.95) * (lung ? pLung : 1 - pLung) * (bronc ? pBronc : 1 - pBronc) * dysp;
              sum[lung ? 0 : 1]! += p;
            }
      return sum;
    };
    const lines = linesThrough(both);
    expect(lines[0]!.slope).toBeCloseTo(0.0001, 12);
    expect(lines[0]!.intercept).toBeCloseTo(0.000388, 12);
    expect(combined(lines, () => 1).slope).toBeCloseTo(0.0031375, 12);
    expect(combined(lines, () => 1).intercept).toBeCloseTo(0.002618875, 12);
    for (const [x, value] of [
      [0.6, 0.099525145095],
      [0.3, 0.117411607738],
      [0.9, 0.087825268138],
    ] as const)
      expect(shareAt(lines, 0, x).value).toBeCloseTo(value, 9);
  });
  it('lines side by side never cross', () => {
    expect(crossingOf({ slope: 2, intercept: 1 }, { slope: 2, intercept: 3 })).toBeNull();
  });
});

describe('[INF-12] expected losses are lines too', () => {
  it('roadside triage: tow against retighten does not depend on P(hot | bearing) at all', () => {
    const road = referenceTree('m6-roadside-triage.json');
    const findings = [found('walk_round', 'nothing'), found('nut_check', 'tight')];
    const before = posterior(road.model, findings);
    const hot = road.model.tables.get('hub_temp')!.likelihood[0]!;
    const bearing = road.model.causeIds.indexOf('bearing');
    const lines = linesThrough((x) => before.logWeight.map((log, c) => Math.exp(log) * (c === bearing ? x : hot[c]!)));
    const loss = (id: string) =>
      combined(lines, (c) => road.table.decisions.find((each) => each.id === id)!.loss[road.model.causeIds[c]!] ?? 0);
    for (const [id, slope, intercept] of [
      ['drive_on', 405.72, 218.1954],
      ['limp_to_workshop', 202.86, 96.72114],
      ['retighten_and_limp', 205.5648, 94.837968],
    ] as const) {
      expect(loss(id).slope).toBeCloseTo(slope, 6);
      expect(loss(id).intercept).toBeCloseTo(intercept, 6);
    }
    const tow = combined(lines, () => 600);
    expect(tow.slope).toBeCloseTo(81.144, 6);
    expect(tow.intercept).toBeCloseTo(85.16484, 6);
    expect(crossingOf(tow, loss('retighten_and_limp'))).toBeCloseTo(-0.0777, 4);
  });
});

describe('[INF-13] how firm a conclusion is', () => {
  const firmness = firmnessOf(tree, model, HISS, undefined, { floor: 0 });
  const of = (list: readonly Deviation[], cause: string) =>
    list.find(({ number }) => number.kind === 'likelihood' && number.cause === cause);

  it('names the leading cause, three numbers, nearest first, and the finding it hangs on', () => {
    expect(firmness.cause).toBe('purge_valve');
    expect(firmness.nearest).toHaveLength(3);
    const distances = firmness.nearest.map(({ factor }) => Math.abs(Math.log(factor)));
    distances.slice(1).forEach((each, i) => expect(each).toBeGreaterThanOrEqual(distances[i]! - 1e-9));
    expect(firmness.hangsOn).toMatchObject({ finding: 'listen_purge', leaderWithout: 'purge_valve' });
    expect(firmness.hangsOn!.without).toBeCloseTo(0.28, 9);
  });
  it('the purge valve leads down to P(hiss | purge) = .0964 and up to P(hiss | chamber leak) = .88148148', () => {
    const all = firmnessOf(tree, model, HISS, undefined, { floor: 0, most: 100 });
    expect(of(all.nearest, 'purge_valve')!.needed).toBeCloseTo(0.0964, 4);
    expect(of(all.nearest, 'chamber_leak')).toMatchObject({ value: 0.1, leader: 'chamber_leak' });
    expect(of(all.nearest, 'chamber_leak')!.needed).toBeCloseTo(0.88148148, 8);
    expect(of(all.nearest, 'chamber_leak')!.factor).toBeCloseTo(8.8148148, 7);
  });
});
