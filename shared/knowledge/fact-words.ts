/**
 * Words by which owners say what they have noticed. Narrower than `everyday-words.ts` on purpose: words of one line may
 * stand for each other in any phrase without changing which result is meant. Judgement, from how owners speak.
 */
const SAME: readonly string[] = [
  'loud louder worse swells increases',
  'quiet quieter quietest silent',
  'lean turn bend curve corner sway sweeper',
  'pull accelerate gas throttle',
  'hill hills uphill grade climb climbing mountains incline',
  'coast coasting overrun decelerate decel',
  'drop falls sinks sags settles',
  'gone disappears vanishes',
  'changed replaced renewed swapped installed new done rebuilt overhauled redone fixed repaired',
  'tyre tire',
  'shop garage dealer',
  'since after',
  'needle gauge',
  'coolant antifreeze',
  'rear back',
  'coach bus rig motorhome camper body',
  'shake vibrates shudders judders wobbles trembles',
  'bang slams clunks jerks thumps lurches',
  'road highway pavement asphalt freeway blacktop interstate',
  'overnight night',
  'kerb curb',
  'button knob',
  'wheels wheel',
  'retarder engine-brake',
];

/** Irregular and short forms that no ending rule brings together. */
const FORMS: ReadonlyMap<string, string> = new Map([
  ['going', 'go'],
  ['went', 'go'],
  ['using', 'use'],
  ['uses', 'use'],
  ['sat', 'sit'],
  ['stood', 'stand'],
  ['froze', 'freeze'],
  ['frozen', 'freeze'],
  ['came', 'come'],
  ['ran', 'run'],
  ['fell', 'fall'],
  ['sank', 'sink'],
  ['dove', 'dive'],
  ['begun', 'begin'],
  ['began', 'begin'],
  ['centre', 'center'],
  ['adding', 'add'],
  ['eases', 'ease'],
  ['fades', 'fade'],
  ['no', 'not'],
  ['never', 'not'],
  ['none', 'not'],
  ['okay', 'fine'],
  ['ok', 'fine'],
  ['normal', 'fine'],
  ['perfect', 'fine'],
]);

/** Turns of speech that stand for one word; read before anything else. */
const TURNS: readonly (readonly [RegExp, string])[] = [
  [
    /\b(?:(?:let|lets|letting|lift|lifts|lifting|lifted|back|backing|ease|easing|come|coming) (?:up |my foot |your foot )?off(?: of)?(?: (?:the |it\b)?(?:gas|throttle|accelerator|pedal|power)?)?|(?:take|taking|get|getting) (?:my|your|the) foot off(?: of)?(?: the)?(?: (?:gas|throttle|accelerator|pedal))?|off the (?:gas|throttle|accelerator|power)|when i lift\b)/g,
    'coast',
  ],
  [/\b(?:step|stepping|stand|lean|leaning|give|giving)(?: on)? (?:it |the )?(?:gas|throttle|accelerator)\b/g, 'gas'],
  [/\b(?:goes|go|going|went) away\b/g, 'gone'],
  [/\b(?:warmed|warms|warming|heated) up\b/g, 'warm'],
  [/\b(?:does not|doesn['’]?t) matter\b/g, 'no difference'],
  [/\bsame (?:as|with) or without\b/g, 'no difference'],
];

/** Words without weight: they are neither looked for nor counted as standing between. */
const EMPTY: ReadonlySet<string> = new Set(
  "a an the is was are were be been being am it its it's thats that's i'm i've we've my our your his her their i we you he she they them me us this that these those there to of and or when whenever while if as for so do does did has have had will would can could get gets got gotten getting really very quite bit little lot thing like some somewhat kind sort then now pretty much right-now also".split(
    ' ',
  ),
);

/** Small words that a phrase may ask for, but that do not push its other words apart. */
const SOFT: ReadonlySet<string> = new Set([
  'at',
  'in',
  'on',
  'from',
  'with',
  'by',
  'into',
  'up',
  'out',
  'down',
  'over',
]);

/** Words that turn a statement round or take it back: a phrase has to say them itself. */
const POLARITY: ReadonlySet<string> = new Set([
  'not',
  'less',
  'hardly',
  'barely',
  'without',
  'fine',
  'good',
  'quiet',
  'gone',
  'rarely',
  'neither',
  'nor',
  'except',
]);

/** Whoever speaks like this is not saying that it is so. */
export const DOUBT =
  /\b(?:maybe|perhaps|might|may be|whether|wonder(?:ing)?|unsure|not sure|no idea|possibly|suppose[ds]?|could be|could it|used to|last (?:owner|coach|bus)|other (?:coach|bus)|what if|would it|should i|afraid|worried|hope|expect)\b|\?/i;

const ORDINAL: ReadonlySet<string> = new Set(
  'first second third fourth fifth sixth ten twenty thirty forty fifty sixty seventy eighty fortyfive fiftyfive'.split(
    ' ',
  ),
);

/** A word of a sentence or a phrase, ready for comparing. */
export interface FactWord {
  /** What it may stand for; two words match when they share one. */
  readonly means: readonly string[];
  readonly soft: boolean;
  readonly polarity: boolean;
  /** As written, in the text after turns of speech were read. */
  readonly plain: string;
  readonly from: number;
  readonly to: number;
}

/**
 * The words of a text with their places in it. A turn of speech counts as the word it stands for, at the place of the
 * whole turn.
 *
 * @param root  root of an English word, as the search has it.
 */
export function factWords(text: string, root: (word: string) => string): FactWord[] {
  const canon = canonOf(root);
  const turns = turnsIn(text.toLowerCase().replaceAll('’', "'"));
  return [...turns, ...plainIn(text, turns)]
    .sort((a, b) => a.from - b.from)
    .filter(({ plain }) => !EMPTY.has(plain))
    .map(({ plain, from, to }): FactWord => {
      if (plain === '#') return { means: ['#'], soft: false, polarity: false, plain, from, to };
      const formed = NEGATED.test(plain) ? 'not' : (FORMS.get(plain) ?? plain);
      const own = formed === 'not' ? 'not' : root(formed);
      const means = [canon.get(own) ?? own];
      if (/^\d/.test(plain) || ORDINAL.has(plain)) means.push('#');
      return {
        means,
        soft: SOFT.has(plain),
        polarity: means.some((each) => polarityRoots(root).has(each)),
        plain,
        from,
        to,
      };
    });
}

const NEGATED = /^(cannot|(ai|are|ca|could|did|does|do|has|have|is|sha|should|was|were|wo|would)n'?t)$/;

interface Piece {
  readonly plain: string;
  readonly from: number;
  readonly to: number;
}

function turnsIn(text: string): Piece[] {
  const found: Piece[] = [];
  for (const [turn, word] of TURNS)
    for (const match of text.matchAll(turn)) {
      const piece = { plain: word, from: match.index, to: match.index + match[0].trimEnd().length };
      if (found.some((each) => each.from < piece.to && piece.from < each.to)) continue;
      // "no difference" stays two words.
      const [first, second] = word.split(' ');
      if (second === undefined) found.push(piece);
      else found.push({ ...piece, plain: first! }, { ...piece, plain: second });
    }
  return found;
}

function plainIn(text: string, turns: readonly Piece[]): Piece[] {
  return [...text.matchAll(/[\p{L}\p{N}’']+|#/gu)]
    .map((match) => ({
      plain: match[0].toLowerCase().replaceAll('’', "'"),
      from: match.index,
      to: match.index + match[0].length,
    }))
    .filter((piece) => !turns.some((turn) => turn.from <= piece.from && piece.to <= turn.to));
}

let lastCanon: { readonly root: (word: string) => string; readonly canon: ReadonlyMap<string, string> } | null = null;

function canonOf(root: (word: string) => string): ReadonlyMap<string, string> {
  if (lastCanon?.root === root) return lastCanon.canon;
  const canon = new Map<string, string>();
  for (const line of SAME) {
    const roots = line.split(' ').map((word) => word.split('-').map(root).join(''));
    for (const each of roots) canon.set(each, roots[0]!);
  }
  lastCanon = { root, canon };
  return canon;
}

let lastPolarity: { readonly root: (word: string) => string; readonly roots: ReadonlySet<string> } | null = null;

function polarityRoots(root: (word: string) => string): ReadonlySet<string> {
  if (lastPolarity?.root === root) return lastPolarity.roots;
  const canon = canonOf(root);
  const roots = new Set(
    [...POLARITY].map((word) => {
      const own = word === 'not' ? 'not' : root(word);
      return canon.get(own) ?? own;
    }),
  );
  lastPolarity = { root, roots };
  return roots;
}
