/** Markdown as data: what `markdown.ts` makes of a text and what components draw. No HTML survives. */
export type Inline =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'strong' | 'emphasis'; readonly inlines: readonly Inline[] }
  /** A back-quoted id: a check, cause or complaint; drawn as its name. */
  | { readonly kind: 'reference'; readonly id: string }
  /** Drawn as text with the address beside it; never opens inside the window. */
  | { readonly kind: 'link'; readonly href: string; readonly inlines: readonly Inline[] };

export type Block =
  | { readonly kind: 'paragraph'; readonly inlines: readonly Inline[] }
  | { readonly kind: 'heading'; readonly level: number; readonly inlines: readonly Inline[] }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly Blocks[] }
  | { readonly kind: 'quote'; readonly blocks: Blocks };

export type Blocks = readonly Block[];
