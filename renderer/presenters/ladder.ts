import type { Vocabulary } from '../../shared/knowledge/vocabulary.ts';
import { idsOf, maskOf, move, needOf, vocabularyGraph } from '../../shared/planning/index.ts';

/** One rung of the access ladder. */
export interface Rung {
  readonly id: string;
  readonly name: string;
  readonly here: boolean;
  readonly look: '' | 'past' | 'next';
  /** Minutes to get there from where the coach stands now. */
  readonly minutes: number;
  /** Open states if the coach were there. */
  readonly then: readonly string[];
}

/** Every access state with what it costs to get there; the deepest open one is "here". */
export function ladderRungs(vocabulary: Vocabulary, open: readonly string[]): Rung[] {
  const graph = vocabularyGraph(vocabulary.access);
  const now = maskOf(graph, open);
  const parents = new Set(vocabulary.access.filter(({ id }) => open.includes(id)).map(({ parent }) => parent));
  const deepest = [...open].reverse().find((id) => !parents.has(id)) ?? 'parked';
  return vocabulary.access
    .filter(({ id }) => id !== 'inside-coach')
    .map((state) => {
      const there = move(graph, now, needOf(graph, vocabulary.access, state.id));
      const past = state.id !== deepest && (open.includes(state.id) || state.id === 'parked');
      return {
        id: state.id,
        name: state.name,
        here: state.id === deepest,
        look: past ? 'past' : state.parent === deepest ? 'next' : '',
        minutes: past ? 0 : there.cost,
        then: state.id === 'parked' ? [] : idsOf(graph, there.state),
      };
    });
}
