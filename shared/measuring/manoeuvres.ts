import type { RotatingGroup } from './rotating-orders.ts';
import { outOfRange, type Outcome, type OutOfRange } from './outcome.ts';

export type Manoeuvre =
  | 'next-gear-same-speed'
  | 'other-gear-same-engine-speed'
  | 'overrun-in-gear'
  | 'coast-in-neutral'
  | 'lean-left-then-right'
  | 'light-braking'
  | 'standing-same-engine-speed';

export interface Behaviour {
  readonly frequency: 'same' | 'changes' | 'falls-to-idle' | 'gone';
  readonly loudness: 'same' | 'follows-torque' | 'follows-loaded-side' | 'drum-pulse-may-appear' | 'gone';
}

const SAME: Behaviour = { frequency: 'same', loudness: 'same' };
const CHANGES: Behaviour = { frequency: 'changes', loudness: 'same' };
const GONE: Behaviour = { frequency: 'gone', loudness: 'gone' };
const WITH_TORQUE: Behaviour = { frequency: 'same', loudness: 'follows-torque' };
const IDLE: Behaviour = { frequency: 'falls-to-idle', loudness: 'same' };

type Row = Readonly<Record<RotatingGroup, Behaviour>>;

function row(wheel: Behaviour, shaft: Behaviour, engine: Behaviour): Row {
  return { 'wheel-and-tyre': wheel, 'propeller-shaft': shaft, engine, accessory: engine };
}

/**
 * What each manoeuvre does to each group.
 *
 * @source Kinematics for the frequencies; loudness: trade press and service literature on driveline vibration (seen), the
 *   lean test common practice.
 */
export const BEHAVIOUR: Readonly<Record<Manoeuvre, Row>> = {
  'next-gear-same-speed': row(SAME, SAME, CHANGES),
  'other-gear-same-engine-speed': row(CHANGES, CHANGES, SAME),
  'overrun-in-gear': row(SAME, WITH_TORQUE, SAME),
  'coast-in-neutral': row(SAME, WITH_TORQUE, IDLE),
  'lean-left-then-right': row({ frequency: 'same', loudness: 'follows-loaded-side' }, SAME, SAME),
  'light-braking': row({ frequency: 'same', loudness: 'drum-pulse-may-appear' }, SAME, SAME),
  'standing-same-engine-speed': row(GONE, GONE, SAME),
};

/** Safest first; what can be done standing, or with the drive closed, comes before coasting. */
export const MANOEUVRES: readonly Manoeuvre[] = [
  'standing-same-engine-speed',
  'next-gear-same-speed',
  'overrun-in-gear',
  'other-gear-same-engine-speed',
  'lean-left-then-right',
  'light-braking',
  'coast-in-neutral',
];

/** To be read before the manoeuvre; null where driving as usual is all there is to it. */
export function cautionFor(manoeuvre: Manoeuvre): string | null {
  switch (manoeuvre) {
    case 'standing-same-engine-speed':
      return 'Parking brake set and wheels chocked. Never stand in front of or behind the coach.';
    case 'coast-in-neutral':
      return 'Only on a level road without traffic: on a downgrade it is forbidden by law in many States. Never with a transmission that must not roll in neutral. Try the other tests first.';
    case 'lean-left-then-right':
      return 'A gentle change of lane with an empty road, below the speed limit. Somebody else watches and listens.';
    case 'light-braking':
      return 'Only with brakes that are known to work, and nobody behind.';
    case 'next-gear-same-speed':
    case 'other-gear-same-engine-speed':
    case 'overrun-in-gear':
      return null;
  }
}

/** Manoeuvres that tell two groups apart by frequency; then those that do by loudness alone; coasting always last. */
export function separatingManoeuvres(a: RotatingGroup, b: RotatingGroup): readonly Manoeuvre[] {
  const byFrequency = MANOEUVRES.filter((each) => BEHAVIOUR[each][a].frequency !== BEHAVIOUR[each][b].frequency);
  const byLoudness = MANOEUVRES.filter(
    (each) => !byFrequency.includes(each) && BEHAVIOUR[each][a].loudness !== BEHAVIOUR[each][b].loudness,
  );
  const all = [...byFrequency, ...byLoudness];
  // Coasting is the one with a law against it: last, however well it separates.
  return [...all.filter((each) => each !== 'coast-in-neutral'), ...all.filter((each) => each === 'coast-in-neutral')];
}

/**
 * Where a beat goes when the gear is changed at the same road speed, converter locked.
 *
 * @param fromRatio, toRatio  engine turns for one of the shaft, 0.4…15.
 * @source The engine follows the ratio of the gears; wheel and shaft follow the road.
 */
export function afterGearChangeHz(
  group: RotatingGroup,
  frequencyHz: number,
  fromRatio: number,
  toRatio: number,
): Outcome<{ readonly frequencyHz: number }, OutOfRange> {
  const bad = outOfRange(
    ['frequency', frequencyHz, 0.1, 20_000, 'Hz'],
    ['gear ratio before', fromRatio, 0.4, 15, ''],
    ['gear ratio after', toRatio, 0.4, 15, ''],
  );
  if (bad) return bad;
  const follows = BEHAVIOUR['next-gear-same-speed'][group].frequency === 'changes';
  return { ok: true, frequencyHz: follows ? (frequencyHz * toRatio) / fromRatio : frequencyHz };
}
