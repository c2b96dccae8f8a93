import { describe, expect, it } from 'vitest';
import {
  convert,
  convertDifference,
  formatQuantity,
  parseNumber,
  unitOf,
  UnitError,
} from '../../../shared/units/index.ts';

describe('[UNI-1] conversions by NIST SP 811, appendix B', () => {
  it.each([
    [100, 'psi', 'kPa', 689.4757293168],
    [120, 'psi', 'kPa', 827.3708751802],
    [1, 'bar', 'psi', 14.503773773],
    [500, 'lb-ft', 'N·m', 677.9089741655],
    [212, 'degF', 'degC', 100],
    [-40, 'degC', 'degF', -40],
    [82, 'degC', 'degF', 179.6],
    [60, 'mph', 'km/h', 96.56064],
    [28, 'qt', 'L', 26.497882488],
    [0.3125, 'in', 'mm', 7.9375],
    [1, 'inHg', 'kPa', 3.38638864],
    [1, 'inH2O', 'kPa', 0.24908891],
    [1, 'lbf', 'N', 4.4482216152605],
    [1, 'gal/min', 'L/min', 3.785411784],
  ])('%s %s is %s %s', (value, from, to, expected) => {
    expect(convert(value, from, to)).toBeCloseTo(expected, 8);
  });
  // 49 CFR 393.47 (e) prints stroke limits in both units.
  it.each([
    [1.25, '31.8 mm'],
    [1.375, '34.9 mm'],
    [1.75, '44.5 mm'],
    [2, '50.8 mm'],
    [2.25, '57.2 mm'],
    [2.5, '63.5 mm'],
    [-1.75, '−44.5 mm'],
  ])('%d in is printed as %s', (inches, text) => {
    expect(formatQuantity(inches, 'in', 'metric')).toBe(text);
  });
  it('a difference of temperatures has no offset', () => {
    expect(convert(30, 'degF-diff', 'K')).toBeCloseTo(16.6666667, 6);
    expect(convertDifference(9, 'degF', 'degC')).toBeCloseTo(5, 9);
  });
});

describe('[UNI-2] what people type', () => {
  it.each([
    ['2 1/4', 2.25],
    ['2-1/4', 2.25],
    ['2¼', 2.25],
    ['9/16', 0.5625],
    ['2,25', 2.25],
    ['1,120', 1120],
    ['−3', -3],
    ['.5', 0.5],
  ])('%s', (text, value) => {
    expect(parseNumber(text)).toBeCloseTo(value, 12);
  });
  it.each(['', 'abc', '1/0', '1.2.3', '--2'])('"%s" is no number', (text) => {
    expect(parseNumber(text)).toBeNull();
  });
  it('units under many names; unknown ones name the nearest; different quantities are refused', () => {
    expect(['ft-lb', 'PSI', '°F', 'kpa/min', 'inches', 'Nm'].map((name) => unitOf(name).id)).toEqual([
      'lb-ft',
      'psi',
      'degF',
      'kPa/min',
      'in',
      'N·m',
    ]);
    expect(() => unitOf('psii')).toThrow(/Nearest: "psi"/);
    expect(() => convert(1, 'psi', 'mm')).toThrow(UnitError);
    expect(formatQuantity(100, 'psi', 'metric')).toBe('689 kPa');
  });
});
