import { effectiveEvents, redoTarget, undoTarget } from '../visit/index.ts';
import type { CoachEvent, CoachValue } from './events.ts';
import { LAYOUT_PREFIX } from './field.ts';
import { checkedValue } from './field-value.ts';
import { fieldOf } from './fields.ts';

/** What is known for a field, as typed, and since when. */
export interface KnownValue {
  readonly field: string;
  readonly value: CoachValue;
  readonly unit?: string;
  /** Calendar day for which it was true. */
  readonly on: string;
  readonly by: string;
  readonly event: string;
}

export interface CoachProfile {
  readonly name: string;
  readonly demo: boolean;
  readonly openedAt: string;
  readonly values: Readonly<Record<string, KnownValue>>;
  /** Every reading of a field that is kept over time, oldest day first, the present one included. */
  readonly readings: Readonly<Record<string, readonly KnownValue[]>>;
  /** What could not be used, and why; it stays in the log. */
  readonly ignored: readonly { readonly event: CoachEvent; readonly why: string }[];
  readonly undo?: CoachEvent;
  readonly redo?: CoachEvent;
}

/** A profile from its events: the same events give the same profile, in whatever order the writers' files were read. */
export function coachProfile(events: readonly CoachEvent[]): CoachProfile {
  let name = '';
  let demo = false;
  let openedAt = '';
  const values = new Map<string, KnownValue>();
  const readings = new Map<string, KnownValue[]>();
  const ignored: CoachProfile['ignored'][number][] = [];
  for (const event of effectiveEvents(events)) {
    switch (event.kind) {
      case 'coach.opened':
        ({ name, demo } = event);
        openedAt = event.at;
        break;
      case 'coach.named':
        name = event.name;
        break;
      case 'coach.cleared':
        values.delete(event.field);
        break;
      case 'coach.set': {
        const why = refused(event);
        if (why !== null) {
          ignored.push({ event, why });
          break;
        }
        const { field, value, unit, on = event.at.slice(0, 10), by, id } = event;
        const known: KnownValue = { field, value, on, by, event: id, ...(unit === undefined ? {} : { unit }) };
        const kept = isDated(field) ? [...(readings.get(field) ?? []), known].sort(byDay) : [known];
        if (isDated(field)) readings.set(field, kept);
        // A reading of an earlier day that was typed in later does not take the place of the newest.
        values.set(field, kept.at(-1) ?? known);
        break;
      }
      case 'event.taken-back':
      case 'event.put-back':
        break;
    }
  }
  const undo = undoTarget(events);
  const redo = redoTarget(events);
  return {
    name,
    demo,
    openedAt,
    values: Object.fromEntries(values),
    readings: Object.fromEntries(readings),
    ignored,
    ...(undo ? { undo } : {}),
    ...(redo ? { redo } : {}),
  };
}

function byDay(a: KnownValue, b: KnownValue): number {
  return a.on < b.on ? -1 : a.on > b.on ? 1 : 0;
}

function isDated(field: string): boolean {
  const found = fieldOf(field);
  return found?.kind === 'figure' && found.dated === true;
}

/** Why a value cannot be used; null when it can. Layout answers are held against the vocabulary where they are used. */
function refused({ field, value, unit }: Extract<CoachEvent, { kind: 'coach.set' }>): string | null {
  if (field.startsWith(LAYOUT_PREFIX))
    return typeof value === 'number' ? `“${field}” is a question with answers; ${value} is a number.` : null;
  const known = fieldOf(field);
  if (!known) return `“${field}” is not a field that this version knows.`;
  const checked = checkedValue(known, value, unit);
  return checked.ok ? null : checked.message;
}
