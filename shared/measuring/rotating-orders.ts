import { outOfRange, refuse, type Outcome, type OutOfRange, type Span } from './outcome.ts';

export type RotatingGroup = 'wheel-and-tyre' | 'propeller-shaft' | 'engine' | 'accessory';

export interface RotatingLine {
  readonly group: RotatingGroup;
  /** In the words of the trade. */
  readonly name: string;
  /** Turns of its own group: 1 wheel turn, 1 shaft turn, 1 crankshaft turn, 1 turn of the accessory. */
  readonly order: number;
  readonly frequencyHz: number;
  /** One standard uncertainty. */
  readonly uncertaintyHz: number;
}

export interface Engine {
  readonly cylinders: number;
  readonly strokes: 2 | 4;
}

/** What is known while the shake is felt. */
export interface RoadState {
  readonly speedMph: number;
  /** One standard uncertainty: by satellite 0.5/√3 mph; by dash speedometer 10 % of the speed/√3. */
  readonly speedUncertaintyMph: number;
  /** Turns of a tyre over a mile, from its data or from `tyreRevsPerMile`. */
  readonly tyreRevsPerMile: number;
  /** 2 % of it/√3 unless better known (judgement). */
  readonly tyreUncertaintyRevsPerMile: number;
  /** Propeller-shaft turns for one of the wheel; null = not known, and nothing is said about the shaft. */
  readonly axleRatio: number | null;
  /** Engine turns for one of the shaft in this gear, 1 = direct; null = not known. */
  readonly gearRatio: number | null;
  /** Converter locked or clutch closed: only then does the road speed tell the engine speed. */
  readonly lockedUp: boolean;
  /** By tachometer; null = not read. */
  readonly engineRpm: number | null;
  /** 25/√3 rpm for a tachometer (judgement). */
  readonly engineUncertaintyRpm: number;
  readonly engine: Engine | null;
  /** Turns of each accessory for one of the crankshaft. */
  readonly accessories: readonly { readonly name: string; readonly ratio: number }[];
}

export interface RotatingLines {
  readonly lines: readonly RotatingLine[];
  /** Crankshaft speed used; null when it is not known. */
  readonly engineRpm: number | null;
  /** What could not be said and why, in sentences for the person. */
  readonly missing: readonly string[];
}

/** No coach diesel turns faster: a higher figure means a wrong ratio or gear (judgement). */
const FASTEST_RPM = 2800;

/**
 * The frequencies at which everything that turns shakes or hums, with what the inputs leave uncertain.
 *
 * @returns wheel and tyre harmonics 1–3, shaft 1 and its second order (a universal joint speeds up and slows down twice a
 *   turn), engine ½, 1, 2 and firing, accessories. Without a locked converter and without a tachometer the engine is
 *   left out and `missing` says so. Refused `engine-speed-implausible` above 2,800 rpm, `out-of-range`.
 * @source f = mph·rev-per-mile/3600 and its multiples: kinematics; firing = crank × cylinders (two-stroke) or × cylinders/2
 *   (four-stroke).
 */
export function rotatingLines(state: RoadState): Outcome<RotatingLines, OutOfRange | 'engine-speed-implausible'> {
  const bad = outOfRange(...spansOf(state));
  if (bad) return bad;
  const wheelHz = (state.speedMph * state.tyreRevsPerMile) / 3600;
  const road = Math.hypot(
    state.speedUncertaintyMph / state.speedMph,
    state.tyreUncertaintyRevsPerMile / state.tyreRevsPerMile,
  );
  const missing: string[] = [];
  const lines = [1, 2, 3].map((order) => line('wheel-and-tyre', TYRE_NAMES[order - 1]!, order, wheelHz * order, road));
  if (state.axleRatio === null) {
    missing.push(
      'The axle ratio is not known, so nothing is said about the propeller shaft. Read the plate or count turns.',
    );
  } else {
    const shaftHz = wheelHz * state.axleRatio;
    lines.push(line('propeller-shaft', 'propeller shaft or pinion', 1, shaftHz, road));
    lines.push(line('propeller-shaft', 'universal joint', 2, 2 * shaftHz, road));
  }
  const crank = crankshaft(state, wheelHz, road);
  if (crank === null) {
    missing.push(
      'The engine speed is not known: the converter slips, or ratio and gear are missing. Read the tachometer.',
    );
    return { ok: true, lines, engineRpm: null, missing };
  }
  if (crank.hz * 60 > FASTEST_RPM) {
    return refuse(
      'engine-speed-implausible',
      `These figures give ${Math.round(crank.hz * 60)} rpm; no coach diesel turns above ${FASTEST_RPM}. Look at gear, axle ratio and speed again.`,
    );
  }
  lines.push(...engineLines(state, crank));
  return { ok: true, lines, engineRpm: crank.hz * 60, missing };
}

const TYRE_NAMES = ['wheel, tyre, hub or drum, once a turn', 'tyre, oval or two spots', 'tyre, three spots or belt'];

function spansOf(state: RoadState): readonly Span[] {
  return [
    ['speed', state.speedMph, 3, 90, 'mph'],
    ['speed uncertainty', state.speedUncertaintyMph, 0, 20, 'mph'],
    ['tyre turns a mile', state.tyreRevsPerMile, 350, 900, ''],
    ['uncertainty of the tyre turns', state.tyreUncertaintyRevsPerMile, 0, 100, ''],
    ['axle ratio', state.axleRatio ?? 4, 1, 12, ''],
    ['gear ratio', state.gearRatio ?? 1, 0.4, 15, ''],
    ['engine speed', state.engineRpm ?? 1000, 300, 4000, 'rpm'],
    ['uncertainty of the engine speed', state.engineUncertaintyRpm, 0, 500, 'rpm'],
    ['number of cylinders', state.engine?.cylinders ?? 6, 1, 16, ''],
    ...state.accessories.map((each) => [`ratio of ${each.name}`, each.ratio, 0.1, 10, ''] as const satisfies Span),
  ];
}

interface Crank {
  readonly hz: number;
  readonly relative: number;
}

/** The tachometer where there is one; else the road, through a locked drive. */
function crankshaft(state: RoadState, wheelHz: number, road: number): Crank | null {
  if (state.engineRpm !== null) {
    return { hz: state.engineRpm / 60, relative: state.engineUncertaintyRpm / state.engineRpm };
  }
  if (!state.lockedUp || state.axleRatio === null || state.gearRatio === null) return null;
  return { hz: wheelHz * state.axleRatio * state.gearRatio, relative: road };
}

function engineLines(state: RoadState, { hz, relative }: Crank): readonly RotatingLine[] {
  const orders: (readonly [number, string])[] = [
    [0.5, 'engine, every second turn'],
    [1, 'engine, once a turn'],
    [2, 'engine, twice a turn'],
  ];
  if (state.engine) {
    const firing = state.engine.strokes === 2 ? state.engine.cylinders : state.engine.cylinders / 2;
    if (firing > 2) orders.push([firing, 'firing']);
  }
  return [
    ...orders.map(([order, name]) => line('engine', name, order, hz * order, relative)),
    ...state.accessories.map(({ name, ratio }) => line('accessory', name, 1, hz * ratio, relative)),
  ];
}

function line(group: RotatingGroup, name: string, order: number, frequencyHz: number, relative: number): RotatingLine {
  return { group, name, order, frequencyHz, uncertaintyHz: frequencyHz * relative };
}
