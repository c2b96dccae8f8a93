import { roundOf } from './rounds.ts';
import type { TrailFinding } from './state.ts';

/** Findings that read as one line: a single one, or those of one check at several places. */
export interface TrailLine {
  /** Of its first finding. */
  readonly id: string;
  readonly check: string;
  /** As recorded; at least one. */
  readonly findings: readonly TrailFinding[];
}

/**
 * A trail with the places of a check on one line: findings of one check, one after another, each at a place of its own, in
 * one round or by the same person on the same day. A place that is looked at again begins a line of its own.
 */
export function trailLines(trail: readonly TrailFinding[]): TrailLine[] {
  const lines: TrailFinding[][] = [];
  for (const finding of trail) {
    const last = lines.at(-1);
    if (last && joins(last, finding)) last.push(finding);
    else lines.push([finding]);
  }
  return lines.map((findings) => ({ id: findings[0]!.id, check: findings[0]!.check, findings }));
}

function joins(line: readonly TrailFinding[], { id, check, site, by, from, at }: TrailFinding): boolean {
  const first = line[0]!;
  const together =
    (first.by === by && first.at.slice(0, 10) === at.slice(0, 10)) ||
    (roundOf(id) !== null && roundOf(first.id) === roundOf(id));
  return (
    site !== undefined &&
    together &&
    first.check === check &&
    first.from === from &&
    line.every((each) => each.site !== undefined && each.site !== site)
  );
}

/** What was found at one or more places. */
export interface PlacesGroup<W> {
  readonly words: W;
  /** "left front", "left front and right drive", "the other five", "all six places". */
  readonly places: string;
  readonly findings: readonly TrailFinding[];
}

/**
 * The places of a line by what was found there, in the order of the trail; places that say the same stand together, the
 * most of them last and counted.
 *
 * @param wordsOf  what was found, in words; equal words are one group.
 * @param places   places that this coach has for the check: only when every one was looked at are they counted.
 */
export function placesBy<W>(
  { findings }: Pick<TrailLine, 'findings'>,
  wordsOf: (finding: TrailFinding) => { readonly key: string; readonly words: W },
  places: readonly string[],
): PlacesGroup<W>[] {
  const groups = new Map<string, { words: W; findings: TrailFinding[] }>();
  for (const finding of findings) {
    const { key, words } = wordsOf(finding);
    const group = groups.get(key) ?? { words, findings: [] };
    groups.set(key, group);
    group.findings.push(finding);
  }
  const all = places.length > 0 && places.every((place) => findings.some(({ site }) => site === place));
  const sorted = [...groups.values()];
  const most = sorted.reduce((a, b) => (b.findings.length > a.findings.length ? b : a));
  const last = most.findings.length > 2 ? [...sorted.filter((each) => each !== most), most] : sorted;
  return last.map(({ words, findings: of }) => ({
    words,
    findings: of,
    places:
      all && of === most.findings && of.length > 2
        ? of.length === findings.length
          ? `all ${NUMBERS[of.length] ?? of.length} places`
          : `the other ${NUMBERS[of.length] ?? of.length}`
        : listed(of.flatMap(({ site }) => site ?? [])),
  }));
}

const NUMBERS = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'];

function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}
