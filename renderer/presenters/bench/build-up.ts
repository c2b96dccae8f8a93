import {
  judgeBuildUp,
  requiredReservoir,
  CHAMBER_VOLUME_IN3,
  type BuildUpTest,
} from '../../../shared/measuring/index.ts';
import { shown } from './figure-kinds.ts';
import { FormReader, refused, type BenchForm, type Shown } from './form.ts';
import { heldView, type HeldView } from './held.ts';

export const BUILD_UP_TESTS: readonly (readonly [BuildUpTest, string])[] = [
  ['dual-operating-speed', 'Dual system, 85 to 100 psi, at operating speed'],
  ['dual-idle', 'Dual system, 85 to 100 psi, at idle (600 to 900 rpm)'],
  ['single-idle', 'Single system, built before 1975, 50 to 90 psi, at idle'],
  ['dual-maximum-speed', 'Dual system, 85 to 100 psi, at the maker’s greatest speed, tank volume known'],
];

export const BUILD_UP_CAUTIONS: readonly string[] = [
  'Parking brake set and wheels chocked wherever the engine runs.',
  'Outdoors, or with the exhaust led outside. Exhaust gas kills without a warning.',
  'Nobody near belts, fan and shafts while the engine runs at speed.',
];

/** Types that have a rated volume, as choices. */
export const CHAMBER_TYPES: readonly string[] = Object.keys(CHAMBER_VOLUME_IN3);

/** Chambers by axle: the type of each of the two. */
export const TANK_AXLES = [1, 2, 3] as const;

/** Two seconds by hand with a watch and a dash gauge: judgement. */
const WATCH_S = 2;

export interface TanksView {
  readonly chambers: string;
  readonly required: string;
  readonly requiredIn3: number;
}

/** The tank volume that the chambers ask for. */
export function tanksView(form: BenchForm): Shown<TanksView> {
  const types = TANK_AXLES.flatMap((axle) => {
    const type = form.choice(`build.axle${axle}`);
    return type === '' ? [] : [Number(type), Number(type)];
  });
  if (types.length === 0) return { kind: 'waiting', words: 'Choose the chambers of each axle.' };
  const found = requiredReservoir(types);
  return found.ok
    ? {
        kind: 'shown',
        chambers: shown(found.chambersIn3, 'volume', form.system),
        required: shown(found.requiredIn3, 'volume', form.system),
        requiredIn3: found.requiredIn3,
      }
    : refused(found);
}

export function buildUpTestOf(form: BenchForm): BuildUpTest {
  return BUILD_UP_TESTS.find(([id]) => id === form.choice('build.test'))?.[0] ?? 'dual-operating-speed';
}

/** The build-up time against the limit of its own test. */
export function buildUpView(form: BenchForm): Shown<{ readonly held: HeldView }> {
  const test = buildUpTestOf(form);
  const read = new FormReader(form);
  const seconds = read.figure('build.time', 'build-up time', 'seconds');
  const fitted = read.optional('build.fitted', 'tank volume fitted', 'volume');
  const trouble = read.trouble();
  if (trouble) return trouble;
  const tanks = tanksView(form);
  const volumes =
    fitted !== null && tanks.kind === 'shown' ? { actualIn3: fitted, requiredIn3: tanks.requiredIn3 } : undefined;
  const found = judgeBuildUp({ test, seconds, uncertaintyS: WATCH_S, ...(volumes ? { volumes } : {}) });
  return found.ok ? { kind: 'shown', held: heldView(seconds, WATCH_S, found.judgement, form.system) } : refused(found);
}
