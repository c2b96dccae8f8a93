/**
 * The in-cab air test against published numbers. Unless another source stands beside a line, the numbers are those of the
 * model commercial driver's licence manual, section 5.3, "final air brake check", as the States reprint it.
 */
import { describe, expect, it } from 'vitest';
import { airStep, judgeAirStep, type AirOutcome, type AirTestSetup } from '../../../shared/visit/index.ts';

const SETUP: AirTestSetup = { builtYear: 1988, system: 'dual', springBrakes: true, towedUnits: 0 };

function outcome(
  id: string,
  values: Readonly<Record<string, number>>,
  setup: Partial<AirTestSetup> = {},
  cutOut?: number,
): AirOutcome {
  const step = airStep(id)!;
  const readings = Object.fromEntries(
    step.figures.flatMap(({ id: figure, unit }) =>
      values[figure] === undefined ? [] : [[figure, { value: values[figure], unit }]],
    ),
  );
  return judgeAirStep(step, { readings, at: '', by: '' }, { ...SETUP, ...setup }, cutOut);
}
/** The bare comparison that the rule makes, and the figure it is made with. */
function bare(found: AirOutcome): readonly (readonly [string, number])[] {
  if (found.kind !== 'judged') throw new Error(`not judged: ${JSON.stringify(found)}`);
  return found.judged.map(({ judgement }) => [judgement.comparison, judgement.limit.value]);
}
const decision = (found: AirOutcome): string => (found.kind === 'judged' ? found.decision : found.kind);

describe('[AIR-1] the published sequence', () => {
  it.each([
    // Released, single vehicle: less than 2 psi in one minute.
    ['foot off: 120 → 119 in 60 s', 'released-leak', { start: 120, end: 119 }, 'within', 2],
    ['foot off: 100 → 98 in 60 s, where the sources differ', 'released-leak', { start: 100, end: 98 }, 'at-limit', 2],
    ['foot off: 100 → 97.5 in 60 s', 'released-leak', { start: 100, end: 97.5 }, 'beyond', 2],
    [
      'foot off: 120 → 119 in 30 s is 2 psi a minute',
      'released-leak',
      { start: 120, end: 119, watched: 30 },
      'at-limit',
      2,
    ],
    // Pedal held at 90 psi or more, single vehicle: not more than 3 psi in one minute after the first drop.
    ['held: 120 → 117 in 60 s', 'applied-leak', { start: 120, end: 117 }, 'at-limit', 3],
    ['held: 120 → 116 in 60 s', 'applied-leak', { start: 120, end: 116 }, 'beyond', 3],
    ['held: 118 → 112 in 120 s', 'applied-leak', { start: 118, end: 112, watched: 120 }, 'at-limit', 3],
    // The warning must be on before the lowest tank is under 60 psi.
    ['warning at 62 psi', 'low-air-warning', { 'came-on': 62 }, 'within', 60],
    ['warning at 58 psi', 'low-air-warning', { 'came-on': 58 }, 'beyond', 60],
    // 85 → 100 psi within 45 s at operating speed, dual system.
    ['build-up in 44 s', 'build-up-dual', { seconds: 44 }, 'within', 45],
    ['build-up in 60 s', 'build-up-dual', { seconds: 60 }, 'beyond', 45],
  ] as const)('%s', (_, step, values, comparison, limit) => {
    expect(bare(outcome(step, values))).toEqual([[comparison, limit]]);
  });

  it('single system before 1975: 50 → 90 psi within 3 min at idle', () => {
    const old = { builtYear: 1968, system: 'single' } as const;
    expect(bare(outcome('build-up-single', { seconds: 170 }, old))).toEqual([['within', 180]]);
    expect(bare(outcome('build-up-single', { seconds: 190 }, old))).toEqual([['beyond', 180]]);
  });

  it('one psi a minute more for a towed unit with air brakes; none for a car on a tow bar', () => {
    expect(bare(outcome('applied-leak', { start: 120, end: 116 }, { towedUnits: 1 }))).toEqual([['at-limit', 4]]);
    expect(bare(outcome('applied-leak', { start: 120, end: 116 }, { towedUnits: 0 }))).toEqual([['beyond', 3]]);
  });

  it('before March 1975 the warning comes at 55 psi or half of cut-out, whichever is less: 49 CFR 393.51(c)', () => {
    expect(bare(outcome('low-air-warning', { 'came-on': 54 }, { builtYear: 1968 }, 105))).toEqual([['within', 52.5]]);
    expect(bare(outcome('low-air-warning', { 'came-on': 54 }, { builtYear: 1968 }, 120))).toEqual([['beyond', 55]]);
    // Nobody read cut-out: the stricter of the two figures holds.
    expect(bare(outcome('low-air-warning', { 'came-on': 54 }, { builtYear: 1968 }))).toEqual([['beyond', 55]]);
  });

  it.each([
    [30, ['within', 'within']],
    [15, ['beyond', 'within']],
    [55, ['within', 'beyond']],
  ])('the parking knob comes out at %s psi; published is 20 to 45', (popped, comparisons) => {
    expect(bare(outcome('parking-valve', { popped })).map(([comparison]) => comparison)).toEqual(comparisons);
  });
  it('above 40 psi it says that several States print 20 to 40', () => {
    expect(outcome('parking-valve', { popped: 42 })).toMatchObject({
      note: expect.stringContaining('20 to 40') as string,
    });
    expect(outcome('parking-valve', { popped: 38 })).toMatchObject({ note: '' });
  });

  it('governor: cut-in under 85 psi fails a bus (49 CFR 571.121 S5.1.1.1) and is named beside the older 80 (570.57)', () => {
    const found = outcome('governor-cut-out', { 'cut-in': 82, 'cut-out': 120 });
    expect(bare(found)[0]).toEqual(['beyond', 85]);
    expect(found).toMatchObject({ note: expect.stringContaining('80 psi') as string });
    expect(bare(outcome('governor-cut-out', { 'cut-in': 100, 'cut-out': 125 }))).toEqual([
      ['within', 85],
      ['within', 135],
    ]);
  });
});

describe('[AIR-2] what the gauge leaves open', () => {
  it('a warning 2 psi from its limit on a dash gauge is too close to call, 10 psi away it is not', () => {
    expect(decision(outcome('low-air-warning', { 'came-on': 62 }))).toBe('too-close');
    expect(decision(outcome('low-air-warning', { 'came-on': 70 }))).toBe('meets');
    expect(decision(outcome('low-air-warning', { 'came-on': 50 }))).toBe('fails');
  });
  it('the same loss of 1 psi a minute is open after one minute and told after three: √2·u/t (GUM)', () => {
    expect(decision(outcome('released-leak', { start: 120, end: 119 }))).toBe('too-close');
    expect(decision(outcome('released-leak', { start: 120, end: 117, watched: 180 }))).toBe('meets');
  });
  it('pressure that rose, a test begun below 80 psi and crossed governor figures are refused with the reason', () => {
    expect(outcome('released-leak', { start: 100, end: 110 })).toMatchObject({ kind: 'refused' });
    expect(outcome('applied-leak', { start: 70, end: 68 })).toMatchObject({
      kind: 'refused',
      message: expect.stringContaining('80 psi') as string,
    });
    expect(outcome('governor-cut-out', { 'cut-in': 120, 'cut-out': 100 })).toMatchObject({ kind: 'refused' });
  });
  it('a figure that is missing leaves the step open; metric figures are held against the same limit', () => {
    expect(decision(outcome('applied-leak', { start: 120 }))).toBe('open');
    const step = airStep('low-air-warning')!;
    const record = { readings: { 'came-on': { value: 400, unit: 'kPa' } }, at: '', by: '' };
    expect(bare(judgeAirStep(step, record, SETUP))).toEqual([['beyond', 60]]);
    const strange = { readings: { 'came-on': { value: 4, unit: 'in' } }, at: '', by: '' };
    expect(judgeAirStep(step, strange, SETUP)).toMatchObject({ kind: 'refused' });
  });
});
