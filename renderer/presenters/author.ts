import { inHundred } from '../../shared/inference/index.ts';
import { UNLISTED, type Role, type Tree, type WeakSpot } from '../../shared/knowledge/index.ts';

/** Who is the least that may do a check, inside a sentence. */
const WHO: Readonly<Record<Role, string>> = {
  'owner-no-tools': 'an owner without tools',
  'owner-basic-tools': 'an owner with basic tools',
  apprentice: 'an apprentice',
  mechanic: 'a mechanic',
};

/** A weak spot as a sentence: what hangs by what. */
export function weakSpotWords(spot: WeakSpot): string {
  switch (spot.kind) {
    case 'one-check-apart': {
      const [a, b] = spot.causes;
      return `“${a.name}” and “${b.name}” are told apart by one check alone, “${spot.check.name}”, that ${spot.check.who === 'mechanic' ? 'only a mechanic' : WHO[spot.check.who]} can do.`;
    }
    case 'danger-hidden-from-owner':
      return `“${spot.cause.name}” can hurt people, and no check for an owner without tools tells it from ${listWords(spot.from.map(({ name }) => `“${name}”`))}.`;
    case 'nothing-settles':
      return `Nothing settles “${spot.cause.name}”: no check names it under “settles”, and it is not marked as one of exclusion.`;
  }
}

function listWords(words: readonly string[]): string {
  const shown = words.length > 3 ? [...words.slice(0, 2), `${words.length - 2} others`] : words;
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} or ${shown.at(-1)!}`;
}

/** Share of each cause before anything is looked at, `unlisted` left out: in the order of the tree. */
export function priorShares({ causes, unlistedShare }: Tree): readonly number[] {
  const sum = causes.reduce((all, { weight }) => all + weight, 0);
  return causes.map(({ weight }) => (weight / sum) * (1 - unlistedShare));
}

/** "41 in 100" of a count; a dash where there is nothing to count. */
export function shareWords(count: number, of: number): string {
  return of === 0 ? '–' : `${inHundred(count / of)} in 100`;
}

/** Name of a cause for a table of the author's; what the tree does not list has one too. */
export function causeWords({ causes }: Tree, id: string): string {
  return id === UNLISTED ? 'Not in the list' : (causes.find((cause) => cause.id === id)?.name ?? id);
}
