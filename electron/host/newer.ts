import { HostError } from '../../shared/host/host-api.ts';
import type { EventRecord, KeptKind } from './visit-files.ts';

/** An event of a newer list may mean something that this program does not know: it is not written as if it did. */
export function refuseNewerEvents(events: readonly EventRecord[], version: number): void {
  const newer = events.find(({ v }) => v > version);
  if (newer)
    throw new HostError({
      code: 'newer-version',
      message: `The event "${newer.id}" (${newer.kind.slice(0, 60)}) is of version ${newer.v}; this Droplight writes version ${version}. Nothing was written. Close the window and start the newer Droplight again.`,
    });
}

/** A log that a newer program has written to is not added to: the two might not mean the same. */
export function refuseNewerLog(records: readonly EventRecord[], version: number, kind: KeptKind): void {
  if (records.some(({ v }) => v > version))
    throw new HostError({
      code: 'newer-version',
      message: `This ${kind} was written by a newer Droplight. Nothing was written; bring this program up to date to go on.`,
    });
}
