import type { Tree, Vocabulary } from '../../shared/knowledge/index.ts';
import type { Trial } from '../../shared/planning/evaluation/trial.ts';

/** What the worker is asked. */
export interface TrialAsked {
  readonly tree: Tree;
  readonly vocabulary: Vocabulary;
  readonly coaches: number;
  readonly seed: number;
}

/** What it tells, progress from 0 to 1. */
export type TrialTold =
  { readonly kind: 'progress'; readonly share: number } | { readonly kind: 'done'; readonly trial: Trial };
