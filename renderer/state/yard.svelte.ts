import type { HostClient, Notice, VisitSummary } from '../../shared/host/host-api.ts';
import { closedCases, replay } from '../../shared/visit/index.ts';
import type { KnownCase } from '../presenters/learning-view.ts';
import { readVisit } from './read-visit.ts';
import type { TreeList } from './tree-list.svelte.ts';
import { standingsOf, type ComplaintStanding } from './visit-standing.ts';

/** Visits whose standing is worked out; older ones are named only. */
const STANDINGS = 12;

/** The visits of this machine: their list, where the newest stand, and what all of them have proven. */
export class Yard {
  readonly #ask: HostClient['call'];
  readonly #trees: Pick<TreeList, 'known' | 'readOf'>;
  readonly #say: (notices: readonly Notice[], instead: RegExp) => void;

  visits = $state.raw<readonly VisitSummary[]>([]);
  /** Where the newest visits stand; fills up after the list is shown. */
  standings = $state.raw<ReadonlyMap<string, readonly ComplaintStanding[]>>(new Map());
  /** Complaints closed as cured, of all visits; gathered when they are wanted. */
  cases = $state.raw<readonly KnownCase[]>([]);

  constructor(
    ask: HostClient['call'],
    trees: Pick<TreeList, 'known' | 'readOf'>,
    say: (notices: readonly Notice[], instead: RegExp) => void,
  ) {
    this.#ask = ask;
    this.#trees = trees;
    this.#say = say;
  }

  /** Reads the list. @throws {HostError} */
  async refresh(): Promise<void> {
    const { visits, notices } = await this.#ask('visits.list', {});
    this.visits = visits;
    this.#say(notices, /^visit-/);
  }

  /** @throws {HostError} */
  async workOutStandings(): Promise<void> {
    for (const { id } of this.visits.slice(0, STANDINGS)) {
      const { read } = await readVisit(this.#ask, this.#trees, id);
      this.standings = new Map([...this.standings, [id, standingsOf(read, this.#trees.known)]]);
    }
  }

  /** Reads every visit for its proven cures. @throws {HostError} */
  async gatherCases(): Promise<void> {
    await this.refresh();
    const cases: KnownCase[] = [];
    for (const { id, coach } of this.visits) {
      const { read } = await readVisit(this.#ask, this.#trees, id);
      cases.push(...closedCases(id, replay(read, this.#trees.known)).map((each) => ({ ...each, coach })));
    }
    this.cases = cases;
  }
}
