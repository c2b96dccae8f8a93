import {
  afterGearChangeHz,
  BEHAVIOUR,
  cautionFor,
  matchBeat,
  rollingRadiusIn,
  rotatingLines,
  tyreRevsPerMile,
  type Behaviour,
  type BeatMatch,
  type Manoeuvre,
  type MeasuredBeat,
  type RotatingGroup,
  type RotatingLine,
} from '../../../shared/measuring/index.ts';
import { digits, grouped } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type NoFigure, type Shown } from './form.ts';

export const ORDERS_CAUTIONS: readonly string[] = [
  'One person drives and does nothing else; a second reads, taps and types.',
  'Not on a coach that is told to stay put, and not where the shake gets worse with every mile.',
];

export const SPEED_SOURCES: readonly (readonly [string, string])[] = [
  ['satellite', 'By satellite'],
  ['dash', 'By the dash speedometer'],
];

export const ENGINE_KINDS: readonly (readonly [string, string])[] = [
  ['', 'Not known'],
  ['4', 'Four-stroke'],
  ['2', 'Two-stroke'],
];

export const GROUP_WORDS: Readonly<Record<RotatingGroup, string>> = {
  'wheel-and-tyre': 'Wheel and tyre',
  'propeller-shaft': 'Propeller shaft',
  engine: 'Engine',
  accessory: 'Belt-driven part',
};

export interface OrderRow {
  readonly group: string;
  readonly name: string;
  readonly order: string;
  readonly hz: string;
  readonly give: string;
  readonly perMinute: string;
}

export interface OrdersView {
  readonly rows: readonly OrderRow[];
  readonly lines: readonly RotatingLine[];
  readonly rpm: string | null;
  readonly missing: readonly string[];
}

function tyreTurns(form: BenchForm, read: FormReader): number | NoFigure {
  const known = read.optional('orders.revs', 'turns of a tyre over a mile', 'plain');
  if (known !== null) return known;
  const free = read.optional('orders.free', 'free diameter', 'length');
  const loaded = read.optional('orders.loaded', 'static loaded radius', 'length');
  if (free === null || loaded === null)
    return {
      kind: 'waiting',
      words: 'Still needed: turns of a tyre over a mile, or its free diameter and static loaded radius.',
    };
  const radius = rollingRadiusIn(free, loaded);
  if (!radius.ok) return refused(radius);
  const turns = tyreRevsPerMile(radius.radiusIn);
  return turns.ok ? turns.revsPerMile : refused(turns);
}

/** One standard uncertainty of the road speed by where it was read: a tenth by the dash, half a mile an hour by satellite. */
export function speedUncertainty(form: BenchForm, speedMph: number): number {
  return (form.choice('orders.source') === 'dash' ? 0.1 * speedMph : 0.5) / Math.sqrt(3);
}

/** The frequencies of everything that turns, from the fields of the page. */
export function ordersView(form: BenchForm): Shown<OrdersView> {
  const read = new FormReader(form);
  const speedMph = read.figure('orders.speed', 'road speed', 'speed');
  const turns = tyreTurns(form, read);
  const axleRatio = read.optional('orders.axle', 'axle ratio', 'plain');
  const gearRatio = read.optional('orders.gear', 'gear ratio', 'plain');
  const engineRpm = read.optional('orders.rpm', 'engine speed', 'rotation');
  const cylinders = read.optional('orders.cylinders', 'number of cylinders', 'plain');
  const accessory = read.optional('orders.accessory', 'ratio of the belt-driven part', 'plain');
  const trouble = read.trouble();
  if (trouble) return trouble;
  if (typeof turns !== 'number') return turns;
  const strokes = form.choice('orders.strokes');
  const found = rotatingLines({
    speedMph,
    speedUncertaintyMph: speedUncertainty(form, speedMph),
    tyreRevsPerMile: turns,
    tyreUncertaintyRevsPerMile: (0.02 * turns) / Math.sqrt(3),
    axleRatio,
    gearRatio,
    lockedUp: form.choice('orders.locked') !== 'no',
    engineRpm,
    engineUncertaintyRpm: 25 / Math.sqrt(3),
    engine:
      cylinders !== null && (strokes === '2' || strokes === '4')
        ? { cylinders, strokes: strokes === '2' ? 2 : 4 }
        : null,
    accessories: accessory === null ? [] : [{ name: 'belt-driven part', ratio: accessory }],
  });
  if (!found.ok) return refused(found);
  return {
    kind: 'shown',
    lines: found.lines,
    rows: found.lines.map((line) => ({
      group: GROUP_WORDS[line.group],
      name: line.name,
      order: digits(line.order, 1),
      hz: digits(line.frequencyHz, 2),
      give: digits(2 * line.uncertaintyHz, 2),
      perMinute: grouped(60 * line.frequencyHz),
    })),
    rpm: found.engineRpm === null ? null : `${grouped(found.engineRpm)} rpm`,
    missing: found.missing,
  };
}

/** Span in which a beat counted by hand or typed is believed. */
const SEARCH = { lowHz: 3, highHz: 500 } as const;

export interface TapCount {
  readonly beats: number;
  readonly seconds: number;
  /** Null before the second tap. */
  readonly hz: number | null;
}

/** Taps counted: the first starts the count. */
export function tapCount(taps: readonly number[]): TapCount {
  const seconds = taps.length < 2 ? 0 : (taps.at(-1)! - taps[0]!) / 1000;
  const beats = Math.max(0, taps.length - 1);
  return { beats, seconds, hz: seconds > 0 ? beats / seconds : null };
}

/** Share by which the speed wandered: judgement of the person who drove. */
export const STEADINESS: readonly (readonly [string, string, number])[] = [
  ['1', 'Held within 1 in 100', 0.01],
  ['2', 'Held within 2 in 100', 0.02],
  ['more', 'Changed by more', 0.05],
];

export function driftOf(form: BenchForm): number {
  return (STEADINESS.find(([id]) => id === form.choice('orders.steady')) ?? STEADINESS[0]!)[2];
}

/** The beat that was tapped, or else typed. */
export function beatOf(
  form: BenchForm,
  taps: readonly number[],
): Shown<{ readonly beat: MeasuredBeat; readonly from: string }> {
  const tapped = tapCount(taps);
  if (tapped.hz !== null && tapped.beats >= 5) {
    return {
      kind: 'shown',
      beat: { frequencyHz: tapped.hz, binHz: 1 / tapped.seconds, interpolated: false, speedDrift: driftOf(form) },
      from: `${tapped.beats} beats in ${digits(tapped.seconds, 1)} s: ${digits(tapped.hz, 2)} Hz`,
    };
  }
  const read = new FormReader(form);
  const hz = read.optional('orders.beat', 'beat', 'frequency');
  const width = read.optional('orders.width', 'how closely it was read', 'frequency') ?? 1;
  const trouble = read.trouble();
  if (trouble) return trouble;
  if (hz === null)
    return {
      kind: 'waiting',
      words: tapped.beats > 0 ? `${tapped.beats} of 5 beats tapped.` : 'Tap the beat, or type it.',
    };
  return {
    kind: 'shown',
    beat: { frequencyHz: hz, binHz: width, interpolated: false, speedDrift: driftOf(form) },
    from: `${digits(hz, 2)} Hz, read to ${digits(width, 2)} Hz`,
  };
}

export interface ManoeuvreRow {
  readonly what: string;
  readonly does: readonly { readonly group: string; readonly words: string }[];
  readonly caution: string | null;
}

export interface MatchView {
  readonly heading: string;
  readonly icon: 'tick' | 'straddle' | 'cross';
  readonly words: string;
  readonly groups: readonly { readonly name: string; readonly share: number }[];
  readonly none: number;
  readonly nearest: readonly {
    readonly name: string;
    readonly hz: string;
    readonly apart: string;
    readonly fit: string;
  }[];
  readonly separate: readonly ManoeuvreRow[];
}

const FIT = { fits: 'fits', doubtful: 'doubtful', 'does-not-fit': 'does not fit' } as const;

export function matchView(beat: MeasuredBeat, lines: readonly RotatingLine[]): Shown<MatchView> {
  const found = matchBeat(beat, lines, SEARCH);
  if (!found.ok) return refused(found);
  return { kind: 'shown', ...matchWords(found, beat) };
}

function matchWords(found: BeatMatch, beat: MeasuredBeat): MatchView {
  const names = found.fitting.map((group) => GROUP_WORDS[group].toLowerCase());
  const heading = {
    'one-group': `Fits the ${names[0] ?? ''}`,
    'cannot-be-separated': 'Cannot be told apart',
    doubtful: 'Doubtful',
    'none-fits': 'Fits none of these',
  }[found.verdict];
  const words = {
    'one-group': 'It points to the group that turns at this rate, not yet to a part of it.',
    'cannot-be-separated': `At this speed and gear ${names.join(' and ')} beat alike. No cause is named; a manoeuvre below separates them.`,
    doubtful: 'The nearest line lies two to three give-or-takes away. Hold the speed and take it again.',
    'none-fits': 'Look at speed, tyre and ratios again; else something turns that is not in the table.',
  }[found.verdict];
  const asked: readonly RotatingGroup[] =
    found.fitting.length > 0 ? found.fitting : ['wheel-and-tyre', 'propeller-shaft', 'engine'];
  return {
    heading,
    icon: found.verdict === 'one-group' ? 'tick' : found.verdict === 'none-fits' ? 'cross' : 'straddle',
    words,
    groups: [...found.groups]
      .map(([group, share]) => ({ name: GROUP_WORDS[group], share: Math.round(100 * share) }))
      .filter(({ share }) => share >= 1)
      .sort((a, b) => b.share - a.share),
    none: Math.round(100 * found.none),
    nearest: [...found.lines]
      .sort((a, b) => a.z - b.z)
      .slice(0, 3)
      .map(({ line, fit }) => ({
        name: line.name,
        hz: digits(line.frequencyHz, 2),
        apart: digits(Math.abs(line.frequencyHz - beat.frequencyHz), 2),
        fit: FIT[fit],
      })),
    separate: (found.separateBy.length > 0 ? found.separateBy : TRIED).map((each) => manoeuvreRow(each, asked)),
  };
}

/** What a person asks first. */
const TRIED: readonly Manoeuvre[] = ['next-gear-same-speed', 'lean-left-then-right', 'coast-in-neutral'];

const MANOEUVRE_WORDS: Readonly<Record<Manoeuvre, string>> = {
  'standing-same-engine-speed': 'Standing, the same engine speed',
  'next-gear-same-speed': 'The next gear at the same road speed',
  'other-gear-same-engine-speed': 'Another gear at the same engine speed',
  'overrun-in-gear': 'Overrun in gear, foot off',
  'lean-left-then-right': 'Lean left, then right',
  'light-braking': 'Light braking',
  'coast-in-neutral': 'Coast in neutral',
};

function behaviourWords({ frequency, loudness }: Behaviour): string {
  const rate = {
    same: 'keeps its rate',
    changes: 'changes its rate',
    'falls-to-idle': 'falls to the rate of idle',
    gone: 'is gone',
  }[frequency];
  const loud = {
    same: '',
    'follows-torque': ', louder or quieter with torque',
    'follows-loaded-side': ', louder with the side that carries load',
    'drum-pulse-may-appear': ', a pulse of the drum may appear',
    gone: '',
  }[loudness];
  return `${rate}${loud}`;
}

function manoeuvreRow(manoeuvre: Manoeuvre, groups: readonly RotatingGroup[]): ManoeuvreRow {
  return {
    what: MANOEUVRE_WORDS[manoeuvre],
    does: groups.map((group) => ({ group: GROUP_WORDS[group], words: behaviourWords(BEHAVIOUR[manoeuvre][group]) })),
    caution: cautionFor(manoeuvre),
  };
}

/** Where the beat goes in another gear at the same road speed, by group. */
export function otherGearView(
  form: BenchForm,
  beat: MeasuredBeat,
): Shown<{ readonly engine: string; readonly road: string }> {
  const read = new FormReader(form);
  const from = read.figure('orders.gear', 'gear ratio', 'plain');
  const to = read.figure('orders.nextGear', 'ratio of the other gear', 'plain');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const engine = afterGearChangeHz('engine', beat.frequencyHz, from, to);
  if (!engine.ok) return refused(engine);
  return { kind: 'shown', engine: `${digits(engine.frequencyHz, 2)} Hz`, road: `${digits(beat.frequencyHz, 2)} Hz` };
}
