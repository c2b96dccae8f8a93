import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatOnRule, fractionText, INCH_PARTS, parseNumber, UnitError } from '../../../shared/units/index.ts';
import { shippedTrees } from '../../shipped-trees.ts';

describe('[UNI-2] fractions of an inch as people type them', () => {
  it.each([
    ['1 3/8', 1.375],
    ['1-3/8', 1.375],
    ['1 - 3/8', 1.375],
    ['1⅜', 1.375],
    ['1 3⁄8', 1.375],
    ['3/8', 0.375],
    ['3 / 8', 0.375],
    ['-3/8', -0.375],
    ['−1 3/8', -1.375],
    ['– 1 3/8', -1.375],
    ['11/8', 1.375],
    ['0 15/16', 0.9375],
  ])('%s is %d', (text, value) => {
    expect(parseNumber(text)).toBe(value);
  });
  it.each(['1 3/0', '1/', '/8', '1 3', '1 3/8 1/2', '1--3/8', '1.5/8', '1 3/8 in', '3/-8'])(
    '"%s" is refused',
    (text) => {
      expect(parseNumber(text)).toBeNull();
    },
  );
});

describe('[UNI-3] the nearest mark of a rule', () => {
  it.each([
    [0, '0'],
    [1 / 16, '1/16'],
    [0.125, '1/8'],
    [0.1875, '3/16'],
    [0.25, '1/4'],
    [0.5, '1/2'],
    [0.9375, '15/16'],
    [1.375, '1 3/8'],
    [2, '2'],
    [2.0625, '2 1/16'],
    [-0.25, '−1/4'],
    [-1.375, '−1 3/8'],
    // Between two marks: the nearer one; just under an inch is the inch.
    [0.37, '3/8'],
    [0.99, '1'],
    [0.02, '0'],
    [-0.02, '0'],
    [1 / 32, '1/16'],
  ])('%d is %s in sixteenths', (value, text) => {
    expect(fractionText(value)).toBe(text);
  });
  it('finer and coarser rules', () => {
    expect(INCH_PARTS.map((parts) => fractionText(0.703125, parts))).toEqual([
      '1/2',
      '3/4',
      '3/4',
      '11/16',
      '23/32',
      '45/64',
    ]);
  });
  it('what is shown is in lowest terms, never further off than half a mark, and can be typed again', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), fc.constantFrom(...INCH_PARTS), (value, parts) => {
        const text = fractionText(value, parts);
        const typed = parseNumber(text);
        expect(Math.abs(typed! - value)).toBeLessThanOrEqual(1 / (2 * parts) + 1e-9);
        expect(fractionText(typed!, parts)).toBe(text);
        const [, top, bottom] = /(\d+)\/(\d+)$/.exec(text) ?? [];
        if (top !== undefined) {
          expect(Number(top) % 2).toBe(1);
          expect(Number(top)).toBeLessThan(Number(bottom));
          expect(Number(bottom)).toBeLessThanOrEqual(parts);
        }
      }),
      { seed: 7, numRuns: 2000 },
    );
  });
});

describe('[UNI-3] a length read from a rule', () => {
  it.each([
    [1.375, 'in', undefined, '1.375 in (1 3/8 in)'],
    [1.36, 'in', undefined, '1.36 in (about 1 3/8 in)'],
    [2, 'in', undefined, '2 in'],
    [1.99, 'in', undefined, '1.99 in (about 2 in)'],
    [-0.25, 'in', undefined, '−0.25 in (−1/4 in)'],
    [0.0625, 'in', undefined, '0.0625 in (1/16 in)'],
    [44.45, 'mm', 'us', '1.75 in (1 3/4 in)'],
    [44.5, 'mm', 'us', '1.752 in (about 1 3/4 in)'],
    [1.75, 'in', 'metric', '44.5 mm'],
    [44.5, 'mm', undefined, '44.5 mm'],
  ] as const)('%d %s, reader %s: %s', (value, unit, system, text) => {
    expect(formatOnRule(value, unit, 16, system)).toBe(text);
  });
  it('what is no length is refused', () => {
    expect(() => formatOnRule(30, 'psi', 16)).toThrow(UnitError);
  });
  it('the vocabulary knows which instruments are rules: those in inches that are no dial and no feeler', async () => {
    const { vocabulary } = await shippedTrees();
    const inches = [...vocabulary!.instruments.values()].filter(({ unit }) => unit === 'in');
    const rules = inches.filter(({ inchParts }) => inchParts !== undefined);
    expect(rules.map(({ id }) => id).sort()).toEqual([
      'chalk-and-rule',
      'steel-rule',
      'tape-measure',
      'tread-depth-gauge',
    ]);
    // A rule shows no more than it can be read to: a third of a mark and more is its uncertainty.
    for (const { uncertainty, inchParts } of rules) expect(uncertainty).toBeGreaterThan(0.35 / inchParts!);
    for (const { uncertainty, inchParts } of inches)
      if (inchParts === undefined) expect(uncertainty).toBeLessThan(0.01);
  });
});
