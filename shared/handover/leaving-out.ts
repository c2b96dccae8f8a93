import type { Report } from './document.ts';

/** Sections that cannot be left out: they keep the rest from being read as more than it is. */
const ALWAYS: ReadonlySet<string> = new Set(['open', 'unsettled']);

/** Whether a person may leave a section out. */
export function mayLeaveOut(section: string): boolean {
  return !ALWAYS.has(section);
}

/**
 * A report without some of its parts and sections. Verdict, cautions, what is not settled and the last word stay.
 *
 * @param leftOut  "part" or "part/section", by id.
 */
export function leavingOut(report: Report, leftOut: ReadonlySet<string>): Report {
  return {
    ...report,
    parts: report.parts.flatMap((part) => {
      const sections = part.sections.filter(
        ({ id }) => !mayLeaveOut(id) || !(leftOut.has(part.id) || leftOut.has(`${part.id}/${id}`)),
      );
      return sections.length > 0 ? [{ ...part, sections }] : [];
    }),
  };
}
