import type { Path } from '../source-file.ts';
import type { Tree } from '../tree.ts';
import type { Vocabulary } from '../vocabulary.ts';

/** What a rule looks at. Shape, ids and sums are checked by the reader already. */
export interface LintSubject {
  readonly tree: Tree;
  readonly vocabulary: Vocabulary;
}

/** Names the thing a finding is about; an exception in the tree names the same. */
export type Report = (at: string, path: Path, message: string) => void;

/** One rule: what it looks for and how. */
export interface LintRule {
  /** Names the fault; kebab-case, never reused. */
  readonly code: string;
  readonly level: 'error' | 'warning';
  /** What it looks for, one sentence. */
  readonly looksFor: string;
  check(subject: LintSubject, report: Report): void;
}
