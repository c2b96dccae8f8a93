import { parseArgs, type ParseArgsConfig } from 'node:util';
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

/** A whole number as an option is written; the fallback when it is not. @throws {UsageError} naming what is wanted. */
export function wholeNumber(text: string | undefined, fallback: number, name: string): number {
  const value = text === undefined ? fallback : Number(text);
  if (!Number.isInteger(value) || value < 1 || value > 1_000_000)
    throw new UsageError(`--${name} is "${text ?? ''}", wanted is a whole number from 1 to 1000000.`);
  return value;
}

type Options = NonNullable<ParseArgsConfig['options']>;

/**
 * The options of the command line.
 *
 * @param use  what may be written, for the message.
 * @throws {UsageError} for an option that does not exist, naming the nearest, or one without its value.
 */
export function optionsOf<T extends Options>(options: T, use: string) {
  try {
    return parseArgs({ options, strict: true }).values;
  } catch (problem) {
    if (!(problem instanceof TypeError)) throw problem;
    const option = /'-{1,2}([^'\s]+)/.exec(problem.message)?.[1] ?? '';
    const near = option in options ? '' : nearestText(option, Object.keys(options));
    throw new UsageError(`${problem.message.split('.')[0]!}.${near} Use: ${use}`);
  }
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
