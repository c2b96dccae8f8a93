import { partWords } from '../visit/inspection/items.ts';
import type { ComplaintCase } from './complaint-case.ts';
import type { Block, Line, ReportPhoto } from './document.ts';
import { checkLine } from './found-rows.ts';
import type { HandOverInput } from './input.ts';
import type { LogIndex } from './log-index.ts';
import { joined, reckoned, say } from './say.ts';

/** Numbers the photos of a report as they come; one that belongs to two things is shown once. */
export class PhotoNumbers {
  readonly #seen = new Set<string>();

  /** The photos not shown yet, numbered. */
  block(photos: readonly { readonly photo: string; readonly of: Line }[]): readonly Block[] {
    const fresh = photos.filter(({ photo }) => !this.#seen.has(photo) && !!this.#seen.add(photo));
    const first = this.#seen.size - fresh.length + 1;
    if (fresh.length === 0) return [];
    return [
      {
        kind: 'photos',
        photos: fresh.map(({ photo, of }, i): ReportPhoto => ({
          photo,
          caption: joined([reckoned(`Photo ${first + i}`, 'count', 'photos'), of], ': '),
        })),
      },
    ];
  }
}

/** Photos of a complaint with what they show: with the finding that they belong to, or with the complaint. */
export function complaintPhotos(
  one: ComplaintCase,
  log: LogIndex,
  { clock }: HandOverInput,
): readonly { readonly photo: string; readonly of: Line }[] {
  const { complaint } = one;
  const taken = (id: string, at: string, by: string): Line =>
    log.said([by, clock.day(at), clock.time(at)].filter(Boolean).join(', '), id);
  return [
    ...complaint.trail.flatMap((finding) =>
      finding.photos.map((photo) => ({
        photo,
        of: joined([checkLine(one, finding, log), taken(finding.id, finding.at, finding.by)], ', '),
      })),
    ),
    ...log
      .of('photo.added')
      .flatMap((event) =>
        event.complaint === complaint.id && event.finding === undefined
          ? [{ photo: event.photo, of: taken(event.id, event.at, event.by) }]
          : [],
      ),
  ];
}

/** Photos of the coach as a whole: of the inspection and of the rest of the work, and of lines of the plan. */
export function coachPhotos(
  log: LogIndex,
  { inspection = [], others = [], plan, clock }: HandOverInput,
): readonly { readonly photo: string; readonly of: Line }[] {
  const taken = (at: string, by: string): string => [by, clock.day(at), clock.time(at)].filter(Boolean).join(', ');
  return [
    ...others.flatMap(({ findings }) =>
      findings.flatMap(({ id, what, photos = [], at, by }) =>
        photos.map((photo) => ({ photo, of: log.said([what, taken(at, by)].filter(Boolean).join(', '), id) })),
      ),
    ),
    ...inspection.flatMap(({ id, item, site, photos, at, by }) =>
      photos.map((photo) => ({
        photo,
        of: log.said([partWords(item), site, taken(at, by)].filter(Boolean).join(', '), id),
      })),
    ),
    ...(plan?.lines ?? []).flatMap((line) =>
      line.why.flatMap(({ photos, text }) =>
        photos.map((photo) => ({
          photo,
          of: say(reckoned(line.title, 'plan', line.id), ': ', reckoned(text, 'plan', line.id)),
        })),
      ),
    ),
  ];
}
