import type { Role } from '../knowledge/tree.ts';
import type { Costs } from './situation.ts';

/**
 * Costs that hold until a person changes them: minutes, or their money's worth at the workshop's hourly rate. All
 * judgement. A wrong part is set to half a working day: a part that may not go back, and trust; a complaint that comes back as well: a
 * second visit, a lost trip. The threshold below which "drive and book" may be offered follows from them: tow / missDanger = .03.
 */
const SHOP: Costs = {
  handOver: 960,
  wrongPart: 240,
  comeBack: 240,
  tow: 600,
  creep: 60,
  missDanger: 20_000,
  missDamage: 1_000,
};

/**
 * Costs for a role. Handing over means that somebody else starts again: two working days of a second workshop, one when
 * an apprentice hands over to the mechanic beside them.
 */
export function defaultCosts(role: Role): Costs {
  return role === 'apprentice' ? { ...SHOP, handOver: 480 } : SHOP;
}

/** Belief in danger causes from which "drive and book" is not offered. Costs that a person sets can only make it stricter. */
export function dangerThreshold(costs: Costs): number {
  const usual = SHOP.tow / SHOP.missDanger;
  const own = costs.tow / costs.missDanger;
  // Both at nothing make no number, and a comparison with that would let go of every danger.
  return own < usual ? own : usual;
}
