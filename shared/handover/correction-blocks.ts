import { minutesWords, type EventOf } from '../visit/index.ts';
import { UNLISTED } from '../knowledge/tree.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Block, Line } from './document.ts';
import type { HandOverInput } from './input.ts';
import { told, type LogIndex } from './log-index.ts';
import { capital, ended, say } from './say.ts';

/** The corrections of a complaint with their events: the n-th is the n-th. */
function doneIn({ complaint }: ComplaintCase, log: LogIndex): readonly EventOf<'correction.done'>[] {
  return log.of('correction.done').filter((event) => event.complaint === complaint.id);
}

/** What was done, each correction with its parts, or what would be done. */
export function correctionBlocks(one: ComplaintCase, log: LogIndex, { reader, clock }: HandOverInput): Block[] {
  const { complaint, texts } = one;
  const events = doneIn(one, log);
  const items = complaint.corrections.flatMap((done, i): Line[] => {
    const event = events[i];
    if (!event) return [];
    const name =
      done.cause === UNLISTED ? told('Something not in the list', event) : texts.at(`causes.${done.cause}.name`);
    const parts = done.parts.length > 0 ? told(done.parts.join(', '), event) : say('no parts noted');
    const also = done.alsoRenewed.length > 0 ? told(`; renewed with it: ${done.alsoRenewed.join(', ')}`, event) : '';
    const time =
      reader === 'mechanic' && done.minutes !== undefined ? told(`, ${minutesWords(done.minutes)}`, event) : '';
    const note = done.note ? told(` “${done.note}”`, event) : '';
    const vain = done.proof === 'still-there' ? ' The complaint was still there after.' : '';
    const by = told([event.by, clock.day(event.at)].filter(Boolean).join(', '), event);
    return [say(capital(name), ': ', parts, also, time, ' (', by, ').', note, vain)];
  });
  if (items.length > 0) return [{ kind: 'list', items }];
  const none: Block = { kind: 'words', look: 'plain', line: say('Nothing was corrected.') };
  const does = one.cause === UNLISTED ? null : texts.at(`causes.${one.cause}.correction.does`);
  if (!does || does.text === '' || one.standing === 'likeliest') return [none];
  const cause = texts.pinned.tree.causes.find(({ id }) => id === one.cause);
  const hours =
    reader === 'mechanic' && cause
      ? say(
          ' ',
          texts.at(`causes.${cause.id}.correction.hours.0`),
          ' to ',
          texts.at(`causes.${cause.id}.correction.hours.1`),
          ' hours, getting there included (judgement).',
        )
      : '';
  return [none, { kind: 'words', look: 'plain', line: say('What it needs: ', ended(does), hours) }];
}

/** What proved the correction, or what has still to prove it: stations of the tree with boxes for the pencil. */
export function proofBlocks(one: ComplaintCase, log: LogIndex, { clock }: HandOverInput): Block[] {
  const { complaint, texts, cause } = one;
  const last = complaint.corrections.at(-1);
  if (!last) return [];
  const proofs = log.of('proof.recorded').filter((event) => event.complaint === complaint.id);
  const passed = proofs.map((event) =>
    say(
      told(event.outcome === 'gone' ? 'Complaint gone' : 'Complaint still there', event),
      event.note ? told(`: “${event.note}”`, event) : '',
      told(`, ${[event.by, clock.day(event.at)].filter(Boolean).join(', ')}`, event),
    ),
  );
  const { proofs: all } = texts.pinned.tree;
  const named = all.findIndex(({ after }) => after === cause);
  const index = named >= 0 ? named : all.findIndex(({ after }) => after === '*');
  const proof = all[index];
  const stations =
    proof && last.proof === 'pending'
      ? proof.steps.map((_, i) => ({ line: texts.at(`proofs.${index}.steps.${i}`), passed: false }))
      : [];
  const wait =
    proof && last.proof !== 'still-there'
      ? [
          {
            kind: 'words' as const,
            look: 'plain' as const,
            line: say(
              last.proof === 'gone' ? 'In full the proof asks for: ' : 'It counts as proven when: ',
              ended(texts.at(`proofs.${index}.wait`)),
            ),
          },
        ]
      : [];
  return [
    ...(passed.length + stations.length > 0
      ? [{ kind: 'stations' as const, items: [...passed.map((line) => ({ line, passed: true })), ...stations] }]
      : []),
    ...wait,
  ];
}

/** Everything of a correction that is not proven, as a caution. */
export function unprovenLine(one: ComplaintCase, log: LogIndex): Line | null {
  const last = one.complaint.corrections.at(-1);
  const event = doneIn(one, log).at(-1);
  if (!last || !event || last.proof !== 'pending') return null;
  return say(
    told('Not proven yet: ', event),
    last.cause === UNLISTED ? one.texts.at('title') : one.texts.at(`causes.${last.cause}.name`),
    '. It was corrected; whether the complaint is gone has not been recorded.',
  );
}
