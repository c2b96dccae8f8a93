import { stricter } from '../planning/index.ts';
import { STATUS_SAID, VERDICT_SAID } from '../knowledge/index.ts';
import { withNames } from '../knowledge/markdown.ts';
import { formatQuantity } from '../units/index.ts';
import { partWords } from '../visit/inspection/items.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Block, Line, Part, Section, VerdictBox } from './document.ts';
import { bothUnits } from './found-rows.ts';
import type { HandOverInput, InspectedPart, OtherWork } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { TreeTexts } from './tree-text.ts';
import { capital, ended, joined, reckoned, say } from './say.ts';

/** The strictest verdict of all complaints and of the plan, with every reason of that strictness. */
export function verdictOf(cases: readonly ComplaintCase[], input: HandOverInput): VerdictBox | null {
  const meanwhile = input.plan?.meanwhile;
  const all = [
    ...cases.map(({ complaint, assessment, texts }) => ({
      verdict: assessment.verdict.verdict,
      because: withNames(assessment.verdict.because, texts.nameOf),
      doNow: withNames(assessment.verdict.doNow, texts.nameOf),
      what: 'verdict' as const,
      of: complaint.id,
    })),
    ...(meanwhile ? [{ ...meanwhile, what: 'plan' as const, of: 'meanwhile' }] : []),
  ];
  const [first] = all;
  if (!first) return null;
  const verdict = all.reduce((worst, each) => stricter(worst, each.verdict), first.verdict);
  const reasons = all.filter((each) => each.verdict === verdict);
  const lines = reasons.flatMap(({ because, doNow, what, of }) =>
    [because, doNow].filter(Boolean).map((text) => ended(reckoned(text, what, of))),
  );
  const seen = new Set<string>();
  return {
    verdict,
    word: reckoned(VERDICT_SAID[verdict], first.what, reasons[0]?.of ?? first.of),
    lines: lines.filter(({ text }) => !seen.has(text) && !!seen.add(text)),
  };
}

const STATE_SAID: Readonly<Record<InspectedPart['state'], string>> = {
  'not-opened': 'not opened yet',
  good: 'nothing wrong seen',
  watch: 'to be watched',
  bad: 'bad',
};

const OTHER_SAID: Readonly<Record<OtherWork['id'], string>> = {
  arrival: 'As it came in',
  'air-test': 'Air test before it moved',
  'road-test': 'Road test',
};

/** What was looked at on the coach as a whole: arrival, air test, road test, inspection; and the photos of it. */
export function coachPart(
  cases: readonly ComplaintCase[],
  log: LogIndex,
  input: HandOverInput,
  photos: readonly Block[],
): Part | null {
  const texts = cases[0]?.texts ?? anyTexts(input);
  const sections: Section[] = [
    ...(input.others ?? [])
      .filter(({ findings }) => findings.length > 0)
      .map(({ id, findings }): Section => ({
        id,
        heading: OTHER_SAID[id],
        blocks: [
          {
            kind: 'table',
            caption: OTHER_SAID[id],
            head: ['What', 'Result', 'Held against', 'By'],
            rows: findings.map((each) => [
              log.said(each.what, each.id),
              joined(
                [
                  log.said(capitalOf(each.result), each.id),
                  each.reading ? log.said(figure(each.reading, input), each.id) : null,
                  each.note ? log.said(`“${each.note}”`, each.id) : null,
                ],
                ', ',
              ),
              each.heldAgainst ? log.said(each.heldAgainst, each.id) : say('–'),
              log.said([each.by, input.clock.day(each.at)].filter(Boolean).join(', '), each.id),
            ]),
          },
        ],
      })),
    ...inspectionSection(log, input, texts),
    ...photoSection(photos),
  ];
  return sections.length > 0 ? { id: 'coach', title: say('The coach as a whole'), sections } : null;
}

/** Limits stand in the vocabulary, which every tree brings along. */
function anyTexts({ trees }: HandOverInput): TreeTexts | undefined {
  const [first] = trees;
  return first && new TreeTexts(first[1], first[0]);
}

function photoSection(blocks: readonly Block[]): Section[] {
  return blocks.length > 0 ? [{ id: 'photos', heading: 'Photos', blocks }] : [];
}

function inspectionSection(log: LogIndex, input: HandOverInput, texts: TreeTexts | undefined): Section[] {
  const items = input.inspection ?? [];
  const seen = items.filter(({ state }) => state !== 'not-opened');
  if (seen.length === 0) return [];
  const table: Block = {
    kind: 'table',
    caption: 'What was inspected, place by place',
    head: ['Item', 'Found', 'Held against', 'By'],
    rows: seen.map((item) => [
      itemLine(item, log),
      joined(
        [
          log.said(capitalOf(STATE_SAID[item.state]), item.id),
          ...item.readings.map(({ what, reading }) => log.said(`${plain(what)} ${figure(reading, input)}`, item.id)),
          ...Object.entries(item.facts ?? {}).map(([what, found]) =>
            log.said(`${plain(what)}: ${plain(found)}`, item.id),
          ),
          item.note ? log.said(`“${item.note}”`, item.id) : null,
        ],
        ', ',
      ),
      heldOf(item, texts),
      log.said([item.by, input.clock.day(item.at)].filter(Boolean).join(', '), item.id),
    ]),
  };
  return [{ id: 'inspection', heading: 'Inspection', blocks: [table] }];
}

/** Items that nobody has opened: named, so that silence is not taken for health. */
export function notOpened(log: LogIndex, { inspection = [] }: HandOverInput): readonly Line[] {
  return inspection
    .filter(({ state }) => state === 'not-opened')
    .map((item) => ended(say('Not opened: ', itemLine(item, log))));
}

function itemLine(item: InspectedPart, log: LogIndex): Line {
  return capital(log.said([partWords(item.item), item.site].filter(Boolean).join(', '), item.id));
}

function heldOf(item: InspectedPart, texts: TreeTexts | undefined): Line {
  const limits = item.readings.flatMap(({ limit }) => {
    const known = limit === undefined ? undefined : texts?.pinned.vocabulary.limits.get(limit);
    if (!texts || !known) return [];
    const field = (name: string): Line => texts.at(`limits.${known.id}.${name}`);
    return [say(field('value'), ` (${STATUS_SAID[known.status]}: `, field('source'), ')')];
  });
  return limits.length > 0 ? joined(limits, '; ') : say('–');
}

function figure(reading: { readonly value: number; readonly unit: string }, { reader, units }: HandOverInput): string {
  return reader === 'mechanic' ? bothUnits(reading) : formatQuantity(reading.value, reading.unit, units);
}

function capitalOf(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** An id as words. */
function plain(id: string): string {
  return id.replaceAll('-', ' ');
}
