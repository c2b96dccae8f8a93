import {
  holdTimeMin,
  judgeLeakDown,
  straightLine,
  type BrakeState,
  type LeakRate,
  type PressureMark,
} from '../../../shared/measuring/index.ts';
import { formatNumber, convert } from '../../../shared/units/index.ts';
import { digits, minutesAndSeconds, shown } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type Shown } from './form.ts';
import { place, ticks, type PlotAxes } from './plot-axes.ts';
import { differenceInUnits, heldView, inUnits, type HeldView } from './held.ts';
import { madeChoice, type AskedChoice } from './sheet.ts';

/** How the brakes stood while the marks were made: each has its own limit. */
export const BRAKE = {
  ask: 'choice',
  name: 'leak.brake',
  label: 'Service brake',
  options: [
    ['released', 'Released: pedal free, parking brake off'],
    ['held', 'Held: pedal down all the time'],
  ],
  otherwise: 'released',
  where: 'Pedal free, or pressed down all the time: each has its own limit.',
} as const satisfies AskedChoice;

/** What is towed with air brakes of its own decides the limit. */
export const COMBINATIONS: readonly (readonly [string, string])[] = [
  ['0', 'The coach alone, or a car without air brakes behind it'],
  ['1', 'One air-braked unit behind it'],
  ['2', 'Two air-braked units behind it'],
];

/** One standard uncertainty of a look at each gauge: a half-width read as a rectangular distribution, a/√3 (judgement). */
export const GAUGES: readonly (readonly [string, string, number])[] = [
  ['dash', 'Dash gauge, read to a pound', 1 / Math.sqrt(3)],
  ['coarse', 'Small dash gauge, read to two pounds', 2 / Math.sqrt(3)],
  ['test', 'Test gauge, read to a quarter pound', 0.25 / Math.sqrt(3)],
];

export const LEAK_CAUTIONS: readonly string[] = [
  'Chock wheels at the front and at the back, on level ground, before the parking brake is released.',
  'Nobody under the coach while it is done: with the brakes released it can roll, and pushrods move.',
  'Engine off. Do not run it indoors to build pressure without the exhaust led outside.',
];

export const LEAK_STEPS: readonly string[] = [
  'Build to governor cut-out, chock, stop the engine, key on so that the gauge works.',
  'Release the parking brake; for the held test press the pedal and keep it down.',
  'Wait until the needle has stopped moving. Only then start.',
  'Touch the pressure each time the needle reaches it. Two minutes or more tell more than one.',
];

export interface LeakView {
  readonly held: HeldView;
  readonly rate: LeakRate;
  /** In place of the rate where the drop is lost in the reading. */
  readonly below: string | null;
}

export function brakeOf(form: BenchForm): BrakeState {
  return madeChoice(form, BRAKE) === 'held' ? 'held' : 'released';
}

function gaugeOf(form: BenchForm): number {
  return (GAUGES.find(([id]) => id === form.choice('leak.gauge')) ?? GAUGES[0]!)[2];
}

/** The verdict on the marks so far. */
export function leakView(form: BenchForm, marks: readonly PressureMark[]): Shown<LeakView> {
  if (marks.length === 0) return { kind: 'waiting', words: 'Type the pressure and start.' };
  if (marks.length === 1) return { kind: 'waiting', words: 'One mark so far. The second gives the first rate.' };
  const reading = gaugeOf(form);
  const found = judgeLeakDown({
    marks,
    brake: brakeOf(form),
    airBrakedTowedUnits: Number(form.choice('leak.towed') || '0'),
    readingUncertaintyPsi: reading,
  });
  if (!found.ok) return refused(found);
  const { rate, judgement } = found;
  const hold =
    judgement.decision === 'too-close'
      ? holdTimeMin(Math.max(0, rate.ratePsiPerMin), judgement.limit.value, reading)
      : null;
  const held = heldView(rate.ratePsiPerMin, rate.uncertaintyPsiPerMin, judgement, form.system);
  return {
    kind: 'shown',
    // How long to hold so that this gauge can tell belongs to the verdict that it cannot.
    held: hold === null ? held : { ...held, notes: [...held.notes, holdWords(hold, rate.durationS)] },
    rate,
    below: rate.told
      ? null
      : `The drop is lost in the reading: the rate is below ${inUnits(rate.belowPsiPerMin, 'psi/min', form.system)}, nineteen times in twenty.`,
  };
}

function holdWords(hold: ReturnType<typeof holdTimeMin>, heldS: number): string {
  if (!hold.ok) return hold.message;
  const due = Math.max(hold.holdMin * 60, heldS * 1.5);
  return due > 3600
    ? 'At this rate no hold of a reasonable length tells it from the limit. Use a finer gauge.'
    : `Hold for ${minutesAndSeconds(due)} in all and the same gauge can tell, if the rate stays as it is.`;
}

/** A mark in words, for the list. */
export function markWords(mark: PressureMark, form: BenchForm): string {
  const unit = form.system === 'us' ? 'psi' : 'kPa';
  return `${digits(convert(mark.pressurePsi, 'psi', unit), 1)} ${unit}`;
}

/** Pressures that a touch can mark next: one step down first. */
export function touchSteps(
  lastPsi: number,
  form: BenchForm,
): readonly { readonly psi: number; readonly words: string }[] {
  const steps = form.system === 'us' ? [1, 0, 2] : [10, 0, 20].map((kPa) => convert(kPa, 'kPa', 'psi'));
  return steps
    .map((step) => lastPsi - step)
    .filter((psi) => psi > 0)
    .map((psi) => ({ psi, words: shown(psi, 'pressure', form.system) }));
}

/** A mark written down by hand: minutes since the start, and the pressure. */
export function handMark(form: BenchForm): Shown<{ readonly mark: PressureMark }> {
  const read = new FormReader(form);
  const minutes = read.figure('leak.handTime', 'time since the start', 'minutes');
  const pressurePsi = read.figure('leak.handPressure', 'pressure', 'pressure');
  return read.trouble() ?? { kind: 'shown', mark: { timeS: 60 * minutes, pressurePsi } };
}

/** The pressure in the field, for a mark at this moment. */
export function pressureNow(form: BenchForm): Shown<{ readonly psi: number }> {
  const read = new FormReader(form);
  const psi = read.figure('leak.now', 'pressure on the gauge', 'pressure');
  return read.trouble() ?? { kind: 'shown', psi };
}

/** Marks in the order of time; one at the same time takes the place of the older. */
export function withMark(marks: readonly PressureMark[], mark: PressureMark): readonly PressureMark[] {
  return [...marks.filter(({ timeS }) => Math.abs(timeS - mark.timeS) > 1e-6), mark].sort((a, b) => a.timeS - b.timeS);
}

/** The plot of the marks: 328 by 250 units, lettering at its own size. */
export interface PressurePlotView {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly { readonly x: number; readonly y: number; readonly top: number; readonly bottom: number }[];
  /** The least-squares line; null below two marks. */
  readonly fit: string | null;
  /** The line that would just keep the limit, from the fitted start. */
  readonly limit: string | null;
  readonly axes: PlotAxes;
  readonly spoken: string;
}

const PLOT = { width: 328, height: 250, left: 46, right: 314, top: 26, bottom: 216 } as const;

export function pressurePlot(
  form: BenchForm,
  marks: readonly PressureMark[],
  limitPsiPerMin: number | null,
): PressurePlotView | null {
  const first = marks[0];
  const last = marks.at(-1);
  if (!first || !last || marks.length < 2) return null;
  const reading = gaugeOf(form);
  const endS = Math.max(60, last.timeS * 1.1);
  const highest = Math.max(...marks.map((mark) => mark.pressurePsi)) + 2 * reading;
  const limitEnd = limitPsiPerMin === null ? last.pressurePsi : first.pressurePsi - (limitPsiPerMin * endS) / 60;
  const lowest = Math.min(...marks.map((mark) => mark.pressurePsi), limitEnd) - 2 * reading;
  const unit = form.system === 'us' ? 'psi' : 'kPa';
  const yTicks = ticks(convert(lowest, 'psi', unit), convert(highest, 'psi', unit), 5);
  const from = convert(yTicks[0]!, unit, 'psi');
  const to = convert(yTicks.at(-1)!, unit, 'psi');
  const x = (timeS: number): number => place(PLOT.left + ((PLOT.right - PLOT.left) * timeS) / endS);
  const y = (psi: number): number => place(PLOT.bottom - ((PLOT.bottom - PLOT.top) * (psi - from)) / (to - from));
  const line = straightLine(
    marks.map(({ timeS }) => timeS),
    marks.map(({ pressurePsi }) => pressurePsi),
  );
  const start = line.ok ? line.intercept : first.pressurePsi;
  return {
    width: PLOT.width,
    height: PLOT.height,
    marks: marks.map(({ timeS, pressurePsi }) => ({
      x: x(timeS),
      y: y(pressurePsi),
      top: y(pressurePsi + 2 * reading),
      bottom: y(pressurePsi - 2 * reading),
    })),
    fit: line.ok
      ? `M${x(first.timeS)} ${y(start + line.slope * first.timeS)}L${x(last.timeS)} ${y(start + line.slope * last.timeS)}`
      : null,
    limit:
      limitPsiPerMin === null ? null : `M${x(0)} ${y(start)}L${x(endS)} ${y(start - (limitPsiPerMin * endS) / 60)}`,
    axes: {
      left: PLOT.left,
      right: PLOT.right,
      top: PLOT.top,
      bottom: PLOT.bottom,
      xTicks: ticks(0, endS / 60, 6)
        .filter((minutes) => minutes * 60 <= endS + 1e-9)
        .map((minutes) => ({ at: x(minutes * 60), words: formatNumber(minutes, 'min') })),
      yTicks: yTicks.map((value) => ({ at: y(convert(value, unit, 'psi')), words: formatNumber(value, unit) })),
      xUnit: 'minutes',
      yUnit: unit,
    },
    spoken: `Pressure over time: ${marks.length} marks, from ${shown(first.pressurePsi, 'pressure', form.system)} to ${shown(last.pressurePsi, 'pressure', form.system)} in ${minutesAndSeconds(last.timeS - first.timeS)}, each give or take ${differenceInUnits(2 * reading, 'psi', form.system)}, with the fitted line${limitPsiPerMin === null ? '' : ` and the line of the limit, ${inUnits(limitPsiPerMin, 'psi/min', form.system)}`}.`,
  };
}
