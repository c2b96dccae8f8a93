import { ROLES, type Tree } from '../../knowledge/tree.ts';
import type { Vocabulary } from '../../knowledge/vocabulary.ts';
import { defaultCosts } from '../costs.ts';
import type { ModelRow } from './model-report.ts';
import type { Counts, TreeRow } from './tree-report.ts';

/** A tree's row with what it was worked out from. */
export interface KeptTree extends TreeRow {
  /** Day on which it was worked out, ISO 8601. */
  readonly on: string;
  readonly counts: Counts;
  /** `figuresMark` of the tree at that time. */
  readonly mark: string;
}

/** The table that comes with the program; made by `npm run evaluate -- --keep`. */
export interface KeptEvaluation {
  readonly models: readonly ModelRow[];
  readonly modelsOn: string;
  readonly trees: readonly KeptTree[];
}

/**
 * A mark of the figures of tree, vocabulary and usual costs that an evaluation rests on, so that a kept table can be known
 * as older than they are. Texts, cautions and pictures do not count; nor do the rules of the program itself, which only
 * working out a part again can show to have changed.
 *
 * @source FNV-1a hash, 32 bits, over the text twice with different starts (public domain; from memory).
 */
export function figuresMark(tree: Tree, vocabulary: Vocabulary): string {
  const figures = JSON.stringify([
    tree.when,
    tree.unlistedShare,
    tree.causes.map(({ id, weight, weightIf, hazard, byExclusion, when, correction }) => [
      id,
      weight,
      weightIf,
      hazard,
      byExclusion,
      when,
      correction.hours,
      correction.access,
    ]),
    tree.checks.map((check) => [
      check.id,
      check.who,
      check.tools,
      check.minutes,
      check.access,
      check.when,
      check.hazards.length,
      check.group,
      check.requires,
      check.settles,
      check.results.map(({ id }) => id),
      check.likelihood,
    ]),
    tree.teaching.map(({ check }) => check),
    tree.stopRules.map(({ id, verdict, covers, firedBy }) => [id, verdict, covers, firedBy]),
    tree.proofs.map(({ after, minutes, access, sensitivity, specificity }) => [
      after,
      minutes,
      access,
      sensitivity,
      specificity,
    ]),
    vocabulary.access,
    vocabulary.tools.map(({ id, covers, usualFor }) => [id, covers, usualFor]),
    ROLES.map((role) => defaultCosts(role)),
    vocabulary.layout.map(({ id, usual, values }) => [id, usual, values.map(({ value }) => value)]),
  ]);
  return hash(figures, 0x811c9dc5) + hash(figures, 0x1234567);
}

function hash(text: string, start: number): string {
  let sum = start;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return sum.toString(16).padStart(8, '0');
}
