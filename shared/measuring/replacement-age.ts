import { outOfRange, refuse, type Outcome, type OutOfRange } from './outcome.ts';
import { meanLife, type LifeModel } from './weibull.ts';

/** Halves of the span in Simpson's rule; enough for seven digits at the shapes allowed. */
const STEPS = 400;

/**
 * The age at which replacing a part by plan costs least in the long run.
 *
 * @param planned, failure  cost of a replacement by plan and of one after a failure on the road, one unit of money.
 * @returns age in the unit of the life, cost for one unit of it, and the same when run to failure. Refused `run-to-failure`
 *   when no planned age pays: failures come by chance (shape 1 or less) or cost no more, or the optimum lies beyond four
 *   times the scale. `out-of-range`.
 * @source Age replacement, Barlow & Hunter 1960 (memory): least of [planned·R(T) + failure·F(T)]/∫₀ᵀR.
 */
export function bestReplacementAge(
  life: LifeModel,
  planned: number,
  failure: number,
): Outcome<
  { readonly age: number; readonly costRate: number; readonly runToFailureRate: number },
  OutOfRange | 'run-to-failure'
> {
  const bad = outOfRange(
    ['shape', life.shape, 0.5, 10, ''],
    ['scale', life.scale, 1e-3, 1e7, ''],
    ['cost of a planned replacement', planned, 0.01, 1e7, ''],
    ['cost of a failure', failure, 0.01, 1e8, ''],
  );
  if (bad) return bad;
  const never = refuse(
    'run-to-failure',
    'No planned age pays: the part fails by chance, or a failure costs hardly more than a planned replacement. Run it, and inspect.',
  );
  if (life.shape <= 1 || failure <= planned) return never;
  const mean = meanLife(life);
  if (!mean.ok) return mean;
  const rate = (age: number): number => costRate(life, planned, failure, age);
  const age = lowest(rate, 1e-3 * life.scale, 4 * life.scale);
  if (age > 3.9 * life.scale) return never;
  return { ok: true, age, costRate: rate(age), runToFailureRate: failure / mean.age };
}

function costRate({ shape, scale }: LifeModel, planned: number, failure: number, age: number): number {
  const works = (t: number): number => Math.exp(-((t / scale) ** shape));
  const step = age / STEPS;
  let integral = 1 + works(age);
  for (let i = 1; i < STEPS; i++) integral += (i % 2 === 1 ? 4 : 2) * works(i * step);
  const atAge = works(age);
  return (planned * atAge + failure * (1 - atAge)) / ((integral * step) / 3);
}

/** Golden section; the cost has one valley where the failure rate rises. */
function lowest(cost: (age: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  for (let i = 0; i < 80; i++) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (cost(a) < cost(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}
