import { withNames } from '../knowledge/markdown.ts';
import type { PinnedTree } from '../visit/index.ts';
import type { Line } from './document.ts';

/**
 * A text of a tree or its vocabulary by the path of its field: "title", "causes.front-bearing.plain",
 * "proofs.0.steps.2", "limits.drum-wear.value". Entries of lists are named by id, or by number where they have none.
 *
 * @returns undefined when there is no text at that place.
 */
export function textAt({ tree, vocabulary }: PinnedTree, field: string): string | undefined {
  const [first = '', ...rest] = field.split('.');
  const top = first in tree ? step(tree, first) : step(vocabulary, first);
  const found = rest.reduce(step, top);
  return typeof found === 'string' ? found : typeof found === 'number' ? String(found) : undefined;
}

function step(from: unknown, key: string): unknown {
  if (from instanceof Map) return (from as ReadonlyMap<string, unknown>).get(key);
  if (Array.isArray(from)) {
    const list = from as readonly unknown[];
    return list.find((each) => isRecord(each) && each['id'] === key) ?? list[Number(key)];
  }
  return isRecord(from) && Object.hasOwn(from, key) ? from[key] : undefined;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}

/** Texts of one pinned tree as lines that know their field. */
export class TreeTexts {
  readonly pinned: PinnedTree;
  readonly hash: string;

  constructor(pinned: PinnedTree, hash: string) {
    this.pinned = pinned;
    this.hash = hash;
  }

  /** The text of a field, ids in it as names. Empty when the tree has none there. */
  at(field: string): Line {
    const text = textAt(this.pinned, field) ?? '';
    return { text: withNames(text.trim(), this.nameOf), from: [{ kind: 'tree', hash: this.hash, field }] };
  }

  readonly nameOf = (id: string): string => {
    const { causes, checks } = this.pinned.tree;
    return [...causes, ...checks].find((each) => each.id === id)?.name ?? id.replaceAll('-', ' ');
  };
}
