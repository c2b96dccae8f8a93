import { readBands, ReadingError } from '../inference/index.ts';
import { UnitError } from '../units/index.ts';
import { convertedReading, type TrailFinding } from '../visit/index.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Block, Line } from './document.ts';
import { checkLine, resultLine } from './found-rows.ts';
import type { HandOverInput } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { answered, ended, joined, reckoned, say } from './say.ts';

/** Checks that are named to the next mechanic; more are counted. */
const NAMED = 12;
/** Safety questions that are still named to an owner. */
const FEW = 3;

/** What of a complaint was not looked at, could not be done, was not clear, or was asked and not answered. */
export function openEnds(one: ComplaintCase, log: LogIndex, input: HandOverInput): Block[] {
  const { complaint, texts } = one;
  const unclear = complaint.trail
    .filter(
      (finding) => finding.value.kind === 'cant-do' || finding.value.kind === 'not-sure' || tooClose(one, finding),
    )
    .map((finding) => ended(answered(checkLine(one, finding, log), resultLine(one, finding, log, input))));
  const questions = unanswered(one, input);
  const unsure = Object.entries(complaint.stopAnswers)
    .filter(([, answer]) => answer === 'not-sure')
    .map(([rule]) =>
      say(
        { text: 'Safety question answered “not sure”: ', from: log.naming(rule, ['stop.answered']) },
        texts.at(`stopRules.${rule}.ask`),
      ),
    );
  const items = [...questions, ...unsure, ...unclear, ...notMade(one, input)];
  return items.length > 0 ? [{ kind: 'list', items }] : [];
}

/** Safety questions that nobody answered: each by its words, or counted for an owner when there are many. */
function unanswered({ complaint, assessment, texts }: ComplaintCase, { reader }: HandOverInput): Line[] {
  const { openQuestions } = assessment.verdict;
  if (reader === 'owner' && openQuestions.length > FEW)
    return [reckoned(`${openQuestions.length} safety questions were not answered.`, 'count', complaint.id)];
  return openQuestions.map((rule) => say('Safety question not answered: ', texts.at(`stopRules.${rule}.ask`)));
}

function tooClose({ texts }: ComplaintCase, finding: TrailFinding): boolean {
  const check = texts.pinned.tree.checks.find(({ id }) => id === finding.check);
  if (finding.value.kind !== 'reading' || !check?.measure) return false;
  try {
    const { value, uncertainty, range } = convertedReading(check, finding.value.reading, texts.pinned.vocabulary);
    return readBands(check, value, uncertainty, range).tooClose;
  } catch (problem) {
    // A reading that no band expects is not near the edge of one.
    if (problem instanceof ReadingError || problem instanceof UnitError) return false;
    throw problem;
  }
}

/** Checks of the list that nobody made on this coach, though they apply to it. */
function notMade({ complaint, assessment, texts }: ComplaintCase, { reader }: HandOverInput): Line[] {
  const open = assessment.options.filter(
    ({ blocked, check }) =>
      blocked?.kind !== 'done' &&
      !(blocked?.kind === 'layout' && blocked.known) &&
      !complaint.trail.some((finding) => finding.check === check),
  );
  if (open.length === 0) return [];
  const many = reckoned(
    `${open.length} check${open.length === 1 ? '' : 's'} of this list ${open.length === 1 ? 'was' : 'were'} not made. `,
    'count',
    complaint.id,
  );
  const names =
    reader === 'mechanic'
      ? [
          say(
            'Among them: ',
            joined(
              open.slice(0, NAMED).map(({ check }) => texts.at(`checks.${check}.name`)),
              '; ',
            ),
            '.',
          ),
        ]
      : [];
  return [say(many, 'What was not looked at is not known.'), ...names];
}
