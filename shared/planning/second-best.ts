import type { LookedAhead } from './ahead/looked-ahead.ts';
import type { CheckOption } from './assessment.ts';
import { tieMinutes, type Ranking } from './next-check.ts';

/** How much is lost by making another check than the one advised. */
export interface SecondBest {
  readonly check: string;
  /** Expected minutes, or money's worth, more than with the advised check; below 0 when it is cheaper by cost alone. */
  readonly worseBy: number;
  /** The two are practically equal: the order was decided by hazards, time and the file. */
  readonly equal: boolean;
}

/**
 * The check that comes next after the advised one, and by how much it is worse. Says more than whether some number would
 * turn the order: two checks can change places on a tiny change and hardly differ in what they cost.
 *
 * @param ahead  what looking ahead says of the same situation, once it is known: then the difference is that of the costs in the
 *   end, else that of what the rule takes the checks to be worth.
 * @returns null when the program does not advise a check, or no other can be done.
 */
export function secondBest(
  { stop, options, actNow, lookedAt }: Ranking,
  ahead: LookedAhead | null = null,
): SecondBest | null {
  if (stop.kind !== 'check') return null;
  const advised = stop.option;
  const others = options.filter(
    (option) => !option.blocked && option.check !== advised.check && (lookedAt?.has(option.check) ?? true),
  );
  const second = others.reduce<CheckOption | null>((a, b) => (a && a.saves >= b.saves ? a : b), null);
  if (!second) return null;
  return {
    check: second.check,
    worseBy: costMore(advised, second, ahead),
    equal: Math.abs(advised.saves - second.saves) <= tieMinutes(actNow.cost),
  };
}

/** By how much one check comes dearer than another. */
export function costMore(than: CheckOption, check: CheckOption, ahead: LookedAhead | null): number {
  const inTheEnd = (option: CheckOption): number | undefined =>
    ahead?.checks.find((each) => each.check === option.check)?.cost;
  const [own, other] = [inTheEnd(check), inTheEnd(than)];
  return own !== undefined && other !== undefined ? own - other : than.saves - check.saves;
}
