import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

/** Where trees lie that somebody is writing: `DROPLIGHT_TREES`, else `drafts/` in the data folder. */
export function draftsFolder(data: string, env: NodeJS.ProcessEnv = process.env): string {
  return env['DROPLIGHT_TREES'] ? resolve(env['DROPLIGHT_TREES']) : join(data, 'drafts');
}

/** Where visits and coaches lie when several machines share them: `DROPLIGHT_SHARED`, else the data folder itself. */
export function sharedFolder(data: string, env: NodeJS.ProcessEnv = process.env): string {
  return env['DROPLIGHT_SHARED'] ? resolve(env['DROPLIGHT_SHARED']) : data;
}

/**
 * Where visits, photos and settings lie: `DROPLIGHT_HOME`, else the platform's folder for application data.
 */
export function dataFolder(
  env: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
  home = homedir(),
): string {
  if (env['DROPLIGHT_HOME']) return resolve(env['DROPLIGHT_HOME']);
  if (platform === 'win32') return join(env['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'Droplight');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Droplight');
  return join(env['XDG_DATA_HOME'] ?? join(home, '.local', 'share'), 'droplight');
}
