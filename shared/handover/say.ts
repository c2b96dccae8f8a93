import { fullStop } from '../visit/index.ts';
import type { Line, Origin, Reckoned } from './document.ts';

const WORDING: Origin = { kind: 'wording' };

/** A line made of pieces. Bare strings are wording of the program; what a piece comes from, the whole comes from. */
export function say(...pieces: readonly (Line | string)[]): Line {
  const text = pieces.map((piece) => (typeof piece === 'string' ? piece : piece.text)).join('');
  const lines = pieces.filter((piece): piece is Line => typeof piece !== 'string');
  // A piece that nothing stands behind does not pass for wording: the whole has no origin then, and a test finds it.
  if (lines.some((piece) => piece.text !== '' && piece.from.length === 0)) return { text, from: [] };
  const from = lines.flatMap((piece) => piece.from);
  const known = from.filter(({ kind }) => kind !== 'wording');
  return { text, from: known.length > 0 ? unique(known) : [WORDING] };
}

/** Lines in a row with something between them; empty ones are left out. */
export function joined(lines: readonly (Line | string | null)[], between: string): Line {
  const some = lines.filter((each): each is Line | string => each !== null && textOf(each) !== '');
  return say(...some.flatMap((each, i) => (i === 0 ? [each] : [between, each])));
}

/** What a check found, after its name; a name that asks needs no colon, and its answer is a sentence. */
export function answered(check: Line, result: Line): Line {
  return check.text.endsWith('?') ? joined([check, capital(result)], ' ') : joined([check, result], ': ');
}

/** Something that the program worked out. */
export function reckoned(text: string, what: Reckoned, of: string): Line {
  return { text, from: [{ kind: 'reckoned', what, of }] };
}

/** The same words with a capital letter in front. */
export function capital(line: Line): Line {
  return { ...line, text: line.text.charAt(0).toUpperCase() + line.text.slice(1) };
}

/** The same words as a sentence with its end. */
export function ended(line: Line): Line {
  return capital({ ...line, text: fullStop(line.text) });
}

function textOf(piece: Line | string): string {
  return typeof piece === 'string' ? piece : piece.text;
}

function unique(origins: readonly Origin[]): Origin[] {
  const seen = new Set<string>();
  return origins.filter((origin) => {
    const key = JSON.stringify(origin);
    return !seen.has(key) && !!seen.add(key);
  });
}
