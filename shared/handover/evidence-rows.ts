import { inHundred, meansForShare, shareInWords, wordsForDecibans } from '../inference/index.ts';
import { UNLISTED } from '../knowledge/tree.ts';
import type { ComplaintCase, Weighed } from './complaint-case.ts';
import type { Line, WeightRow } from './document.ts';
import { lineCheck, lineOf, lineResult } from './found-rows.ts';
import type { HandOverInput } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { answered, joined, reckoned, say } from './say.ts';

/** From this share another cause is still named beside the first one in the owner's report. Judgement. */
const WORTH_NAMING = 0.05;
/** Causes that the next mechanic gets by name. */
const NAMED = 6;

/** Each finding that carried weight for the cause named, oldest first. */
export function weightRows(
  one: ComplaintCase,
  { lines }: Weighed,
  log: LogIndex,
  input: HandOverInput,
): readonly WeightRow[] {
  const weighs = (decibans: number): string => {
    const words = wordsForDecibans(decibans);
    return words === 'hardly matters' ? words : `speaks ${words} it`;
  };
  return lines.flatMap((line) => {
    const found = lineOf(one, line.finding);
    if (!found) return [];
    const figures =
      input.reader === 'mechanic'
        ? `, ${signed(line.decibans)} decibans, without it ${inHundred(line.without)} in 100${line.overlaps ? ', overlaps another' : ''}`
        : '';
    return [
      {
        finding: answered(lineCheck(one, found, log), lineResult(one, found, log, input)),
        words: reckoned(`${weighs(line.decibans)}${figures}`, 'weight', one.complaint.id),
        decibans: line.decibans,
      },
    ];
  });
}

function signed(decibans: number): string {
  const size = Math.abs(decibans).toFixed(1);
  return decibans < 0 && size !== '0.0' ? `−${size}` : `+${size}`;
}

/** How likely the cause is as far as it has not been corrected: the figure and what it means, without a word of the scale. */
export function likelyLine({ standing, weighed, complaint: { id } }: ComplaintCase): Line | null {
  if (weighed === null || standing === 'proven' || standing === 'unproven') return null;
  const share = inHundred(weighed.after);
  return reckoned(
    `Of a hundred such coaches it would be this in ${share}, on judged odds: ${meansForShare(weighed.after)}.`,
    'belief',
    id,
  );
}

/** How sure, before and after, how much hangs on one finding, and what else is open. */
export function beliefLines(one: ComplaintCase, weighed: Weighed, { reader, learned }: HandOverInput): readonly Line[] {
  const { id } = one.complaint;
  const share = (value: number): Line => reckoned(inHundred(value), 'belief', id);
  const least = Math.min(...weighed.lines.map(({ without }) => without));
  const sure = say(
    'Before any check ',
    share(weighed.before),
    reckoned(' in 100', 'belief', id),
    ', after them ',
    share(weighed.after),
    ': ',
    reckoned(shareInWords(weighed.after), 'belief', id),
    '. These are judged odds, not statistics.',
  );
  const hangs =
    weighed.lines.length > 1
      ? [say('Leaving out any one finding, it stays at ', share(least), reckoned(' in 100', 'belief', id), ' or more.')]
      : [];
  const others = one.assessment.belief.filter(
    ({ cause, probability }) =>
      cause !== one.cause && (reader === 'mechanic' ? probability > 0 : probability >= WORTH_NAMING),
  );
  // Once something was corrected the belief of now is about what is left, not about what it might have been then.
  const open =
    one.standing === 'proven' || one.standing === 'unproven' || others.length === 0
      ? []
      : [
          say(
            'What else it could be, of a hundred such coaches: ',
            joined(
              others
                .slice(0, reader === 'mechanic' ? NAMED : 3)
                .map(({ cause, probability }) =>
                  say(
                    cause === UNLISTED ? 'something not in the list' : one.texts.at(`causes.${cause}.name`),
                    ' ',
                    share(probability),
                  ),
                ),
              '; ',
            ),
            '.',
          ),
        ];
  const odds = learned?.get(id);
  const moved =
    odds && odds.data > 0
      ? [
          reckoned(
            `Starting odds moved by ${odds.data} proven cure${odds.data === 1 ? '' : 's'} of this workshop; opinion to data as ${odds.opinion} : ${odds.data}.`,
            'belief',
            id,
          ),
        ]
      : [];
  return [sure, ...moved, ...hangs, ...open];
}
