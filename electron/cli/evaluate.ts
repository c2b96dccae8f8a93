/**
 * How well the tables are used: `npm run evaluate [-- --tree ID] [--coaches N] [--seed N] [--who ROLE] [--json] [--confusion]`.
 * Simulated coaches with one hidden fault each, worked through in four ways. It says nothing about how true the tables are.
 */
import { formatProblem, ROLES, type Role, type Tree, type Vocabulary } from '../../shared/knowledge/index.ts';
import {
  everyCheckWay,
  plannerWay,
  scoreWay,
  swapperWay,
  taughtWay,
  type Score,
} from '../../shared/planning/evaluation/index.ts';
import { toldToDrive, type DriveScore } from '../../shared/planning/evaluation/drive.ts';
import { loadTrees, shippedIds } from './load-trees.ts';
import { oneOf, optionsOf, runCommand, UsageError, wholeNumber } from './usage.ts';

interface TreeScores {
  readonly tree: string;
  readonly scores: readonly Score[];
  readonly drive: DriveScore;
}

const OPTIONS = {
  tree: { type: 'string' },
  coaches: { type: 'string' },
  seed: { type: 'string' },
  who: { type: 'string' },
  json: { type: 'boolean' },
  confusion: { type: 'boolean' },
} as const;

function scoresOf(tree: Tree, vocabulary: Vocabulary, coaches: number, seed: number, who: Role): TreeScores {
  const ways = [plannerWay(), taughtWay(), swapperWay(), everyCheckWay()];
  return {
    tree: tree.id,
    scores: ways.map((way) => scoreWay(way, tree, vocabulary, { coaches, seed, who })),
    drive: toldToDrive(tree, vocabulary, { coaches: Math.min(coaches, 500), seed }),
  };
}

function row(cells: readonly string[]): string {
  return cells.map((cell, i) => (i === 0 ? cell.padEnd(22) : cell.padStart(12))).join('');
}

function table({ tree, scores, drive }: TreeScores): string {
  return [
    tree,
    row(['', 'right in 100', 'check min', 'cost min', '+/-', 'checks', 'wrong parts', 'handed over']),
    ...scores.map((s) =>
      row([
        s.way,
        (s.right * 100).toFixed(1),
        s.checkMinutes.toFixed(0),
        s.cost.toFixed(0),
        (2 * s.costError).toFixed(0),
        s.checks.toFixed(1),
        s.wrongParts.toFixed(2),
        `${(s.handedOver * 100).toFixed(1)} %`,
      ]),
    ),
    `owner without tools: ${(drive.toldToDrive * 100).toFixed(2)} in 100 coaches with a danger cause were told "drive and book" (${drive.dangerCoaches} coaches)`,
    '',
  ].join('\n');
}

function confusion(score: Score): string {
  const lines = [...score.confusion].flatMap(([truth, row]) => {
    const total = [...row.values()].reduce((sum, count) => sum + count, 0);
    const wrong = [...row].filter(([concluded]) => concluded !== truth).sort((a, b) => b[1] - a[1]);
    return [
      `  ${truth.padEnd(22)} right ${(((row.get(truth) ?? 0) / total) * 100).toFixed(0).padStart(3)} of 100 (${total})  ${wrong
        .slice(0, 4)
        .map(([id, count]) => `${id} ${count}`)
        .join(', ')}`,
    ];
  });
  return ['  true cause → taken for', ...lines.sort(), ''].join('\n');
}

await runCommand(async () => {
  const values = optionsOf(OPTIONS, '[--tree ID] [--coaches N] [--seed N] [--who ROLE] [--json] [--confusion]');
  const who: Role = values.who === undefined ? 'mechanic' : oneOf(values.who, ROLES, 'role');
  const coaches = wholeNumber(values.coaches, 2000, 'coaches');
  const seed = wholeNumber(values.seed, 7, 'seed');
  const known = await shippedIds();
  const ids = values.tree === undefined ? known : [oneOf(values.tree, known, 'tree')];
  const { trees, vocabulary, problems } = await loadTrees({ only: ids });
  if (!vocabulary) throw new UsageError(problems.map(formatProblem).join('\n'));
  const all: TreeScores[] = [];
  if (!values.json)
    console.log(
      `${coaches} simulated coaches a tree, seed ${seed}, ${who}. Costs in minutes; +/- holds 19 times in 20.\n`,
    );
  for (const id of ids) {
    const tree = trees.get(id)?.value;
    if (!tree) throw new UsageError(`Tree "${id}" cannot be read. Run npm run lint:trees.`);
    const scores = scoresOf(tree, vocabulary, coaches, seed, who);
    all.push(scores);
    if (!values.json) {
      console.log(table(scores));
      if (values.confusion) console.log(confusion(scores.scores[0]!));
    }
  }
  if (values.json) {
    console.log(
      JSON.stringify(
        all.map(({ tree, scores, drive }) => ({
          tree,
          drive,
          scores: scores.map((score) => ({
            ...score,
            confusion: Object.fromEntries([...score.confusion].map(([truth, row]) => [truth, Object.fromEntries(row)])),
          })),
        })),
        null,
        2,
      ),
    );
  }
  return 0;
});
