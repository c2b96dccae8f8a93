import { existsSync } from 'node:fs';
import { readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { checkedRequest, DEFAULT_SETTINGS, HostError, type Notice, type Settings } from '../../shared/host/host-api.ts';
import { inTurn } from './in-turn.ts';
import { readIfThere, writeWhole } from './whole-file.ts';

/** Settings of this machine, one JSON file. Every broken one is kept aside and said so; the usual settings hold then. */
export class SettingsFiles {
  readonly #path: string;
  /** Reading may set the file aside. */
  readonly #inTurn = inTurn();

  constructor(folder: string) {
    this.#path = join(folder, 'settings.json');
  }

  read(): Promise<{ settings: Settings; notices: Notice[] }> {
    return this.#inTurn(() => this.#read());
  }

  write(settings: Settings): Promise<void> {
    return this.#inTurn(() => writeWhole(this.#path, `${JSON.stringify(settings, null, 2)}\n`));
  }

  async #read(): Promise<{ settings: Settings; notices: Notice[] }> {
    const text = await readIfThere(() => readFile(this.#path, 'utf8'));
    if (text === null) return { settings: DEFAULT_SETTINGS, notices: [] };
    try {
      return { settings: checkedRequest('settings.write', JSON.parse(text)), notices: [] };
    } catch (problem) {
      if (!(problem instanceof SyntaxError || problem instanceof HostError)) throw problem;
      const aside = this.#freeName();
      await rename(this.#path, aside);
      return {
        settings: DEFAULT_SETTINGS,
        notices: [
          {
            code: 'settings-broken',
            message: `The settings could not be read, so the usual ones hold. The old file is kept as ${aside}.`,
          },
        ],
      };
    }
  }

  /** settings.json.broken, or with a number when there is one already: an earlier copy is never overwritten. */
  #freeName(): string {
    const first = `${this.#path}.broken`;
    let name = first;
    for (let count = 2; existsSync(name); count++) name = `${first}-${count}`;
    return name;
  }
}
