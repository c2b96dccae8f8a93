import { packError, type PackProblem } from '../../knowledge/pack/index.ts';
import { photosNamed, type LogRecord } from './log-lines.ts';
import { mergeLogs } from './merge-logs.ts';

/** What else came with the visit, as far as its entries may speak of it. */
export interface CameWith {
  /** Hashes of the trees that came or that the program has itself. */
  readonly trees: ReadonlySet<string>;
  readonly photos: ReadonlySet<string>;
}

/**
 * What is wrong with the entries of one visit, of all its writers together.
 *
 * @param lenient  of a backup: what a visit already lacked on its own disk is a remark (EXC-8).
 */
export function visitProblems(
  visit: string,
  records: readonly LogRecord[],
  came: CameWith,
  lenient: boolean,
): PackProblem[] {
  const at = `visits/${visit}`;
  const problems: PackProblem[] = [];
  const say = (code: string, message: string, level: 'error' | 'warning'): void => {
    problems.push({ ...packError(code, at, message), level });
  };
  const lacking = lenient ? 'warning' : 'error';
  const { missing: entries, conflicts } = mergeLogs([], records);
  for (const id of conflicts)
    say(
      'entry-twice',
      `The entry “${id}” stands here twice and says two different things. Export the visit anew where it was made.`,
      'error',
    );
  const openings = entries.filter(({ kind }) => kind === 'visit.opened').length;
  if (openings !== 1)
    say(
      openings === 0 ? 'no-opening' : 'two-openings',
      `A visit begins once; this one begins ${openings === 0 ? 'nowhere' : `${openings} times`}. Export it anew where it was made.`,
      lacking,
    );
  const trees = new Set(
    entries.flatMap((entry) =>
      entry.kind === 'complaint.opened' && typeof entry['treeHash'] === 'string' ? [entry['treeHash']] : [],
    ),
  );
  for (const hash of trees)
    if (!came.trees.has(hash))
      say(
        'tree-missing',
        `The tree ${hash.slice(0, 12)}… that a complaint was opened with is neither in the file nor in this program. Export the visit anew where it was made.`,
        lacking,
      );
  const named = new Set(entries.flatMap(photosNamed));
  const lost = [...named].filter((name) => !came.photos.has(name)).length;
  if (lost > 0)
    say(
      'photo-missing',
      `${lost} ${lost === 1 ? 'photo is' : 'photos are'} named in the visit and not in the file: lost where it was made. The findings themselves are here.`,
      'warning',
    );
  const unasked = [...came.photos].filter((name) => !named.has(name)).length;
  if (unasked > 0)
    say(
      'file-not-asked-for',
      `${unasked} ${unasked === 1 ? 'photo' : 'photos'} in the file belong to no entry of the visit. Export it anew.`,
      'error',
    );
  return problems;
}
