import type { Tree } from './tree.ts';

/** What has to be known of a complaint before it is opened: to find it by words and to name it. */
export interface TreeCard {
  readonly id: string;
  readonly title: string;
  readonly phrases: readonly string[];
  readonly confusedWith: readonly { readonly text: string; readonly complaint?: string | undefined }[];
  readonly causes: readonly { readonly id: string; readonly name: string; readonly plain: string }[];
  readonly checks: readonly { readonly id: string; readonly name: string }[];
}

/** The card of a tree: a small part of it, in the same words. */
export function treeCard({ id, title, phrases, confusedWith, causes, checks }: Tree): TreeCard {
  return {
    id,
    title,
    phrases,
    confusedWith: confusedWith.map(({ text, complaint }) => ({
      text,
      ...(complaint === undefined ? {} : { complaint }),
    })),
    causes: causes.map((cause) => ({ id: cause.id, name: cause.name, plain: cause.plain })),
    checks: checks.map((check) => ({ id: check.id, name: check.name })),
  };
}
