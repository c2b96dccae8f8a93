import type { HostClient, Notice } from '../../shared/host/host-api.ts';
import { EventError, readEvent, type VisitEvent } from '../../shared/visit/index.ts';
import type { TreeList } from './tree-list.svelte.ts';

export interface VisitRead {
  readonly read: readonly VisitEvent[];
  readonly notices: readonly Notice[];
  readonly readOnly: boolean;
}

/** Reads a visit's log and the trees it was made with. Entries that cannot be read are left out and named. @throws {HostError} */
export async function readVisit(
  ask: HostClient['call'],
  trees: Pick<TreeList, 'readOf'>,
  visit: string,
): Promise<VisitRead> {
  const { events, notices, readOnly } = await ask('visits.read', { visit });
  const read: VisitEvent[] = [];
  const unread: Notice[] = [];
  for (const record of events) {
    try {
      read.push(readEvent(record));
    } catch (problem) {
      if (!(problem instanceof EventError)) throw problem;
      if (unread.length === 0) unread.push({ code: `visit-${problem.code}`, message: problem.message });
    }
  }
  for (const event of read) {
    if (event.kind === 'complaint.opened') unread.push(...(await trees.readOf(visit, event.treeHash)));
  }
  return { read, notices: [...notices, ...unread], readOnly };
}
