import * as v from 'valibot';
import { readPracticeRecord, workedExercises, type PracticeRecord, type WorkedExercise } from './log.ts';

export const LOG_FORMAT = 'droplight-practice-log/1';

/** Records of one file, at most: more than anybody chooses in years. */
const MOST_RECORDS = 100_000;

/** A learner's log as a file that is handed back to the instructor: JSON, one record a line, the head first. */
export function logFile(learner: string, records: readonly PracticeRecord[]): string {
  return `${[{ format: LOG_FORMAT, learner }, ...records].map((each) => JSON.stringify(each)).join('\n')}\n`;
}

export interface OpenedLog {
  readonly learner: string;
  readonly exercises: readonly WorkedExercise[];
  /** Lines that could not be read and were left out, from 1. */
  readonly leftOut: readonly number[];
}

const head = v.object({ format: v.literal(LOG_FORMAT), learner: v.pipe(v.string(), v.maxLength(80)) });

/** Opens such a file; a sentence when it is none. What arrives is somebody else's: every line is held against its form. */
export function openLogFile(text: string): { readonly log: OpenedLog } | { readonly problem: string } {
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  const first = v.safeParse(head, parsed(lines[0] ?? ''));
  if (!first.success)
    return {
      problem: `This is not a log of practice: its first line does not say ${LOG_FORMAT}. Choose the file that “Save the log” has made. Visits cannot be opened here.`,
    };
  if (lines.length > MOST_RECORDS)
    return { problem: `This file has ${lines.length} lines, at most ${MOST_RECORDS} are read.` };
  const records: PracticeRecord[] = [];
  const leftOut: number[] = [];
  lines.slice(1).forEach((line, i) => {
    if (line === '') return;
    const record = readPracticeRecord(parsed(line));
    if (record) records.push(record);
    else leftOut.push(i + 2);
  });
  const exercises = workedExercises(records);
  if (exercises.length === 0)
    return { problem: 'There is no exercise in this log. Work one, save the log again and open it then.' };
  return { log: { learner: first.output.learner, exercises, leftOut } };
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch (problem) {
    if (problem instanceof SyntaxError) return null;
    throw problem;
  }
}
