import { screen, waitFor } from '@testing-library/svelte';
import { expect } from 'vitest';
import { loadSnapshot, type LoadedTree } from '../../renderer/state/trees.ts';
import type { Settings } from '../../shared/host/host-api.ts';
import type { Check, Role, Tree } from '../../shared/knowledge/index.ts';
import { EVENT_VERSION, newEventId, type RecordedValue, type VisitEventBody } from '../../shared/visit/index.ts';
import { fakeHost, type FakeHost } from './fake-host.ts';
import { openWindow, press } from './window.ts';

const VISIT = 'v-1';
/** Id of the complaint of every visit that is laid out here. */
export const COMPLAINT = 'c-1';

/** One line of a log, as it lies on the disk. */
export interface Entry {
  readonly kind: string;
  readonly [field: string]: unknown;
}

/** A visit that lies on the fake disk, under way at the place where its test begins. */
export interface Walk {
  readonly host: FakeHost;
  readonly tree: Tree;
  /** What is on the disk now. */
  log(): readonly Entry[];
  last(): Entry | undefined;
}

interface Layout {
  readonly who?: Role;
  /** What the safety questions were answered with; `null` leaves them open. */
  readonly answers?: 'no' | null;
  readonly settings?: Partial<Settings>;
}

const read = new Map<string, LoadedTree>();

/** A complaint of the fake machine side, ready for use; read once for all tests of a file. */
export async function loaded(host: FakeHost, id: string): Promise<LoadedTree> {
  const { trees } = await host.call('trees.list', {});
  const hash = trees.find(({ card }) => card.id === id)?.hash;
  if (hash === undefined) throw new Error(`The fake machine side has no complaint "${id}".`);
  const known = read.get(hash);
  if (known) return known;
  const { tree } = loadSnapshot(await host.call('trees.read', { hash }));
  if (!tree) throw new Error(`The tree "${id}" cannot be read.`);
  read.set(hash, tree);
  return tree;
}

/** Lays out a visit of one complaint: who works, every safety question answered, then what `bodies` says. */
export async function layOut(
  complaint: string,
  bodies: readonly VisitEventBody[] = [],
  { who = 'mechanic', answers = 'no', settings }: Layout = {},
): Promise<Walk> {
  const host = fakeHost(settings);
  const { tree, hash } = await loaded(host, complaint);
  const all: readonly VisitEventBody[] = [
    { kind: 'visit.opened', coach: 'Invented coach 12', demo: false },
    { kind: 'person.set', who },
    { kind: 'complaint.opened', complaint: COMPLAINT, tree: complaint, treeHash: hash, words: 'as the owner said it' },
    ...(answers === null
      ? []
      : tree.stopRules.map(({ id }): VisitEventBody => ({
          kind: 'stop.answered',
          complaint: COMPLAINT,
          rule: id,
          answer: answers,
        }))),
    // Somebody who has answered the safety questions has been asked what was noticed already.
    ...(answers === null ? [] : [{ kind: 'noticed.asked', complaint: COMPLAINT } as const]),
    ...bodies,
  ];
  const lines = all.map((body, i) => ({
    id: newEventId(1000 + i, i, 'seed'),
    v: EVENT_VERSION,
    at: `2026-05-13T08:00:${String(i % 60).padStart(2, '0')}.000Z`,
    by: 'Mina',
    ...body,
  }));
  host.logs.set(VISIT, lines);
  const log = (): readonly Entry[] => host.logs.get(VISIT) ?? [];
  return { host, tree, log, last: () => log().at(-1) };
}

/** Opens the window over a visit that is laid out and goes to its sheet. */
export async function openWalk(...laidOut: Parameters<typeof layOut>): Promise<Walk> {
  const walk = await layOut(...laidOut);
  await openWindow(walk.host);
  const yard = heading();
  await press('1');
  await changedFrom(yard);
  return walk;
}

/** A finding for the log. */
export function found(
  check: string,
  value: string | RecordedValue,
  more: { readonly site?: string; readonly note?: string } = {},
): VisitEventBody {
  return {
    kind: 'finding.recorded',
    complaint: COMPLAINT,
    finding: `f-${check}`,
    check,
    value: typeof value === 'string' ? { kind: 'result', result: value } : value,
    ...more,
  };
}

/** A reading for the log. */
export function reading(value: number, unit: string): RecordedValue {
  return { kind: 'reading', reading: { value, unit } };
}

/** A check that somebody chose for now. */
export function chosen(check: string): VisitEventBody {
  return { kind: 'check.chosen', complaint: COMPLAINT, check };
}

/** A check of a tree by id. */
export function checkOf(tree: Tree, id: string): Check {
  const check = tree.checks.find((each) => each.id === id);
  if (!check) throw new Error(`The tree "${tree.id}" has no check "${id}".`);
  return check;
}

/** Words of the one main heading. */
export function heading(): string {
  return screen.getByRole('heading', { level: 1 }).textContent;
}

/** Waits until the sheet has another heading. */
export async function changedFrom(words: string): Promise<void> {
  await waitFor(() => {
    expect(heading()).not.toBe(words);
  });
}

/** Waits until the newest line on the disk is of a kind. */
export async function written(walk: Walk, kind: string): Promise<Entry> {
  await waitFor(() => {
    expect(walk.last()?.kind).toBe(kind);
  });
  return walk.last()!;
}

/** Whether one element stands before another in the document. */
export function stands(first: Element, before: Element): boolean {
  return (first.compareDocumentPosition(before) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
}
