import { screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import { atBench, choose, prepareBench, reasons, region, textOf, type } from './bench-window.ts';

prepareBench();

describe('brakes', () => {
  test('strokes by chamber, and the share of defective brakes', async () => {
    await atBench('5', 'Pushrod stroke');
    await choose('Axles', '2');
    await type('Tank pressure, engine off', '85');
    for (const axle of ['Steer axle', 'Axle 2']) await choose(`Chamber, ${axle.toLowerCase()}`, 'clamp 30');
    // Type 30 standard, 2 in: 2 1/4 counts one, 2 1/8 a half, two good: 1.5 of 4, 37.5 %
    // (tests/reference/measuring/brakes.test.ts, 49 CFR 393.47(e) and Québec C-24.2 r.32 s.166(9)).
    await type('Steer axle, left', '1 1/2');
    await type('Steer axle, right', '1 1/2');
    await type('Axle 2, left', '2 1/4');
    expect(textOf('Share of defective brakes')).toMatch(/1 of 4 are still open/);
    await type('Axle 2, right', '2 1/8');
    expect(textOf('Share of defective brakes')).toMatch(/1\.5 of 4 brakes counted defective: 37\.5 %.*stay put/);
    expect(
      screen.getByRole('img', { name: /Axle 2 left: 2\.25 in, beyond the limit, marked.*Axle 2 right: 2\.125 in/ }),
    ).toBeTruthy();
    await type('Tank pressure, engine off', '60');
    expect(reasons()).toContain('wrong-pressure');
  });

  test('3/16 in on a steering axle: too close to the one rule, beyond the other; oil fails at any thickness', async () => {
    await atBench('6', 'Lining, drum, wear');
    await choose('How it is made', 'drum-one-strip');
    await choose('How it was read', 'out');
    await type('Thinnest place', '3/16');
    // tests/reference/measuring/brakes.test.ts: at the limit of 393.47(d)(1), beyond Appendix A.
    expect(region('Lining or pad').getByRole('heading', { name: /Operating rule: Too close/ })).toBeTruthy();
    expect(region('Lining or pad').getByRole('heading', { name: /Periodic inspection: Beyond/ })).toBeTruthy();
    await choose('Soaked in oil, grease or fluid', 'yes');
    expect(reasons()).toEqual(['oily']);
  });

  test('a drum by the figure cast on it, a crack that stops, and wear to a day', async () => {
    await atBench('6', 'Lining, drum, wear');
    await type('Nominal diameter', '16.5');
    await type('Largest of several readings', '16.61');
    await type('Maximum cast on the drum', '16.6');
    // 49 CFR 570.59(b): 16.61 against 16.6 fails (tests/reference/measuring/brakes.test.ts).
    expect(region('Drum').getByRole('heading', { name: /Beyond the limit/ })).toBeTruthy();
    await choose('Seen on the drum', 'crack-from-outside');
    expect(region('Drum').getByRole('heading', { name: 'Stay put' })).toBeTruthy();
    for (const [label, text] of [
      ['Limit', '0.25'],
      ['Give or take of a reading', '0.02'],
      ['First mileage', '100000'],
      ['First size', '0.6'],
      ['Second mileage', '130000'],
      ['Second size', '0.48'],
      ['Distance a year', '10000'],
      ['Day of the second reading', '2026-05-13'],
    ] as const)
      await type(label, text);
    // Fieller's interval: 57,500 left, 45,430 to 75,231 (tests/reference/measuring/brakes.test.ts).
    expect(textOf('Wear to a date')).toMatch(/57,500 mi.*45,430 mi to 75,231 mi/);
    expect(textOf('Wear to a date')).toMatch(/by 2028-03-0/);
    await type('Second size', '0.6');
    expect(reasons()).toEqual(['no-wear']);
  });
});

describe('wheel ends', () => {
  const ends = ['Steer axle, left', 'Steer axle, right', 'Axle 2, left', 'Axle 2, right'];

  test('one hot of eight is named and lit', async () => {
    await atBench('7', 'Wheel ends compared');
    await choose('Axles', '4');
    await type('First to last reading', '5');
    const all = [...ends, 'Axle 3, left', 'Axle 3, right', 'Axle 4, left', 'Axle 4, right'];
    // tests/reference/measuring/wheel-ends.test.ts, scores by NumPy and R.
    for (const [i, value] of [168, 172, 165, 170, 175, 171, 169, 248].entries()) await type(all[i]!, String(value));
    expect(region('Against their fellows').getByRole('heading', { name: 'Axle 4 right is hot' })).toBeTruthy();
    expect(document.querySelectorAll('.coach .lit')).toHaveLength(1);
    await choose('Surface aimed at', 'bright');
    expect(reasons()).toEqual(['not-comparable']);
  });

  test('one end alone is refused; two of an axle are compared as a pair only', async () => {
    await atBench('7', 'Wheel ends compared');
    await type('First to last reading', '2');
    await type('Steer axle, left', '150');
    expect(reasons()).toEqual(['too-few-ends']);
    await type('Steer axle, right', '190');
    expect(textOf('Against their fellows')).toMatch(/Steer axle right is hot.*No outlier test is possible/);
  });

  test('end play by dial, and the nut by steps', async () => {
    await atBench('8', 'End play and nut');
    await type('Whole movement', '0');
    // TMC RP 618: no movement is no pass (tests/reference/measuring/wheel-ends.test.ts).
    expect(textOf('End play by dial')).toMatch(/may be heavy preload/);
    await choose('Hub', 'yes');
    expect(reasons()).toContain('makers-procedure');
    await choose('Spindle', 'drive');
    expect(reasons()).toContain('washer-needed');
    await choose('Washer, drive spindle', 'dowel');
    await type('Lock torque used', '350');
    // Drive spindle, dowel washer: a quarter turn, 300 to 400 lb-ft, 0.0208 in (the same reference test).
    expect(textOf('Nut procedure')).toMatch(
      /a quarter of a turn.*300 lb-ft to 400 lb-ft.*0\.0208 in.*lies in its band/,
    );
  });
});
