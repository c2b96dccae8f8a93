import type { AccessState } from '../knowledge/vocabulary.ts';

/**
 * How far something is taken apart, as a tree of states that can be open. A set of open states is a bit mask: bit i is
 * state i of the list. Opening early or closing early never pays, so moves are charged to the action that needs them.
 */
export interface AccessGraph {
  readonly ids: readonly string[];
  readonly openCost: readonly number[];
  readonly closeCost: readonly number[];
  /** State with all its parents. */
  readonly chain: readonly number[];
  /** State with everything below it. */
  readonly subtree: readonly number[];
  /** Moves worked out before; a planner asks for the same few thousands of times. */
  readonly known: Map<number, Move>;
}

/** Cost of a move, and the set of states open after it. */
export interface Move {
  readonly cost: number;
  readonly state: number;
}

/** What an action needs: states that must be open and states that must be closed. */
export interface AccessNeed {
  readonly open: number;
  readonly closed: number;
}

export interface AccessNode {
  readonly id: string;
  readonly parent?: string | undefined;
  readonly openCost: number;
  readonly closeCost: number;
}

/** Three sets of states have to fit into one exact number. */
const MOST_STATES = 17;

/**
 * The graph of a list of states, parents before children.
 *
 * @throws {RangeError} above `MOST_STATES`.
 */
export function accessGraph(nodes: readonly AccessNode[]): AccessGraph {
  if (nodes.length > MOST_STATES)
    throw new RangeError(`${nodes.length} access states, at most ${MOST_STATES} are possible`);
  const index = new Map(nodes.map((node, i) => [node.id, i]));
  const parents = nodes.map((node) => (node.parent === undefined ? -1 : index.get(node.parent)!));
  const chain = nodes.map((_, i) => {
    let mask = 0;
    for (let at = i; at >= 0; at = parents[at]!) mask |= 1 << at;
    return mask;
  });
  return {
    ids: nodes.map(({ id }) => id),
    openCost: nodes.map(({ openCost }) => openCost),
    closeCost: nodes.map(({ closeCost }) => closeCost),
    chain,
    known: new Map(),
    subtree: nodes.map((_, i) =>
      chain.reduce((mask, ancestors, j) => (ancestors & (1 << i) ? mask | (1 << j) : mask), 0),
    ),
  };
}

/** The graph of the vocabulary's states. */
export function vocabularyGraph(states: readonly AccessState[]): AccessGraph {
  return accessGraph(
    states.map((state) => ({
      id: state.id,
      parent: state.parent,
      openCost: state.openMinutes,
      closeCost: state.closeMinutes,
    })),
  );
}

/** What being in a state of the vocabulary needs: the state and its parents open, what they forbid closed. */
export function needOf(graph: AccessGraph, states: readonly AccessState[], id: string): AccessNeed {
  const i = graph.ids.indexOf(id);
  const open = graph.chain[i]!;
  let closed = 0;
  states.forEach((state, j) => {
    if (!(open & (1 << j))) return;
    for (const forbidden of state.forbids) closed |= graph.subtree[graph.ids.indexOf(forbidden)]!;
  });
  return { open, closed: closed & ~open };
}

/** Cost of getting from a set of open states to one that meets a need, and the set then open. */
export function move(graph: AccessGraph, from: number, need: AccessNeed): Move {
  const key = from + need.open * 2 ** MOST_STATES + need.closed * 2 ** (2 * MOST_STATES);
  const known = graph.known.get(key);
  if (known) return known;
  const opening = need.open & ~from;
  const closing = from & need.closed;
  let cost = 0;
  for (let i = 0; i < graph.ids.length; i++) {
    if (opening & (1 << i)) cost += graph.openCost[i]!;
    if (closing & (1 << i)) cost += graph.closeCost[i]!;
  }
  const made = { cost, state: (from | opening) & ~closing };
  graph.known.set(key, made);
  return made;
}

/** Cost of closing everything that is open. */
export function closingCost(graph: AccessGraph, from: number): number {
  let cost = 0;
  for (let i = 0; i < graph.ids.length; i++) if (from & (1 << i)) cost += graph.closeCost[i]!;
  return cost;
}

/** What meeting a need adds until everything is closed again; what is open already has to be closed anyway and is not charged. */
export function accessMinutes(graph: AccessGraph, from: number, need: AccessNeed): number {
  const there = move(graph, from, need);
  return Math.max(0, there.cost + closingCost(graph, there.state) - closingCost(graph, from));
}

/** Mask of a list of open state ids; unknown ids are left out. */
export function maskOf(graph: AccessGraph, open: readonly string[]): number {
  return open.reduce((mask, id) => (graph.ids.includes(id) ? mask | graph.chain[graph.ids.indexOf(id)]! : mask), 0);
}

/** Ids of the open states of a mask, in file order. */
export function idsOf(graph: AccessGraph, mask: number): string[] {
  return graph.ids.filter((_, i) => mask & (1 << i));
}
