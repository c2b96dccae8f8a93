import { lexer, type Token, type Tokens } from 'marked';
import type { Block, Blocks, Inline } from './blocks.ts';

/** Deepest nesting that is drawn; anything below is shown as plain text. */
const DEEPEST = 8;
/** Longest text that is read as Markdown; a longer one is shown as it is. */
const LONGEST = 50_000;

/**
 * Markdown → blocks. Trees may come from strangers: raw HTML becomes visible text, pictures their text alternative,
 * links only https ones, and nothing that this function gives back can carry a script, a style or an address that
 * loads by itself.
 */
export function markdownBlocks(text: string): Blocks {
  if (text.length > LONGEST) return [{ kind: 'paragraph', inlines: [{ kind: 'text', text }] }];
  return lexer(text).flatMap((token) => block(token, 0));
}

/** One paragraph's worth of Markdown: emphasis, references and links, no blocks. */
export function inlineMarkdown(text: string): readonly Inline[] {
  return markdownBlocks(text).flatMap((each) =>
    each.kind === 'paragraph' || each.kind === 'heading'
      ? each.inlines
      : [{ kind: 'text' as const, text: plainOf([each]) }],
  );
}

/** Ids in back-quotes, in the order of the text. */
export function referencesIn(text: string): string[] {
  return [...text.matchAll(/`([^`]+)`/g)].map((match) => match[1]!);
}

/** The text with every back-quoted id replaced by its name, for places that show no Markdown. */
export function withNames(text: string, nameOf: (id: string) => string | undefined): string {
  return text.replace(/`([^`]+)`/g, (_, id: string) => `“${nameOf(id) ?? id}”`).replace(/\*\*([^*]+)\*\*/g, '$1');
}

function block(token: Token, depth: number): Block[] {
  if (depth > DEEPEST) return [{ kind: 'paragraph', inlines: [{ kind: 'text', text: token.raw }] }];
  switch (token.type) {
    case 'space':
    case 'hr':
    case 'def':
      return [];
    case 'heading':
      return [
        {
          kind: 'heading',
          level: Math.min(4, Math.max(2, (token as Tokens.Heading).depth + 1)),
          inlines: inlines((token as Tokens.Heading).tokens, depth),
        },
      ];
    case 'paragraph':
      return [{ kind: 'paragraph', inlines: inlines((token as Tokens.Paragraph).tokens, depth) }];
    case 'list': {
      const list = token as Tokens.List;
      return [
        {
          kind: 'list',
          ordered: list.ordered,
          items: list.items.map((item) => item.tokens.flatMap((each) => block(each, depth + 1))),
        },
      ];
    }
    case 'blockquote':
      return [{ kind: 'quote', blocks: (token as Tokens.Blockquote).tokens.flatMap((each) => block(each, depth + 1)) }];
    case 'text': {
      const text = token as Tokens.Text;
      return [
        {
          kind: 'paragraph',
          inlines: text.tokens ? inlines(text.tokens, depth) : [{ kind: 'text', text: decoded(text.text) }],
        },
      ];
    }
    default:
      // HTML, tables, code: shown as the text that they are.
      return [{ kind: 'paragraph', inlines: [{ kind: 'text', text: token.raw.trim() }] }];
  }
}

function inlines(tokens: readonly Token[], depth: number): Inline[] {
  return tokens.flatMap((token): Inline[] => {
    if (depth > DEEPEST) return [{ kind: 'text', text: token.raw }];
    switch (token.type) {
      case 'strong':
      case 'em':
        return [
          {
            kind: token.type === 'em' ? 'emphasis' : 'strong',
            inlines: inlines((token as Tokens.Strong).tokens, depth + 1),
          },
        ];
      case 'codespan': {
        const { text } = token as Tokens.Codespan;
        return [
          /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text)
            ? { kind: 'reference', id: text }
            : { kind: 'text', text: decoded(text) },
        ];
      }
      case 'link': {
        const link = token as Tokens.Link;
        const shown = inlines(link.tokens, depth + 1);
        return isHttps(link.href) ? [{ kind: 'link', href: link.href, inlines: shown }] : shown;
      }
      case 'image':
        return [{ kind: 'text', text: (token as Tokens.Image).text }];
      case 'br':
        return [{ kind: 'text', text: '\n' }];
      case 'escape':
        return [{ kind: 'text', text: decoded((token as Tokens.Escape).text) }];
      case 'text':
        return [{ kind: 'text', text: decoded((token as Tokens.Text).text) }];
      default:
        return [{ kind: 'text', text: token.raw }];
    }
  });
}

/** Only addresses that a person could also type into a browser: https, a host, no name and password in it. */
function isHttps(href: string): boolean {
  return /^https:\/\/[a-z0-9-]+(\.[a-z0-9-]+)+(:\d+)?(\/[^\s"'<>\\]*)?$/i.test(href);
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  '#39': "'",
  nbsp: '\u00a0',
};

function decoded(text: string): string {
  return text.replace(/&(amp|lt|gt|quot|#39|nbsp);/g, (whole, name: string) => ENTITIES[name] ?? whole);
}

function plainOf(blocks: Blocks): string {
  const text = (inline: Inline): string =>
    inline.kind === 'text' ? inline.text : inline.kind === 'reference' ? inline.id : inline.inlines.map(text).join('');
  return blocks
    .map((each) =>
      each.kind === 'list'
        ? each.items.map(plainOf).join(' ')
        : each.kind === 'quote'
          ? plainOf(each.blocks)
          : each.inlines.map(text).join(''),
    )
    .join(' ');
}
