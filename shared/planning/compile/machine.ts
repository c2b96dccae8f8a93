import { createMachine } from 'xstate';
import type { Answer, Ask, CompiledTree, Leaf } from './compiled-tree.ts';

/** What a state of the machine says: the step to take, or how the path ends. */
export type StateMeta = { readonly ask: Ask } | { readonly leaf: Leaf };

/** Name of the state of a node. */
export function stateName(number: number): string {
  return `step-${number}`;
}

/** Event type of an answer, different for every branch of a step. */
export function eventOf(answer: Answer): string {
  switch (answer.kind) {
    case 'stop':
      return `answer ${answer.answer}`;
    case 'layout':
      return `layout ${String(answer.value)}`;
    case 'layout-unknown':
      return 'layout not known';
    case 'result':
      return `result ${answer.result}`;
    case 'cannot':
      return 'cannot';
  }
}

/**
 * The compiled tree as an XState machine: one state a node, one event an answer, a final state a leaf. It has no guards
 * and no context, so that any tool that reads state machines can walk it. What a state says is in its `meta`.
 */
export function toMachine(compiled: CompiledTree) {
  return createMachine({
    // XState takes types as values that it never reads.
    types: { meta: {} as StateMeta, events: {} as { readonly type: string } },
    id: compiled.complaint,
    initial: stateName(1),
    states: Object.fromEntries(
      compiled.nodes.map((node) => [
        stateName(node.number),
        node.kind === 'leaf'
          ? { type: 'final' as const, meta: { leaf: node } }
          : {
              meta: { ask: node.ask },
              on: Object.fromEntries(node.branches.map(({ answer, to }) => [eventOf(answer), stateName(to)])),
            },
      ]),
    ),
  });
}
