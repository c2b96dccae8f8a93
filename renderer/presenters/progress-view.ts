import { inHundred } from '../../shared/inference/index.ts';
import type { TreeCard } from '../../shared/knowledge/index.ts';
import { sentence } from './presenters.ts';
import { UNLISTED } from '../../shared/knowledge/index.ts';
import type { WorkedStanding } from '../../shared/practice/index.ts';
import type { Progress, Standing } from '../../shared/practice/drills/index.ts';

/** How something stands, in words and with a sign, never by colour. */
export const STANDING_WORDS: Readonly<Record<Standing, { readonly words: string; readonly icon: string }>> = {
  solid: { words: 'Solid', icon: 'tick' },
  coming: { words: 'Coming on', icon: 'raise' },
  shaky: { words: 'Shaky', icon: 'straddle' },
  new: { words: 'Too few to say', icon: 'unsure' },
};

/** One row of a table. */
export interface ProgressRow {
  readonly key: string;
  readonly name: string;
  /** Complaint it belongs to; empty where that is the row itself, or none. */
  readonly of: string;
  readonly standing: Standing;
  readonly right: string;
  readonly recall: string;
  readonly holds: string;
}

export interface ProgressTable {
  readonly subject: Progress['subject'];
  readonly heading: string;
  readonly rows: readonly ProgressRow[];
  /** "2 solid, 1 shaky" */
  readonly sum: string;
}

const HEADINGS: readonly (readonly [Progress['subject'], string])[] = [
  ['complaint', 'Complaints'],
  ['cause', 'Causes'],
  ['check', 'Checks'],
  ['limit', 'Limits'],
];

/** Progress as tables, with the names of today; what is in no tree any more keeps the words of its card. */
export function progressTables(progress: readonly Progress[], trees: readonly TreeCard[]): readonly ProgressTable[] {
  const cardOf = (id: string | null): TreeCard | undefined => trees.find((tree) => tree.id === id);
  const nameOf = ({ subject, tree, id, words }: Progress): string => {
    const card = cardOf(tree);
    if (subject === 'complaint') return card?.title ?? id;
    if (subject === 'limit') return sentence(words);
    return (subject === 'cause' ? card?.causes : card?.checks)?.find((each) => each.id === id)?.name ?? words;
  };
  return HEADINGS.flatMap(([subject, heading]) => {
    const own = progress.filter((each) => each.subject === subject);
    if (own.length === 0) return [];
    const rows = own.map((each): ProgressRow => ({
      key: `${each.tree ?? ''} ${each.id}`,
      name: nameOf(each),
      of: subject === 'complaint' || each.tree === null ? '' : (cardOf(each.tree)?.title ?? each.tree),
      standing: each.standing,
      right: `${figure(each.rightShare * each.asked)} of ${each.asked}`,
      recall: `${inHundred(each.recall)} in 100`,
      holds: daysWords(each.holdsDays),
    }));
    return [{ subject, heading, rows, sum: sumOf(own) }];
  });
}

/** One row of what was worked on simulated coaches. */
export interface WorkedRow {
  readonly key: string;
  readonly name: string;
  readonly of: string;
  readonly standing: Standing;
  readonly right: string;
  /** Empty when none was. */
  readonly unsafe: string;
  readonly score: string;
}

/** Exercises by complaint and by hidden cause, with the names of today. */
export function workedTables(
  standings: readonly WorkedStanding[],
  trees: readonly TreeCard[],
): readonly { readonly heading: string; readonly sum: string; readonly rows: readonly WorkedRow[] }[] {
  const titleOf = (tree: string): string => trees.find(({ id }) => id === tree)?.title ?? tree;
  const nameOf = (tree: string, cause: string): string =>
    cause === UNLISTED
      ? 'Something that is not in the list'
      : (trees.find(({ id }) => id === tree)?.causes.find(({ id }) => id === cause)?.name ?? cause);
  return [
    { heading: 'Simulated coaches, by complaint', own: standings.filter(({ cause }) => cause === null) },
    { heading: 'Simulated coaches, by what it was', own: standings.filter(({ cause }) => cause !== null) },
  ].flatMap(({ heading, own }) => {
    if (own.length === 0) return [];
    const rows = own.map(({ tree, cause, ended, right, unsafe, score, standing }): WorkedRow => ({
      key: `${tree} ${cause ?? ''}`,
      name: cause === null ? titleOf(tree) : nameOf(tree, cause),
      of: cause === null ? '' : titleOf(tree),
      standing,
      right: `${right} of ${ended}`,
      unsafe: unsafe === 0 ? '' : `stopped by danger ${unsafe} of ${ended}`,
      score: `${Math.round(score)} of 100`,
    }));
    return [{ heading, sum: sumOf(own), rows }];
  });
}

function sumOf(own: readonly { readonly standing: Standing }[]): string {
  return (['solid', 'coming', 'shaky', 'new'] as const)
    .flatMap((standing) => {
      const count = own.filter((each) => each.standing === standing).length;
      const { words } = STANDING_WORDS[standing];
      return count === 0 ? [] : [`${count} ${words.toLowerCase()}`];
    })
    .join(', ');
}

/** 3, or 3.5: half right counts half. */
function figure(value: number): string {
  return Number.isInteger(value) ? String(value) : value.toFixed(1);
}

function daysWords(days: number): string {
  if (days < 1) return 'less than a day';
  const whole = Math.round(days);
  return `about ${whole} day${whole === 1 ? '' : 's'}`;
}
