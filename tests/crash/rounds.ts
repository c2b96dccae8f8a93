import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const SERVER = new URL('../../build/server/main.js', import.meta.url).pathname;
/** Calls under way at once. */
const LANES = 3;
/** A round ends by itself after so many entries, in case the kill comes late. */
const MOST_ENTRIES = 400;

type Entry = Readonly<Record<string, unknown>> & { readonly id: string };

/** What came of killing the machine side again and again. */
export interface CrashReport {
  readonly kills: number;
  /** Entries whose writing was answered before a kill. */
  readonly acknowledged: number;
  /** Entries that were under way when it was killed; each was sent once more under its id. */
  readonly unanswered: number;
  /** Of those, how many had reached the disk all the same. */
  readonly arrived: number;
  /** Times that a log was found cut off. */
  readonly torn: number;
}

/**
 * Streams entries into the real machine side, kills it hard at a random moment, opens it again and looks whether everything
 * that was answered is there once; so many times over.
 *
 * @param random  0 to 1; decides the moments and the sizes.
 * @throws when an entry is lost, doubled or changed.
 */
export async function crashRounds(rounds: number, random: () => number): Promise<CrashReport> {
  const home = mkdtempSync(join(tmpdir(), 'droplight-crash-'));
  const known = new Map<string, string>();
  const acknowledged = new Set<string>();
  let count = 0;
  let unanswered: Entry[] = [];
  const report = { kills: 0, unanswered: 0, arrived: 0, torn: 0 };
  const next = (): Entry => {
    const id = `e-${String(++count).padStart(7, '0')}`;
    const head = { id, v: 1, at: '2020-01-01T00:00:00Z', by: '' };
    const entry: Entry =
      count === 1
        ? { ...head, kind: 'visit.opened', coach: 'Invented coach', demo: true }
        : { ...head, kind: 'note.added', complaint: 'c', text: 'x'.repeat(Math.floor(random() ** 3 * 9000)) };
    known.set(id, JSON.stringify(entry));
    return entry;
  };
  try {
    for (let round = 0; round <= rounds; round++) {
      const side = await MachineSide.start(home);
      if (round === 0) {
        const first = next();
        await side.call('visits.create', { visit: 'v-crash', first });
        acknowledged.add(first.id);
      } else {
        const found = await side.read(known, acknowledged);
        report.torn += found.torn;
        report.arrived += unanswered.filter(({ id }) => found.ids.has(id)).length;
        // Nobody was told that these were written: whoever sent them sends them again.
        for (const entry of unanswered) {
          await side.call('visits.append', { visit: 'v-crash', events: [entry] });
          acknowledged.add(entry.id);
        }
        await side.read(known, acknowledged);
      }
      unanswered = [];
      if (round === rounds) {
        await side.kill();
        break;
      }
      const until = count + MOST_ENTRIES;
      const lane = async (): Promise<void> => {
        while (!side.dead && count < until) {
          const entry = next();
          try {
            await side.call('visits.append', { visit: 'v-crash', events: [entry] });
            acknowledged.add(entry.id);
          } catch (problem) {
            // The connection broke: whether it was written is not known.
            if (!(problem instanceof TypeError)) throw problem;
            unanswered.push(entry);
            return;
          }
        }
      };
      const lanes = Array.from({ length: LANES }, lane);
      // In the middle of the stream: after so many answers, and a moment more.
      const enough = acknowledged.size + Math.floor(random() * 25);
      const patience = performance.now() + 3000;
      while (acknowledged.size < enough && performance.now() < patience)
        await new Promise((resolve) => setTimeout(resolve, 1));
      await new Promise((resolve) => setTimeout(resolve, random() * 6));
      await side.kill();
      await Promise.all(lanes);
      report.kills++;
      report.unanswered += unanswered.length;
    }
    return { ...report, acknowledged: acknowledged.size };
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}

/** One life of the machine side. */
class MachineSide {
  dead = false;
  readonly #process: ChildProcess;
  readonly #origin: string;
  readonly #cookie: string;

  private constructor(process: ChildProcess, origin: string, cookie: string) {
    this.#process = process;
    this.#origin = origin;
    this.#cookie = cookie;
  }

  static async start(home: string): Promise<MachineSide> {
    const started = spawn(process.execPath, [SERVER], {
      env: { ...process.env, DROPLIGHT_HOME: home },
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    const address = await new Promise<string>((resolve, reject) => {
      started.stdout.once('data', (data: Buffer) => resolve(data.toString().trim()));
      started.once('error', reject);
      started.once('exit', () => reject(new Error('The machine side did not start. Run npm run build first.')));
    });
    const opened = await fetch(address, { redirect: 'manual' });
    const cookie = opened.headers.get('set-cookie')?.split(';')[0] ?? '';
    return new MachineSide(started, new URL(address).origin, cookie);
  }

  /** @throws {TypeError} when the connection breaks; an Error with the refusal otherwise. */
  async call(method: string, request: unknown): Promise<unknown> {
    const response = await fetch(`${this.#origin}/api/${method}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Cookie: this.#cookie, Origin: this.#origin },
      body: JSON.stringify(request),
    });
    const answer: unknown = await response.json();
    if (!response.ok) throw new Error(`${method} was refused: ${JSON.stringify(answer)}`);
    return answer;
  }

  /** Reads the visit and holds it against what was sent and answered. */
  async read(
    known: ReadonlyMap<string, string>,
    acknowledged: ReadonlySet<string>,
  ): Promise<{ readonly ids: ReadonlySet<string>; readonly torn: number }> {
    const { events, notices } = (await this.call('visits.read', { visit: 'v-crash' })) as {
      events: Entry[];
      notices: { code: string }[];
    };
    const ids = new Set(events.map(({ id }) => id));
    if (ids.size !== events.length) throw new Error('An entry is there twice.');
    const lost = [...acknowledged].filter((id) => !ids.has(id));
    if (lost.length > 0) throw new Error(`Entries were answered and are gone: ${lost.join(', ')}.`);
    const changed = events.filter((event) => known.get(event.id) !== JSON.stringify(event));
    if (changed.length > 0) throw new Error(`Entries are not as they were sent: ${changed[0]!.id}.`);
    const other = notices.filter(({ code }) => code !== 'visit-log-torn');
    if (other.length > 0) throw new Error(`The log is damaged: ${JSON.stringify(other)}.`);
    return { ids, torn: notices.length };
  }

  kill(): Promise<void> {
    return new Promise((resolve) => {
      this.#process.once('exit', () => {
        this.dead = true;
        resolve();
      });
      this.#process.kill('SIGKILL');
    });
  }
}
