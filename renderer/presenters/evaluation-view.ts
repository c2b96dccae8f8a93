import type { KeptEvaluation, KeptTree, WayScore } from '../../shared/planning/evaluation/index.ts';

/** The kept table as a person reads it. */
export interface EvaluationView {
  readonly trees: readonly TreeLine[];
  readonly models: readonly ModelLine[];
  readonly modelsNote: string;
}

/** One complaint: every figure as text. */
export interface TreeLine {
  readonly title: string;
  readonly ours: string;
  readonly least: string;
  /** Looking many steps ahead; not what the program advises, since it is not shown to be better. */
  readonly ahead: string;
  readonly information: string;
  readonly taught: string;
  readonly swapped: string;
  readonly lot: string;
  /** Share of the taught order's cost, with what was wanted. */
  readonly ofTaught: string;
  readonly ofSwapped: string;
  readonly right: string;
  readonly checks: string;
  readonly wrongParts: string;
  readonly handedOver: string;
  readonly unsafe: string;
  /** Off by a little, by more, by much; without a cause; two faults: first answer against the taught order. */
  readonly beside: readonly { readonly what: string; readonly oneStep: string; readonly taught: string }[];
  readonly note: string;
}

export interface ModelLine {
  readonly model: string;
  readonly figures: readonly string[];
}

export const MODEL_HEADS = [
  'ours',
  'best possible',
  'one step',
  'looking ahead',
  'most told per minute',
  'taught order',
  'parts swapped',
  'by lot',
  'numbers off by .25',
  'by .5',
  'by 1',
] as const;

/** @param titleOf  title of a complaint by its id. */
export function evaluationView(kept: KeptEvaluation, titleOf: (id: string) => string | undefined): EvaluationView {
  return {
    trees: kept.trees.map((tree) => treeLine(tree, titleOf(tree.tree) ?? tree.tree)),
    models: kept.models.map((row) => ({
      model: row.model,
      figures: [
        ...[row.ours, row.optimum, row.oneStep, row.rollout, row.information, row.taught, row.swapped, row.lot].map(
          (cost) => (cost === null ? '–' : cost.toFixed(1)),
        ),
        ...row.disturbed.map(({ excess }) => (Number.isFinite(excess) ? `+${(excess * 100).toFixed(1)} %` : '–')),
      ],
    })),
    modelsNote:
      kept.models.length > 0
        ? `Worked out exactly on ${kept.modelsOn}; numbers off: mean of ${kept.modelTimes} truths.`
        : 'Not worked out yet.',
  };
}

function treeLine(tree: KeptTree, title: string): TreeLine {
  const by = new Map(tree.ways.map((score) => [score.way, score]));
  const cost = (way: string): number => by.get(way)?.cost ?? NaN;
  const ours = by.get('one step') ?? tree.ways[0]!;
  const every = by.get('every check')?.right ?? NaN;
  const minutes = (score: WayScore): string =>
    `${score.cost.toFixed(0)} min, right ${hundred(score.right)} in 100, handed over ${hundred(score.handedOver)}`;
  const beside = (what: string, oneStep: WayScore, taught: WayScore) => ({
    what,
    oneStep: minutes(oneStep),
    taught: minutes(taught),
  });
  return {
    title,
    ours: `${ours.cost.toFixed(0)} ± ${(2 * ours.costError).toFixed(0)}`,
    least: tree.least.proven.toFixed(0),
    ahead: cost('planner').toFixed(0),
    information: cost('information per minute').toFixed(0),
    taught: cost('taught order').toFixed(0),
    swapped: cost('likeliest part first').toFixed(0),
    lot: cost('by lot').toFixed(0),
    ofTaught: wanted(ours.cost / cost('taught order'), 0.6, true),
    ofSwapped: wanted(ours.cost / cost('likeliest part first'), 0.4, true),
    right: wanted(ours.right / every, 0.97, false),
    checks: ours.checks.toFixed(1),
    wrongParts: ours.wrongParts.toFixed(2),
    handedOver: `${hundred(ours.handedOver)} in 100`,
    unsafe: `${hundred(tree.drive.toldToDrive)} in 100 of ${tree.drive.dangerCoaches}`,
    beside: [
      ...tree.disturbed.map(({ sigma, oneStep, taught }) => beside(`Numbers off by ${sigma}`, oneStep, taught)),
      beside('The likeliest cause is missing in the file', tree.removed.oneStep, tree.removed.taught),
      beside('Two things wrong at once', tree.twoFaults.oneStep, tree.twoFaults.taught),
    ],
    note: `${tree.counts.coaches} simulated coaches, ${tree.counts.beside} for what stands beside, seed ${tree.counts.seed}, on ${tree.on}; figures of the tree ${tree.mark}.`,
  };
}

/** A share with what was wanted of it, never by colour alone. */
function wanted(share: number, limit: number, below: boolean): string {
  const met = below ? share <= limit : share >= limit;
  return `${share.toFixed(2)} (${met ? 'as wanted' : 'wanted'} ${below ? 'at most' : 'at least'} ${limit.toFixed(2)})`;
}

function hundred(share: number): string {
  return (share * 100).toFixed(0);
}
