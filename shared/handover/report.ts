import { casesOf, nothingSpeaks, type ComplaintCase } from './complaint-case.ts';
import { complaintPart } from './complaint-part.ts';
import { unprovenLine } from './correction-blocks.ts';
import type { Line, Part, Report, Section } from './document.ts';
import type { HandOverInput } from './input.ts';
import { LogIndex, told } from './log-index.ts';
import { layoutSection, safetySection } from './mechanic-rows.ts';
import { coachPhotos, complaintPhotos, PhotoNumbers } from './photos.ts';
import { declinedDanger, planSections, planWarnings, watchSection } from './plan-part.ts';
import { ended, joined, reckoned, say } from './say.ts';
import { shortVersion } from './short.ts';
import { coachPart, notOpened, verdictOf } from './whole-coach.ts';

/** Stands in every report. */
const LAST_WORD =
  'Droplight never says that a coach is in order. It says what was found and what was not looked at. A licensed mechanic or inspector has the last word, and so has local law.';
const INVENTED = 'Invented for show: no such coach, owner or job exists.';

/**
 * The hand-over of a visit: complaint, cause and correction of each complaint with what speaks for and against, what was
 * measured and held against what, what was agreed, what is not settled, what comes next.
 *
 * @returns a document in which every line names the events, fields of the tree or reckonings that it comes from; the same
 *   input gives the same document.
 * @source Complaint, cause, correction: the trade's report form, common practice.
 */
export function handOver(input: HandOverInput): Report {
  const log = new LogIndex(input.visit, input.events);
  const cases = casesOf(input);
  const numbers = new PhotoNumbers();
  const verdict = verdictOf(cases, input);
  const lastWord = say(LAST_WORD);
  const coach = coachLine(log, input);
  const days = daysLine(log, input);
  const invented = inventedLine(log, input);
  const cautions = cautionLines(cases, log, input);
  const complaints = cases.map((one): Part => {
    const part = complaintPart(one, log, input, numbers.block(complaintPhotos(one, log, input)));
    return { ...part, sections: [...part.sections, ...safetySection(one, log, input)] };
  });
  const whole = coachPart(cases, log, input, numbers.block(coachPhotos(log, input)));
  const layout = layoutSection(cases[0]?.texts, log, input);
  const asBuilt =
    whole || layout.length > 0
      ? [{ id: 'coach', title: say('The coach as a whole'), sections: [...(whole?.sections ?? []), ...layout] }]
      : [];
  return {
    reader: input.reader,
    coach,
    days,
    invented,
    verdict,
    lastWord,
    cautions,
    parts: [...complaints, ...asBuilt, ...nextPart(log, input)],
    signatures: [say('Done by ', namesLine(log)), say('Received by ')],
    foot: footLine(cases, log),
    short: shortVersion(cases, log, input, {
      head: [say(coach, ', ', days, '.'), ...(invented ? [invented] : [])],
      verdict,
      cautions,
      lastWord,
    }),
  };
}

function cautionLines(cases: readonly ComplaintCase[], log: LogIndex, input: HandOverInput): readonly Line[] {
  const lines = [
    ...declinedDanger(log, input),
    ...cases.flatMap((one): Line[] => {
      const unproven = unprovenLine(one, log);
      if (unproven) return [unproven];
      if (one.standing === 'proven' || nothingSpeaks(one)) return [];
      return [say(one.texts.at('title'), ': ', reckoned(one.assessment.leading.caution, 'verdict', one.complaint.id))];
    }),
  ];
  const seen = new Set<string>();
  return lines.filter(({ text }) => !seen.has(text) && !!seen.add(text));
}

/** What was agreed, what is not settled for the visit as a whole, and what comes next. */
function nextPart(log: LogIndex, input: HandOverInput): readonly Part[] {
  const unsettled = [
    ...planWarnings(input),
    ...notOpened(log, input),
    ...input.visit.ignored.map(({ event, why }) =>
      ended(
        say(
          event.kind === 'complaint.opened'
            ? told(`“${event.words}”`, event)
            : told(`An entry of the log (${event.kind})`, event),
          ' could not be used: ',
          told(why, event),
        ),
      ),
    ),
  ];
  const sections: readonly Section[] = [
    ...planSections(log, input),
    ...watchSection(log, input),
    ...(unsettled.length > 0
      ? [
          {
            id: 'unsettled',
            heading: 'Not settled for the coach as a whole',
            blocks: [{ kind: 'list' as const, items: unsettled }],
          },
        ]
      : []),
  ];
  return sections.length > 0 ? [{ id: 'next', title: say('What was agreed, and what comes next'), sections }] : [];
}

function coachLine(log: LogIndex, { visit }: HandOverInput): Line {
  return { text: visit.coach || 'A coach', from: origins(log, 'visit.opened') };
}

function inventedLine(log: LogIndex, { visit }: HandOverInput): Line | null {
  return visit.demo ? { text: INVENTED, from: origins(log, 'visit.opened') } : null;
}

function origins(log: LogIndex, kind: 'visit.opened'): Line['from'] {
  const opened = log.of(kind);
  return opened.length > 0 ? opened.map(({ id }) => ({ kind: 'event', event: id })) : [{ kind: 'wording' }];
}

function daysLine(log: LogIndex, { clock }: HandOverInput): Line {
  const first = log.events[0];
  const last = log.events.at(-1);
  if (!first || !last) return say('No day was written down');
  const from = told(clock.day(first.at), first);
  const to = told(clock.day(last.at), last);
  return from.text === to.text ? from : say(from, ' to ', to);
}

/** Everybody who found or corrected something, in the order in which they came. */
function namesLine(log: LogIndex): Line {
  const seen = new Set<string>();
  const events = log.events.filter(
    ({ kind, by }) =>
      (kind === 'finding.recorded' || kind === 'correction.done') && by !== '' && !seen.has(by) && !!seen.add(by),
  );
  return joined(
    events.map((event) => told(event.by, event)),
    ', ',
  );
}

/** Which trees the report rests on, so that it can be made again. */
function footLine(cases: readonly ComplaintCase[], log: LogIndex): Line {
  const once = cases.filter(({ texts }, i) => cases.findIndex((each) => each.texts.hash === texts.hash) === i);
  const trees = once.map(({ complaint, texts }) => {
    const opened = log.of('complaint.opened').find((event) => event.complaint === complaint.id);
    return say(
      texts.at('title'),
      ', version ',
      texts.at('version'),
      ...(opened ? [' (', told(complaint.treeHash.slice(0, 8), opened), ')'] : []),
    );
  });
  return trees.length === 0 ? say('Droplight') : say('Droplight. Trees: ', joined(trees, '; '));
}
