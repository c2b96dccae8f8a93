import { PACK_LIMITS, packTooLarge, type PackFile, type PackProblem } from '../../shared/knowledge/pack/index.ts';
import { textOfBytes, unpackedEntry, zipEntries, zipInMemory, type ZipRules } from './zip-entries.ts';

const RULES: ZipRules = {
  ...PACK_LIMITS,
  what: 'the pack',
  again: 'Make the pack anew: zip its folder, plainly, without a password.',
  smaller: 'Split the pack in two.',
};

/** Files of a pack's zip as text, or why it is refused. Nothing is written anywhere. */
export async function filesOfZip(
  bytes: Buffer,
): Promise<{ readonly files: readonly PackFile[]; readonly problems: readonly PackProblem[] }> {
  const refused = (problems: readonly PackProblem[]) => ({ files: [], problems });
  const zip = zipInMemory(bytes);
  const { entries, problems } = await zipEntries(zip, RULES);
  if (problems.length > 0)
    return refused(problems.map((problem) => (problem.code === 'unpacks-too-large' ? packTooLarge() : problem)));
  const files: PackFile[] = [];
  let all = 0;
  for (const entry of entries) {
    const content = await unpackedEntry(zip, entry, PACK_LIMITS.unpackedBytes - all, RULES);
    if (!(content instanceof Uint8Array)) return refused([content]);
    all += content.length;
    files.push({ path: entry.path, text: textOfBytes(content) });
  }
  return { files, problems: [] };
}
