import {
  COACH_FIELDS,
  derivedWords,
  FIELD_GROUPS,
  layoutFields,
  MEASURES,
  type CoachField,
  type CoachProfile,
  type FieldGroup,
  type FieldUse,
  type KnownValue,
} from '../../shared/coach/index.ts';
import { answerWords, type LayoutFeature } from '../../shared/knowledge/index.ts';
import type { PastVisit } from '../../shared/host/host-api.ts';

export const GROUP_WORDS: Readonly<Record<FieldGroup, string>> = {
  layout: 'How it is built',
  axles: 'Axles, tyres, brakes',
  drive: 'Ratios and engine',
  air: 'Air tanks and build date',
  fluids: 'Fluids in use',
  service: 'Odometer and service dates',
  book: 'Figures of the book',
};

const BENCH_PAGES: Readonly<Record<string, string>> = {
  stroke: 'Pushrod stroke',
  build: 'Build-up and tanks',
  bands: 'Governor, warning, knob',
  flow: 'Leak as a flow',
  lining: 'Lining, drum, wear',
  heat: 'Wheel ends compared',
  orders: 'What turns how fast',
};

export interface FieldRow {
  readonly field: CoachField;
  /** As known, with its unit; null = not known. */
  readonly known: string | null;
  /** Since when, and by whom. */
  readonly since: string;
  readonly derived: string | null;
  readonly uses: string;
}

export interface FieldSection {
  readonly group: FieldGroup;
  readonly title: string;
  readonly known: readonly FieldRow[];
  /** Nobody has said yet. */
  readonly open: readonly FieldRow[];
}

/**
 * Every field of a profile in its section.
 *
 * @param find  words that a row must have; empty = all.
 * @param today  calendar day, for ages.
 */
export function fieldSections(
  profile: CoachProfile,
  features: readonly LayoutFeature[],
  {
    find,
    today,
    checkName,
  }: { readonly find: string; readonly today: string; readonly checkName: (id: string) => string | undefined },
): readonly FieldSection[] {
  const wanted = find.trim().toLowerCase();
  const all = [...layoutFields(features), ...COACH_FIELDS];
  return FIELD_GROUPS.flatMap((group): FieldSection[] => {
    const rows = all
      .filter((field) => field.group === group)
      .map((field) => row(field, profile, today, checkName))
      .filter(({ field, uses, known }) => `${field.words} ${uses} ${known ?? ''}`.toLowerCase().includes(wanted));
    if (rows.length === 0) return [];
    return [
      {
        group,
        title: GROUP_WORDS[group],
        known: rows.filter(({ known }) => known !== null),
        open: rows.filter(({ known }) => known === null),
      },
    ];
  });
}

function row(
  field: CoachField,
  profile: CoachProfile,
  today: string,
  checkName: (id: string) => string | undefined,
): FieldRow {
  const known = profile.values[field.id];
  return {
    field,
    known: known ? knownWords(field, known) : null,
    since: known ? [`known for ${known.on}`, known.by].filter((text) => text !== '').join(', ') : '',
    derived: derivedWords(field, profile, today),
    uses: [...new Set(field.uses.map((use) => useWords(use, checkName)))].join('; '),
  };
}

/** A value with its unit, as typed. */
export function knownWords(field: CoachField, { value, unit }: KnownValue): string {
  if (typeof value !== 'number' && field.kind === 'choice') return answerWords(field, value) ?? String(value);
  if (typeof value !== 'number' || field.kind !== 'figure') return String(value);
  const label = MEASURES[field.measure].find(({ id }) => id === unit)?.label ?? '';
  const figure = field.id.startsWith('built.')
    ? String(value)
    : value.toLocaleString('en-US', { maximumFractionDigits: 4 });
  return label === '' ? figure : `${figure} ${label}`;
}

function useWords(use: FieldUse, checkName: (id: string) => string | undefined): string {
  switch (use.kind) {
    case 'bench':
      return `Bench: ${BENCH_PAGES[use.page] ?? use.page}`;
    case 'layout':
      return 'Answers this question in every new visit';
    case 'check':
      return `Check: ${checkName(use.check) ?? use.check.replace(/^.*\//, '').replaceAll('-', ' ')}`;
    case 'said':
      return use.words;
  }
}

/** An earlier visit as a row of the history. */
export interface PastRow {
  readonly id: string;
  readonly day: string;
  readonly complaints: readonly { readonly title: string; readonly words: string; readonly end: string }[];
  readonly readings: number;
}

const ENDS = {
  cured: 'gone, and proven',
  'handed-over': 'handed over',
  'left-open': 'put aside without a proven cure',
} as const;

export function pastRows(
  visits: readonly PastVisit[],
  titleOf: (tree: string) => string | undefined,
  causeOf: (tree: string, cause: string) => string | undefined,
): readonly PastRow[] {
  return visits.map(({ id, openedAt, complaints, readings }) => ({
    id,
    day: openedAt.slice(0, 10),
    complaints: complaints.map(({ tree, words, closedHow, cause }) => {
      const end = closedHow === null ? 'not closed' : ENDS[closedHow];
      const corrected = cause === null ? '' : `; corrected: ${causeOf(tree, cause) ?? cause}`;
      return { title: titleOf(tree) ?? tree, words, end: `${end}${corrected}` };
    }),
    readings: readings.length,
  }));
}
