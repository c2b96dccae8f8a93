import type { KeptEvaluation, KeptTree, WayScore } from '../../shared/planning/evaluation/index.ts';

/** The kept table as a person reads it: one line a complaint, and a full table for the one that is picked. */
export interface EvaluationView {
  /** All complaints in one sentence each. */
  readonly summary: readonly string[];
  readonly trees: readonly TreeLine[];
  readonly models: readonly ModelLine[];
  readonly modelsNote: string;
}

/** Minutes of one way as a bar. */
export interface Bar {
  readonly look: 'ours' | 'taught' | 'swapped';
  readonly words: string;
  readonly minutes: string;
  /** 0…1 of the longest bar of the page. */
  readonly share: number;
}

export interface TreeLine {
  readonly id: string;
  readonly title: string;
  readonly bars: readonly Bar[];
  /** First correction was the fault, in 100 coaches: this program, and after every check. */
  readonly right: string;
  readonly rightOfEvery: string;
  readonly rightShare: number;
  readonly everyShare: number;
}

export interface TreeTable {
  readonly ways: readonly (readonly string[])[];
  readonly besides: readonly (readonly string[])[];
  readonly facts: readonly (readonly [term: string, value: string])[];
  readonly note: string;
}

export interface ModelLine {
  readonly model: string;
  readonly ours: string;
  readonly best: string;
  /** Of the rule that larger trees are walked by. */
  readonly rule: string;
  readonly figures: readonly (readonly [term: string, value: string])[];
}

export const WAY_HEADS = ['Way of working', 'Minutes', 'Checks', 'Wrong parts', 'Right first', 'Handed over'] as const;
export const BESIDE_HEADS = ['When', 'This program', 'Taught order'] as const;

/** What the ways are called on the page, in the order of the table. */
const WAYS: readonly (readonly [way: string, words: string])[] = [
  ['this program', 'This program'],
  ['one step', 'One step ahead'],
  ['taught order', 'Taught order'],
  ['likeliest part first', 'Swapping the likeliest part'],
  ['every check', 'Every check first'],
  ['many steps', 'Looking many steps ahead'],
  ['information per minute', 'Most told per minute'],
  ['by lot', 'By lot'],
];

/** @param titleOf  title of a complaint by its id. */
export function evaluationView(kept: KeptEvaluation, titleOf: (id: string) => string | undefined): EvaluationView {
  const longest = Math.max(...kept.trees.flatMap((tree) => BARS.map(([way]) => scoreOf(tree, way).cost)), 1);
  return {
    summary: kept.trees.length > 0 ? summaryOf(kept.trees) : ['Not worked out yet.'],
    trees: kept.trees.map((tree) => treeLine(tree, titleOf(tree.tree) ?? tree.tree, longest)),
    models: kept.models.map((row): ModelLine => {
      const cost = (value: number | null): string => (value === null ? '–' : value.toFixed(1));
      return {
        model: row.model,
        ours: cost(row.ours),
        best: cost(row.optimum),
        rule: cost(row.rule),
        figures: [
          ['This program', cost(row.ours)],
          ['Best possible', cost(row.optimum)],
          ['Its rule for larger trees', cost(row.rule)],
          ['That rule dearer than the best possible', `${above(row, row.rule).toFixed(1)} in 100`],
          ['One step ahead', cost(row.oneStep)],
          ['Looking ahead, its rule after it', cost(row.ahead)],
          ['Looking ahead, one step after it', cost(row.rollout)],
          ['Most told per minute', cost(row.information)],
          ['Taught order', cost(row.taught)],
          ['Parts swapped', cost(row.swapped)],
          ['By lot', cost(row.lot)],
          ...row.disturbed.map(({ sigma, excess }): readonly [string, string] => [
            `Dearer when its numbers are off by ${sigma}`,
            `${(excess * 100).toFixed(1)} in 100 (${row.truths} truths)`,
          ]),
        ],
      };
    }),
    modelsNote: kept.models.length > 0 ? modelsNoteOf(kept) : 'Not worked out yet.',
  };
}

/** The spread of the numbers that is named beside the models: a slip of two thirds. */
const OFF = 0.5;

function modelsNoteOf({ models, modelsOn }: KeptEvaluation): string {
  const ours = models.map((row) => above(row, row.ours));
  const rule = models.map((row) => above(row, row.rule));
  const most = Math.max(...ours);
  const off = mean(models.map(({ disturbed }) => disturbed.find(({ sigma }) => sigma === OFF)?.excess ?? 0));
  return [
    most < 0.05
      ? 'These are small enough that this program works out every order to the end: it costs what the best plan costs.'
      : `This program is dearer than the best plan by ${most.toFixed(1)} in 100 at most.`,
    `The rule for larger trees alone would be dearer by ${mean(rule).toFixed(1)} in 100 on average, ${Math.max(...rule).toFixed(1)} at most.`,
    `With numbers that are off by ${OFF} it costs ${hundred(off)} in 100 more on average than the best plan of the truth. Worked out on ${modelsOn}.`,
  ].join(' ');
}

/** By how many in 100 a cost lies above that of the best plan. */
function above({ optimum }: KeptEvaluation['models'][number], cost: number): number {
  return (100 * (cost - optimum)) / Math.abs(optimum);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, each) => sum + each, 0) / values.length;
}

const BARS = [
  ['this program', 'ours', 'this program'],
  ['taught order', 'taught', 'taught order'],
  ['likeliest part first', 'swapped', 'swapping parts'],
] as const;

function summaryOf(trees: readonly KeptTree[]): string[] {
  const minutes = (way: string): number => mean(trees.map((tree) => scoreOf(tree, way).cost));
  const ours = minutes('this program');
  const right = (way: string): string => hundred(mean(trees.map((tree) => scoreOf(tree, way).right)));
  return [
    `Over ${trees.length} complaints a mechanic with this program needs ${ours.toFixed(0)} minutes to a proven cure: ${hundred(ours / minutes('taught order'))} for every 100 of the taught order, ${hundred(ours / minutes('likeliest part first'))} for every 100 of swapping the likeliest part.`,
    `The first thing corrected is the fault ${right('this program')} times in 100; after every check it would be ${right('every check')}, in the taught order ${right('taught order')}.`,
  ];
}

function scoreOf(tree: KeptTree, way: string): WayScore {
  const score = tree.ways.find((each) => each.way === way);
  if (!score)
    throw new Error(`The kept evaluation of ${tree.tree} has no way "${way}"; run npm run evaluate -- --keep.`);
  return score;
}

function treeLine(tree: KeptTree, title: string, longest: number): TreeLine {
  const ours = scoreOf(tree, 'this program');
  const every = scoreOf(tree, 'every check');
  return {
    id: tree.tree,
    title,
    bars: BARS.map(([way, look, words]): Bar => {
      const { cost } = scoreOf(tree, way);
      return { look, words, minutes: cost.toFixed(0), share: cost / longest };
    }),
    right: hundred(ours.right),
    rightOfEvery: hundred(every.right),
    rightShare: ours.right,
    everyShare: every.right,
  };
}

/** Everything that was measured on one complaint. */
export function treeTable(tree: KeptTree): TreeTable {
  const ours = scoreOf(tree, 'this program');
  const cost = (way: string): number => scoreOf(tree, way).cost;
  const figures = (score: WayScore): string =>
    `${score.cost.toFixed(0)} min, right first ${hundred(score.right)} in 100, handed over ${hundred(score.handedOver)}`;
  const beside = (what: string, own: WayScore, taught: WayScore): string[] => [what, figures(own), figures(taught)];
  return {
    ways: WAYS.flatMap(([way, words]) => {
      const score = tree.ways.find((each) => each.way === way);
      if (!score) return [];
      return [
        [
          words,
          `${score.cost.toFixed(0)} ± ${(2 * score.costError).toFixed(0)}`,
          score.checks.toFixed(1),
          score.wrongParts.toFixed(2),
          `${hundred(score.right)} in 100`,
          `${hundred(score.handedOver)} in 100`,
        ],
      ];
    }),
    besides: [
      ...tree.disturbed.map(({ sigma, ours: own, taught }) =>
        beside(`the numbers of the tree are off by ${sigma}`, own, taught),
      ),
      beside('the likeliest cause is missing in the tree', tree.removed.ours, tree.removed.taught),
      beside('two things are wrong at once', tree.twoFaults.ours, tree.twoFaults.taught),
    ],
    facts: [
      ['Cannot be less, proven', `${tree.least.proven.toFixed(0)} min`],
      ['Share of the taught order', wanted(ours.cost / cost('taught order'), 0.6, true)],
      ['Share of swapping parts', wanted(ours.cost / cost('likeliest part first'), 0.4, true)],
      ['Right first, share of every check', wanted(ours.right / scoreOf(tree, 'every check').right, 0.97, false)],
      [
        'Owner told to drive with a danger',
        `${hundred(tree.drive.toldToDrive)} in 100 of ${tree.drive.dangerCoaches} coaches`,
      ],
    ],
    note: `${tree.counts.coaches} simulated coaches, ${tree.counts.beside} for what stands beside, seed ${tree.counts.seed}, worked out on ${tree.on}. ± holds 19 times in 20.`,
  };
}

/** A share with what was wanted of it, never by colour alone. */
function wanted(share: number, limit: number, below: boolean): string {
  const met = below ? share <= limit : share >= limit;
  return `${share.toFixed(2)}, ${met ? 'as wanted:' : 'not as wanted:'} ${below ? 'at most' : 'at least'} ${limit.toFixed(2)}`;
}

function hundred(share: number): string {
  return (share * 100).toFixed(0);
}
