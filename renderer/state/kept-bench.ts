/** What the bench holds, kept over a reload of the window: on this machine alone, never in a visit. */
import * as v from 'valibot';
import type { PressureMark } from '../../shared/measuring/index.ts';
import type { Entry } from '../presenters/bench/form.ts';
import { keepText, keptText } from './kept-text.ts';

export interface KeptBench {
  readonly page: string;
  readonly entries: Readonly<Record<string, Entry>>;
  readonly choices: Readonly<Record<string, string>>;
  readonly marks: readonly PressureMark[];
  readonly holdFrom: number | null;
  readonly taps: readonly number[];
  readonly measuredFor: string | null;
}

const KEY = 'droplight-bench';
const text = v.pipe(v.string(), v.maxLength(200));
const number = v.pipe(v.number(), v.finite());
const kept = v.strictObject({
  page: text,
  entries: v.record(text, v.strictObject({ text, unit: v.nullable(text) })),
  choices: v.record(text, text),
  marks: v.pipe(v.array(v.strictObject({ timeS: number, pressurePsi: number })), v.maxLength(1000)),
  holdFrom: v.nullable(number),
  taps: v.pipe(v.array(number), v.maxLength(1000)),
  measuredFor: v.nullable(text),
});

/** Null where nothing was kept, or what was kept is not what this program writes. */
export function keptBench(): KeptBench | null {
  const written = keptText(KEY);
  if (written === null) return null;
  try {
    const parsed = v.safeParse(kept, JSON.parse(written));
    return parsed.success ? parsed.output : null;
  } catch (problem) {
    if (problem instanceof SyntaxError) return null;
    throw problem;
  }
}

export function keepBench(bench: KeptBench): void {
  keepText(KEY, JSON.stringify(bench));
}
