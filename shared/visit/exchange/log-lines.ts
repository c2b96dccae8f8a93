import * as v from 'valibot';
import { packError, type PackProblem } from '../../knowledge/pack/index.ts';
import { EVENT_VERSION } from '../events.ts';
import { EventError, isKnownKind, readEvent } from '../read-event.ts';
import { activePart } from './active-text.ts';
import { DEEPEST, LINE_BYTES } from './limits.ts';
import { PHOTO_NAME, type LogsOf } from './places.ts';

/** One entry of a log as it came, with its head checked. */
export type LogRecord = v.InferOutput<typeof head> & Readonly<Record<string, unknown>>;

export interface LogLines {
  readonly records: readonly LogRecord[];
  readonly problems: readonly PackProblem[];
}

const head = v.looseObject({
  id: v.pipe(v.string(), v.regex(/^[a-z0-9][a-z0-9-]{0,79}$/)),
  v: v.pipe(v.number(), v.integer(), v.minValue(1)),
  at: v.pipe(v.string(), v.maxLength(40)),
  by: v.pipe(v.string(), v.maxLength(80)),
  kind: v.pipe(v.string(), v.regex(/^[a-z]+(-[a-z]+)*(\.[a-z]+(-[a-z]+)*)+$/), v.maxLength(60)),
});

/**
 * Reads the log of one writer from elsewhere: every line an entry that this program takes.
 *
 * @param lenient  of a backup: what this program left out when it read its own disk is a remark and stays (EXC-8).
 * @param of       entries of a coach or learner have kinds of their own, which are looked at when it is opened.
 */
export function readLogLines(
  path: string,
  text: string,
  { lenient, of }: { readonly lenient: boolean; readonly of: LogsOf },
): LogLines {
  const records: LogRecord[] = [];
  const problems: PackProblem[] = [];
  const unknown = new Set<string>();
  const lines = text.split('\n');
  if (lines.pop() !== '')
    problems.push(packError('log-cut-off', path, 'The last line has no end: the file was cut off. Export it anew.'));
  lines.forEach((line, i) => {
    const fault = (code: string, message: string, keep = false): void => {
      problems.push({
        ...packError(code, path, message),
        line: i + 1,
        level: keep && lenient ? 'warning' : 'error',
      });
    };
    if (line.length > LINE_BYTES) {
      fault('entry-too-large', `The entry has ${line.length} letters; at most ${LINE_BYTES} are taken. Leave it out.`);
      return;
    }
    const record = headOf(line);
    if (typeof record === 'string') {
      fault('not-an-entry', `The line is no entry of a log: ${record} Export it anew.`);
      return;
    }
    if (of !== 'learners' && /^(practice|exercise|drill)\b/.test(record.kind)) {
      fault(
        'practice-log',
        `“${record.kind}” is an entry of practice: it tells of a simulated coach and is never taken for a visit.`,
      );
      return;
    }
    const active = firstActive(record);
    if (active !== null)
      fault(
        'script-in-text',
        `The entry “${record.id}” holds “${active}”, which could run or load something. Write it in plain words where it was made, and export it anew.`,
        true,
      );
    if (of === 'visits') {
      if (record.v <= EVENT_VERSION && !isKnownKind(record.kind)) unknown.add(record.kind);
      else {
        const wrong = eventFault(record);
        if (wrong) fault(wrong.code, wrong.message, true);
      }
    }
    records.push(record);
  });
  if (unknown.size > 0)
    problems.push({
      ...packError(
        'unknown-kind',
        path,
        `Entries of kinds that this version does not know (${[...unknown].sort().slice(0, 5).join(', ')}) are kept in the file and left out of what is shown. Bring this program up to date to see them.`,
      ),
      level: 'warning',
    });
  return { records, problems };
}

function eventFault(record: LogRecord): EventError | null {
  try {
    readEvent(record);
    return null;
  } catch (problem) {
    if (problem instanceof EventError) return problem;
    throw problem;
  }
}

/** An entry by its head, or what is wrong with the line. */
function headOf(line: string): LogRecord | string {
  let data: unknown;
  try {
    data = JSON.parse(line);
  } catch (problem) {
    if (problem instanceof SyntaxError) return 'it is no JSON.';
    throw problem;
  }
  if (deeper(data, DEEPEST)) return `it is nested more than ${DEEPEST} deep.`;
  const read = v.safeParse(head, data);
  if (read.success) return read.output;
  const issue = read.issues[0];
  return `“${issue.path?.map((item) => String(item.key)).join('.') ?? 'the entry'}” is ${issue.received.slice(0, 60)}.`;
}

function deeper(data: unknown, left: number): boolean {
  if (typeof data !== 'object' || data === null) return false;
  return left === 0 || Object.values(data).some((each) => deeper(each, left - 1));
}

function firstActive(data: unknown): string | null {
  for (const text of textsIn(data)) {
    const part = activePart(text);
    if (part !== null) return part;
  }
  return null;
}

/** Names of all photos that an entry speaks of, of whatever kind it is. */
export function photosNamed(record: unknown): string[] {
  return textsIn(record).filter((text) => PHOTO_NAME.test(text));
}

function textsIn(data: unknown): string[] {
  if (typeof data === 'string') return [data];
  return typeof data === 'object' && data !== null ? Object.values(data).flatMap(textsIn) : [];
}
