import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface ProgramFolders {
  /** The built window. */
  readonly window: string;
  readonly build: string;
  /** The list of complaints as the build found it. */
  readonly cards: string;
  readonly trees: string;
  readonly packageFile: string;
}

/** Where the program's own files lie, found from the module that asks, built or not: the folder that holds package.json and trees/. */
export function programFolders(moduleUrl: string): ProgramFolders {
  let at = dirname(fileURLToPath(moduleUrl));
  while (!(existsSync(join(at, 'package.json')) && existsSync(join(at, 'trees')))) {
    const up = dirname(at);
    if (up === at)
      throw new Error(
        `No folder above ${moduleUrl} holds package.json and trees/. The program's files are not complete; install it again.`,
      );
    at = up;
  }
  return {
    window: join(at, 'build', 'renderer'),
    build: join(at, 'build'),
    cards: join(at, 'build', 'complaints.json'),
    trees: join(at, 'trees'),
    packageFile: join(at, 'package.json'),
  };
}
