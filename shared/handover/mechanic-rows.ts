import { CYLINDERS, cylindersOf, isAnswerTo, valuesOf } from '../knowledge/index.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Line, Section } from './document.ts';
import type { HandOverInput } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { joined, say } from './say.ts';
import type { TreeTexts } from './tree-text.ts';

const ANSWER_SAID = { yes: 'yes', no: 'no', 'not-sure': 'not sure' } as const;

/** How the coach is built, as far as somebody said; for whoever works on it next. */
export function layoutSection(
  texts: TreeTexts | undefined,
  log: LogIndex,
  { visit, reader }: HandOverInput,
): Section[] {
  if (reader !== 'mechanic' || !texts) return [];
  const rows = texts.pinned.vocabulary.layout.flatMap((feature): (readonly Line[])[] => {
    const { id, values } = feature;
    const answer = visit.layout[id];
    const known = answer !== undefined && isAnswerTo(feature, answer) ? valuesOf(answer) : [];
    const labels = values.flatMap(({ value }, i) =>
      known.includes(value) ? [texts.at(`layout.${id}.values.${i}.label`)] : [],
    );
    const set = { text: '', from: log.naming(id, ['layout.set']) };
    if (visit.layoutNotKnown.includes(id)) return [[texts.at(`layout.${id}.ask`), say(set, 'nobody knows')]];
    return labels.length === 0 ? [] : [[texts.at(`layout.${id}.ask`), say(set, joined(labels, ' and '))]];
  });
  const cylinders = cylindersOf(visit.layout);
  const counted: readonly (readonly Line[])[] =
    cylinders === null
      ? []
      : [[say('Cylinders of the diesel'), log.said(String(cylinders), CYLINDERS, ['layout.set'])]];
  return rows.length + counted.length === 0
    ? []
    : [
        {
          id: 'layout',
          heading: 'How the coach is built',
          blocks: [
            {
              kind: 'table',
              caption: 'How the coach is built',
              head: ['Question', 'Answer'],
              rows: [...rows, ...counted],
            },
          ],
        },
      ];
}

/** Safety questions and what was answered; for whoever works on it next. */
export function safetySection(
  { complaint, texts }: ComplaintCase,
  log: LogIndex,
  { reader }: HandOverInput,
): Section[] {
  const answers = Object.entries(complaint.stopAnswers);
  if (reader !== 'mechanic' || answers.length === 0) return [];
  return [
    {
      id: 'safety',
      heading: 'Safety questions',
      blocks: [
        {
          kind: 'table',
          caption: 'Safety questions and answers',
          head: ['Question', 'Answer'],
          rows: answers.map(([rule, answer]) => [
            texts.at(`stopRules.${rule}.ask`),
            log.said(ANSWER_SAID[answer], rule, ['stop.answered']),
          ]),
        },
      ],
    },
  ];
}
