/** What somebody's own words say beyond the complaint: results of checks, to be confirmed by them. */
import { editDistance } from '../units/index.ts';
import { DOUBT, factWords, type FactWord } from './fact-words.ts';
import { rootOf } from './search.ts';
import type { Check, Result, Tree } from './tree.ts';

/** A result that the words name. Never a finding until the person has confirmed it. */
export interface SaidFact {
  readonly check: string;
  readonly result: string;
  /** Piece of the words that says so, [from, to) in UTF-16 units. */
  readonly span: readonly [number, number];
  /** From `SURE_ENOUGH` to 1: 1 when a phrase stands there word for word. Judgement; only the order means something. */
  readonly sure: number;
}

/** A check that can be answered from memory, and which of its results may be. */
export interface RecalledCheck {
  readonly check: Check;
  readonly results: readonly Result[];
}

type Asked = Pick<Tree, 'causes' | 'checks' | 'stopRules'>;

/** Below this a match is not offered. Judgement, as the next three; set by the sentences that the tests keep. */
const SURE_ENOUGH = 0.6;
/** What each word that stands between costs. */
const BETWEEN = 0.1;
/** What a label weighs beside a phrase that was written to be found. */
const LABEL = 0.15;
/** What it costs that the words stand in another order. */
const ORDER = 0.1;
/** A phrase of one word is taken only when that word has so many letters. */
const LETTERS_ALONE = 5;

/**
 * Results of the tree's owner-level checks that the words name. Left out: measuring checks, checks done at a place that
 * would have to be named, checks that something else must come before, and whatever is said of a check in two ways.
 *
 * @param words  the owner's own, as typed.
 * @param looked  ids of stop rules that somebody has looked at and answered with no.
 * @returns in the order of the words; one result a check at most.
 */
export function factsIn(words: string, tree: Asked, looked: readonly string[] = []): SaidFact[] {
  const facts: SaidFact[] = [];
  const { apart, whole } = clausesIn(words);
  for (const check of tree.checks) {
    if (!check.who.startsWith('owner') || check.measure || check.site !== undefined || check.requires.length > 0)
      continue;
    const found = offeredResults(check, tree, looked).flatMap((result) => {
      const best = phrasesOf(result, check)
        .flatMap((phrase) => (phrase.joined ? whole : apart).flatMap((clause) => matchIn(clause, phrase) ?? []))
        .sort((a, b) => b.weight - a.weight)[0];
      return best ? [{ result: result.id, ...best }] : [];
    });
    const [first, second] = found.sort((a, b) => b.weight - a.weight);
    if (!first || (second && second.weight >= first.weight)) continue;
    // Said in two ways at two places, such as "quiet cold, quiet hot": nobody knows which is meant.
    if (second && (second.span[0] >= first.span[1] || first.span[0] >= second.span[1])) continue;
    facts.push({ check: check.id, result: first.result, span: first.span, sure: first.sure });
  }
  return facts.sort((a, b) => a.span[0] - b.span[0]);
}

/**
 * Checks that an owner can answer without going anywhere: nothing but memory is needed, and it is written how owners
 * say it.
 *
 * @param looked  ids of stop rules that somebody has looked at and answered with no.
 */
export function recalledChecks(tree: Asked, looked: readonly string[] = []): RecalledCheck[] {
  return tree.checks
    .filter(
      (check) =>
        check.who === 'owner-no-tools' &&
        check.tools.length === 0 &&
        !check.measure &&
        check.site === undefined &&
        check.requires.length === 0 &&
        check.hazards.every((hazard) => hazard === 'road' || hazard === 'runs') &&
        check.results.some(({ says }) => says !== undefined),
    )
    .map((check) => ({ check, results: offeredResults(check, tree, looked) }))
    .filter(({ results }) => results.length > 0);
}

/**
 * What somebody remembers may raise an alarm, but never takes the place of a look: of a check that a stop rule rests on,
 * or that settles a cause that can hurt people, only what fires the rule is left, until somebody has looked.
 */
function offeredResults(check: Check, tree: Asked, looked: readonly string[]): readonly Result[] {
  const rules = tree.stopRules.filter(
    ({ verdict, firedBy }) => verdict !== 'drive-and-book' && firedBy.some((entry) => entry.check === check.id),
  );
  const settlesDanger = check.settles.some((id) => tree.causes.find((cause) => cause.id === id)?.hazard === 'danger');
  if (!settlesDanger && rules.every(({ id }) => looked.includes(id))) return check.results;
  const fires = rules.flatMap(({ firedBy }) =>
    firedBy.filter((entry) => entry.check === check.id).flatMap(({ results }) => results),
  );
  return check.results.filter(({ id }) => fires.includes(id));
}

interface Phrase {
  readonly words: readonly FactWord[];
  readonly label: boolean;
  /** It says "and", "or" or "between" itself, so clauses are not parted at "and". */
  readonly joined: boolean;
}

/** The phrases of a result stay the same however often somebody's words are held against them. */
const known = new WeakMap<Check, Map<Result, readonly Phrase[]>>();

function phrasesOf(result: Result, check: Check): readonly Phrase[] {
  const ofCheck = known.get(check) ?? new Map<Result, readonly Phrase[]>();
  known.set(check, ofCheck);
  const phrases = ofCheck.get(result) ?? readPhrases(result, check);
  ofCheck.set(result, phrases);
  return phrases;
}

function readPhrases({ label, says = [] }: Result, check: Check): readonly Phrase[] {
  const read = (text: string, isLabel: boolean): Phrase => ({
    words: factWords(text, rootOf),
    label: isLabel,
    joined: /\b(and|or|between)\b/.test(text),
  });
  // A label whose words other results of the check use too does not tell them apart.
  const others = check.results.filter((each) => each.label !== label).map((each) => read(each.label, true).words);
  return [
    ...says.map((text) => read(text, false)).filter(({ words }) => words.length > 1 || longEnough(words)),
    ...label
      .split(/[;:,(]/)
      .map((text) => read(text, true))
      .filter(({ words }) => words.filter(({ soft, polarity }) => !soft && !polarity).length >= 3)
      .filter(({ words }) => !others.some((other) => words.every((word) => other.some((each) => alike(word, each))))),
  ];
}

function longEnough(words: readonly FactWord[]): boolean {
  return words.some(({ plain }) => plain.length >= LETTERS_ALONE);
}

/** The clauses of a text: parted at "and" and "or", and not. Doubt and questions are left out. */
function clausesIn(text: string): { readonly apart: FactWord[][]; readonly whole: FactWord[][] } {
  return { apart: clauses(text, true), whole: clauses(text, false) };
}

const PARTS = /[.;!\n]+|,|(?<=\?)|\s[-–—]+\s|\b(?:but|though|although|whereas|however|yet)\b/g;
const PARTS_AND = new RegExp(`${PARTS.source}|\\b(?:and|or|then)\\b`, 'g');
/** "When I lean right, it swells": what comes before the comma belongs to what comes after. */
const LEADS = /^\s*(?:when|whenever|if|once|after|as|while|on|in|at|since|ever since|every time|under|during)\b/i;

function clauses(text: string, partAtAnd: boolean): FactWord[][] {
  const pieces: [number, number][] = [];
  let from = 0;
  for (const match of text.matchAll(partAtAnd ? PARTS_AND : PARTS)) {
    // A leading clause goes on past its comma.
    if (match[0] === ',' && LEADS.test(text.slice(from, match.index))) continue;
    pieces.push([from, match.index]);
    from = match.index + match[0].length;
  }
  pieces.push([from, text.length]);
  return pieces
    .filter(([a, b]) => !DOUBT.test(text.slice(a, b)))
    .map(([a, b]) =>
      factWords(text.slice(a, b), rootOf).map((word) => ({ ...word, from: word.from + a, to: word.to + a })),
    );
}

interface Match {
  readonly span: readonly [number, number];
  readonly sure: number;
  /** More and rarer words weigh more, so that a fuller phrase beats a shorter one. */
  readonly weight: number;
}

/** The best place of a phrase in a clause: all its words close together, and no word that turns it round. */
function matchIn(clause: readonly FactWord[], phrase: Phrase): Match | null {
  let best: Match | null = null;
  for (let start = 0; start < clause.length; start++) {
    if (!phrase.words.some((word) => alike(word, clause[start]!))) continue;
    const end = closeOf(clause, start, phrase.words);
    if (end === null) continue;
    const window = clause.slice(start, end + 1);
    const between = window.filter((word) => !word.soft).length - phrase.words.filter((word) => !word.soft).length;
    if (between > slackOf(phrase)) continue;
    // What is denied before "since" is the complaint, not the time.
    const before = isTime(phrase.words[0]) ? [] : clause.slice(Math.max(0, start - 2), start);
    if ([...before, ...window].some((word) => word.polarity && !phrase.words.some((each) => alike(each, word))))
      continue;
    const inOrder = phrase.words.every(
      (word, i) => i === 0 || place(window, word) >= place(window, phrase.words[i - 1]!),
    );
    if (!inOrder && !bears(window, phrase)) continue;
    const sure = 1 - Math.max(0, between) * BETWEEN - (phrase.label ? LABEL : 0) - (inOrder ? 0 : ORDER);
    const weight = phrase.words.length + sure;
    if (sure >= SURE_ENOUGH && (!best || weight > best.weight))
      best = { span: [window[0]!.from, window.at(-1)!.to], sure, weight };
  }
  return best;
}

/**
 * Whether a phrase may stand there in another order than its own: not with "since", which takes what follows it, and not
 * with an "only" that comes late, for that belongs to something else.
 */
function bears(window: readonly FactWord[], { words }: Phrase): boolean {
  if (words.some(isTime)) return false;
  return !words.some(({ plain }) => plain === 'only') || window.slice(0, 2).some(({ plain }) => plain === 'only');
}

function isTime(word: FactWord | undefined): boolean {
  return word?.plain === 'since' || word?.plain === 'after';
}

function place(window: readonly FactWord[], word: FactWord): number {
  return window.findIndex((each) => alike(word, each));
}

/** Words that may stand between those of a phrase: none in a short "only …", for "only" belongs to what follows it. */
function slackOf({ words, label }: Phrase): number {
  if (label) return 0;
  if (words.length === 2) return words.some(({ plain, soft }) => soft || plain === 'only') ? 0 : 1;
  return words.length === 3 ? 2 : 3;
}

/** Index of the word that completes the phrase, beginning at `start`; null when it is never complete. */
function closeOf(clause: readonly FactWord[], start: number, words: readonly FactWord[]): number | null {
  const missing = [...words];
  for (let i = start; i < clause.length; i++) {
    const at = missing.findIndex((word) => alike(word, clause[i]!));
    if (at >= 0) missing.splice(at, 1);
    if (missing.length === 0) return i;
  }
  return null;
}

function alike(a: FactWord, b: FactWord): boolean {
  return a.means.some((one) => b.means.includes(one) || b.means.some((other) => slip(one, other)));
}

/** One letter wrong in a long word. */
function slip(a: string, b: string): boolean {
  return a.length >= 7 && b.length >= 7 && a !== b && Math.abs(a.length - b.length) <= 1 && editDistance(a, b) <= 1;
}
