import { spawnSync } from 'node:child_process';
import { Readable } from 'node:stream';
import { vi } from 'vitest';

/** What a command line left behind. */
export interface Ran {
  readonly code: number | string | null | undefined;
  readonly out: string;
  readonly err: string;
}

type Command = 'lint-trees' | 'evaluate' | 'walk';

const root = new URL('../..', import.meta.url).pathname;

/** A command as a person starts it: a process of its own, which takes a second or two before it says anything. */
export function started(command: Command, args: readonly string[], input = ''): Ran {
  const ran = spawnSync(process.execPath, ['--import', 'tsx', `electron/cli/${command}.ts`, ...args], {
    cwd: root,
    input,
    encoding: 'utf8',
  });
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}

let runs = 0;

/**
 * The same in this process: the entry module is evaluated anew with arguments, input and both outputs of its own. What only
 * a process shows (that it starts, and ends with its code) is left to `started`; what an entry throws is thrown here.
 */
export async function run(command: Command, args: readonly string[], input = ''): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const before = { argv: process.argv, exitCode: process.exitCode };
  const into = (lines: string[]) => (text: string | Uint8Array) => {
    lines.push(String(text));
    return true;
  };
  const line = (lines: string[]) => (text: unknown) => void lines.push(`${String(text)}\n`);
  const taken = [
    vi.spyOn(process.stdout, 'write').mockImplementation(into(out)),
    vi.spyOn(process.stderr, 'write').mockImplementation(into(err)),
    // The runner has a console of its own, which does not write to the outputs above.
    vi.spyOn(console, 'log').mockImplementation(line(out)),
    vi.spyOn(console, 'warn').mockImplementation(line(err)),
    vi.spyOn(console, 'error').mockImplementation(line(err)),
    vi.spyOn(process, 'stdin', 'get').mockReturnValue(Readable.from([Buffer.from(input)]) as typeof process.stdin),
  ];
  process.argv = [process.execPath, `${root}electron/cli/${command}.ts`, ...args];
  process.exitCode = undefined;
  runs++;
  try {
    await import(/* @vite-ignore */ `../../electron/cli/${command}.ts?run=${runs}`);
    return { code: process.exitCode, out: out.join(''), err: err.join('') };
  } finally {
    for (const each of taken) each.mockRestore();
    Object.assign(process, before);
  }
}
