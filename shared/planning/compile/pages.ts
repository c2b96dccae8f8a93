import type { CompiledTree } from './compiled-tree.ts';
import { outlineOf, type OutlineEntry } from './outline.ts';

export interface PageSize {
  /** Rows of text on a page. */
  readonly rows: number;
  /** Characters in a row. */
  readonly columns: number;
}

export interface Page {
  /** 1, 2, 3 … */
  readonly page: number;
  /** At most `PageSize.rows`, none longer than `PageSize.columns`. */
  readonly rows: readonly Row[];
}

export interface Row {
  readonly text: string;
  /** Number of the outline entry that the row belongs to; empty for the head of the first page. */
  readonly entry: string;
  /** The row stands at a cut and names the page on the other side. */
  readonly cut?: { readonly kind: 'on' | 'back' | 'see'; readonly page: number };
}

/** Indent of a level, characters. */
const INDENT = 2;
/** Deeper entries are not indented further, so that their rows keep a width that can be read. */
const DEEPEST = 8;
/** Narrower rows leave no room for words beside the deepest indent. */
const LEAST_COLUMNS = 40;

/** Answers of an entry that are printed together, and which of them are followed in the same place. */
interface Block {
  readonly top: OutlineEntry;
  /** Answers of `top` from … up to, but without `to`. */
  readonly from: number;
  to: number;
  /** Entries whose answers are in this block. */
  readonly opened: Set<OutlineEntry>;
  /** Page that sends the reader here; 0 = where everything starts. */
  readonly fromPage: number;
}

type Waiting = Pick<Block, 'top' | 'from' | 'fromPage'>;

/**
 * Cuts a compiled tree into pages. A page takes an entry with its answers and follows the likeliest of them for as long as
 * there is room; what is not followed goes on elsewhere, and both sides of the cut name the other's page.
 *
 * @throws {RangeError} when a page is too small for a single entry; the message says what is needed.
 */
export function pagesOf(compiled: CompiledTree, size: PageSize): readonly Page[] {
  if (!(size.columns >= LEAST_COLUMNS))
    throw new RangeError(`A row of ${size.columns} characters is too narrow; at least ${LEAST_COLUMNS} are needed.`);
  const pages = cutIntoPages(outlineOf(compiled), size);
  const places = placesOf(pages);
  return pages.map((blocks, i) => ({
    page: i + 1,
    rows: blocks.flatMap((block) => rowsOf(block, i + 1, size, places)),
  }));
}

function cutIntoPages(whole: OutlineEntry, size: PageSize): Block[][] {
  const pages: Block[][] = [];
  const waiting: Waiting[] = [{ top: whole, from: 0, fromPage: 0 }];
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const page: Block[] = [];
    pages.push(page);
    let left = size.rows;
    for (
      let here: Waiting | undefined = next;
      here;
      here = takeFirst(waiting, (each) => rowsWhole(each, size) <= left)
    ) {
      const filled = fill(here, left, size);
      page.push(filled.block);
      left = filled.left;
      waiting.push(...cutsOf(filled.block, pages.length));
      // What was begun is finished before anything else.
      if (filled.block.to < here.top.entries.length) {
        waiting.unshift({ top: here.top, from: filled.block.to, fromPage: pages.length });
        break;
      }
    }
  }
  return pages;
}

function takeFirst<T>(list: T[], fits: (each: T) => boolean): T | undefined {
  const at = list.findIndex(fits);
  return at < 0 ? undefined : list.splice(at, 1)[0];
}

/** Entries of a block that are followed somewhere else. */
function cutsOf(block: Block, page: number): Waiting[] {
  return printedIn(block)
    .filter((entry) => entry.entries.length > 0 && !block.opened.has(entry))
    .map((top) => ({ top, from: 0, fromPage: page }));
}

/** Takes as many answers of the top as there is room for, then opens the likeliest while their answers fit too. */
function fill({ top, from, fromPage }: Waiting, room: number, size: PageSize): { block: Block; left: number } {
  const block: Block = { top, from, to: from, fromPage, opened: new Set([top]) };
  let left = room - headRows(block, size);
  const { entries } = top;
  for (; block.to < entries.length; block.to++) {
    const needed = rowsClosed(entries[block.to]!, size);
    // One row is kept for "more answers on page …".
    if (needed + Number(block.to + 1 < entries.length) > left) break;
    left -= needed;
  }
  if (block.to === from) throw tooSmall(block, size);
  if (block.to < entries.length) return { block, left: left - 1 };
  const open = entries.slice(from);
  for (;;) {
    const fits = open.filter((entry) => entry.entries.length > 0 && gain(entry) <= left);
    if (fits.length === 0) return { block, left };
    const best = fits.reduce((a, b) => (b.reach > a.reach ? b : a));
    left -= gain(best);
    block.opened.add(best);
    open.splice(open.indexOf(best), 1, ...best.entries);
  }

  /** Rows that opening an entry adds: its answers, less its own "go on at page …". */
  function gain(entry: OutlineEntry): number {
    return entry.entries.reduce((sum, each) => sum + rowsClosed(each, size), -1);
  }
}

/** Rows before the first answer of a block: the head of the first page, else where the reader comes from. */
function headRows({ top, fromPage }: Pick<Block, 'top' | 'fromPage'>, size: PageSize): number {
  return fromPage === 0 ? ownRows(top, size).length : 1;
}

/** Rows of an entry without its answers, the reference to another page included. */
function rowsClosed(entry: OutlineEntry, size: PageSize): number {
  return ownRows(entry, size).length + Number(entry.goesOnAt !== undefined || entry.entries.length > 0);
}

/** Rows of everything that waits in one piece, nothing opened. */
function rowsWhole({ top, from, fromPage }: Waiting, size: PageSize): number {
  return top.entries
    .slice(from)
    .reduce((sum, entry) => sum + rowsClosed(entry, size), headRows({ top, fromPage }, size));
}

/** Entries printed in a block, the top left out. */
function printedIn(block: Block): OutlineEntry[] {
  const all = (entry: OutlineEntry): OutlineEntry[] => [
    entry,
    ...(block.opened.has(entry) ? entry.entries.flatMap(all) : []),
  ];
  return block.top.entries.slice(block.from, block.to).flatMap(all);
}

interface Places {
  /** Page on which an entry is printed. */
  readonly printed: ReadonlyMap<string, number>;
  /** Page on which its answers begin, and the page on which the answers from a certain one on are. */
  readonly answers: ReadonlyMap<string, number>;
}

function placesOf(pages: readonly (readonly Block[])[]): Places {
  const printed = new Map<string, number>();
  const answers = new Map<string, number>();
  pages.forEach((blocks, i) => {
    for (const block of blocks) {
      answers.set(`${block.top.number}/${block.from}`, i + 1);
      for (const entry of printedIn(block)) printed.set(entry.number, i + 1);
    }
  });
  return { printed, answers };
}

function rowsOf(block: Block, page: number, size: PageSize, places: Places): Row[] {
  const { top, from, to, fromPage, opened } = block;
  const rows: Row[] =
    fromPage === 0
      ? ownRows(top, size)
      : [cutRow(top, 'back', fromPage, `From page ${fromPage}, ${from > 0 ? 'more answers to ' : ''}`, 0)];
  top.entries.slice(from, to).forEach(write);
  if (to < top.entries.length) {
    const there = places.answers.get(`${top.number}/${to}`)!;
    rows.push(cutRow(top, 'on', there, `Page ${there} has more answers to `, 0));
  }
  return rows;

  function write(entry: OutlineEntry): void {
    rows.push(...ownRows(entry, size));
    if (entry.goesOnAt !== undefined) {
      const there = places.printed.get(entry.goesOnAt)!;
      rows.push(cutRow(entry, 'see', there, there === page ? 'On this page.' : `See page ${there}.`, entry.level));
    } else if (opened.has(entry)) entry.entries.forEach(write);
    else if (entry.entries.length > 0) {
      const there = places.answers.get(`${entry.number}/0`)!;
      rows.push(cutRow(entry, 'on', there, `Page ${there} goes on from `, entry.level));
    }
  }

  function cutRow(entry: OutlineEntry, kind: 'on' | 'back' | 'see', there: number, words: string, level: number): Row {
    const number = kind === 'see' ? '' : entry.number || 'the start';
    const text = `${indentOf(level)}${words}${number}`;
    // A very long number gives way: the page is what the reader needs.
    const short = text.length <= size.columns ? text : `${text.slice(0, size.columns - 1)}…`;
    return { text: short, entry: entry.number, cut: { kind, page: there } };
  }
}

function tooSmall(block: Block, size: PageSize): RangeError {
  const answer = block.top.entries[block.from]!;
  const needed = headRows(block, size) + rowsClosed(answer, size) + 1;
  return new RangeError(
    `A page of ${size.rows} rows of ${size.columns} characters cannot hold entry ${answer.number}; it needs ${needed} rows. Take smaller type or larger paper.`,
  );
}

function indentOf(level: number): string {
  return ' '.repeat(INDENT * Math.max(0, Math.min(level, DEEPEST)));
}

const known = new WeakMap<OutlineEntry, { readonly columns: number; readonly rows: readonly Row[] }>();

/** Rows of an entry's own texts, the number before the first. */
function ownRows(entry: OutlineEntry, { columns }: PageSize): Row[] {
  const before = known.get(entry);
  if (before?.columns === columns) return [...before.rows];
  const rows = entry.lines.flatMap((line, i) => {
    const text = i === 0 && entry.number ? `${entry.number} ${line}` : line;
    return wrapped(text, entry.level + Math.sign(i), columns).map((row) => ({ text: row, entry: entry.number }));
  });
  known.set(entry, { columns, rows });
  return rows;
}

/** A text broken at blanks; a word longer than a row is broken where the row ends. */
function wrapped(text: string, level: number, columns: number): string[] {
  const indent = indentOf(level);
  const room = columns - indent.length;
  const rows: string[] = [];
  let row = '';
  for (const word of text.split(' ')) {
    if (row && row.length + 1 + word.length <= room) {
      row += ` ${word}`;
      continue;
    }
    if (row) rows.push(indent + row);
    row = word;
    for (; row.length > room; row = row.slice(room)) rows.push(indent + row.slice(0, room));
  }
  return [...rows, indent + row];
}
