import * as v from 'valibot';
import { nearest } from '../units/index.ts';
import type { Path, SourceFile } from './source-file.ts';

type Schema = v.GenericSchema;

/** Shows a found value in a message: short, on one line. */
export function shown(value: unknown): string {
  const text = value === undefined ? 'nothing' : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/**
 * Holds the data of a file against a schema and reports every departure at its place.
 *
 * @returns the data with defaults filled in, or null when anything was reported.
 */
export function checkShape<T extends Schema>(file: SourceFile, schema: T, data: unknown): v.InferOutput<T> | null {
  const parsed = v.safeParse(schema, data);
  if (parsed.success) return parsed.output;
  // Keys missing from one group are one message: an author adds them in one go.
  const missing = new Map<string, { readonly at: Path; readonly keys: string[] }>();
  for (const issue of parsed.issues) {
    const path: Path = (issue.path ?? []).map((item) => item.key as string | number);
    const last = path.at(-1);
    if (issue.type === 'strict_object' && issue.expected === 'never') {
      const keys = keysAt(schema, data, path.slice(0, -1));
      const near = nearest(String(last), keys);
      file.error(
        'unknown-key',
        path,
        `"${String(last)}" is not a key here.${near ? ` Nearest: "${near}".` : ''} Allowed: ${keys.join(', ')}.`,
      );
    } else if (issue.received === 'undefined') {
      const at = path.slice(0, -1);
      const group = missing.get(JSON.stringify(at)) ?? { at, keys: [] };
      missing.set(JSON.stringify(at), group);
      group.keys.push(`"${String(last)}"`);
    } else {
      const near = issue.type === 'picklist' ? nearest(String(issue.input), optionsOf(issue)) : null;
      const where =
        typeof last === 'number'
          ? `entry ${String(last + 1)} of ${String(path.at(-2) ?? 'the list')}`
          : `"${last ?? 'the file'}"`;
      file.error(
        codeOf(issue.type),
        path,
        `${where} is ${shown(issue.input)}, wanted is ${wanted(issue)}.${near ? ` Nearest: "${near}".` : ''}`,
      );
    }
  }
  for (const { at, keys } of missing.values())
    file.error(
      'missing-key',
      at,
      keys.length === 1 ? `${keys[0]!} is missing here. Add it.` : `${keys.join(', ')} are missing here. Add them.`,
    );
  return null;
}

function codeOf(type: string): string {
  if (type === 'picklist' || type === 'literal') return 'not-allowed-value';
  if (['min_value', 'max_value', 'finite', 'integer'].includes(type)) return 'out-of-range';
  if (['regex', 'min_length'].includes(type)) return 'wrong-form';
  return 'wrong-type';
}

function wanted(issue: v.BaseIssue<unknown>): string {
  if (issue.kind === 'validation') return issue.message;
  if (issue.type === 'picklist') return `one of ${optionsOf(issue).join(', ')}`;
  const words: Readonly<Record<string, string>> = {
    string: 'text',
    number: 'a number',
    boolean: 'true or false',
    array: 'a list',
    Array: 'a list',
    Object: 'a group of keys',
    strict_object: 'a group of keys',
    record: 'a group of keys',
    tuple: 'a list of two',
  };
  return words[issue.type] ?? words[issue.expected ?? ''] ?? issue.expected ?? issue.message;
}

function optionsOf(issue: v.BaseIssue<unknown>): string[] {
  const requirement: unknown = 'requirement' in issue ? issue.requirement : undefined;
  if (Array.isArray(requirement)) return requirement.map(String);
  return (issue.expected ?? '')
    .replace(/^\(|\)$/g, '')
    .split(' | ')
    .map((option) => option.replaceAll('"', ''));
}

interface Unwrapped {
  readonly type?: string;
  readonly wrapped?: Unwrapped;
  readonly item?: Unwrapped;
  readonly value?: Unwrapped;
  readonly entries?: Readonly<Record<string, Unwrapped>>;
  readonly getter?: (input: unknown) => Unwrapped;
}

/** Keys that the schema allows in the object at a path: the schema is walked along the data. */
function keysAt(schema: Schema, data: unknown, path: Path): string[] {
  let at = unwrap(schema, data);
  let here = data;
  for (const step of path) {
    here = (here as Readonly<Record<string | number, unknown>> | undefined)?.[step];
    const next = at.item ?? at.entries?.[String(step)] ?? at.value;
    if (!next) return [];
    at = unwrap(next, here);
  }
  return Object.keys(at.entries ?? {});
}

function unwrap(schema: Unwrapped, data: unknown): Unwrapped {
  let at = schema;
  while (at.wrapped || at.getter) at = at.wrapped ?? at.getter!(data);
  return at;
}
