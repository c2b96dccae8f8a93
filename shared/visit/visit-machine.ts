import { assign, setup } from 'xstate';
import type { EventOf } from './events.ts';

type Heard = {
  [K in 'complaint.opened' | 'complaint.closed' | 'complaint.reopened' | 'proof.recorded']: {
    readonly type: K;
    readonly event: EventOf<K>;
  };
}[keyof { 'complaint.opened': 1; 'complaint.closed': 1; 'complaint.reopened': 1; 'proof.recorded': 1 }];

/** One job on one coach: arrived, being worked on, every complaint closed. Pure, driven by the log's events alone. */
export const visitMachine = setup({
  types: {
    // Declared for the compiler only.
    events: {} as Heard,
    context: {} as { readonly open: readonly string[] },
  },
  guards: {
    isLast: ({ context, event }) => context.open.every((id) => id === event.event.complaint),
    isGone: ({ context, event }) =>
      event.type === 'proof.recorded' &&
      event.event.outcome === 'gone' &&
      context.open.every((id) => id === event.event.complaint),
  },
  actions: {
    add: assign(({ context, event }) => ({
      open: [...context.open.filter((id) => id !== event.event.complaint), event.event.complaint],
    })),
    remove: assign(({ context, event }) => ({ open: context.open.filter((id) => id !== event.event.complaint) })),
    removeIfGone: assign(({ context, event }) => ({
      open:
        event.type === 'proof.recorded' && event.event.outcome === 'still-there'
          ? context.open
          : context.open.filter((id) => id !== event.event.complaint),
    })),
  },
}).createMachine({
  id: 'visit',
  context: { open: [] },
  initial: 'arrived',
  states: {
    arrived: { on: { 'complaint.opened': { target: 'working', actions: 'add' } } },
    working: {
      on: {
        'complaint.opened': { actions: 'add' },
        'complaint.reopened': { actions: 'add' },
        'complaint.closed': [{ guard: 'isLast', target: 'done', actions: 'remove' }, { actions: 'remove' }],
        'proof.recorded': [{ guard: 'isGone', target: 'done', actions: 'removeIfGone' }, { actions: 'removeIfGone' }],
      },
    },
    done: {
      on: {
        'complaint.opened': { target: 'working', actions: 'add' },
        'complaint.reopened': { target: 'working', actions: 'add' },
      },
    },
  },
});
