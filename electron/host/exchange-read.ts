import { mkdir, open, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { HostAnswer } from '../../shared/host/host-api.ts';
import { packError, type PackProblem } from '../../shared/knowledge/pack/index.ts';
import {
  BACKUP_LIMITS,
  ExchangeCheck,
  isManifest,
  readManifest,
  VISIT_LIMITS,
  type Manifest,
} from '../../shared/visit/exchange/index.ts';
import { ExchangePlacing, type ExchangeTargets } from './exchange-placing.ts';
import { sha256 } from './exchange-write.ts';
import { hashOfFiles } from './tree-files.ts';
import { textOfBytes, unpackedEntry, zipEntries, zipOnDisk, type ZipBytes, type ZipRules } from './zip-entries.ts';
import { photoFault } from './photo-files.ts';

/** What came of taking a file in. */
export type TakenIn = HostAnswer<'visits.import'>;

const VISIT_RULES: ZipRules = {
  ...VISIT_LIMITS,
  what: 'the file',
  again: 'Export the visit anew where it was made.',
  smaller: 'Take photos out of the visit where it was made, and export it anew.',
};
const BACKUP_RULES: ZipRules = {
  ...BACKUP_LIMITS,
  what: 'the backup',
  again: 'Use another backup.',
  smaller: 'Use another backup.',
};

/**
 * Takes in an exported visit or a backup. Every file is looked at before anything is put in its place; what is good so far
 * waits in a folder beside, which is gone afterwards whatever came of it.
 *
 * @param path     the zip, on this disk.
 * @param staging  a folder that is not there yet.
 */
export async function takeIn(
  path: string,
  kind: Manifest['kind'],
  staging: string,
  targets: ExchangeTargets,
): Promise<TakenIn> {
  const file = await open(path, 'r');
  try {
    const { manifest, problems } = await lookThrough(await zipOnDisk(file), kind, staging, targets);
    if (!manifest || problems.some(({ level }) => level === 'error')) return { taken: null, problems };
    const placing = new ExchangePlacing(manifest, staging, targets);
    const clashes = await placing.clashes();
    if (clashes.length > 0) return { taken: null, problems: [...problems, ...clashes] };
    const { taken, remarks } = await placing.place();
    return { taken, problems: [...problems, ...remarks] };
  } finally {
    await file.close();
    await rm(staging, { recursive: true, force: true });
  }
}

async function lookThrough(
  zip: ZipBytes,
  kind: Manifest['kind'],
  staging: string,
  targets: ExchangeTargets,
): Promise<{ readonly manifest: Manifest | null; readonly problems: readonly PackProblem[] }> {
  const rules = kind === 'visit' ? VISIT_RULES : BACKUP_RULES;
  const refused = (...problems: PackProblem[]) => ({ manifest: null, problems });
  const { entries, problems } = await zipEntries(zip, rules);
  if (problems.length > 0) return refused(...problems);
  const listed = entries.find((entry) => entry.path === 'manifest.json');
  if (!listed)
    return refused(
      packError(
        'no-manifest',
        rules.what,
        'There is no manifest.json in the zip: this is not a file that Droplight exported. Choose another one.',
      ),
    );
  const head = await unpackedEntry(zip, listed, rules.unpackedBytes, rules);
  if (!(head instanceof Uint8Array)) return refused(head);
  const manifest = readManifest(textOfBytes(head), kind);
  if (!isManifest(manifest)) return refused(manifest);

  const known = new Set((await targets.offered()).map(({ hash }) => hash));
  const check = new ExchangeCheck(manifest, { hashOf: hashOfFiles, known, photoFault });
  const places = check.places(entries.map((entry) => entry.path));
  if (!check.good()) return refused(...check.problems);
  let left = rules.unpackedBytes;
  for (const entry of [...entries].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    const place = places.get(entry.path);
    if (!place || place.kind === 'manifest') continue;
    const bytes = await unpackedEntry(zip, entry, left, rules);
    if (!(bytes instanceof Uint8Array)) return refused(...check.problems, bytes);
    left -= bytes.length;
    check.file(entry.path, place, bytes, textOfBytes(bytes), sha256(bytes));
    if (check.enough()) break;
    if (!check.good()) continue;
    // What waits here need not outlive a loss of power, so that it is not flushed.
    await mkdir(dirname(join(staging, entry.path)), { recursive: true });
    await writeFile(join(staging, entry.path), bytes);
  }
  check.done();
  return { manifest, problems: check.problems };
}
