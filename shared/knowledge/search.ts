import { editDistance } from '../units/index.ts';
import { familyOf, STOP_WORDS } from './everyday-words.ts';
import type { Tree } from './tree.ts';

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
  /** Root → weight of the field it stands in, the highest. */
  readonly roots: ReadonlyMap<string, number>;
  readonly pairs: ReadonlySet<string>;
  readonly phrases: readonly string[];
}

export interface ComplaintIndex {
  readonly entries: readonly Entry[];
  /** Root → ln((1 + N) / (number of complaints that have it)). */
  readonly rarity: ReadonlyMap<string, number>;
}

/** Weights of the places where a word may stand. Judgement. */
const FIELD = { title: 3, phrase: 2, cause: 1, check: 0.4 } as const;
/** What a word of the same family, and a misspelt one, are worth beside the word itself. Judgement. */
const FAMILY = 0.6;
const TYPO = 0.8;
const PAIR = 1.5;

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
    .map(({ plain, from, to }) => ({ root: rootOf(plain), from, to }))
    .filter(({ root }) => root.length > 1);
}

/** Builds the word index over trees; new trees need no code. */
export function complaintIndex(trees: readonly Tree[]): ComplaintIndex {
  const entries = trees.map((tree): Entry => {
    const roots = new Map<string, number>();
    const pairs = new Set<string>();
    const add = (text: string, weight: number): void => {
      const words = wordsIn(text);
      words.forEach(({ root }, i) => {
        roots.set(root, Math.max(roots.get(root) ?? 0, weight));
        if (i > 0 && weight >= FIELD.phrase) pairs.add(`${words[i - 1]!.root} ${root}`);
      });
    };
    add(tree.title, FIELD.title);
    for (const phrase of tree.phrases) add(phrase, FIELD.phrase);
    for (const { name, plain } of tree.causes) add(`${name} ${plain}`, FIELD.cause);
    for (const { name } of tree.checks) add(name, FIELD.check);
    return { id: tree.id, roots, pairs, phrases: tree.phrases };
  });
  const count = new Map<string, number>();
  for (const { roots } of entries) for (const root of roots.keys()) count.set(root, (count.get(root) ?? 0) + 1);
  return { entries, rarity: new Map([...count].map(([root, n]) => [root, Math.log((1 + entries.length) / n)])) };
}

/**
 * Complaints that sound like somebody's own words, likeliest first. Word forms and slips of the finger are forgiven,
 * words of one family count for each other.
 *
 * @returns only complaints with at least one word in common.
 */
export function searchComplaints(index: ComplaintIndex, words: string): Hit[] {
  const typed = wordsIn(words);
  const hits = index.entries.map((entry) => hitFor(entry, typed, index));
  return hits.filter(({ score }) => score > 0).sort((a, b) => b.score - a.score);
}

function hitFor(entry: Entry, typed: readonly Word[], { rarity }: ComplaintIndex): Hit {
  let score = 0;
  let words = 0;
  for (const { root } of typed) {
    const found = bestMatch(root, entry.roots, rarity);
    score += found;
    if (found > 0) words += 1;
  }
  for (let i = 1; i < typed.length; i++) if (entry.pairs.has(`${typed[i - 1]!.root} ${typed[i]!.root}`)) score += PAIR;
  const phrases = entry.phrases
    .map((text) => ({
      text,
      spans: wordsIn(text)
        .filter((word) => typed.some((each) => alike(each.root, word.root) >= FAMILY))
        .map(({ from, to }) => [from, to] as const),
    }))
    .filter(({ spans }) => spans.length > 0)
    .sort((a, b) => b.spans.length - a.spans.length)
    .slice(0, 3);
  return { complaint: entry.id, score, words, phrases };
}

function bestMatch(root: string, roots: ReadonlyMap<string, number>, rarity: ReadonlyMap<string, number>): number {
  const exact = roots.get(root);
  let best = exact === undefined ? 0 : exact * rarity.get(root)!;
  for (const [other, weight] of roots) {
    if (other === root) continue;
    const value = weight * rarity.get(other)!;
    // A word that some tree uses is no slip of another word.
    if (value > best) best = Math.max(best, alike(root, other, !rarity.has(root)) * value);
  }
  return best;
}

/** How far two roots stand for the same: 1 the same, then a slip, then the same family, 0 not. */
function alike(a: string, b: string, slips = true): number {
  if (a === b) return 1;
  if (
    slips &&
    a.length >= 4 &&
    b.length >= 4 &&
    Math.abs(a.length - b.length) <= 2 &&
    editDistance(a, b) <= (Math.min(a.length, b.length) >= 7 ? 2 : 1)
  )
    return TYPO;
  return family.get(a)?.has(b) ? FAMILY : 0;
}
