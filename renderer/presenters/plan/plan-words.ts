import { wordsForDecibans } from '../../../shared/inference/index.ts';
import { withNames, type Limit } from '../../../shared/knowledge/index.ts';
import { formatQuantity, type UnitSystem } from '../../../shared/units/index.ts';
import type {
  AccessStep,
  CostBand,
  PlanLine,
  ProofState,
  Reason,
  RenewProposal,
  Span,
  Urgency,
} from '../../../shared/visit/index.ts';

export const URGENCY_WORDS: Readonly<Record<Urgency, string>> = {
  now: 'before the coach travels',
  soon: 'soon',
  watch: 'watch it',
};

export const DECISION_WORDS = { agreed: 'Agreed', declined: 'Declined', deferred: 'Put off' } as const;

export const PROOF_WORDS: Readonly<Record<ProofState, string>> = {
  'to-do': 'still to do',
  'under-way': 'being done',
  unproven: 'done, not proven yet',
  held: 'done and proven',
  'did-not-hold': 'done, and it did not help',
  'not-done': 'not done: not agreed to',
};

/** Minutes as hours: "2.5", at most one decimal. */
export function hours(minutes: number): string {
  return String(Math.round(minutes / 6) / 10);
}

/** A span of minutes as hours. */
export function hoursWords([low, high]: Span): string {
  if (high === 0) return 'no time stated';
  return hours(low) === hours(high) ? `${hours(low)} h` : `${hours(low)}–${hours(high)} h`;
}

/** A stage's heading: what is opened, and where. */
export function stageWords(step: AccessStep | null): string {
  if (step === null) return 'As it stands';
  return step.place === '' ? step.name : `${step.name}, ${step.place}`;
}

/** A figure of money without a currency: nobody's is assumed. */
export function money(amount: number): string {
  return amount.toLocaleString('en', { maximumFractionDigits: amount < 10 ? 2 : 0 });
}

export function costWords({ low, high, unpriced }: CostBand): string {
  const band = money(low) === money(high) ? money(low) : `${money(low)} to ${money(high)}`;
  return unpriced.length === 0
    ? band
    : `${band}, without ${unpriced.length} part${unpriced.length === 1 ? '' : 's'} not priced`;
}

/** What was found, with its reading in the reader's units and its place. */
export function reasonWords({ text, reading, place }: Reason, system: UnitSystem): string {
  const figure = reading ? `: ${formatQuantity(reading.value, reading.unit, system)}` : '';
  return `${text}${figure}${place === undefined || place === '' ? '' : `, ${place}`}`;
}

/** How a finding speaks, in words; empty where nothing weighs it. */
export function weightWords({ decibans }: Reason): string {
  return decibans === undefined ? '' : wordsForDecibans(decibans);
}

/** Limits of reasons, each once. */
export function limitsOf(reasons: readonly Reason[], limit: (id: string) => Limit | undefined): Limit[] {
  return [...new Set(reasons.flatMap(({ limits }) => limits))].flatMap((id) => limit(id) ?? []);
}

const RULE_WORDS: Readonly<Record<RenewProposal['rule'], string>> = {
  renew: 'renew it',
  look: 'look at it',
  limit: 'hold it to its limit',
  weigh: 'weigh it',
};

/** What a proposal comes to, in a few words. */
export function proposalWords({ rule, advice }: RenewProposal): string {
  switch (advice) {
    case 'now':
      return 'renew it now: cheaper on these figures, whatever its life';
    case 'wait':
      return 'leave it: waiting is cheaper on these figures, whatever its life';
    case 'no-clear-winner':
      return 'no clear winner: within 20 in 100 of each other';
    case 'depends':
      return 'depends on its real life: see the three';
    default:
      return RULE_WORDS[rule];
  }
}

/** The line's texts with the names that its tree means by back-quoted ids. */
export function lineTitle({ title }: Pick<PlanLine, 'title'>, nameOf: (id: string) => string | undefined): string {
  return withNames(title, nameOf);
}

/** Widths of the two bars of a line's hours, of 100. */
export function hoursBars([low, high]: Span, most: number): { readonly sure: number; readonly more: number } {
  const scale = most > 0 ? 100 / most : 0;
  return { sure: low * scale, more: (high - low) * scale };
}

/** Where a line is; says so when that has to be known and is not. */
export function placeWords({ place, accessSteps }: Pick<PlanLine, 'place' | 'accessSteps'>): string {
  return place ?? (accessSteps.some((step) => step.place !== '') ? 'place not said' : '');
}

/** Id of a line's heading in the page; a place in the id of a line has spaces, which an id of a page must not have. */
export function lineAnchor(line: string): string {
  return `line-${line.replaceAll(/\s+/g, '_')}`;
}
