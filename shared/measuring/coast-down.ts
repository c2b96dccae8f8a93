import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';

const MPS_PER_MPH = 0.44704;

/** Added mass of each tyre on the road for what turns with it. @source 40 CFR 1066.310 (memory; equals the example of 1037.528). */
const KG_PER_TYRE = 56.7;

export interface TurningMass {
  readonly massKg: number;
  readonly tyresOnRoad: number;
  /** Engine with flywheel, 2…4 kg·m² for a large diesel (judgement); 0 out of gear. */
  readonly engineInertiaKgM2: number;
  /** Axle ratio times gear ratio. */
  readonly overallRatio: number;
  readonly rollingRadiusM: number;
}

/** Mass that has to be slowed: the coach, its wheels, and the engine through the gears. @source m + n·56.7 + I·(i/R)². */
export function effectiveMassKg(mass: TurningMass): Outcome<{ readonly massKg: number }, OutOfRange> {
  const bad = outOfRange(
    ['mass', mass.massKg, 3000, 60_000, 'kg'],
    ['number of tyres', mass.tyresOnRoad, 4, 30, ''],
    ['engine inertia', mass.engineInertiaKgM2, 0, 10, 'kg·m²'],
    ['overall ratio', mass.overallRatio, 0, 60, ''],
    ['rolling radius', mass.rollingRadiusM, 0.3, 0.8, 'm'],
  );
  if (bad) return bad;
  const engine = mass.engineInertiaKgM2 * (mass.overallRatio / mass.rollingRadiusM) ** 2;
  return { ok: true, massKg: mass.massKg + KG_PER_TYRE * mass.tyresOnRoad + engine };
}

export interface CoastDown {
  readonly effectiveMassKg: number;
  readonly massUncertaintyKg: number;
  /** The same band, gear, stretch and direction in both runs. */
  readonly fromMph: number;
  readonly toMph: number;
  readonly speedUncertaintyMph: number;
  /** From `fromMph` to `toMph` with the engine brake on. */
  readonly brakeOnS: number;
  /** The run without it. `up`: the coach gained speed on the downgrade; `holds`: it neither lost nor gained. */
  readonly brakeOff: { readonly way: 'down' | 'up'; readonly seconds: number } | { readonly way: 'holds' };
  readonly timeUncertaintyS: number;
}

export interface RetardingPower {
  readonly powerKw: number;
  readonly uncertaintyKw: number;
}

export type CoastDownRefusal = OutOfRange | 'too-quick' | 'not-a-brake' | 'too-uncertain';

/**
 * Retarding power of the engine brake from two runs of the same band, one with it and one without: drag, tyres and grade
 * cancel and need not be known.
 *
 * @returns refused `too-quick` (a run below 3 s), `not-a-brake` (it slows no faster with the brake on), `too-uncertain`
 *   (above 30 %: take a wider band), `out-of-range`.
 * @source P = ½·m·(v1² − v2²)·(1/t_on − 1/t_off), plus 1/t_up where speed was gained; recovered from simulated runs within
 *   1.3 % in the reference values. First-order uncertainty: GUM.
 */
export function retardingPower(run: CoastDown): Outcome<RetardingPower, CoastDownRefusal> {
  const offS = run.brakeOff.way === 'holds' ? null : run.brakeOff.seconds;
  const bad = outOfRange(
    ['effective mass', run.effectiveMassKg, 3000, 70_000, 'kg'],
    ['uncertainty of the mass', run.massUncertaintyKg, 0, 0.15 * run.effectiveMassKg, 'kg'],
    ['upper speed', run.fromMph, 10, 80, 'mph'],
    ['lower speed', run.toMph, 5, run.fromMph - 1, 'mph'],
    ['uncertainty of the speed', run.speedUncertaintyMph, 0, 5, 'mph'],
    ['time with the brake', run.brakeOnS, 0, 600, 's'],
    ['time without the brake', offS ?? 10, 0, 600, 's'],
    ['uncertainty of the times', run.timeUncertaintyS, 0, 10, 's'],
  );
  if (bad) return bad;
  const quickest = Math.min(run.brakeOnS, offS ?? 10);
  if (quickest < 3) {
    return refuse('too-quick', `A run took ${quickest} s; under 3 s the watch decides. Take a wider band of speed.`);
  }
  const v1 = run.fromMph * MPS_PER_MPH;
  const v2 = run.toMph * MPS_PER_MPH;
  const energy = 0.5 * run.effectiveMassKg * (v1 ** 2 - v2 ** 2);
  const off = offS === null ? 0 : run.brakeOff.way === 'up' ? -1 / offS : 1 / offS;
  const slowing = 1 / run.brakeOnS - off;
  const power = energy * slowing;
  if (power <= 0) {
    return refuse(
      'not-a-brake',
      'The coach slowed no faster with the engine brake than without: it does not act at all.',
    );
  }
  const speedU = run.speedUncertaintyMph * MPS_PER_MPH;
  const uncertainty = Math.hypot(
    (power * run.massUncertaintyKg) / run.effectiveMassKg,
    (energy * run.timeUncertaintyS) / run.brakeOnS ** 2,
    energy * run.timeUncertaintyS * off ** 2,
    run.effectiveMassKg * v1 * speedU * slowing,
    run.effectiveMassKg * v2 * speedU * slowing,
  );
  if (uncertainty > 0.3 * power) {
    return refuse(
      'too-uncertain',
      `The power is ${Math.round(power / 1000)} ± ${Math.round(uncertainty / 1000)} kW; above 30 % it says nothing. Take a band of 10 mph and a video of the dash.`,
    );
  }
  return { ok: true, powerKw: power / 1000, uncertaintyKw: uncertainty / 1000 };
}

export interface CylinderShare {
  /** Cylinders that act, with their probability, in the order asked for. */
  readonly shares: readonly { readonly acting: number; readonly probability: number }[];
  readonly best: number;
  /** The best reaches 0.8 (judgement). */
  readonly decided: boolean;
}

/**
 * How many cylinders of an engine brake act, from its power and its rated power at that speed.
 *
 * @param acting   counts that the housings allow, 0, 2, 4, 6 for three housings of two.
 * @param expectedKw  by the maker's table at this engine speed: there is no default, a guess is too wide to count with.
 * @returns refused `impossible-count`, `out-of-range`.
 * @source Normal densities about (k/n)·P with variance u² + (k/n)²·u_P², all counts equally likely before.
 */
export function cylinderShare(
  power: RetardingPower,
  expectedKw: number,
  expectedUncertaintyKw: number,
  cylinders: number,
  acting: readonly number[],
): Outcome<CylinderShare, OutOfRange | 'impossible-count'> {
  const bad = outOfRange(
    ['power', power.powerKw, 0, 1000, 'kW'],
    ['uncertainty of the power', power.uncertaintyKw, 0.01, 1000, 'kW'],
    ['expected power', expectedKw, 1, 1000, 'kW'],
    ['uncertainty of the expected power', expectedUncertaintyKw, 0, expectedKw, 'kW'],
    ['number of cylinders', cylinders, 1, 16, ''],
  );
  if (bad) return bad;
  if (acting.length < 2 || acting.some((k) => !(Number.isInteger(k) && k >= 0 && k <= cylinders))) {
    return refuse('impossible-count', `The counts must be two or more whole numbers from 0 to ${cylinders}.`);
  }
  const logs = acting.map((k) => {
    const sigma = Math.hypot(power.uncertaintyKw, (k / cylinders) * expectedUncertaintyKw);
    return -(((power.powerKw - (k / cylinders) * expectedKw) / sigma) ** 2) / 2 - Math.log(sigma);
  });
  const top = Math.max(...logs);
  const weights = logs.map((each) => Math.exp(each - top));
  const total = weights.reduce((sum, each) => sum + each, 0);
  const shares = acting.map((count, i) => ({ acting: count, probability: weights[i]! / total }));
  const best = shares.reduce((a, b) => (b.probability > a.probability ? b : a));
  return { ok: true, shares, best: best.acting, decided: best.probability >= 0.8 };
}

export interface RoadLoad {
  readonly massKg: number;
  readonly rollingCoefficient: number;
  readonly dragAreaM2: number;
  readonly speedMph: number;
  /** Rise over run; below 0 downhill. */
  readonly grade: number;
}

/**
 * Force and power that the road asks for; below 0 the road pushes. For planning a run, not for a verdict.
 *
 * @source m·g·C·cos θ + ½·ρ·A·v² + m·g·sin θ, ρ 1.2 kg/m³.
 */
export function roadLoad(load: RoadLoad): Outcome<{ readonly forceN: number; readonly powerKw: number }, OutOfRange> {
  const bad = outOfRange(
    ['mass', load.massKg, 1000, 60_000, 'kg'],
    ['rolling coefficient', load.rollingCoefficient, 0, 0.05, ''],
    ['drag area', load.dragAreaM2, 0, 12, 'm²'],
    ['speed', load.speedMph, 0, 90, 'mph'],
    ['grade', load.grade, -0.2, 0.2, ''],
  );
  if (bad) return bad;
  const angle = Math.atan(load.grade);
  const v = load.speedMph * MPS_PER_MPH;
  const weight = load.massKg * 9.80665;
  const forceN =
    weight * load.rollingCoefficient * Math.cos(angle) + 0.6 * load.dragAreaM2 * v ** 2 + weight * Math.sin(angle);
  return { ok: true, forceN, powerKw: (forceN * v) / 1000 };
}
