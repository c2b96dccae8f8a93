import { convert, UnitError } from '../units/index.ts';
import { formatQuantity, preferredUnit } from '../units/index.ts';
import type { TrailFinding } from '../visit/index.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Block, Line, Reread } from './document.ts';
import { checkLine } from './found-rows.ts';
import type { HandOverInput } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { say } from './say.ts';

/** Quantities that were read more than once at one place: what changed, on one line. */
export function rereads(one: ComplaintCase, log: LogIndex, input: HandOverInput): Block[] {
  const byPlace = new Map<string, TrailFinding[]>();
  for (const finding of one.complaint.trail) {
    // What another complaint of the visit measured is shown there.
    if (finding.value.kind !== 'reading' || finding.from !== undefined) continue;
    const place = `${finding.check}@${finding.site ?? ''}`;
    byPlace.set(place, [...(byPlace.get(place) ?? []), finding]);
  }
  const figures = [...byPlace.values()].flatMap((findings) => figureOf(one, findings, log, input));
  return figures.length > 0 ? [{ kind: 'rereads', figures }] : [];
}

function figureOf(
  one: ComplaintCase,
  findings: readonly TrailFinding[],
  log: LogIndex,
  { units, clock }: HandOverInput,
): Reread[] {
  const [first] = findings;
  if (!first || findings.length < 2 || first.value.kind !== 'reading') return [];
  const unit = preferredUnit(first.value.reading.unit, units);
  const before = new Set(one.complaint.corrections.at(-1)?.findingsBefore ?? []);
  const when = (finding: TrailFinding): Line =>
    say(
      one.complaint.corrections.length === 0 ? '' : before.has(finding.id) ? 'before, ' : 'after, ',
      log.said(clock.day(finding.at), finding.id),
    );
  try {
    return [
      {
        name: checkLine(one, first, log),
        unit,
        edges: edgesOf(one, first.check, unit),
        points: findings.flatMap((finding) =>
          finding.value.kind === 'reading'
            ? [
                {
                  label: when(finding),
                  value: convert(finding.value.reading.value, finding.value.reading.unit, unit),
                  figure: log.said(
                    formatQuantity(finding.value.reading.value, finding.value.reading.unit, units),
                    finding.id,
                  ),
                },
              ]
            : [],
        ),
      },
    ];
  } catch (problem) {
    // Readings of two quantities under one check, from two versions of a tree, cannot stand on one line.
    if (problem instanceof UnitError) return [];
    throw problem;
  }
}

/** Where each result of the check but the lowest begins, with its words, the figure as the tree has it. @throws {UnitError} */
function edgesOf({ texts }: ComplaintCase, id: string, unit: string): Reread['edges'] {
  const check = texts.pinned.tree.checks.find((each) => each.id === id);
  const own = check?.measure?.unit;
  if (own === undefined) return [];
  return check!.results.flatMap((result) => {
    const from = result.range?.[0] ?? null;
    if (from === null) return [];
    const label = texts.at(`checks.${id}.results.${result.id}.label`);
    const figure = texts.at(`checks.${id}.results.${result.id}.range.0`);
    return [
      {
        value: convert(from, own, unit),
        words: {
          from: [...figure.from, ...label.from],
          text: `from ${formatQuantity(from, own)}: ${label.text.toLowerCase()}`,
        },
      },
    ];
  });
}
