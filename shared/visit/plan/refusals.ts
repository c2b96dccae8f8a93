import { BASES, type PlanEventBody } from './events.ts';
import { isKnown, unprovenLines } from './fold.ts';
import { isAddedLine, isComplaintLine } from './line-id.ts';
import type { PlanState } from './state.ts';

/**
 * Why an event of the plan cannot be taken where the visit stands; null when it can.
 *
 * @param complaintsUnproven  lines of complaints whose correction has no proof that held.
 */
export function refusesPlan(
  state: PlanState,
  event: PlanEventBody,
  complaintsUnproven: readonly string[],
): string | null {
  switch (event.kind) {
    case 'plan.line-added':
      if (!isAddedLine(event.line)) return `"${event.line}" is no name for a line that is added.`;
      if (isOn(state, event.line)) return 'This line is in the plan already.';
      if (event.minutes && event.minutes[0] > event.minutes[1])
        return `The least time (${event.minutes[0]} min) is above the most (${event.minutes[1]} min).`;
      return null;
    case 'plan.line-removed':
      if (!isOn(state, event.line)) return NOT_HERE;
      return state.said.get(event.line)?.done ? 'The line is done: it stays in the record.' : null;
    case 'plan.decided':
    case 'plan.urgency-set':
    case 'plan.place-set':
    case 'plan.photo-added':
    case 'plan.figure-set':
      return isKnown(state, event.line) ? null : NOT_HERE;
    case 'plan.basis-set':
      return BASES.some((basis) => basis === event.basis) || event.basis.startsWith('part:')
        ? null
        : `"${event.basis}" is nothing that this version reckons with.`;
    case 'plan.done':
      if (isComplaintLine(event.line)) return 'A correction of a complaint is recorded with the complaint.';
      return isKnown(state, event.line) ? null : NOT_HERE;
    case 'plan.proven':
      if (isComplaintLine(event.line)) return 'The proof of a complaint is recorded with the complaint.';
      if (!isKnown(state, event.line)) return NOT_HERE;
      return state.said.get(event.line)?.done ? null : 'There is nothing to prove before the line is done.';
    case 'part.measured':
    case 'part.marked':
      return null;
    case 'reminder.set':
      return event.dueDate === undefined && event.dueMiles === undefined
        ? 'A reminder needs a date or a distance.'
        : null;
    case 'reminder.done':
      return state.reminders.some(({ id }) => id === event.reminder) ? null : 'This reminder is not here.';
    case 'visit.closed-out': {
      const named = new Set(event.unproven.map(({ line }) => line));
      const open = [...complaintsUnproven, ...unprovenLines(state)].filter((line) => !named.has(line));
      if (open.length === 0) return null;
      const many = open.length === 1 ? 'One correction is' : `${open.length} corrections are`;
      return `${many} not proven (${open.join(', ')}). Prove it, or say why the visit closes without.`;
    }
  }
}

const NOT_HERE = 'The line is not in the plan.';

function isOn(state: PlanState, line: string): boolean {
  return state.added.some((each) => each.line === line);
}
