import { formatQuantity } from '../units/index.ts';
import { minutesWords } from '../visit/index.ts';
import { isInWork } from '../visit/plan/parts-list.ts';
import type { PartRow, Plan, PlanLine, Reminder } from '../visit/plan/plan.ts';
import type { Block, Line, Section } from './document.ts';
import type { HandOverInput } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { ended, joined, reckoned, say } from './say.ts';

const DECISION_SAID = { agreed: 'Agreed', declined: 'Declined', deferred: 'Put off' } as const;
const URGENCY_SAID = { now: 'now', soon: 'soon', watch: 'watch' } as const;
const PROOF_SAID: Readonly<Record<PlanLine['proof']['state'], string>> = {
  'to-do': 'to be done',
  'under-way': 'under way',
  unproven: 'done, the proof is open',
  held: 'done and proven',
  'did-not-hold': 'done, and it did not hold',
  'not-done': 'not done',
};

/** Something that the plan says of one of its lines. */
function ofLine(text: string, line: PlanLine): Line {
  return reckoned(text, 'plan', line.id);
}

/** Name of a line with its place. */
function titleOf(line: PlanLine): Line {
  return joined([ofLine(line.title, line), line.place ? ofLine(line.place, line) : null], ', ');
}

/** The plan as the customer decided on it, line by line, in the order of work. */
export function planSections(log: LogIndex, { plan, reader, clock }: HandOverInput): Section[] {
  if (!plan || plan.lines.length === 0) return [];
  const rows = plan.lines.map((line) => [
    titleOf(line),
    joined([ended(ofLine(line.plain, line)), line.danger ? say('Danger.') : null], ' '),
    ofLine(URGENCY_SAID[line.urgency], line),
    decisionLine(line, log, clock.day),
    ofLine(PROOF_SAID[line.proof.state], line),
  ]);
  const agreed: Block = {
    kind: 'table',
    caption: 'What is to be done, what was agreed to and what was not',
    head: ['Work', 'What is wrong', 'When', 'Decision', 'State'],
    rows,
  };
  return [
    { id: 'agreed', heading: 'What was agreed and what was not', blocks: [agreed, ...moneyBlocks(plan, reader)] },
    ...(reader === 'mechanic' ? partsSection(plan, log) : []),
  ];
}

function decisionLine(line: PlanLine, log: LogIndex, day: (at: string) => string): Line {
  const { decision } = line;
  if (!decision) return say('not asked yet');
  return log.said(
    [
      [DECISION_SAID[decision.decision], decision.by, day(decision.at)].filter(Boolean).join(', '),
      decision.words ? `“${decision.words}”` : '',
    ]
      .filter(Boolean)
      .join(': '),
    line.id,
    ['plan.decided'],
  );
}

/** Hours with what is opened once, and the money where a rate was given. */
function moneyBlocks({ hours, costBand, lines }: Plan, reader: HandOverInput['reader']): Block[] {
  const figure = (text: string): Line => reckoned(text, 'plan', 'plan');
  const [low, high] = hours.total;
  const time = say(
    'Time for what is still to do and not declined: ',
    figure(minutesWords(low)),
    ' to ',
    figure(minutesWords(high)),
    ', judged; what is opened is counted once.',
    ...(reader === 'mechanic' ? [' One by one it would be ', figure(minutesWords(hours.apart[1])), ' at most.'] : []),
  );
  const untimed = lines.filter((line) => isInWork(line) && line.proof.doneAt === undefined && line.minutes[1] === 0);
  const open =
    untimed.length > 0
      ? [say('No time was given for: ', figure(untimed.map(({ title }) => title).join('; ')), '.')]
      : [];
  const cost = costBand
    ? [
        say(
          'Cost: ',
          figure(String(Math.round(costBand.low))),
          ' to ',
          figure(String(Math.round(costBand.high))),
          ', at ',
          figure(String(costBand.ratePerHour)),
          ' an hour',
          ...(costBand.unpriced.length > 0 ? ['; no price yet for ', figure(costBand.unpriced.join(', '))] : []),
          '.',
        ),
      ]
    : [];
  return [...(high > 0 ? [time] : []), ...open, ...cost].map((line) => ({ kind: 'words', look: 'plain', line }));
}

function partsSection(plan: Plan, log: LogIndex): Section[] {
  const { rows } = plan.parts;
  if (rows.length === 0) return [];
  return [
    {
      id: 'parts',
      heading: 'Parts',
      blocks: [
        {
          kind: 'table',
          caption: 'Parts of the whole visit',
          head: ['Part', 'Where', 'Known of it', 'State'],
          rows: rows.map((row) => partRow(row, log)),
        },
      ],
    },
  ];
}

function partRow(row: PartRow, log: LogIndex): readonly Line[] {
  const of = (text: string): Line => reckoned(text, 'plan', row.key);
  const known = row.identity.flatMap(({ ask, found }) =>
    found.map(({ place, value }) =>
      joined(
        [
          of(ask),
          log.said(
            [place, typeof value === 'string' ? value : formatQuantity(value.value, value.unit)]
              .filter(Boolean)
              .join(': '),
            row.key,
            ['part.measured'],
          ),
        ],
        ' ',
      ),
    ),
  );
  return [
    of(row.name),
    of(
      row.needs
        .map(({ place }) => place)
        .filter(Boolean)
        .join(', '),
    ),
    joined(
      [
        ...known,
        row.measureFirst.length > 0 ? say('measure before ordering: ', of(row.measureFirst.join(', '))) : null,
      ],
      '; ',
    ),
    of(row.state.replaceAll('-', ' ')),
  ];
}

/** What was declined though it can hurt somebody, in the words of the record. */
export function declinedDanger(log: LogIndex, { plan, reader }: HandOverInput): readonly Line[] {
  return (plan?.lines ?? []).flatMap((line) => {
    const { decision } = line;
    if (!line.danger || !decision || decision.decision === 'agreed') return [];
    // The record speaks to the customer; to anybody else it is what the customer was told.
    const record = decision.record
      ? say(reader === 'owner' ? '' : 'As told to the customer: ', ofLine(decision.record, line))
      : say(titleOf(line), ', a danger, was not agreed to');
    return [ended({ text: record.text, from: [...record.from, ...log.naming(line.id, ['plan.decided'])] })];
  });
}

/** Reminders that were set: what to watch, and when. */
export function watchSection(log: LogIndex, { plan, clock }: HandOverInput): Section[] {
  const lines = plan?.lines.filter(({ urgency, proof }) => urgency === 'watch' && proof.state !== 'held') ?? [];
  const items = [
    ...(plan?.reminders ?? []).map((each) => ({ line: reminderLine(each, log, clock.day), passed: !!each.done })),
    ...lines.map((line) => ({
      line: ended(joined([say('Watch: ', titleOf(line)), line.ifLeft ? ofLine(line.ifLeft, line) : null], '. ')),
      passed: false,
    })),
  ];
  return items.length === 0
    ? []
    : [{ id: 'watch', heading: 'What to watch, and when', blocks: [{ kind: 'stations', items }] }];
}

/** A reminder with its day or miles. */
export function reminderLine(reminder: Reminder, log: LogIndex, day: (at: string) => string): Line {
  const due = [
    reminder.dueDate === undefined ? '' : `by ${day(reminder.dueDate)}`,
    reminder.dueMiles === undefined ? '' : `at ${reminder.dueMiles} miles`,
  ].filter(Boolean);
  const done = reminder.done
    ? log.said(
        `, done ${day(reminder.done.at)}${reminder.done.words ? `: “${reminder.done.words}”` : ''}`,
        reminder.id,
        ['reminder.done'],
      )
    : '';
  return say(
    log.said([reminder.what, due.join(' or ')].filter(Boolean).join(', '), reminder.id, ['reminder.set']),
    done,
  );
}

/** What the plan itself says is not settled. */
export function planWarnings({ plan }: HandOverInput): readonly Line[] {
  return [
    ...(plan?.warnings ?? [])
      .filter(({ code }) => code !== 'declined-danger' && code !== 'not-opened')
      .map(({ text, line }) => ended(reckoned(text, 'plan', line ?? 'plan'))),
    ...(plan?.closedOut?.unproven ?? []).map(({ line, because }) => {
      const known = plan?.lines.find(({ id }) => id === line);
      return ended(
        say(
          'Closed without proof: ',
          known ? titleOf(known) : reckoned(line, 'plan', line),
          ', because ',
          reckoned(because, 'plan', 'plan'),
        ),
      );
    }),
  ];
}
