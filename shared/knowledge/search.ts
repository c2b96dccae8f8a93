import { editDistance } from '../units/index.ts';
import { familyOf, NEGATION, STOP_WORDS } from './everyday-words.ts';
import type { TreeCard } from './tree-card.ts';

/** A complaint that sounds like what was typed. */
export interface Hit {
  readonly complaint: string;
  /** Higher = more alike; only the order means something. */
  readonly score: number;
  /** How many of the typed words were found. */
  readonly words: number;
  /** The phrases of the tree that are most alike, with the matched pieces for underlining. */
  readonly phrases: readonly { readonly text: string; readonly spans: readonly (readonly [number, number])[] }[];
}

interface Entry {
  readonly id: string;
  /**
   * Root, or two neighbouring roots in one word (so that "hand brake" is "handbrake") → its share of the text of this
   * tree, weighted by field.
   */
  readonly share: ReadonlyMap<string, number>;
  readonly phrases: readonly { readonly text: string; readonly words: readonly Word[] }[];
}

export interface ComplaintIndex {
  readonly entries: readonly Entry[];
  /** Root or pair → mean of its shares over the trees. */
  readonly mean: ReadonlyMap<string, number>;
  /** Words as the trees write them → root. Slips are looked for here, for a slip in the ending spoils the root. */
  readonly written: ReadonlyMap<string, string>;
}

/** Weights of the places where a word may stand. Judgement. */
const FIELD = { title: 16, phrase: 3, cause: 1, check: 0.3 } as const;
/** What a word of the same family, a misspelt one, and a pair of neighbours are worth beside the word itself. */
const FAMILY = 0.6;
const TYPO = 0.8;
const PAIR = 1;
/** Share of a text below which a word says little: a few mentions in phrases. Judgement, as the figures above. */
const FAINT = 0.006;

/**
 * The root of an English word: lower case, common endings off. Short of a full stemmer on purpose; the same rule is used
 * on both sides, so only equality matters.
 */
export function rootOf(word: string): string {
  let root = word
    .toLowerCase()
    .replace(/[’']s?$/, '')
    .replace(/[^a-z0-9]/g, '');
  if (root.length > 5) root = root.replace(/(ings?|edly|ed|ly|ers?|iest|ier|es|s)$/, '');
  else if (root.length > 3) root = root.replace(/(es|s)$/, '');
  if (root.length > 3)
    root = root
      .replace(/(.)\1$/, '$1')
      .replace(/e$/, '')
      .replace(/y$/, 'i');
  return root;
}

const family = familyOf(rootOf);

interface Word {
  /** As written, in lower case. */
  readonly plain: string;
  readonly root: string;
  readonly from: number;
  readonly to: number;
}

function wordsIn(text: string): Word[] {
  return [...text.matchAll(/[\p{L}\p{N}’']+/gu)]
    .map((match) => ({
      plain: match[0].toLowerCase().replace('’', "'"),
      from: match.index,
      to: match.index + match[0].length,
    }))
    .filter(({ plain }) => !STOP_WORDS.has(plain))
    .map(({ plain, from, to }) => ({ plain, root: NEGATION.test(plain) ? 'not' : rootOf(plain), from, to }))
    .filter(({ root }) => root.length > 1);
}

/** Builds the word index over trees or their cards; new trees need no code. */
export function complaintIndex(trees: readonly Omit<TreeCard, 'confusedWith'>[]): ComplaintIndex {
  const written = new Map<string, string>();
  const entries = trees.map((tree): Entry => {
    const amount = new Map<string, number>();
    let length = 0;
    const add = (words: readonly Word[], weight: number): void => {
      length += weight * words.length;
      words.forEach(({ plain, root }, i) => {
        written.set(plain, root);
        amount.set(root, (amount.get(root) ?? 0) + weight);
        if (i === 0) return;
        const pair = words[i - 1]!.root + root;
        amount.set(pair, (amount.get(pair) ?? 0) + weight);
      });
    };
    const phrases = tree.phrases.map((text) => ({ text, words: wordsIn(text) }));
    add(wordsIn(tree.title), FIELD.title);
    for (const { words } of phrases) add(words, FIELD.phrase);
    for (const { name, plain } of tree.causes) {
      add(wordsIn(name), FIELD.cause);
      add(wordsIn(plain), FIELD.cause);
    }
    for (const { name } of tree.checks) add(wordsIn(name), FIELD.check);
    const share = new Map([...amount].map(([root, n]) => [root, n / Math.max(1, length)]));
    return { id: tree.id, share, phrases };
  });
  const mean = new Map<string, number>();
  for (const { share } of entries)
    for (const [root, n] of share) mean.set(root, (mean.get(root) ?? 0) + n / entries.length);
  return { entries, mean, written };
}

/**
 * Complaints that sound like somebody's own words, likeliest first. Word forms and slips of the finger are forgiven,
 * words of one family count for each other.
 *
 * @returns only complaints with at least one word in common.
 */
export function searchComplaints(index: ComplaintIndex, words: string): Hit[] {
  const said = wordsIn(words);
  const typed = said.map(({ plain, root }) => meantBy(root, plain, index));
  // Two neighbours that make one word, such as "hand brake", mean what that word means.
  const joined = said.slice(1).map(({ root }, i): Meant => {
    const pair = said[i]!.root + root;
    return family.has(pair) || index.mean.has(pair) ? meantBy(pair, pair, index) : new Map();
  });
  const hits = index.entries.map((entry) => hitFor(entry, typed, joined, index));
  return hits.filter(({ score }) => score > 0).sort((a, b) => b.score - a.score);
}

/** Roots that a typed word may stand for, each with what it is worth. */
type Meant = ReadonlyMap<string, number>;

function meantBy(root: string, plain: string, { mean, written }: ComplaintIndex): Meant {
  const meant = new Map<string, number>();
  const add = (one: string, worth: number): void => {
    for (const other of family.get(one) ?? []) meant.set(other, Math.max(meant.get(other) ?? 0, worth * FAMILY));
    meant.set(one, Math.max(meant.get(one) ?? 0, worth));
  };
  add(root, 1);
  // A word that some tree or family uses is no slip of another word.
  if (mean.has(root) || family.has(root)) return meant;
  for (const [other, its] of written) if (isSlip(plain, other)) add(its, TYPO);
  for (const other of family.keys()) if (isSlip(root, other)) add(other, TYPO);
  return meant;
}

function isSlip(a: string, b: string): boolean {
  const shorter = Math.min(a.length, b.length);
  return shorter >= 4 && Math.abs(a.length - b.length) <= 2 && editDistance(a, b) <= (shorter >= 7 ? 2 : 1);
}

function hitFor(entry: Entry, typed: readonly Meant[], joined: readonly Meant[], { mean }: ComplaintIndex): Hit {
  let score = 0;
  let words = 0;
  for (const meant of typed) {
    const best = bestOf(meant, entry, mean);
    score += best;
    if (best > 0) words += 1;
  }
  for (let i = 1; i < typed.length; i++) {
    let best = bestOf(joined[i - 1]!, entry, mean);
    for (const [a, worthA] of typed[i - 1]!)
      for (const [b, worthB] of typed[i]!) best = Math.max(best, worthA * worthB * weightOf(a + b, entry, mean));
    score += PAIR * best;
  }
  const phrases = entry.phrases
    .map(({ text, words: written }) => ({
      text,
      spans: written
        .filter(({ root }) => typed.some((meant) => meant.has(root)))
        .map(({ from, to }) => [from, to] as const),
    }))
    .filter(({ spans }) => spans.length > 0)
    .sort((a, b) => b.spans.length - a.spans.length)
    .slice(0, 3);
  return { complaint: entry.id, score, words, phrases };
}

function bestOf(meant: Meant, entry: Entry, mean: ReadonlyMap<string, number>): number {
  let best = 0;
  for (const [root, worth] of meant) best = Math.max(best, worth * weightOf(root, entry, mean));
  return best;
}

/** How strongly a root, or a pair, speaks for a tree: ln(1 + share here / share on average), less for a faint word. */
function weightOf(root: string, { share }: Entry, mean: ReadonlyMap<string, number>): number {
  const here = share.get(root);
  return here === undefined ? 0 : Math.log(1 + (here / mean.get(root)!) ** 2) * (here / (here + FAINT));
}
