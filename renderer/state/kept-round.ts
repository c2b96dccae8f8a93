/** What was put into the table of a round, kept over a reload of the window: on this machine alone, never in a visit. */
import * as v from 'valibot';
import type { RoundFields } from '../presenters/round-view.ts';
import { keepText, keptText } from './kept-text.ts';

interface KeptRound {
  /** Complaint and check that it was filled in for. */
  readonly sheet: string;
  /** It is written: it comes back only when that is undone. */
  readonly written: boolean;
  readonly fields: RoundFields;
}

const KEY = 'droplight-round';
const text = v.pipe(v.string(), v.maxLength(200));
const kept = v.strictObject({
  sheet: text,
  written: v.boolean(),
  fields: v.strictObject({ unit: text, rows: v.record(text, v.strictObject({ pick: text, text })) }),
});

/**
 * Null where nothing was kept for this sheet, or what was kept is not what this program writes.
 *
 * @param found  findings of the check stand: what was written with them is not to be written again.
 */
export function keptRound(sheet: string, found: boolean): RoundFields | null {
  const written = keptText(KEY);
  if (written === null) return null;
  try {
    const parsed = v.safeParse(kept, JSON.parse(written));
    if (!parsed.success || parsed.output.sheet !== sheet) return null;
    return parsed.output.written && found ? null : parsed.output.fields;
  } catch (problem) {
    if (problem instanceof SyntaxError) return null;
    throw problem;
  }
}

export function keepRound(round: KeptRound): void {
  keepText(KEY, JSON.stringify(round));
}
