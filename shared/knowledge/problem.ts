/** Something wrong with a knowledge file, said so that its author can mend it. */
export interface Problem {
  readonly level: 'error' | 'warning';
  /** Names the fault; kebab-case, never reused. */
  readonly code: string;
  /** Path as given to the reader. */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
  /** What is wrong (found, allowed, nearest) and what to do. */
  readonly message: string;
  /** The line of the file, with the width of the marked part. */
  readonly excerpt?: { readonly text: string; readonly width: number };
}

export interface ReadResult<T> {
  /** Null when there is any error. */
  readonly value: T | null;
  /** In the order of the file. */
  readonly problems: readonly Problem[];
}

/** One problem as printed: position, code, message, and the line with the place marked below it. */
export function formatProblem(problem: Problem): string {
  const head = `${problem.file}:${problem.line}:${problem.column} ${problem.level} ${problem.code}: ${problem.message}`;
  if (!problem.excerpt) return head;
  const number = String(problem.line);
  const bar = ' '.repeat(number.length + 2);
  const marks = ' '.repeat(problem.column - 1) + '^'.repeat(Math.max(1, problem.excerpt.width));
  return `${head}\n> ${number} | ${problem.excerpt.text}\n${bar} | ${marks}`;
}

/** Errors first by place, for printing. */
export function inFileOrder(problems: readonly Problem[]): Problem[] {
  return [...problems].sort((a, b) => a.file.localeCompare(b.file) || a.line - b.line || a.column - b.column);
}
