import { shippedTrees } from '../../../shipped-trees.ts';
import {
  EVENT_VERSION,
  newEventId,
  planOf,
  replay,
  type InspectedItem,
  type PinnedTree,
  type Plan,
  type PlanLine,
  type VisitEvent,
  type VisitEventBody,
  type VisitState,
} from '../../../../shared/visit/index.ts';

/** Hashes under which the two complaints of these tests are pinned. */
export const GROWL = 'a'.repeat(64);
export const AIR = 'b'.repeat(64);

/** The trees of these tests as shipped, by hash. */
export async function planTrees(): Promise<ReadonlyMap<string, PinnedTree>> {
  const only = ['growl-through-floor-at-speed', 'air-leaks-when-brake-held'];
  const { trees, vocabulary } = await shippedTrees(...only);
  return new Map(
    only.map((id, i) => {
      const tree = trees.get(id)?.value;
      if (!tree || !vocabulary) throw new Error(`The shipped tree "${id}" cannot be read.`);
      return [[GROWL, AIR][i]!, { tree, vocabulary }] as const;
    }),
  );
}

/** An invented visit with two complaints, every safety question answered with no. */
export function twoComplaints(trees: ReadonlyMap<string, PinnedTree>): VisitEventBody[] {
  const opened = (complaint: string, treeHash: string, words: string): VisitEventBody[] => [
    { kind: 'complaint.opened', complaint, tree: trees.get(treeHash)!.tree.id, treeHash, words },
    ...trees
      .get(treeHash)!
      .tree.stopRules.map(({ id }): VisitEventBody => ({ kind: 'stop.answered', complaint, rule: id, answer: 'no' })),
  ];
  return [
    { kind: 'visit.opened', coach: 'Invented coach 12', demo: true },
    { kind: 'person.set', who: 'mechanic' },
    ...opened('g', GROWL, 'growl through the floor'),
    ...opened('a', AIR, 'hiss with the pedal down'),
  ];
}

/** The growl comes from the left front wheel bearing: looked at, pitted, and taken as the cause. */
export function growlConcluded(cause = 'front-bearing'): VisitEventBody[] {
  return [
    found('g', 'spin-feel', 'rough-front', 'left front'),
    { kind: 'halt.acknowledged', complaint: 'g' },
    found('g', 'bearing-look', 'pitted-front', 'left front'),
    { kind: 'conclusion.accepted', complaint: 'g', cause },
  ];
}

export function found(complaint: string, check: string, result: string, site?: string): VisitEventBody {
  return {
    kind: 'finding.recorded',
    complaint,
    finding: `f-${complaint}-${check}`,
    check,
    value: { kind: 'result', result },
    ...(site === undefined ? {} : { site }),
  };
}

/** An item of the inspection. */
export function item(
  kind: string,
  site: string,
  state: InspectedItem['state'] = 'bad',
  more: Partial<InspectedItem> = {},
): InspectedItem {
  return {
    id: `${kind}-${site.replaceAll(' ', '-')}`,
    item: kind,
    site,
    state,
    readings: [],
    photos: [],
    at: '2026-05-13T09:00:00Z',
    by: 'Mina',
    ...more,
  };
}

export function log(bodies: readonly VisitEventBody[]): VisitEvent[] {
  return bodies.map((body, i) => ({
    id: newEventId(1000 + i, i, 'aa'),
    v: EVENT_VERSION,
    at: `2026-05-13T08:${String(Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}Z`,
    by: 'Mina',
    ...body,
  }));
}

export interface Planned {
  readonly visit: VisitState;
  readonly plan: Plan;
  /** A line by the end of its id. */
  readonly line: (end: string) => PlanLine;
}

/** The plan after the two complaints and what else happened. */
export function planned(
  trees: ReadonlyMap<string, PinnedTree>,
  bodies: readonly VisitEventBody[],
  inspection: readonly InspectedItem[] = [],
): Planned {
  const visit = replay(log([...twoComplaints(trees), ...bodies]), trees);
  const plan = planOf(visit, trees, inspection);
  return {
    visit,
    plan,
    line: (end) => {
      const line = plan.lines.find(({ id }) => id.endsWith(end));
      if (!line) throw new Error(`No line "${end}": ${plan.lines.map(({ id }) => id).join(', ')}`);
      return line;
    },
  };
}
