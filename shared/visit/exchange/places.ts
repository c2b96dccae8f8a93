import { packError, VOCABULARY_NAMES, type PackProblem } from '../../knowledge/pack/index.ts';

/** What has logs in an exchange; learners only in a backup. */
export type LogsOf = 'visits' | 'coaches' | 'learners';

/** What a file of an exchange is, by its path. */
export type Place =
  | { readonly kind: 'manifest' }
  | { readonly kind: 'settings' }
  /** Events of one writer about a visit, a coach or a learner. */
  | { readonly kind: 'log'; readonly of: LogsOf; readonly id: string; readonly writer: string }
  | { readonly kind: 'photo'; readonly name: string }
  | { readonly kind: 'tree'; readonly hash: string; readonly file: string }
  /** A file of a pack, a draft or the practice folder, below that folder. */
  | { readonly kind: 'packs' | 'drafts' | 'practice'; readonly file: string };

const ID = '[a-z0-9][a-z0-9-]{0,79}';
const NAME = '[a-z0-9]+(?:-[a-z0-9]+)*';
const VOCABULARY = `vocabulary/(?:${VOCABULARY_NAMES.join('|')})\\.yaml`;
const TREE_FILE = `tree\\.yaml|pack\\.yaml|${VOCABULARY}|pictures/${NAME}\\.svg`;

const LOG = new RegExp(`^(visits|coaches|learners)/(${ID})/events-([0-9a-f]{1,40})\\.jsonl$`);
const PHOTO = /^photos\/([0-9a-f]{64}\.(?:jpg|png|webp))$/;
const TREE = new RegExp(`^trees/([0-9a-f]{64})/(${TREE_FILE})$`);
const PACK = new RegExp(`^packs/(${NAME}/(?:pack\\.yaml|${NAME}/tree\\.yaml|${VOCABULARY}|pictures/${NAME}\\.svg))$`);
const DRAFT = new RegExp(`^drafts/(${NAME}/tree\\.yaml|${VOCABULARY}|pictures/${NAME}\\.svg)$`);
const PRACTICE = /^practice\/((?:[a-z0-9][a-z0-9-]{0,79}\/)*[a-z0-9][a-z0-9.-]{0,79}\.jsonl?)$/;

const LOGS: readonly LogsOf[] = ['visits', 'coaches', 'learners'];

/** The path of a photo's name in an event, wherever it stands there. */
export const PHOTO_NAME = /^[0-9a-f]{64}\.(?:jpg|png|webp)$/;

/**
 * What the file at a path is.
 *
 * @param whole  the exchange is a backup: then packs, drafts, settings and practice have a place too.
 * @returns the place, or why there is none for it.
 */
export function placeOf(path: string, whole: boolean): Place | PackProblem {
  if (path === 'manifest.json') return { kind: 'manifest' };
  const log = LOG.exec(path);
  const of = LOGS.find((each) => each === log?.[1]);
  if (log && of && (whole || of !== 'learners')) return { kind: 'log', of, id: log[2]!, writer: log[3]! };
  const photo = PHOTO.exec(path);
  if (photo) return { kind: 'photo', name: photo[1]! };
  const tree = TREE.exec(path);
  if (tree) return { kind: 'tree', hash: tree[1]!, file: tree[2]! };
  if (whole) {
    if (path === 'settings.json') return { kind: 'settings' };
    const pack = PACK.exec(path);
    if (pack) return { kind: 'packs', file: pack[1]! };
    const draft = DRAFT.exec(path);
    if (draft) return { kind: 'drafts', file: draft[1]! };
    const practice = PRACTICE.exec(path);
    if (practice && !practice[1]!.includes('..')) return { kind: 'practice', file: practice[1]! };
  } else if (path.startsWith('practice/'))
    return packError(
      'practice-log',
      path,
      'This is a practice log: it tells of a simulated coach and is never taken for a visit. Open it on the practice page.',
    );
  if (/^(visits|coaches)\//.test(path))
    return packError(
      'foreign-id',
      path,
      'A visit or a coach lies in a folder named by small letters, digits and hyphens (at most 80), with files events-WRITER.jsonl and WRITER in hex digits. Export it anew.',
    );
  if (path.startsWith('photos/'))
    return packError(
      'wrong-type',
      path,
      'A photo is named by the SHA-256 of its content and ends in .jpg, .png or .webp; nothing else is taken as one. Export the visit anew.',
    );
  return packError(
    'file-not-allowed',
    path,
    `This file has no place in ${whole ? 'a backup' : 'an exported visit'}. Take it out, or export it anew.`,
  );
}
