import type { Problem } from '../problem.ts';

/** Something wrong with a pack, said so that whoever made it can mend it. */
export interface PackProblem {
  readonly level: 'error' | 'warning';
  /** Names the fault; kebab-case, never reused. */
  readonly code: string;
  /** Path inside the pack, as it was written there; the pack itself is "the pack". */
  readonly file: string;
  /** Counted from 1; null where the fault is of the file as a whole. */
  readonly line: number | null;
  /** What is wrong, what was found, what is allowed and what to do. */
  readonly message: string;
}

/** A fault of a file as a whole. */
export function packError(code: string, file: string, message: string): PackProblem {
  return { level: 'error', code, file: shortPath(file), line: null, message };
}

/** A fault of the tree reader or the lint as a fault of the pack. */
export function fromProblem({ level, code, file, line, message }: Problem): PackProblem {
  return { level, code, file, line, message };
}

/** A path as it may be shown: a hostile one can be long or hold what no screen shows. */
export function shortPath(path: string): string {
  const plain = path.replace(/[^\x20-\x7e]/g, '?');
  return plain.length > 80 ? `${plain.slice(0, 79)}…` : plain;
}
