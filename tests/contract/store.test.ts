import { rmSync } from 'node:fs';
import { afterAll } from 'vitest';
import { isHostMethod } from '../../shared/host/host-api.ts';
import { fakeHost } from '../component/fake-host.ts';
import { oneTreeFolder } from '../exchange.ts';
import { reachDirectly, reachOverHttp } from './carriers.ts';
import { describeStore } from './store-suite.ts';

const treesFolder = oneTreeFolder();
afterAll(() => rmSync(treesFolder, { recursive: true }));

/** The store of the window's own tests: what they show holds only if it behaves as the real one does. */
describeStore('in memory', () => {
  const host = fakeHost();
  return Promise.resolve({
    call: (method, request) => {
      if (!isHostMethod(method)) throw new Error(`"${method}" has no place in the contract.`);
      // Wrong requests are sent on purpose.
      return host.call(method, request as never);
    },
    close: () => Promise.resolve(),
  });
});
describeStore('in files', () => reachDirectly({ treesFolder }));
describeStore('over HTTP', () => reachOverHttp({ treesFolder }));
