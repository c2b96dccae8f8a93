/** A round of one check over the places of this coach: what is filled in, and which place stands out. */
import { inHundred, readBands, standingOut, type Finding } from '../../shared/inference/index.ts';
import { placesOn, type Check } from '../../shared/knowledge/index.ts';
import { beliefNow, blockedAgain, type DriveVerdict, type Situation } from '../../shared/planning/index.ts';
import { formatQuantity, type UnitSystem } from '../../shared/units/index.ts';
import { findingValue, valueWords, type RoundEntry, type TrailFinding } from '../../shared/visit/index.ts';
import { parseReading } from './judged-reading.ts';

/** One row as it stands on the screen: a chosen result, or what was typed. */
interface RoundField {
  /** Result id, `NOT_SURE`, or empty. */
  readonly pick: string;
  readonly text: string;
}

export interface RoundFields {
  readonly unit: string;
  /** By place. */
  readonly rows: Readonly<Record<string, RoundField>>;
}

/** The choice of a row that could not be judged; no result has such an id. */
export const NOT_SURE = '?';

const EMPTY: RoundField = { pick: '', text: '' };

export function fieldOf({ rows }: RoundFields, place: string): RoundField {
  return rows[place] ?? EMPTY;
}

/** Fields with one row otherwise. */
export function withRow(fields: RoundFields, place: string, change: Partial<RoundField>): RoundFields {
  return { ...fields, rows: { ...fields.rows, [place]: { ...fieldOf(fields, place), ...change } } };
}

/** Fields with one result in every row that is still empty. */
export function restAs(fields: RoundFields, places: readonly string[], result: string): RoundFields {
  return places
    .filter((place) => isEmpty(fieldOf(fields, place)))
    .reduce((sofar, place) => withRow(sofar, place, { pick: result }), fields);
}

function isEmpty({ pick, text }: RoundField): boolean {
  return pick === '' && text.trim() === '';
}

/** The places of a check on this coach; none when it is done once. */
export function placesOf({ site }: Check, { layout }: Pick<Situation, 'layout'>): readonly string[] {
  return site === undefined ? [] : placesOn(site, layout);
}

/** Places of a check that was made at some of them and can be made at the others as things stand; none otherwise. */
export function placesLeft(
  check: Check,
  trail: readonly TrailFinding[],
  situation: Situation,
  verdict: DriveVerdict,
): readonly string[] {
  const made = trail.flatMap(({ check: of, site }) => (of === check.id ? (site ?? []) : []));
  if (made.length === 0 || blockedAgain(check, situation, verdict)) return [];
  return placesOf(check, situation).filter((place) => !made.includes(place));
}

/** Results that a row offers: all, or of a measuring check those that are no band. */
export function picksOf(check: Check): Check['results'] {
  return check.measure ? check.results.filter(({ range }) => range === null) : check.results;
}

/** The result most often found at a place, before anything is known of this coach; null when it has to be measured. */
export function usualPick(check: Check, situation: Situation): Check['results'][number] | null {
  if (check.measure) return null;
  const expected = beliefNow(situation).model.tables.get(check.id)?.expected;
  if (!expected) return null;
  return check.results.reduce((best, result) =>
    expected[check.results.indexOf(result)]! > expected[check.results.indexOf(best)]! ? result : best,
  );
}

export interface FilledRound {
  /** In the order of the places; what is doubtful is left out. */
  readonly entries: readonly RoundEntry[];
  /** By place. */
  readonly doubts: Readonly<Record<string, string>>;
}

/** What the rows say, as it would be recorded; empty rows say nothing. */
export function filledRound(
  check: Check,
  fields: RoundFields,
  places: readonly string[],
  { vocabulary }: Pick<Situation, 'vocabulary'>,
): FilledRound {
  const entries: RoundEntry[] = [];
  const doubts: Record<string, string> = {};
  for (const place of places) {
    const { pick, text } = fieldOf(fields, place);
    if (pick !== '' && text.trim() !== '') doubts[place] = 'Both a reading and a choice: take one of them out.';
    else if (pick === NOT_SURE) entries.push({ place, value: { kind: 'not-sure' } });
    else if (pick !== '') entries.push({ place, value: { kind: 'result', result: pick } });
    else if (text.trim() !== '') {
      const { reading, doubt } = parseReading(check, text, fields.unit, vocabulary);
      if (reading) entries.push({ place, value: { kind: 'reading', reading } });
      else if (doubt !== null) doubts[place] = doubt;
    }
  }
  return { entries, doubts };
}

/** Which place stands out, and why. */
export interface RoundSaid {
  readonly words: string;
  /** Places of the round that stand out beside the others. */
  readonly odd: readonly string[];
  /** Place of the round that counts for the belief; null when none does. */
  readonly first: string | null;
}

/**
 * What the filled rows come to, by the rule of the belief. Findings of the check at other places count as they stand, so that
 * the line and the belief after recording say the same.
 */
export function roundSaid(
  check: Check,
  entries: readonly RoundEntry[],
  situation: Situation,
  system: UnitSystem,
): RoundSaid {
  const now = entries.flatMap(({ place, value }): Finding[] => {
    const used = findingValue(check, value, situation.vocabulary);
    return used ? [{ id: place, check: check.id, value: used, site: place }] : [];
  });
  const { model, findings } = beliefNow(situation);
  const before = findings.filter(
    (finding) => finding.check === check.id && !now.some(({ site }) => site === finding.site),
  );
  const all = standingOut(model, check.id, [...now, ...before]);
  const first = standingOut(model, check.id, now)?.counts.site ?? null;
  const plain = (words: string): RoundSaid => ({ words, odd: [], first });
  if (!all) return plain('Places left empty are not recorded.');
  const { counts, odd, why, share, middle } = all;
  const earlier = before.includes(counts)
    ? ` What was found before${counts.site === undefined ? ', without a place,' : ''} still counts.`
    : '';
  if (now.length + before.length < 2) return plain('One place so far. Places left empty are not recorded.');
  const inUnit = (value: number): string => formatQuantity(value, check.measure?.unit ?? '', system);
  const between = middle === null ? '' : ` The middle of all is ${inUnit(middle)}.`;
  if (why === 'farthest')
    return plain(
      `No place stands out by its result. Farthest from the middle: ${where([counts])}.${between}${earlier}`,
    );
  if (why === 'alike') return plain(`No place stands out: all say the same, and that counts once.${between}${earlier}`);
  const read = counts.value.kind === 'reading' ? ` (${inUnit(counts.value.value)})` : '';
  return {
    words: `${capital(where(odd))} ${odd.length === 1 ? 'stands' : 'stand'} out: “${labelOf(check, counts)}”${read} is the least to be expected, about ${inHundred(share)} in 100 looks before anything is known.${between}${earlier}`,
    odd: odd.flatMap(({ site }) => (now.some((finding) => finding.site === site) ? (site ?? []) : [])),
    first,
  };
}

function labelOf(check: Check, { value }: Finding): string {
  const id =
    value.kind === 'result'
      ? value.result
      : value.kind === 'reading'
        ? readBands(check, value.value, value.uncertainty, value.range).result
        : value.kind === 'not-sure'
          ? value.leaning
          : undefined;
  return check.results.find((result) => result.id === id)?.label ?? 'not sure';
}

function where(findings: readonly Finding[]): string {
  const words = findings.map(({ site }) => site ?? 'no named place');
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What stands at each place already, in words. */
export function recordedAt(
  check: Check,
  trail: readonly TrailFinding[],
  system: UnitSystem,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    trail.flatMap(({ check: of, site, value }) =>
      of === check.id && site !== undefined ? [[site, valueWords(check, value, system)]] : [],
    ),
  );
}
