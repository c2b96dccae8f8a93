import type { Layout } from '../knowledge/layout.ts';
import type { Tree } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';
import { BASE, digits, payloadOf, valueOf, withCheck } from './code.ts';
import { hashOf } from './draw.ts';
import { layoutOfNumber, numberOfLayout } from './layouts.ts';
import { LEVELS, type Level } from './levels.ts';

/** A tree as practice knows it: with the hash of its content. */
export interface PracticeTree {
  readonly tree: Tree;
  readonly vocabulary: Vocabulary;
  /** 64 hex digits. */
  readonly hash: string;
}

/** Everything that decides an exercise. */
export interface Setting {
  readonly level: Level;
  /** 0 to SEEDS − 1. */
  readonly seed: number;
  readonly layout: Layout;
}

const COMPLAINT = 3;
const CONTENT = 2;
const SEED = 4;
/** Seeds that a code can carry. */
export const SEEDS = BASE ** SEED;

/** Characters by which a code names a complaint. */
export function complaintKey(id: string): string {
  return digits(hashOf(id) % BASE ** COMPLAINT, COMPLAINT);
}

function contentKey(hash: string): string {
  return digits(parseInt(hash.slice(0, 8), 16) % BASE ** CONTENT, CONTENT);
}

/** The code of an exercise: complaint, content of its tree, level, seed, and the layout unless it is the usual one. */
export function codeOf({ tree, vocabulary, hash }: PracticeTree, { level, seed, layout }: Setting): string {
  const number = numberOfLayout(tree, vocabulary, layout);
  const own = number === 0 ? '' : digits(number, Math.ceil(Math.log(number + 1) / Math.log(BASE) - 1e-9) || 1);
  return withCheck(
    `${complaintKey(tree.id)}${contentKey(hash)}${digits(LEVELS.indexOf(level), 1)}${digits(seed, SEED)}${own}`,
  );
}

/** Which of the complaints a code is for, before its tree has been read. */
export function complaintOfCode<T extends { readonly id: string; readonly hash: string }>(
  typed: string,
  known: readonly T[],
): { readonly complaint: T } | { readonly problem: string } {
  const { payload, problem } = payloadOf(typed);
  if (payload === null) return { problem };
  if (payload.length < COMPLAINT + CONTENT + 1 + SEED)
    return { problem: 'This code is too short: some of it is missing.' };
  const named = known.filter(({ id }) => complaintKey(id) === payload.slice(0, COMPLAINT));
  if (named.length === 0)
    return { problem: 'This code is for a complaint that this program does not know. Add its pack of trees first.' };
  const complaint = named.find(({ hash }) => contentKey(hash) === payload.slice(COMPLAINT, COMPLAINT + CONTENT));
  return complaint
    ? { complaint }
    : {
        problem:
          'This code was made with another version of the tree, and what it draws would not be the same. Take a fresh exercise, or the same version.',
      };
}

/** The setting of a code for the tree that `complaintOfCode` named. */
export function settingOfCode(
  typed: string,
  { tree, vocabulary }: PracticeTree,
): { readonly setting: Setting } | { readonly problem: string } {
  const { payload, problem } = payloadOf(typed);
  if (payload === null) return { problem };
  const at = COMPLAINT + CONTENT;
  const level = LEVELS[valueOf(payload.charAt(at))];
  const layout = layoutOfNumber(tree, vocabulary, valueOf(payload.slice(at + 1 + SEED)));
  if (level === undefined || layout === null)
    return { problem: 'This code names a level or a kind of coach that there is not. Take a fresh exercise.' };
  return { setting: { level, seed: valueOf(payload.slice(at + 1, at + 1 + SEED)), layout } };
}
