import type { VisitEvent } from '../events.ts';
import { isPlanEvent } from './events.ts';
import { isAddedLine } from './line-id.ts';
import type { PlanState, SaidOfLine } from './state.ts';

/** What an event of the visit does to the plan. Pure; an event of another subject changes nothing but the closing. */
export function foldPlan(state: PlanState, event: VisitEvent): PlanState {
  if (!isPlanEvent(event)) return WORK_GOES_ON.has(event.kind) ? goneOn(state) : state;
  const { at, by } = event;
  switch (event.kind) {
    case 'plan.line-added':
      return goneOn({
        ...state,
        added: [
          ...state.added,
          {
            line: event.line,
            title: event.title,
            why: event.why,
            danger: event.danger,
            urgency: event.urgency,
            ...(event.of === undefined ? {} : { of: event.of }),
            ...(event.place === undefined ? {} : { place: event.place }),
            ...(event.access === undefined ? {} : { access: event.access }),
            parts: event.parts ?? [],
            minutes: event.minutes ?? [0, 0],
            photos: event.photos ?? [],
            at,
            by,
          },
        ],
      });
    case 'plan.line-removed':
      return { ...state, added: state.added.filter(({ line }) => line !== event.line) };
    case 'plan.decided': {
      const { decision, who, words } = event;
      return said(state, event.line, {
        ...saidOf(state, event.line),
        decision: decision === null ? undefined : { decision, who, words, at, by },
      });
    }
    case 'plan.urgency-set': {
      const { urgency, words } = event;
      return said(state, event.line, {
        ...saidOf(state, event.line),
        urgency: urgency === null ? undefined : { urgency, words, at, by },
      });
    }
    case 'plan.place-set':
      return said(state, event.line, { ...saidOf(state, event.line), place: event.place });
    case 'plan.photo-added': {
      const before = saidOf(state, event.line);
      const others = (before.photos ?? []).filter(({ photo }) => photo !== event.photo);
      return said(state, event.line, { ...before, photos: [...others, { photo: event.photo, at, by }] });
    }
    case 'plan.figure-set': {
      const before = saidOf(state, event.line);
      const figures = { ...before.figures.get(event.about), [event.figure]: event.value ?? undefined };
      return said(state, event.line, { ...before, figures: new Map([...before.figures, [event.about, figures]]) });
    }
    case 'plan.basis-set': {
      const bases = new Map(state.bases);
      if (event.value === null) bases.delete(event.basis);
      else bases.set(event.basis, event.value);
      return { ...state, bases };
    }
    case 'plan.done': {
      const { words, minutes } = event;
      // What was proven before this was done again proves nothing about it.
      const done = { words, ...(minutes === undefined ? {} : { minutes }), at, by };
      return goneOn(said(state, event.line, { ...saidOf(state, event.line), proven: undefined, done }));
    }
    case 'plan.proven': {
      const { outcome, words } = event;
      return said(state, event.line, { ...saidOf(state, event.line), proven: { outcome, words, at, by } });
    }
    case 'part.measured': {
      const { part, what, place, found } = event;
      const others = state.measured.filter((each) => each.part !== part || each.what !== what || each.place !== place);
      return { ...state, measured: [...others, { part, what, place, found, at, by }] };
    }
    case 'part.marked': {
      const marks = new Map(state.marks);
      if (event.mark === 'none') marks.delete(event.part);
      else marks.set(event.part, event.mark);
      return { ...state, marks };
    }
    case 'reminder.set': {
      const { reminder: id, what, dueDate, dueMiles, line } = event;
      const set = {
        id,
        what,
        ...(dueDate === undefined ? {} : { dueDate }),
        ...(dueMiles === undefined ? {} : { dueMiles }),
        ...(line === undefined ? {} : { line }),
      };
      return { ...state, reminders: [...state.reminders.filter((each) => each.id !== id), set] };
    }
    case 'reminder.done':
      return {
        ...state,
        reminders: state.reminders.map((each) =>
          each.id === event.reminder ? { ...each, done: { at, by, words: event.words } } : each,
        ),
      };
    case 'visit.closed-out':
      return { ...state, closedOut: { at, by, unproven: event.unproven, words: event.words } };
  }
}

/** Events of other subjects after which a visit that was closed is open again. */
const WORK_GOES_ON: ReadonlySet<string> = new Set(['complaint.opened', 'complaint.reopened', 'correction.done']);

function goneOn(state: PlanState): PlanState {
  return state.closedOut ? { ...state, closedOut: undefined } : state;
}

function saidOf(state: PlanState, line: string): SaidOfLine {
  return state.said.get(line) ?? { figures: new Map() };
}

function said(state: PlanState, line: string, now: SaidOfLine): PlanState {
  return { ...state, said: new Map([...state.said, [line, now]]) };
}

/** Corrections of lines that belong to no complaint and are done without a proof that held. */
export function unprovenLines(state: PlanState): string[] {
  return [...state.said].flatMap(([line, { done, proven }]) =>
    done && proven?.outcome !== 'held' && isKnown(state, line) ? [line] : [],
  );
}

/** A line that was added and is still there, or one that another subject stands behind. */
export function isKnown(state: PlanState, line: string): boolean {
  return !isAddedLine(line) || state.added.some((each) => each.line === line);
}
