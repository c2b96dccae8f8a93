/** What the notes of a road test say about the complaints of the visit: findings to be confirmed, never taken silently. */
import { ROLES, type Check, type Tree } from '../../knowledge/tree.ts';
import type { RoadSaying, Vocabulary } from '../../knowledge/vocabulary.ts';
import { fitOf } from '../../knowledge/layout.ts';
import { convert, isUnit, unitOf } from '../../units/index.ts';
import type { RecordedValue } from '../events.ts';
import type { PinnedTree } from '../pinned-tree.ts';
import type { ComplaintState, VisitState } from '../state.ts';
import type { RoadDrive, RoadNote } from './state.ts';

/** One finding that could be recorded. */
export interface RoadOffer {
  /** Unique among the offers of a visit, and the same for the same notes. */
  readonly id: string;
  /** Complaint that it is recorded in. */
  readonly complaint: string;
  readonly check: Check;
  readonly value: Extract<RecordedValue, { kind: 'result' | 'reading' }>;
  /** In the words of the check: the result, or the figure. */
  readonly words: string;
  /** Notes that say so, oldest first. */
  readonly notes: readonly RoadNote[];
  readonly drive: string;
  /** Other complaints of the visit that hear it then, because they have the same shared check. */
  readonly alsoHeardBy: readonly string[];
}

/**
 * Findings that the newest drive offers, complaint by complaint in the order in which they were opened.
 *
 * Left out: checks that have a finding already, that this coach has not, that need somebody more qualified than whoever
 * works, or something else first; and complaints that are closed. Of notes in one row the latest counts. Two results of
 * one check may both be offered; one can be confirmed.
 */
export function roadOffers(visit: VisitState, trees: ReadonlyMap<string, PinnedTree>): RoadOffer[] {
  const drive = visit.road.drives.at(-1);
  if (!drive) return [];
  const taken = new Set<string>();
  return visit.complaints.flatMap((complaint) => {
    const pinned = trees.get(complaint.treeHash);
    if (!pinned || complaint.phase === 'closed') return [];
    const offers = offersTo({ visit, complaint, pinned, drive, trees }).filter(
      ({ check }) => check.sharedAs === undefined || !taken.has(check.sharedAs),
    );
    for (const { check } of offers) if (check.sharedAs !== undefined) taken.add(check.sharedAs);
    return offers;
  });
}

interface Asked {
  readonly visit: VisitState;
  readonly complaint: ComplaintState;
  readonly pinned: PinnedTree;
  readonly drive: RoadDrive;
  readonly trees: ReadonlyMap<string, PinnedTree>;
}

function offersTo({ visit, complaint, pinned: { tree, vocabulary }, drive, trees }: Asked): RoadOffer[] {
  const offers = vocabulary.road.flatMap((saying) => {
    const said = heardIn(saying, drive);
    if (!said) return [];
    return saying.says.flatMap((each): RoadOffer[] => {
      const check = checkOf(each, tree);
      if (!check || !open(check, complaint, visit)) return [];
      const value = valueOf(check, each.result, said, vocabulary);
      if (!value) return [];
      return [
        {
          id: `${drive.id}.${complaint.id}.${check.id}.${value.kind === 'result' ? value.result : 'reading'}`,
          complaint: complaint.id,
          check,
          value,
          words: wordsOf(check, value),
          notes: said,
          drive: drive.id,
          alsoHeardBy: visit.complaints
            .filter(({ id, treeHash }) => id !== complaint.id && hasShared(trees.get(treeHash)?.tree, check.sharedAs))
            .map(({ id }) => id),
        },
      ];
    });
  });
  // Two entries may say the same thing of one check.
  return offers.filter((offer, i) => offers.findIndex(({ id }) => id === offer.id) === i);
}

/** The notes that fulfil an entry, oldest first; null when they do not. */
function heardIn(saying: RoadSaying, drive: RoadDrive): readonly RoadNote[] | null {
  if (saying.gauge) {
    const { of, take, afterMin = 0 } = saying.gauge;
    const figures = drive.notes.flatMap((note) =>
      note.entry.kind === 'gauge' && note.entry.gauge === of && note.seconds >= 60 * afterMin
        ? [{ note, value: note.entry.reading.value }]
        : [],
    );
    const [first, ...rest] = figures;
    if (!first) return null;
    if (take === 'last') return [figures.at(-1)!.note];
    const further = take === 'highest' ? (a: number, b: number) => a > b : (a: number, b: number) => a < b;
    return [rest.reduce((best, each) => (further(each.value, best.value) ? each : best), first).note];
  }
  const notes: RoadNote[] = [];
  for (const { row, choices } of saying.noted) {
    const latest = drive.notes.filter(({ entry }) => entry.kind === 'choice' && entry.row === row).at(-1);
    if (latest?.entry.kind !== 'choice' || !choices.includes(latest.entry.choice)) return null;
    notes.push(latest);
  }
  return notes.length > 0 ? notes.sort((a, b) => a.seconds - b.seconds) : null;
}

function checkOf(said: RoadSaying['says'][number], tree: Tree): Check | undefined {
  if (said.shared !== undefined) return tree.checks.find(({ sharedAs }) => sharedAs === said.shared);
  return said.tree === tree.id ? tree.checks.find(({ id }) => id === said.check) : undefined;
}

function hasShared(tree: Tree | undefined, sharedAs: string | undefined): boolean {
  return sharedAs !== undefined && (tree?.checks.some((check) => check.sharedAs === sharedAs) ?? false);
}

function open(check: Check, complaint: ComplaintState, visit: VisitState): boolean {
  if (complaint.trail.some((finding) => finding.check === check.id)) return false;
  if (fitOf(check.when, visit.layout).fits === 'no') return false;
  if (ROLES.indexOf(check.who) > ROLES.indexOf(visit.who)) return false;
  return (
    check.requires.length === 0 ||
    check.requires.some((need) =>
      complaint.trail.some(
        ({ check: id, value }) => id === need.check && value.kind === 'result' && need.results.includes(value.result),
      ),
    )
  );
}

function valueOf(
  check: Check,
  result: string | undefined,
  notes: readonly RoadNote[],
  vocabulary: Vocabulary,
): RoadOffer['value'] | null {
  if (result !== undefined) return check.results.some(({ id }) => id === result) ? { kind: 'result', result } : null;
  const entry = notes[0]?.entry;
  if (entry?.kind !== 'gauge' || !check.measure || !vocabulary.instruments.has(check.measure.instrument)) return null;
  const { value, unit } = entry.reading;
  if (!isUnit(unit) || unitOf(unit).quantity !== unitOf(check.measure.unit).quantity) return null;
  return { kind: 'reading', reading: { value: convert(value, unit, check.measure.unit), unit: check.measure.unit } };
}

function wordsOf(check: Check, value: RoadOffer['value']): string {
  if (value.kind === 'result') return check.results.find(({ id }) => id === value.result)?.label ?? value.result;
  const { reading } = value;
  return `${Math.round(10 * reading.value) / 10} ${unitOf(reading.unit).symbol}`.trim();
}
