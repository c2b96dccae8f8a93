/** What earlier visits of a coach leave behind: complaints, how they ended, and every reading. */
import { effectiveEvents, type VisitEvent } from '../visit/index.ts';
import type { PastReading } from './past-reading.ts';
import { sheetReadings } from './sheet-readings.ts';

export interface PastComplaint {
  readonly complaint: string;
  readonly tree: string;
  readonly words: string;
  readonly closedHow: 'cured' | 'handed-over' | 'left-open' | null;
  /** Cause that was corrected last, when there was one. */
  readonly cause: string | null;
}

export interface VisitRecord {
  readonly complaints: readonly PastComplaint[];
  readonly readings: readonly PastReading[];
}

/** What a visit leaves behind, from its log alone: no tree is needed. What was taken back is not there. */
export function visitRecord(events: readonly VisitEvent[]): VisitRecord {
  const complaints = new Map<string, PastComplaint>();
  const readings = new Map<string, PastReading>();
  const change = (id: string, more: Partial<PastComplaint>): void => {
    const known = complaints.get(id);
    if (known) complaints.set(id, { ...known, ...more });
  };
  const effective = effectiveEvents(events);
  for (const event of effective) {
    switch (event.kind) {
      case 'complaint.opened':
        if (!complaints.has(event.complaint))
          complaints.set(event.complaint, {
            complaint: event.complaint,
            tree: event.tree,
            words: event.words,
            closedHow: null,
            cause: null,
          });
        break;
      case 'complaint.closed':
        change(event.complaint, { closedHow: event.how });
        break;
      case 'complaint.reopened':
        change(event.complaint, { closedHow: null });
        break;
      case 'correction.done':
        change(event.complaint, { cause: event.cause });
        break;
      case 'proof.recorded':
        if (event.outcome === 'gone') change(event.complaint, { closedHow: 'cured' });
        break;
      case 'finding.recorded': {
        const of = complaints.get(event.complaint);
        if (!of || event.value.kind !== 'reading' || readings.has(event.finding)) break;
        const { value, unit } = event.value.reading;
        const { finding, check, site = null, at } = event;
        readings.set(finding, { finding, tree: of.tree, check, site, value, unit, at });
        break;
      }
      case 'finding.changed': {
        const known = readings.get(event.finding);
        if (!known) break;
        if (event.value.kind !== 'reading') readings.delete(event.finding);
        else {
          const { value, unit } = event.value.reading;
          readings.set(event.finding, { ...known, value, unit, site: event.site ?? known.site });
        }
        break;
      }
      default:
        break;
    }
  }
  return { complaints: [...complaints.values()], readings: [...readings.values(), ...sheetReadings(effective)] };
}
