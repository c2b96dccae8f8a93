import type { Check, Picture, Tree } from '../../knowledge/index.ts';
import { seededRandom } from '../../planning/evaluation/random.ts';
import type { CardOptions, Outcome, PictureCard, PictureOption } from './card.ts';
import { askable } from './askable.ts';
import { cardId, seedOf, shuffled } from './card-id.ts';
import { givesAway } from './gives-away.ts';

/** Checks offered beside the right one. */
const OTHERS = 3;

/**
 * The cards of a tree: every drawing with the results that it explains where those are few of the check's, else with the
 * check that it belongs to. The index of the tree decides what is right.
 */
export function pictureCards(tree: Tree, { who }: CardOptions): PictureCard[] {
  const checks = askable(tree, who).tables.map(({ check }) => check);
  const cards = checks.flatMap((check) => check.pictures.flatMap((picture) => resultCard(tree, check, picture) ?? []));
  const files = new Set(checks.flatMap((check) => check.pictures.map(({ file }) => file)));
  for (const { file } of cards) files.delete(file);
  return [...cards, ...[...files].flatMap((file) => checkCard(tree, checks, file) ?? [])];
}

/** A check with this drawing twice is one card, with everything that the drawing explains. */
function resultCard(tree: Tree, check: Check, picture: Picture): PictureCard | null {
  const same = check.pictures.filter(({ file }) => file === picture.file);
  if (same[0] !== picture) return null;
  const explained = new Set(same.flatMap(({ results }) => results));
  // The drawing as a whole, or most of what the check can show: nothing to choose.
  if (explained.size === 0 || explained.size * 2 > check.results.length) return null;
  const options = check.results.map(({ id, label }) => ({ id, label, accepted: explained.has(id) }));
  return made(tree, picture, 'result', check, options);
}

function checkCard(tree: Tree, checks: readonly Check[], file: string): PictureCard | null {
  const ofFile = (check: Check): boolean => check.pictures.some((picture) => picture.file === file);
  const right = checks.find(ofFile)!;
  const groups = new Set(tree.checks.filter(ofFile).flatMap(({ group }) => group ?? []));
  // A check of the same thing could be defended as well, and so could one whose drawings are not known.
  const others = checks.filter(
    (check) => !ofFile(check) && check.pictures.length > 0 && (check.group === undefined || !groups.has(check.group)),
  );
  const random = seededRandom(seedOf(`${tree.id} ${file}`));
  const wrong = shuffled(others, random).slice(0, OTHERS);
  if (wrong.length < OTHERS) return null;
  const options = shuffled([right, ...wrong], random).map((check) => ({
    id: check.id,
    label: check.name,
    accepted: check === right,
  }));
  return made(
    tree,
    right.pictures.find((picture) => picture.file === file)!,
    'check',
    right,
    options,
  );
}

function made(
  tree: Tree,
  { file, title, alt }: Picture,
  asks: PictureCard['asks'],
  check: Check,
  options: readonly PictureOption[],
): PictureCard {
  return {
    id: cardId('picture', { tree: tree.id, file, asks, check: check.name, options }),
    drill: 'picture',
    tree: tree.id,
    causes: [],
    checks: [check.id],
    subject: `${title} (${check.name})`,
    asks,
    file,
    title,
    alt,
    inWords: !options.some(({ accepted, label }) => accepted && givesAway(alt, label)),
    check: asks === 'result' ? { id: check.id, name: check.name } : null,
    options,
  };
}

/** Right = the index of the tree says so. */
export function judgePicture(card: PictureCard, option: string): Outcome {
  return card.options.find(({ id }) => id === option)?.accepted ? 'right' : 'wrong';
}
