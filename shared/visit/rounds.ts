/** A round: one check with a result a place, recorded in one go and taken back in one go. */
import { effectiveEvents, inOrder, takenBack } from './effective-events.ts';
import type { EventOf, RecordedValue, VisitEvent, VisitEventBody } from './events.ts';

/** What was found at one place of a round. */
export interface RoundEntry {
  readonly place: string;
  readonly value: RecordedValue;
}

/** The ids of a round's findings are the round's own with a count behind this sign. */
const COUNT = '~';

/** Round that a finding was recorded in; null for one that was recorded by itself. */
export function roundOf(finding: string): string | null {
  const at = finding.lastIndexOf(COUNT);
  return at > 0 && /^\d+$/.test(finding.slice(at + 1)) ? finding.slice(0, at) : null;
}

/**
 * What is written for a round: one finding a place, so that a program which knows no rounds reads every one of them. The
 * place that counts for the belief stands first, with the note and the photos; the minutes of the check are spent once.
 *
 * @param round    unique in the visit.
 * @param entries  at least one, each place once.
 * @param first    place that counts for the belief.
 */
export function roundEvents(
  { complaint, check, round }: { readonly complaint: string; readonly check: string; readonly round: string },
  entries: readonly RoundEntry[],
  first: string | null,
  more: { readonly note?: string; readonly photos?: readonly string[] } = {},
): VisitEventBody[] {
  const ordered = [
    ...entries.filter(({ place }) => place === first),
    ...entries.filter(({ place }) => place !== first),
  ];
  return ordered.map(({ place, value }, i) => ({
    kind: 'finding.recorded',
    complaint,
    finding: `${round}${COUNT}${i + 1}`,
    check,
    value,
    site: place,
    ...(i === 0 ? more : { minutes: 0 }),
  }));
}

function inRoundOf(event: VisitEvent): (other: VisitEvent) => boolean {
  const round = event.kind === 'finding.recorded' ? roundOf(event.finding) : null;
  return (other) =>
    other.id === event.id || (round !== null && other.kind === 'finding.recorded' && roundOf(other.finding) === round);
}

/** What one press of undo takes back with an event: all of its round that still counts; else the event alone. */
export function takenWith(events: readonly VisitEvent[], event: VisitEvent): VisitEvent[] {
  return effectiveEvents(events).filter(inRoundOf(event));
}

/** What one press of redo puts back with an event: all of its round that was taken back in the same go. */
export function putBackWith(events: readonly VisitEvent[], event: VisitEvent): VisitEvent[] {
  const ordered = inOrder(events);
  const gone = takenBack(ordered);
  const known = new Map(ordered.map((each) => [each.id, each]));
  const same = inRoundOf(event);
  const back: VisitEvent[] = [];
  for (const each of ordered.reverse()) {
    if (each.kind === 'event.put-back') continue;
    if (each.kind !== 'event.taken-back') break;
    const target = known.get(each.event);
    if (!target || !gone.has(target.id) || back.includes(target)) continue;
    if (!same(target)) break;
    back.push(target);
  }
  return back.includes(event) ? back : [event];
}

/** Event by which a finding came into the visit. */
export function recordingOf(events: readonly VisitEvent[], finding: string): EventOf<'finding.recorded'> | undefined {
  return effectiveEvents(events).find(
    (event): event is EventOf<'finding.recorded'> => event.kind === 'finding.recorded' && event.finding === finding,
  );
}
