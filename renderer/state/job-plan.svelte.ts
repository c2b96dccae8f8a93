import {
  accessChoices,
  explanationOf,
  planOf,
  type Explanation,
  type PinnedTree,
  type Plan,
  type PlanLine,
  type VisitState,
} from '../../shared/visit/index.ts';
import type { AccessState } from '../../shared/knowledge/index.ts';

/** What the plan is made from: the open visit and the trees of its complaints. */
interface Source {
  readonly visit: VisitState | null;
  readonly trees: ReadonlyMap<string, PinnedTree>;
}

/** The plan of the open visit, worked out when a page asks for it, and the line that is looked at. */
export class JobPlan {
  readonly #source: () => Source;
  /** Line that is opened or explained. */
  line = $state<string | null>(null);

  constructor(source: () => Source) {
    this.#source = source;
  }

  /** Trees of this visit: those of its complaints, or all that are loaded when it has none. */
  readonly #trees = $derived.by((): ReadonlyMap<string, PinnedTree> => {
    const { visit, trees } = this.#source();
    const hashes = new Set(visit?.complaints.map(({ treeHash }) => treeHash));
    return hashes.size === 0 ? trees : new Map([...trees].filter(([hash]) => hashes.has(hash)));
  });

  readonly plan: Plan | null = $derived.by(() => {
    const { visit } = this.#source();
    return visit ? planOf(visit, this.#trees, visit.inspection.items) : null;
  });

  readonly selected: PlanLine | null = $derived(
    this.plan?.lines.find(({ id }) => id === this.line) ?? this.plan?.lines[0] ?? null,
  );

  /** The line that is looked at, for a customer. */
  readonly explanation: Explanation | null = $derived.by(() => {
    const { visit } = this.#source();
    return visit && this.selected ? explanationOf(visit, this.#trees, this.selected) : null;
  });

  /** States that a line added by hand can be done in. */
  readonly access: readonly AccessState[] = $derived(accessChoices(this.#trees));

  /** A limit by its id, from the vocabulary of the visit's trees. */
  limit = (id: string) => {
    for (const { vocabulary } of this.#trees.values()) {
      const found = vocabulary.limits.get(id);
      if (found) return found;
    }
    return undefined;
  };
}
