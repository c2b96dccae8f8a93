import * as v from 'valibot';
import { packError, type PackProblem } from '../../knowledge/pack/index.ts';

/** What stands in front of the version in `format`. */
const FORMAT = 'droplight-exchange/';
const FORMAT_VERSION = 1;

const id = v.pipe(v.string(), v.regex(/^[a-z0-9][a-z0-9-]{0,79}$/, 'small letters, digits and hyphens, at most 80'));
const sha256 = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, '64 hex digits'));

const manifest = v.strictObject({
  format: v.literal(`${FORMAT}${FORMAT_VERSION}`),
  kind: v.picklist(['visit', 'backup']),
  /** When and by which version of the program it was made; for the reader only. */
  made: v.pipe(v.string(), v.maxLength(40)),
  program: v.pipe(v.string(), v.maxLength(40)),
  visits: v.array(
    v.strictObject({
      visit: id,
      photos: v.array(v.pipe(v.string(), v.regex(/^[0-9a-f]{64}\.(jpg|png|webp)$/, 'the name of a photo'))),
      trees: v.array(sha256),
    }),
  ),
  /** Every file of the zip but this one. */
  files: v.array(
    v.strictObject({
      path: v.pipe(v.string(), v.maxLength(300)),
      bytes: v.pipe(v.number(), v.integer(), v.minValue(0)),
      sha256,
    }),
  ),
});

/** What an exchange says of itself. */
export type Manifest = v.InferOutput<typeof manifest>;

/** The text of a manifest. */
export function manifestText(made: Omit<Manifest, 'format'>): string {
  return `${JSON.stringify({ format: `${FORMAT}${FORMAT_VERSION}`, ...made }, null, 1)}\n`;
}

/**
 * Reads what an exchange says of itself.
 *
 * @param text    null when the bytes are no UTF-8.
 * @param wanted  what the person is about to take in.
 */
export function readManifest(text: string | null, wanted: Manifest['kind']): Manifest | PackProblem {
  const fault = (code: string, message: string): PackProblem => packError(code, 'manifest.json', message);
  const data = text === null ? undefined : jsonOf(text);
  if (typeof data !== 'object' || data === null)
    return fault('manifest-damaged', 'The list of what is in the file cannot be read. Export it anew.');
  const format = 'format' in data ? data.format : undefined;
  if (typeof format === 'string' && /practice|exercise|drill/.test(format))
    return fault(
      'practice-log',
      'This is a practice log: it tells of a simulated coach and is never taken for a visit. Open it on the practice page.',
    );
  const version = typeof format === 'string' && format.startsWith(FORMAT) ? Number(format.slice(FORMAT.length)) : NaN;
  if (Number.isInteger(version) && version > FORMAT_VERSION)
    return fault(
      'newer-format',
      `A newer Droplight made this file (form ${version}; this one knows ${FORMAT_VERSION}). Bring this program up to date, or export with the older one.`,
    );
  if (version !== FORMAT_VERSION)
    return fault(
      'not-an-exchange',
      `“format” is not ${FORMAT}${FORMAT_VERSION}: this zip was made by something else. Choose a file that Droplight exported.`,
    );
  const read = v.safeParse(manifest, data);
  if (!read.success) {
    const issue = read.issues[0];
    const where = issue.path?.map((item) => String(item.key)).join('.') ?? 'the list';
    return fault(
      'manifest-damaged',
      `The list of what is in the file cannot be used (“${where}”: found ${issue.received.slice(0, 60)}, wanted is ${issue.expected ?? issue.message}). Export it anew.`,
    );
  }
  if (read.output.kind !== wanted)
    return fault(
      'other-kind',
      wanted === 'visit'
        ? 'This is a backup of a whole machine, not a visit. Take it in under “Restore a backup”.'
        : 'This is one visit, not a backup. Take it in under “Take in a visit”.',
    );
  if (wanted === 'visit' && read.output.visits.length !== 1)
    return fault(
      'manifest-damaged',
      `An exported visit holds exactly one visit; this one lists ${read.output.visits.length}. Export it anew.`,
    );
  return read.output;
}

/** Whether reading gave a manifest. */
export function isManifest(read: Manifest | PackProblem): read is Manifest {
  return 'format' in read;
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (problem) {
    if (problem instanceof SyntaxError) return undefined;
    throw problem;
  }
}
