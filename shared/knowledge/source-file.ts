import { isMap, isNode, isPair, isSeq, LineCounter, parseDocument, visit, type Document, type Node } from 'yaml';
import type { Problem } from './problem.ts';

/** Steps from the top of a file to a value: keys and list positions. */
export type Path = readonly (string | number)[];

/** A YAML text with the places of its values. Every message about the file is made here, so that every message has one. */
export class SourceFile {
  readonly name: string;
  readonly #text: string;
  readonly #document: Document.Parsed;
  readonly #lines = new LineCounter();
  readonly problems: Problem[] = [];

  constructor(name: string, text: string) {
    this.name = name;
    this.#text = text;
    this.#document = parseDocument(text, { lineCounter: this.#lines, uniqueKeys: true, prettyErrors: false });
    for (const error of worthSaying(this.#document.errors)) {
      const [from, to] = error.pos;
      this.#report(
        'error',
        `yaml-${error.code.toLowerCase().replaceAll('_', '-')}`,
        from,
        to,
        error.code === 'DUPLICATE_KEY'
          ? `"${/^[^:\s]*/.exec(text.slice(from))![0]}" is given twice in this group of keys. Take one of the two out.`
          : `${sentence(error.message)} Correct the YAML here.`,
      );
    }
    for (const warning of this.#document.warnings) {
      const [from, to] = warning.pos;
      this.#report(
        'warning',
        `yaml-${warning.code.toLowerCase().replaceAll('_', '-')}`,
        from,
        to,
        sentence(warning.message),
      );
    }
  }

  /** The file as plain data, or undefined when it is no YAML or uses aliases. */
  data(): unknown {
    if (this.#document.errors.length > 0) return undefined;
    let aliases = 0;
    visit(this.#document, {
      Alias: (_, node) => {
        aliases += 1;
        const [from, to] = node.range ?? [0, 1];
        this.#report(
          'error',
          'yaml-alias',
          from,
          to,
          `The alias *${node.source} is used. Aliases are not allowed in these files: write the value out.`,
        );
      },
    });
    return aliases > 0 ? undefined : this.#document.toJS();
  }

  error(code: string, path: Path, message: string): void {
    const [from, to] = this.#rangeOf(path);
    this.#report('error', code, from, to, message);
  }

  warning(code: string, path: Path, message: string): void {
    const [from, to] = this.#rangeOf(path);
    this.#report('warning', code, from, to, message);
  }

  /** Line of a value, from 1. */
  lineOf(path: Path): number {
    return this.#lines.linePos(this.#rangeOf(path)[0]).line;
  }

  #report(level: 'error' | 'warning', code: string, from: number, to: number, message: string): void {
    const { line, col } = this.#lines.linePos(from);
    const start = this.#lines.lineStarts[line - 1] ?? 0;
    const end = this.#text.indexOf('\n', start);
    const text = this.#text.slice(start, end < 0 ? undefined : end).replace(/\r$/, '');
    const width = Math.max(1, Math.min(to - from, text.length - (col - 1)));
    this.problems.push({ level, code, file: this.name, line, column: col, message, excerpt: { text, width } });
  }

  /** Range of the value at a path; of the key where the value is a list or map; else of the nearest parent that exists. */
  #rangeOf(path: Path): [number, number] {
    let node: unknown = this.#document.contents;
    let range: [number, number] = isNode(node) && node.range ? [node.range[0], node.range[0] + 1] : [0, 1];
    for (const step of path) {
      if (isMap(node)) {
        const pair = node.items.find((item) => isPair(item) && keyOf(item.key) === String(step));
        if (!pair) break;
        node = pair.value;
        range = rangeOfNode(isMap(node) || isSeq(node) || !hasRange(node) ? pair.key : node) ?? range;
      } else if (isSeq(node)) {
        const item = node.items[Number(step)];
        if (item === undefined) break;
        node = item;
        range = rangeOfNode(node) ?? range;
        if (isMap(node) || isSeq(node)) range = [range[0], range[0] + 1];
      } else break;
    }
    return range;
  }
}

/** Keys given twice stand for themselves; of all other faults of form only the first is true, the rest follow from it. */
function worthSaying<T extends { readonly code: string }>(errors: readonly T[]): T[] {
  const first = errors.find(({ code }) => code !== 'DUPLICATE_KEY');
  return errors.filter((error) => error === first || error.code === 'DUPLICATE_KEY');
}

function sentence(message: string): string {
  const first = message.split('\n')[0]!.trim();
  return /[.?]$/.test(first) ? first : `${first}.`;
}

function keyOf(key: unknown): string {
  return isNode(key) && 'value' in key ? String(key.value) : String(key);
}

function hasRange(node: unknown): node is Node {
  return isNode(node) && !!node.range && node.range[1] > node.range[0];
}

function rangeOfNode(node: unknown): [number, number] | null {
  return hasRange(node) ? [node.range![0], node.range![1]] : null;
}
