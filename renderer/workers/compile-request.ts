/** What the window and its worker say to each other while a tree is drawn up. */
import type { CompiledTree, Situation } from '../../shared/planning/index.ts';
import { compileTree } from '../../shared/planning/index.ts';

export interface CompileRequest {
  readonly situation: Situation;
  readonly threshold: number;
  /** What was really answered and found: its way is followed to the end. */
  readonly walked?: Pick<Situation, 'findings' | 'stopAnswers'>;
}

export type CompileNews =
  | { readonly kind: 'progress'; readonly made: number; readonly waiting: number }
  | { readonly kind: 'done'; readonly compiled: CompiledTree }
  | { readonly kind: 'failed'; readonly message: string };

/** Nodes between two messages of progress: often enough to be seen, seldom enough to cost nothing. */
const EVERY = 10;

/** Draws up the tree that was asked for and tells how it goes. What goes wrong is told too, so that nobody waits for ever. */
export function drawUp({ situation, threshold, walked }: CompileRequest, tell: (news: CompileNews) => void): void {
  try {
    const compiled = compileTree(situation, {
      threshold,
      ...(walked ? { walked } : {}),
      onProgress: (made, waiting) => {
        if (made % EVERY === 0) tell({ kind: 'progress', made, waiting });
      },
    });
    tell({ kind: 'done', compiled });
  } catch (problem) {
    tell({ kind: 'failed', message: problem instanceof Error ? problem.message : String(problem) });
  }
}
