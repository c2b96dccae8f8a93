import { outOfRange, refuse, type Outcome, type OutOfRange, type Refusal } from './outcome.ts';
import { failedShare, failsWithin, type LifeModel } from './weibull.ts';

/** A cent: less than this is no cost that could be weighed. */
const LEAST_COST = 0.01;

export interface NeighbourPart {
  /** Brakes, steering, wheel-end bearings: never decided by cost. */
  readonly safetyPart: boolean;
  readonly life: LifeModel;
  readonly age: number;
  /** Miles or years that the coach is still to be used; unit of the life. */
  readonly horizon: number;
  readonly partCost: number;
  /** Hours with everything open anyway. */
  readonly openHours: number;
  /** Hours to get there again. */
  readonly accessHours: number;
  readonly ratePerHour: number;
  /** Tow and what comes with it. */
  readonly roadsideCost: number;
}

export interface ReplaceOrWait {
  readonly failsIfKept: number;
  readonly failsIfReplaced: number;
  readonly costNow: number;
  readonly costWait: number;
  /** Probability of failure above which replacing is cheaper; above 1 = never. */
  readonly breakEven: number;
  /** `no-clear-winner` within 20 % of the larger (judgement). */
  readonly cheaper: 'now' | 'wait' | 'no-clear-winner';
}

/** What costs less; neither where the two lie within a fifth of the larger, which is less than such figures are known to. */
function cheaperOf<A, B>(first: number, second: number, a: A, b: B): A | B | 'no-clear-winner' {
  if (Math.abs(first - second) < 0.2 * Math.max(first, second)) return 'no-clear-winner';
  return first < second ? a : b;
}

/** Parts that people's lives hang on; null for every other. */
export function notByCost(safetyPart: boolean): Refusal<'safety-part'> | null {
  return safetyPart
    ? refuse(
        'safety-part',
        'Brake, steering and wheel-end parts are not weighed by cost or by chance: past their limit they are replaced.',
      )
    : null;
}

/**
 * Replace the neighbour while it is open, or wait: expected costs over the horizon, first failure only, no interest.
 * Show it for half and twice the scale of the life too, which is judgement.
 *
 * @returns refused `safety-part` (a limit decides, not a cost), `nothing-to-weigh`, `out-of-range`.
 * @source Expected cost; `failsWithin`.
 */
export function replaceOrWait(
  part: NeighbourPart,
): Outcome<ReplaceOrWait, OutOfRange | 'safety-part' | 'nothing-to-weigh'> {
  const safety = notByCost(part.safetyPart);
  if (safety) return safety;
  const bad = outOfRange(
    ['price of the part', part.partCost, 0, 1e6, ''],
    ['hours with it open', part.openHours, 0, 1000, 'h'],
    ['hours of access', part.accessHours, 0, 1000, 'h'],
    ['labour rate', part.ratePerHour, 0, 10_000, ''],
    ['roadside cost', part.roadsideCost, 0, 1e6, ''],
  );
  if (bad) return bad;
  const kept = failsWithin(part.life, part.age, part.horizon);
  if (!kept.ok) return kept;
  const fresh = failedShare(part.life, part.horizon);
  if (!fresh.ok) return fresh;
  const job = part.partCost + part.openHours * part.ratePerHour;
  const failure = job + part.accessHours * part.ratePerHour + part.roadsideCost;
  if (failure < LEAST_COST) return refuse('nothing-to-weigh', 'All costs are 0. Enter prices and the labour rate.');
  const costNow = job + fresh.probability * failure;
  const costWait = kept.probability * failure;
  return {
    ok: true,
    failsIfKept: kept.probability,
    failsIfReplaced: fresh.probability,
    costNow,
    costWait,
    breakEven: costNow / failure,
    cheaper: cheaperOf(costNow, costWait, 'now', 'wait'),
  };
}

export interface Repair {
  readonly cost: number;
  /** Probability that it comes back. */
  readonly comeback: number;
}

/**
 * Rebuild or replace, by expected cost with one comeback each.
 *
 * @param againCost  doing it over; `roadsideCost` beside it.
 * @returns expected costs, and the comeback probability of the rebuild at which both cost the same (above 1 = never).
 * @source Expected cost.
 */
export function rebuildOrReplace(
  rebuild: Repair,
  replacement: Repair,
  againCost: number,
  roadsideCost: number,
): Outcome<
  {
    readonly rebuildCost: number;
    readonly replaceCost: number;
    readonly breakEvenComeback: number;
    /** `no-clear-winner` within 20 % of the larger (judgement). */
    readonly cheaper: 'rebuild' | 'replace' | 'no-clear-winner';
  },
  OutOfRange | 'nothing-to-weigh'
> {
  const bad = outOfRange(
    ['cost of the rebuild', rebuild.cost, 0, 1e6, ''],
    ['comeback of the rebuild', rebuild.comeback, 0, 1, ''],
    ['cost of the replacement', replacement.cost, 0, 1e6, ''],
    ['comeback of the replacement', replacement.comeback, 0, 1, ''],
    ['cost of doing it again', againCost, 0, 1e6, ''],
    ['roadside cost', roadsideCost, 0, 1e6, ''],
  );
  if (bad) return bad;
  const failure = againCost + roadsideCost;
  if (failure < LEAST_COST)
    return refuse('nothing-to-weigh', 'A comeback costs nothing here. Enter what doing it again costs.');
  const rebuildCost = rebuild.cost + rebuild.comeback * failure;
  const replaceCost = replacement.cost + replacement.comeback * failure;
  return {
    ok: true,
    rebuildCost,
    replaceCost,
    cheaper: cheaperOf(rebuildCost, replaceCost, 'rebuild', 'replace'),
    breakEvenComeback: replacement.comeback + (replacement.cost - rebuild.cost) / failure,
  };
}
