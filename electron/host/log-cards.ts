import { readdirSync, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as v from 'valibot';
import { noticeSchema, type Notice } from '../../shared/host/host-api.ts';
import { LOG_NAME, type EventRecord, type LogFiles } from './visit-files.ts';
import { isMissing, readIfThere, writeWhole } from './whole-file.ts';

interface Entry<C> {
  /** When the folder was changed last, ms; with `settled` it says that no other device has begun a file since. */
  readonly folderMs: number;
  readonly settled: boolean;
  readonly names: readonly string[];
  /** Size and time of every log: what an append always changes. */
  readonly stamp: string;
  readonly card: C | null;
  readonly notices: readonly Notice[];
}

interface LogCardsOptions<C> {
  /** Where the cards are kept between two starts of the program. */
  readonly path: string;
  readonly version: string;
  readonly files: LogFiles;
  readonly schema: v.GenericSchema<unknown, C>;
  /** Null for a log that is none: it is not listed. */
  readonly cardOf: (id: string, records: readonly EventRecord[]) => C | null;
}

/** Raised when the meaning of a card changes. */
const FORM = 1;
/** Logs looked at before the machine side takes another call. */
const CHUNK = 500;
/** Logs read side by side. */
const SIDE_BY_SIDE = 32;
/** The cards are written anew when more than this many differ from those on disk. */
const WRITE_AFTER = 50;
/** A folder changed so lately that its time may hide a second change, ms: judgement, above the ticks of file systems. */
const SETTLES_MS = 2500;

/**
 * A row for each log of a folder, without reading the logs that have not changed: ten thousand visits are listed by looking
 * at their files alone. What is kept only saves time; anything that does not match is read anew.
 */
export class LogCards<C> {
  readonly #options: LogCardsOptions<C>;
  #entries: Map<string, Entry<C>> | null = null;
  #unwritten = 0;
  #running: Promise<{ cards: C[]; notices: Notice[] }> | null = null;

  constructor(options: LogCardsOptions<C>) {
    this.#options = options;
  }

  /** Cards of all logs in the order of their names, with what could not be read. Calls at the same time share one look. */
  all(): Promise<{ cards: C[]; notices: Notice[] }> {
    this.#running ??= this.#all().finally(() => {
      this.#running = null;
    });
    return this.#running.then(({ cards, notices }) => ({ cards: [...cards], notices: [...notices] }));
  }

  async #all(): Promise<{ cards: C[]; notices: Notice[] }> {
    const before = (this.#entries ??= await this.#kept());
    const ids = await this.#options.files.list();
    const now = new Map<string, Entry<C>>();
    const changed: { readonly id: string; readonly look: Look }[] = [];
    for (const [i, id] of ids.entries()) {
      if (i % CHUNK === CHUNK - 1) await new Promise((resolve) => setImmediate(resolve));
      const known = before.get(id);
      const look = lookAt(this.#options.files.folderOf(id), known);
      if (!look) continue;
      if (known?.stamp === look.stamp) now.set(id, known.settled ? known : { ...known, ...look });
      else changed.push({ id, look });
    }
    for (const [id, entry] of await sideBySide(changed, (each) => this.#read(each.id, each.look))) now.set(id, entry);
    this.#unwritten += changed.length;
    this.#entries = now;
    if (this.#unwritten > WRITE_AFTER) {
      await this.#write(now);
      this.#unwritten = 0;
    }
    const entries = ids.flatMap((id) => now.get(id) ?? []);
    return {
      cards: entries.flatMap(({ card }) => card ?? []),
      notices: entries.flatMap(({ notices }) => notices),
    };
  }

  /** What was seen before reading is what is kept: an append meanwhile is seen the next time. */
  async #read(id: string, look: Look): Promise<readonly [string, Entry<C>]> {
    const { records, notices } = await this.#options.files.read(id);
    return [id, { ...look, card: this.#options.cardOf(id, records), notices }];
  }

  async #write(entries: ReadonlyMap<string, Entry<C>>): Promise<void> {
    await writeWhole(
      this.#options.path,
      JSON.stringify({ version: this.#options.version, form: FORM, entries: [...entries] }),
    );
  }

  async #kept(): Promise<Map<string, Entry<C>>> {
    const text = await readIfThere(() => readFile(this.#options.path, 'utf8'));
    if (text === null) return new Map();
    const { schema, version } = this.#options;
    const entry = v.object({
      folderMs: v.number(),
      settled: v.boolean(),
      names: v.array(v.string()),
      stamp: v.string(),
      card: v.nullable(schema),
      notices: v.array(noticeSchema),
    });
    const file = v.object({
      version: v.literal(version),
      form: v.literal(FORM),
      entries: v.array(v.tuple([v.string(), entry])),
    });
    try {
      const kept = v.safeParse(file, JSON.parse(text));
      return new Map(kept.success ? kept.output.entries : []);
    } catch (problem) {
      // Half a file after a crash: it only saves time, so every log is read anew.
      if (problem instanceof SyntaxError) return new Map();
      throw problem;
    }
  }
}

/** Does the same to each of a list, so many at a time; what comes back is in the order of the list. */
export async function sideBySide<T, R>(list: readonly T[], run: (each: T) => Promise<R>): Promise<R[]> {
  const done: R[] = [];
  for (let i = 0; i < list.length; i += SIDE_BY_SIDE)
    done.push(...(await Promise.all(list.slice(i, i + SIDE_BY_SIDE).map(run))));
  return done;
}

type Look = Pick<Entry<unknown>, 'folderMs' | 'settled' | 'names' | 'stamp'>;

/**
 * A log’s files as they are now; null when the folder has gone meanwhile. Synchronous, because ten thousand small looks
 * cost a fifth of what as many promises do.
 */
function lookAt(folder: string, known: Look | undefined): Look | null {
  try {
    const folderMs = statSync(folder).mtimeMs;
    const names =
      known?.settled === true && known.folderMs === folderMs
        ? known.names
        : readdirSync(folder)
            .filter((name) => LOG_NAME.test(name))
            .sort();
    const stamp = names
      .map((name) => {
        const { size, mtimeMs } = statSync(join(folder, name));
        return `${name}=${size}@${mtimeMs}`;
      })
      .join(' ');
    return { folderMs, settled: Date.now() - folderMs > SETTLES_MS, names, stamp };
  } catch (problem) {
    if (isMissing(problem)) return null;
    throw problem;
  }
}
