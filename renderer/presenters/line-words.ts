/** Lines of the trail in words: a finding, or a check with its places. */
import { placesOn } from '../../shared/knowledge/index.ts';
import type { Situation } from '../../shared/planning/index.ts';
import type { UnitSystem } from '../../shared/units/index.ts';
import {
  placesBy,
  sentence,
  trailLines,
  valueWords,
  type TrailFinding,
  type TrailLine,
} from '../../shared/visit/index.ts';

type Around = Pick<Situation, 'tree' | 'vocabulary' | 'layout'>;

export interface LineWords {
  readonly found: string;
  /** Name of the check, with the place where there is one place. */
  readonly check: string;
}

/** One finding as it is; a round as "Left front: hot; the other five: cool". */
export function lineWords(
  { findings, check: id }: TrailLine,
  { tree, vocabulary, layout }: Around,
  system: UnitSystem,
): LineWords {
  const check = tree.checks.find((each) => each.id === id);
  const said = ({ value }: TrailFinding): string => valueWords(check, value, system, vocabulary);
  const [first, ...more] = findings;
  if (more.length === 0) return { found: said(first!), check: [check?.name, first!.site].filter(Boolean).join(', ') };
  const groups = placesBy(
    { findings },
    (finding) => ({ key: said(finding), words: said(finding) }),
    check?.site === undefined ? [] : placesOn(check.site, layout),
  );
  return {
    found: sentence(groups.map(({ places, words }) => `${places}: ${inLine(words)}`).join('; ')),
    check: check?.name ?? id,
  };
}

/** The line that a finding stands on, in words; null when the trail does not have it. */
export function findingWords(
  trail: readonly TrailFinding[],
  finding: string,
  around: Around,
  system: UnitSystem,
): LineWords | null {
  const line = trailLines(trail).find(({ findings }) => findings.some(({ id }) => id === finding));
  return line ? lineWords(line, around, system) : null;
}

/** Words in the middle of a line: a small letter in front, but for an abbreviation. */
function inLine(text: string): string {
  return /^[A-Z][a-z ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
