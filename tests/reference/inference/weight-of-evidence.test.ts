/**
 * Expected values: the decibans of the governor's ledger and of a hiss for the purge valve by another program (theory page,
 * section 3.3); between two named causes the weight is the ratio of the tables' own likelihoods (Good 1950, from memory).
 */
import { describe, expect, it } from 'vitest';
import { sideBySide } from '../../../shared/inference/index.ts';
import { found, referenceTree } from './slow-air.ts';

const { model } = referenceTree('m5-slow-air-imperfect.json');
const FOUR = [
  found('listen_purge', 'none'),
  found('leak_down', 'none'),
  found('cut_out', 'low'),
  found('second_gauge', 'agrees'),
];

describe('[INF-14] two causes side by side', () => {
  const { lines, before, after } = sideBySide(model, FOUR, 'governor', 'gauge');
  it('each cause against all others is its ledger', () => {
    [1.026740876809157, 2.671270961146128, 2.953244798411985, 2.3107519622688075].forEach((decibans, i) =>
      expect(lines[i]!.first.decibans).toBeCloseTo(decibans, 9),
    );
    const hiss = sideBySide(model, [found('listen_purge', 'hiss')], 'purge_valve', 'governor').lines[0]!;
    expect(hiss.first.decibans).toBeCloseTo(9.5616, 4);
    expect(hiss.first.words).toBe('strongly for');
    const silence = sideBySide(model, [found('listen_purge', 'none')], 'purge_valve', 'governor').lines[0]!;
    expect(silence.first.decibans).toBeCloseTo(-7.8102, 4);
    expect(silence.first.words).toBe('strongly against');
  });
  it('between the two it is the likelihood ratio', () => {
    [
      [0.85, 0.97],
      [0.8, 0.9],
      [0.85, 0.45],
      [0.97, 0.05],
    ].forEach(([a, b], i) => expect(lines[i]!.between.decibans).toBeCloseTo(10 * Math.log10(a! / b!), 9));
    expect(lines.map(({ between }) => between.words)).toEqual([
      'hardly matters',
      'hardly matters',
      'slightly for',
      'strongly for',
    ]);
  });
  it('the weights between the two add up to their odds', () => {
    expect(before).toBeCloseTo(10 * Math.log10(0.13 / 0.12), 9);
    expect(after).toBeCloseTo(10 * Math.log10(0.5405656367490708 / 0.017481694134951316), 9);
  });
  it('does not depend on the order of the findings', () => {
    const turned = sideBySide(model, [...FOUR].reverse(), 'governor', 'gauge').lines;
    lines.forEach((line, i) => expect(turned[3 - i]!.between.decibans).toBeCloseTo(line.between.decibans, 9));
  });
  it('refuses a cause that is not there, is ruled out, or is compared with itself', () => {
    expect(() => sideBySide(model, FOUR, 'governor', 'nothing')).toThrow(/"nothing" cannot be weighed/);
    expect(() => sideBySide(model, FOUR, 'governor', 'gauge', new Set(['gauge']))).toThrow(/ruled out/);
    expect(() => sideBySide(model, FOUR, 'governor', 'governor')).toThrow(/against itself/);
  });
});
