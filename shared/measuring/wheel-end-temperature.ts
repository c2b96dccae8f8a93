import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import { medianOf, modifiedScores } from './robust-spread.ts';

/** What an infrared thermometer gives or takes from one spot to another, °F: judgement, surface and aim included. */
export const INFRARED_GIVE_F = 7;

export interface WheelEndReading {
  /** 1 for the front axle, and so on. */
  readonly axle: number;
  readonly side: 'left' | 'right';
  readonly temperatureF: number;
}

export interface TemperatureRound {
  readonly readings: readonly WheelEndReading[];
  /** From the first reading to the last. */
  readonly minutes: number;
  /** All at the same spot of the same kind of hub, sun or shade alike. */
  readonly sameSpot: boolean;
  /** Of the surface aimed at; below 0.3 (bright metal) a reading means nothing. Matt paint or tape has about 0.95. */
  readonly emissivity: number;
}

export interface WheelEndTemperature extends WheelEndReading {
  /** Modified z-score; null with fewer than four ends. */
  readonly score: number | null;
  readonly fromMedianF: number;
  /** Minus the other end of the axle; null when it was not read. */
  readonly fromOtherSideF: number | null;
  readonly marked: 'hot' | 'cold' | null;
}

export interface TemperatureComparison {
  readonly ends: readonly WheelEndTemperature[];
  /** `all`: every end against all; `pairs`: too few ends, only the two sides of an axle. */
  readonly compared: 'all' | 'pairs';
  /** By axle number: two hot ends on one axle are only found here. */
  readonly axleMediansF: ReadonlyMap<number, number>;
}

/**
 * Score above which an end is called off its fellows, by number of ends: 5 % false marks in a whole round of sound ends.
 *
 * @source Simulation with normal data, 400 000 rounds each, NumPy 2.4.6. Real rounds are skewed by braking, so there will be
 *   more false marks than that: two further conditions are asked.
 */
const CUT: readonly (readonly [ends: number, score: number])[] = [
  [4, 6.9],
  [5, 7.9],
  [6, 5.5],
  [7, 5.9],
  [8, 4.9],
  [9, 5.1],
  [10, 4.6],
];
/** Repeatability of an infrared thermometer (judgement). */
const FLOOR_F = 5;
/** Both judgement. */
const FROM_MIDDLE_F = 30;
const FROM_OTHER_SIDE_F = 20;

export type TemperatureRefusal = OutOfRange | 'too-few-ends' | 'twice-read' | 'not-comparable' | 'too-many-off';

/**
 * Wheel ends hotter or colder than their fellows: a dragging brake, a dry bearing, a brake that does not work.
 *
 * An end is marked only when all hold: its score is above the cut, it is 30 °F or more from the middle, and 20 °F or more
 * from the other side of its axle, if that was read. With fewer than four ends the axle alone is compared, at 30 °F.
 *
 * @returns refused `too-few-ends` (fewer than two, or fewer than four without both sides of one axle), `twice-read`,
 *   `not-comparable` (over more than 10 min, other spots, bright metal), `too-many-off` (half of the ends or more marked:
 *   then the middle is no measure), `out-of-range`.
 * @source Modified z-score: `modifiedScores`. The 30 and 20 °F are judgement.
 */
export function compareTemperatures(round: TemperatureRound): Outcome<TemperatureComparison, TemperatureRefusal> {
  const { readings } = round;
  const bad = outOfRange(
    ['number of ends', readings.length, 0, 10, ''],
    ['time of the round', round.minutes, 0, 600, 'min'],
    ['emissivity', round.emissivity, 0, 1, ''],
    ...readings.map((end, i) => [`temperature ${i + 1}`, end.temperatureF, -60, 1500, '°F'] as const),
  );
  if (bad) return bad;
  const trouble = notComparable(round);
  if (trouble) return trouble;
  const median = medianOf(readings.map((end) => end.temperatureF));
  const cut = CUT.find(([ends]) => ends === readings.length)?.[1] ?? null;
  const spread =
    cut === null
      ? null
      : modifiedScores(
          readings.map((end) => end.temperatureF),
          FLOOR_F,
        );
  if (spread && !spread.ok) return spread;
  const ends = readings.map((end, i): WheelEndTemperature => {
    const other = readings.find((each) => each.axle === end.axle && each.side !== end.side);
    const fromOtherSideF = other ? end.temperatureF - other.temperatureF : null;
    const fromMedianF = end.temperatureF - median;
    const score = spread ? spread.scores[i]! : null;
    const marked =
      score === null || cut === null ? ofPair(fromOtherSideF) : ofAll(score, cut, fromMedianF, fromOtherSideF);
    return { ...end, score, fromMedianF, fromOtherSideF, marked };
  });
  if (cut === null && ends.every((end) => end.fromOtherSideF === null)) {
    return refuse(
      'too-few-ends',
      'With fewer than four ends both sides of one axle are needed. Read the other side too.',
    );
  }
  const off = ends.filter((end) => end.marked !== null).length;
  if (cut !== null && off * 2 >= ends.length) {
    return refuse(
      'too-many-off',
      `${off} of ${ends.length} ends are off: half or more, so the middle says nothing. Look at each brake.`,
    );
  }
  return { ok: true, ends, compared: cut === null ? 'pairs' : 'all', axleMediansF: axleMedians(readings) };
}

function notComparable(round: TemperatureRound): Outcome<never, TemperatureRefusal> | null {
  const { readings } = round;
  if (readings.length < 2) {
    return refuse('too-few-ends', `One end alone cannot be compared; found ${readings.length}. Read two or more.`);
  }
  const seen = new Set(readings.map((end) => `${end.axle} ${end.side}`));
  if (seen.size < readings.length) {
    return refuse('twice-read', 'One wheel end stands in the list twice. Delete one of the two readings.');
  }
  if (round.minutes > 10) {
    return refuse(
      'not-comparable',
      `The round took ${round.minutes} minutes; after 10 the first ends have cooled. Drive again and read faster.`,
    );
  }
  if (!round.sameSpot) {
    return refuse('not-comparable', 'The readings were not taken at the same spot. Hub face with hub face, in one go.');
  }
  if (round.emissivity < 0.3) {
    return refuse(
      'not-comparable',
      'Bright metal shows the heat of its surroundings, not its own. Put a strip of tape or matt paint on the spot.',
    );
  }
  return null;
}

function ofAll(score: number, cut: number, fromMiddle: number, fromOther: number | null): 'hot' | 'cold' | null {
  if (Math.abs(score) <= cut || Math.abs(fromMiddle) < FROM_MIDDLE_F) return null;
  // Only the other side can excuse an end; one that was not read does not.
  const alike =
    fromOther !== null && (Math.abs(fromOther) < FROM_OTHER_SIDE_F || Math.sign(fromOther) !== Math.sign(fromMiddle));
  if (alike) return null;
  return fromMiddle > 0 ? 'hot' : 'cold';
}

/** Of a pair alone it cannot be said whether one is hot or the other cold; the hotter is named. */
function ofPair(fromOther: number | null): 'hot' | null {
  return fromOther !== null && fromOther >= FROM_MIDDLE_F ? 'hot' : null;
}

function axleMedians(readings: readonly WheelEndReading[]): ReadonlyMap<number, number> {
  const axles = [...new Set(readings.map((end) => end.axle))].sort((a, b) => a - b);
  return new Map(
    axles.map((axle) => [axle, medianOf(readings.filter((end) => end.axle === axle).map((end) => end.temperatureF))]),
  );
}
