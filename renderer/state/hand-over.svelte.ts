import { handOver, leavingOut, type HandOverInput, type Reader, type Report } from '../../shared/handover/index.ts';
import { HostError, type HostClient } from '../../shared/host/host-api.ts';
import { learnedOdds, type LearnedOdds } from '../../shared/inference/index.ts';
import type { UnitSystem } from '../../shared/units/index.ts';
import { caseId, planOf, type PinnedTree, type VisitEvent, type VisitState } from '../../shared/visit/index.ts';
import type { Settings } from '../../shared/host/host-api.ts';
import type { ClosedCase } from '../../shared/inference/index.ts';
import { otherWorkOf } from '../presenters/other-work.ts';
import { readersClock } from '../presenters/readers-clock.ts';
import { photoCopy } from './photo-copy.ts';

/** What the report is made from: the open visit, its log and trees, how the reader reads. */
interface Source {
  readonly visitId: string | null;
  readonly visit: VisitState | null;
  readonly events: readonly VisitEvent[];
  readonly trees: ReadonlyMap<string, PinnedTree>;
  readonly units: UnitSystem;
  readonly settings: Pick<Settings, 'learning' | 'casesTakenOut'>;
  readonly cases: readonly ClosedCase[];
}

/** The hand-over of the open visit: for whom, what is left out, and small copies of its photos. */
export class HandOver {
  readonly #source: () => Source;
  reader = $state<Reader>('owner');
  /** Null until somebody chooses: then it follows the units that are read. */
  paper = $state<'letter' | 'a4' | null>(null);
  /** Addresses of small copies by the name of the stored photo; null = it is not there or cannot be drawn. */
  copies = $state.raw<ReadonlyMap<string, string | null>>(new Map());
  #left = $state.raw<{ readonly visit: string | null; readonly keys: ReadonlySet<string> }>({
    visit: null,
    keys: new Set(),
  });

  constructor(source: () => Source) {
    this.#source = source;
  }

  readonly leftOut: ReadonlySet<string> = $derived.by(() =>
    this.#left.visit === this.#source().visitId ? this.#left.keys : new Set<string>(),
  );

  /** With everything in it. */
  readonly whole: Report | null = $derived.by(() => {
    const { visit, events, trees, units } = this.#source();
    if (!visit) return null;
    const inspection = visit.inspection.items;
    const input: HandOverInput = {
      visit,
      events,
      trees,
      units,
      reader: this.reader,
      clock: readersClock,
      learned: this.#learned(visit),
      inspection,
      others: otherWorkOf(visit, units),
      plan: planOf(visit, trees, inspection),
    };
    return handOver(input);
  });

  readonly report: Report | null = $derived(this.whole ? leavingOut(this.whole, this.leftOut) : null);

  /** Names of the photos in it, each once. */
  readonly photos: readonly string[] = $derived(
    (this.report?.parts ?? []).flatMap(({ sections }) =>
      sections.flatMap(({ blocks }) =>
        blocks.flatMap((block) => (block.kind === 'photos' ? block.photos.map(({ photo }) => photo) : [])),
      ),
    ),
  );

  /** Addresses of the photos that could be copied. */
  readonly addresses: ReadonlyMap<string, string> = $derived(
    new Map([...this.copies].filter((entry): entry is [string, string] => entry[1] !== null)),
  );

  /** Photos whose copies are still being made. */
  readonly waiting: readonly string[] = $derived(this.photos.filter((photo) => !this.copies.has(photo)));

  /** Takes a part or section out, or back in: "part" or "part/section". */
  leave(key: string, out: boolean): void {
    const keys = new Set(this.leftOut);
    if (out) keys.add(key);
    else keys.delete(key);
    this.#left = { visit: this.#source().visitId, keys };
  }

  /** Makes the small copies that are wanted, one after the other; one that fails is named in the report. */
  async copyPhotos(ask: HostClient['call']): Promise<void> {
    const { visitId } = this.#source();
    if (visitId === null) return;
    for (const photo of this.waiting) {
      const copy = await copyOf(ask, visitId, photo);
      this.copies = new Map([...this.copies, [photo, copy]]);
    }
  }

  #learned(visit: VisitState): ReadonlyMap<string, LearnedOdds> {
    const { visitId, trees, settings, cases } = this.#source();
    if (!settings.learning) return new Map();
    return new Map(
      visit.complaints.flatMap(({ id, treeHash }) => {
        const tree = trees.get(treeHash)?.tree;
        if (!tree) return [];
        // A complaint teaches nothing about itself.
        const others = cases.filter((each) => each.id !== caseId(visitId ?? '', id));
        const options = { on: true, takenOut: new Set(settings.casesTakenOut) };
        return [[id, learnedOdds(tree, visit.layout, others, options)] as const];
      }),
    );
  }
}

async function copyOf(ask: HostClient['call'], visit: string, photo: string): Promise<string | null> {
  try {
    const { type, data } = await ask('photos.read', { visit, photo });
    return await photoCopy(type, data);
  } catch (problem) {
    if (problem instanceof HostError) return null;
    throw problem;
  }
}
