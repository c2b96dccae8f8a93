/** Whether a road test may be begun, and what a sign on the road holds the coach to. */
import { ROAD_SIGNS } from '../../knowledge/road-sheet.ts';
import { VERDICTS } from '../../knowledge/tree.ts';
import type { DriveVerdict } from '../../planning/assessment.ts';
import type { Hold } from '../../planning/situation.ts';
import { openDrive, samePerson, type RoadState } from './state.ts';

/** Strictest of what holds: a road test ends, and none begins, while one stands. */
export function roadVerdict(state: RoadState): Hold | null {
  for (const drive of [...state.drives].reverse()) {
    for (const { entry } of drive.notes) {
      if (entry.kind !== 'sign' || drive.followed[entry.sign] !== undefined) continue;
      const sign = ROAD_SIGNS.find(({ id }) => id === entry.sign);
      return {
        verdict: 'stay-put',
        because: `Road test: ${lower(sign?.because ?? entry.sign)}.`,
        doNow:
          'Stop where it is safe and stay there. Look for the cause, and write under the road test what was found and done before the coach moves on.',
      };
    }
  }
  return null;
}

/** Signs noted and not followed up, newest drive first. */
export function openSigns({
  drives,
}: RoadState): { readonly drive: string; readonly sign: string; readonly words: string }[] {
  return [...drives].reverse().flatMap((drive) => {
    const noted = new Set(drive.notes.flatMap(({ entry }) => (entry.kind === 'sign' ? [entry.sign] : [])));
    return [...noted]
      .filter((sign) => drive.followed[sign] === undefined)
      .map((sign) => ({ drive: drive.id, sign, words: ROAD_SIGNS.find(({ id }) => id === sign)?.words ?? sign }));
  });
}

/** A complaint of the visit with its drive verdict. */
export interface VerdictOfComplaint {
  readonly title: string;
  readonly verdict: DriveVerdict;
}

/**
 * Why no road test may be begun now; null when nothing found says so. Refused while a stop rule or a sheet of the visit
 * holds the coach, or safety questions of a complaint are still open: the same as for a road check (PLA-20), for every
 * complaint of the visit at once, and for a mechanic too, since somebody rides along.
 *
 * @param held  what the sheets of the visit hold the coach to.
 */
export function roadRefusal(
  state: RoadState,
  complaints: readonly VerdictOfComplaint[],
  held: Hold | null,
): { readonly because: string } | null {
  if (openDrive(state)) return { because: 'A road test is under way. End it first.' };
  if (held && held.verdict !== 'drive-and-book') return { because: held.because };
  for (const { title, verdict } of [...complaints].sort((a, b) => rank(a) - rank(b))) {
    const ruled = verdict.fired.some((rule) => rule.verdict !== 'drive-and-book');
    if (verdict.verdict === 'stay-put' || ruled) return { because: `${title}: ${verdict.because}` };
    if (verdict.openQuestions.length > 0) {
      const open = verdict.openQuestions.length;
      return {
        because: `${title}: ${open} safety question${open === 1 ? ' is' : 's are'} not answered yet. Answer ${open === 1 ? 'it' : 'them'} under “Work” first.`,
      };
    }
  }
  return null;
}

/** What is wrong with the names of a drive that is to begin; null when they will do. */
export function crewProblem(crew: { readonly driver: string; readonly writer: string }): string | null {
  if (crew.driver.trim() === '' || crew.writer.trim() === '') {
    return 'A road test has two people. Name who drives and who writes.';
  }
  if (samePerson(crew))
    return 'One name stands for both. Whoever drives never touches the sheet: name a passenger who writes.';
  return null;
}

function rank({ verdict }: VerdictOfComplaint): number {
  return VERDICTS.indexOf(verdict.verdict);
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
