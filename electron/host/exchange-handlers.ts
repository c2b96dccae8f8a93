import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import type { HostAnswer, HostRequest } from '../../shared/host/host-api.ts';
import { inTurn } from './in-turn.ts';
import { ExchangeFolder } from './exchange-folder.ts';
import type { ExchangeTargets } from './exchange-placing.ts';
import { takeIn, type TakenIn } from './exchange-read.ts';
import { exportVisit, writeBackup } from './exchange-write.ts';

type Method =
  'visits.export' | 'visits.import' | 'backup.write' | 'backup.restore' | 'exchange.send' | 'exchange.fetch';
type Handlers = { readonly [M in Method]: (request: HostRequest<M>) => Promise<HostAnswer<M>> };

/** The calls of the contract about exported visits and backups. One at a time: each sees the disk as the last one left it. */
export function exchangeHandlers(dataFolder: string, targets: ExchangeTargets): Handlers {
  const folder = new ExchangeFolder(dataFolder);
  const oneByOne = inTurn();
  const named = (what: string): { name: string; path: string } => {
    const when = targets.now().toISOString().slice(0, 16).replace(/[T:]/g, '-');
    const name = `${what}-${when}-${randomBytes(3).toString('hex')}.zip`;
    return { name, path: join(folder.exports, name) };
  };
  const take = (upload: string, kind: 'visit' | 'backup'): Promise<TakenIn> =>
    oneByOne(async () => {
      const path = await folder.arrived(upload);
      try {
        return await takeIn(path, kind, folder.staging(upload), targets);
      } finally {
        await folder.forget(upload);
      }
    });

  return {
    'visits.export': ({ visit }) =>
      oneByOne(async () => {
        const opened = (await targets.visits.read(visit)).records.find(({ kind }) => kind === 'visit.opened');
        const { name, path } = named(`visit-${plainName(opened?.['coach'])}`);
        return { name, path, ...(await exportVisit(path, visit, targets)) };
      }),
    'visits.import': ({ upload }) => take(upload, 'visit'),
    'backup.write': () =>
      oneByOne(async () => {
        const { name, path } = named('backup');
        return { name, path, ...(await writeBackup(path, targets)) };
      }),
    'backup.restore': ({ upload }) => take(upload, 'backup'),
    'exchange.send': ({ upload, at, data }) => oneByOne(() => folder.take(upload, at, data)),
    'exchange.fetch': ({ name, at }) => folder.give(name, at),
  };
}

/** A name as part of a file's name: "Invented coach 7" gives "invented-coach-7". */
function plainName(name: unknown): string {
  const plain = typeof name === 'string' ? name.toLowerCase().replace(/[^a-z0-9]+/g, '-') : '';
  return plain.slice(0, 40).replace(/^-|-$/g, '') || 'of-a-coach';
}
