import { UNLISTED } from '../knowledge/tree.ts';
import { CLOSED_WORDS, type EventOf } from '../visit/index.ts';
import { nothingSpeaks, type ComplaintCase, type Standing } from './complaint-case.ts';
import { correctionBlocks, proofBlocks } from './correction-blocks.ts';
import type { Block, Line, Part, Section } from './document.ts';
import { beliefLines, likelyLine, weightRows } from './evidence-rows.ts';
import { foundRows } from './found-rows.ts';
import type { HandOverInput } from './input.ts';
import { told, type LogIndex } from './log-index.ts';
import { limitList } from './limit-list.ts';
import { openEnds } from './open-ends.ts';
import { placesLine } from './places-line.ts';
import { rereads } from './rereads.ts';
import { ended, say } from './say.ts';

/** What a section is about when it holds nothing else to say. */
const NOTHING_FOUND = 'Nothing was looked at.';

/** Heading over the cause: how far it has got. */
const CAUSE_SAID: Readonly<Record<Standing, string>> = {
  proven: 'Cause',
  unproven: 'Cause, corrected but not proven',
  taken: 'Probable cause, not corrected',
  likeliest: 'Cause: not settled',
};

/** One complaint in the trade's report form: complaint, cause, correction (common practice), and what it rests on. */
export function complaintPart(one: ComplaintCase, log: LogIndex, input: HandOverInput, photos: readonly Block[]): Part {
  const { complaint, texts } = one;
  const sections: readonly Section[] = [
    { id: 'complaint', heading: 'Complaint: what you told us', blocks: [complaintBlock(one, log)] },
    { id: 'found', heading: 'What was found', blocks: foundBlocks(one, log, input) },
    { id: 'cause', heading: CAUSE_SAID[one.standing], blocks: [...causeBlocks(one, log), ...photos] },
    { id: 'why', heading: 'What speaks for it and against it', blocks: whyBlocks(one, log, input) },
    { id: 'correction', heading: 'Correction', blocks: correctionBlocks(one, log, input) },
    { id: 'proof', heading: 'How we know', blocks: [...rereads(one, log, input), ...proofBlocks(one, log, input)] },
    { id: 'limits', heading: 'Limits that it was held against', blocks: limitList(one) },
    { id: 'open', heading: 'Not looked at, or not settled', blocks: openEnds(one, log, input) },
  ];
  return { id: complaint.id, title: texts.at('title'), sections: sections.filter(({ blocks }) => blocks.length > 0) };
}

function openedBy({ complaint }: ComplaintCase, log: LogIndex): EventOf<'complaint.opened'> | undefined {
  return log.of('complaint.opened').find((event) => event.complaint === complaint.id);
}

function complaintBlock(one: ComplaintCase, log: LogIndex): Block {
  const opened = openedBy(one, log);
  const words = opened?.words.trim();
  return opened && words
    ? { kind: 'words', look: 'said', line: told(`“${words}”`, opened) }
    : { kind: 'words', look: 'plain', line: say('No words were written down.') };
}

function foundBlocks(one: ComplaintCase, log: LogIndex, input: HandOverInput): Block[] {
  const { trail, notes, id } = one.complaint;
  const free = log.of('note.added').filter((event) => event.complaint === id && event.finding === undefined);
  const said = notes.flatMap((text) => {
    const event = free.find((each) => each.text === text);
    return event ? [told(`“${text}”`, event)] : [];
  });
  if (trail.length === 0 && said.length === 0) return [{ kind: 'words', look: 'plain', line: say(NOTHING_FOUND) }];
  return [
    ...(trail.length > 0
      ? [
          {
            kind: 'table' as const,
            caption: 'Findings, results and what they were held against',
            head: ['Check', 'Result', 'Held against', 'By'],
            rows: foundRows(one, log, input),
          },
        ]
      : []),
    ...(said.length > 0 ? [{ kind: 'list' as const, items: said }] : []),
  ];
}

/** How far a cause has got, in front of its name. */
function standingLine(one: ComplaintCase, log: LogIndex): Line {
  const { complaint, standing } = one;
  const last = complaint.corrections.at(-1);
  const done = log
    .of('correction.done')
    .filter((event) => event.complaint === complaint.id)
    .at(-1);
  switch (standing) {
    case 'proven':
    case 'unproven': {
      const seen = {
        bad: 'The part was seen to be bad.',
        good: 'The part that came out looked good: that this was the cause rests on what happened after.',
        unknown: 'Nobody wrote down how the part looked.',
      }[last?.partSeen ?? 'unknown'];
      return say(done ? told(seen, done) : seen, standing === 'unproven' ? ' The proof is still open.' : '');
    }
    case 'taken': {
      const taken = log.naming(complaint.id, ['conclusion.accepted', 'correction.started']);
      return { ...say('Taken as the probable cause. It has not been corrected.'), from: taken };
    }
    case 'likeliest':
      return say('Nobody has taken it as the cause yet.');
  }
}

function causeBlocks(one: ComplaintCase, log: LogIndex): Block[] {
  const { complaint, cause, texts } = one;
  const plain = (line: Line): Block => ({ kind: 'words', look: 'plain', line });
  const how = complaint.closedHow;
  const closing = log
    .of('complaint.closed')
    .filter((event) => event.complaint === complaint.id)
    .at(-1);
  const proven = one.standing === 'proven';
  const closed =
    how && closing && !proven
      ? [
          plain(
            ended(told(how === 'cured' ? 'Closed as gone, without a proven correction' : CLOSED_WORDS[how], closing)),
          ),
        ]
      : [];
  if (nothingSpeaks(one)) return [...closed, plain(say('Nothing that was found speaks for a cause yet.'))];
  if (cause === UNLISTED)
    return [
      ...closed,
      plain({
        ...say(
          'What was found fits nothing in this list well. Somebody who can look further takes over with these findings.',
        ),
        from: [{ kind: 'reckoned', what: 'belief', of: complaint.id }],
      }),
    ];
  const name = ended(texts.at(`causes.${cause}.name`));
  const places = placesLine(one, log);
  const likely = likelyLine(one);
  const urgency = texts.at(`causes.${cause}.urgency`);
  return [
    ...closed,
    { kind: 'words', look: 'big', line: one.standing === 'likeliest' ? say('Likeliest so far: ', name) : name },
    plain(ended(texts.at(`causes.${cause}.plain`))),
    ...(places ? [plain(places)] : []),
    plain(standingLine(one, log)),
    ...(likely ? [plain(likely)] : []),
    ...(proven || urgency.text === '' ? [] : [plain(say('If it is left: ', ended(urgency)))]),
  ];
}

function whyBlocks(one: ComplaintCase, log: LogIndex, input: HandOverInput): Block[] {
  const { weighed, cause, texts } = one;
  if (cause === UNLISTED || nothingSpeaks(one)) return [];
  if (!weighed)
    return [
      {
        kind: 'words',
        look: 'plain',
        line: say(
          'The odds of this cause cannot be worked out: it does not apply to this coach as it is described now, or it was corrected before.',
        ),
      },
    ];
  const rows = weightRows(one, weighed, log, input);
  return [
    ...(rows.length > 0
      ? [
          {
            kind: 'weights' as const,
            caption: say('What spoke for and against: ', texts.at(`causes.${cause}.name`)),
            rows,
          },
        ]
      : []),
    ...beliefLines(one, weighed, input).map((line) => ({ kind: 'words' as const, look: 'plain' as const, line })),
  ];
}
