import { nearestText } from '../../shared/knowledge/names.ts';

/** Something wrong with what was asked on the command line. Printed without a stack; exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** The value when it is one of those allowed. @throws {UsageError} naming the nearest. */
export function oneOf<T extends string>(value: string, allowed: readonly T[], what: string): T {
  const found = allowed.find((each) => each === value);
  if (found !== undefined) return found;
  const list = allowed.length <= 20 ? ` Allowed: ${allowed.join(', ')}.` : '';
  throw new UsageError(`${what} "${value}" does not exist.${nearestText(value, allowed)}${list}`);
}

/**
 * Runs a command line: a `UsageError` goes to standard error as one message and ends with exit code 2.
 */
export async function runCommand(main: () => Promise<number>): Promise<void> {
  try {
    process.exitCode = await main();
  } catch (problem) {
    if (!(problem instanceof UsageError)) throw problem;
    process.stderr.write(`${problem.message}\n`);
    process.exitCode = 2;
  }
}
