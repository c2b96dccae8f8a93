/** `npm run crash`: the machine side killed two hundred times; `npm test` does it forty times. */
import { seededRandom } from '../../shared/planning/evaluation/random.ts';
import { ensureBuilt } from '../../electron/start/build.mjs';
import { crashRounds } from './rounds.ts';

const KILLS = 200;
await ensureBuilt(new URL('../..', import.meta.url).pathname);
const started = performance.now();
const { kills, acknowledged, unanswered, arrived, torn } = await crashRounds(KILLS, seededRandom(11));
process.stdout.write(
  `${kills} kills in ${((performance.now() - started) / 1000).toFixed(1)} s: ${acknowledged} entries answered, none lost, none twice, none changed; ` +
    `${unanswered} under way at a kill (${arrived} of them had reached the disk), ${torn} logs found cut off.\n`,
);
