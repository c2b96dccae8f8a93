import { isOwner, type Role } from '../../shared/knowledge/index.ts';
import { defaultCosts, type Costs } from '../../shared/planning/index.ts';

/** One cost that a person can see and change. */
export interface CostRow {
  readonly id: keyof Costs;
  readonly words: string;
  readonly about: string;
  /** Minutes, or their money's worth, until somebody changes it. */
  readonly usual: number;
}

const WORKSHOP: readonly Omit<CostRow, 'usual'>[] = [
  {
    id: 'handOver',
    words: 'Handing the job to somebody else',
    about: 'call-out, second diagnosis, waiting',
  },
  {
    id: 'wrongPart',
    words: 'A wrong part',
    about: 'a part that may not go back, trust',
  },
  {
    id: 'comeBack',
    words: 'A complaint that comes back after a proof that seemed fine',
    about: 'a second visit, a lost trip',
  },
];
const OWNER: readonly Omit<CostRow, 'usual'>[] = [
  { id: 'tow', words: 'Being towed when it was not needed', about: 'tow, waiting, a lost trip' },
  { id: 'creep', words: 'Creeping to a safe place when it was not needed', about: 'delay' },
  { id: 'missDamage', words: 'Driving on with a fault that breaks more', about: 'what breaks' },
  {
    id: 'missDanger',
    words: 'Driving on with a fault that can hurt people',
    about: 'the advice can only get stricter by it, never milder',
  },
];

/** Costs that decide for a role, in the order in which they are asked. */
export function costRows(who: Role): readonly CostRow[] {
  const usual = defaultCosts(who);
  return [...WORKSHOP, ...(isOwner(who) ? OWNER : [])].map((row) => ({ ...row, usual: usual[row.id] }));
}

/** Most that a cost can be set to, minutes: a hundred working days. */
export const MOST_COST = 48_000;

/** Minutes as typed; null = the usual value; a string says what is wrong. */
export function readCost(text: string): number | null | string {
  if (text.trim() === '') return null;
  const minutes = Number(text.trim().replace(',', '.'));
  if (!Number.isFinite(minutes) || minutes < 0 || minutes > MOST_COST)
    return `“${text.trim()}” is not a number of minutes from 0 to ${MOST_COST}. Leave it empty for the usual value.`;
  return minutes;
}
