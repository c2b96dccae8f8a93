/** What the notes of a road test offer, check by check. */
import type { SiteKind } from '../../../shared/knowledge/index.ts';
import type { UnitSystem } from '../../../shared/units/index.ts';
import type { ComplaintState, PinnedTree, RoadOffer, VisitEventBody, VisitState } from '../../../shared/visit/index.ts';
import { driveTime, entryWords } from './road-sheet.ts';

/** One check of one complaint, with what may be confirmed for it. */
export interface OfferedCheck {
  /** Complaint and check. */
  readonly key: string;
  readonly complaint: string;
  readonly title: string;
  readonly check: string;
  /** A place has to be named for it. */
  readonly site: SiteKind | null;
  readonly offers: readonly {
    readonly id: string;
    readonly words: string;
    /** Which notes say so. */
    readonly because: string;
  }[];
  /** Titles of the complaints that hear it as well. */
  readonly alsoHeardBy: readonly string[];
}

export function offeredChecks(
  offers: readonly RoadOffer[],
  visit: VisitState,
  trees: ReadonlyMap<string, PinnedTree>,
  system: UnitSystem,
): OfferedCheck[] {
  const title = (id: string): string => {
    const complaint: ComplaintState | undefined = visit.complaints.find((each) => each.id === id);
    return (complaint && trees.get(complaint.treeHash)?.tree.title) ?? id;
  };
  const keys = [...new Set(offers.map(({ complaint, check }) => `${complaint} ${check.id}`))];
  return keys.flatMap((key): OfferedCheck[] => {
    const mine = offers.filter(({ complaint, check }) => `${complaint} ${check.id}` === key);
    const [first] = mine;
    if (!first) return [];
    return [
      {
        key,
        complaint: first.complaint,
        title: title(first.complaint),
        check: first.check.name,
        site: first.check.site ?? null,
        offers: mine.map(({ id, words, notes }) => ({
          id,
          words,
          because: notes.map(({ entry, seconds }) => `${driveTime(seconds)} ${entryWords(entry, system)}`).join('; '),
        })),
        alsoHeardBy: first.alsoHeardBy.map(title),
      },
    ];
  });
}

/** The findings that are ticked, as events. Minutes are those of the drive, and were not spent a second time. */
export function confirmedBodies(
  offers: readonly RoadOffer[],
  ticked: Readonly<Record<string, string>>,
  sites: Readonly<Record<string, string>>,
  newId: () => string,
): VisitEventBody[] {
  return offers
    .filter(({ id, complaint, check }) => ticked[`${complaint} ${check.id}`] === id)
    .map(({ complaint, check, value }): VisitEventBody => {
      const site = sites[`${complaint} ${check.id}`] ?? '';
      return {
        kind: 'finding.recorded',
        complaint,
        finding: `f-${newId()}`,
        check: check.id,
        value,
        minutes: 0,
        ...(check.site !== undefined && site !== '' ? { site } : {}),
      };
    });
}
