import { UNLISTED } from '../knowledge/tree.ts';
import { nothingSpeaks, type ComplaintCase } from './complaint-case.ts';
import type { Line, VerdictBox } from './document.ts';
import { likelyLine } from './evidence-rows.ts';
import type { HandOverInput } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { placesLine } from './places-line.ts';
import { reminderLine } from './plan-part.ts';
import { ended, joined, say } from './say.ts';

const SHORT_STANDING = {
  proven: 'Corrected, and the complaint was gone after.',
  unproven: 'Corrected; the proof is still open.',
  taken: 'Taken as the probable cause, not corrected.',
  likeliest: 'Likeliest so far, not settled.',
} as const;

interface Told {
  readonly head: readonly Line[];
  readonly verdict: VerdictBox | null;
  readonly cautions: readonly Line[];
  readonly lastWord: Line;
}

/** The report for a telephone: verdict first, then one line a complaint, what is not settled, what comes next. */
export function shortVersion(
  cases: readonly ComplaintCase[],
  log: LogIndex,
  { plan, clock }: HandOverInput,
  { head, verdict, cautions, lastWord }: Told,
): readonly Line[] {
  return [
    ...head,
    ...(verdict ? [say('May it move: ', ended(verdict.word), ' ', ...verdict.lines.slice(0, 1))] : []),
    ...cases.map((one) =>
      nothingSpeaks(one)
        ? say(one.texts.at('title'), ': nothing that was found speaks for a cause yet.')
        : say(
            one.texts.at('title'),
            ': ',
            joined([causeWords(one), placesLine(one, log), SHORT_STANDING[one.standing], likelyLine(one)], ' '),
          ),
    ),
    ...cautions,
    ...(plan?.reminders ?? [])
      .filter(({ done }) => !done)
      .map((reminder) => ended(say('Watch: ', reminderLine(reminder, log, clock.day)))),
    lastWord,
  ];
}

function causeWords(one: ComplaintCase): Line {
  return one.cause === UNLISTED
    ? say('nothing in the list fits well.')
    : ended(one.texts.at(`causes.${one.cause}.name`));
}

/** The short version as plain text, one line a paragraph. */
export function shortText(lines: readonly Line[]): string {
  return `${lines.map(({ text }) => text).join('\n')}\n`;
}
