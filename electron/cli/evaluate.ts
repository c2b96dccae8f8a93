/**
 * How well the tables are used: `npm run evaluate [-- --tree ID] [--coaches N] [--beside N] [--ahead N] [--times N] [--seed N] [--who ROLE]
 * [--json] [--confusion] [--keep]`. The small models exactly; the trees by simulated coaches with one hidden fault each. It says
 * nothing about how true the tables are.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { formatProblem, ROLES, type Role } from '../../shared/knowledge/index.ts';
import {
  figuresMark,
  modelRow,
  adviceWay,
  scoreWay,
  treeRow,
  type Counts,
  type KeptEvaluation,
  type ModelRow,
  type Score,
  type TreeRow,
} from '../../shared/planning/evaluation/index.ts';
import { modelTable, treeTable } from './evaluation-table.ts';
import { MODELS } from './load-models.ts';
import { loadTrees, shippedIds } from './load-trees.ts';
import { oneOf, optionsOf, runCommand, UsageError, wholeNumber } from './usage.ts';

/** The table that the program shows on its own page. */
const KEPT = new URL('../../renderer/data/evaluation.json', import.meta.url);

const OPTIONS = {
  tree: { type: 'string' },
  coaches: { type: 'string' },
  beside: { type: 'string' },
  ahead: { type: 'string' },
  times: { type: 'string' },
  seed: { type: 'string' },
  who: { type: 'string' },
  json: { type: 'boolean' },
  confusion: { type: 'boolean' },
  keep: { type: 'boolean' },
} as const;

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
  return ['  true cause → taken for (this program)', ...lines.sort(), ''].join('\n');
}

/** Puts rows into the kept table, in place of older ones of the same tree. */
async function keep(change: (kept: KeptEvaluation) => KeptEvaluation): Promise<void> {
  // The file is written by this command alone; a test reads it against the trees.
  const kept = JSON.parse(await readFile(KEPT, 'utf8')) as KeptEvaluation;
  // Figures are kept to six digits: more would only look exact.
  const text = JSON.stringify(change(kept), (_, value: unknown) =>
    typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(6)) : value,
  );
  await writeFile(KEPT, `${text}\n`);
}

await runCommand(async () => {
  const values = optionsOf(
    OPTIONS,
    '[--tree ID] [--coaches N] [--beside N] [--ahead N] [--times N] [--seed N] [--who ROLE] [--json] [--confusion] [--keep]',
  );
  const who: Role = values.who === undefined ? 'mechanic' : oneOf(values.who, ROLES, 'role');
  const counts: Counts = {
    coaches: wholeNumber(values.coaches, 40, 'coaches'),
    beside: wholeNumber(values.beside, 20, 'beside'),
    ahead: values.ahead === undefined ? 0 : wholeNumber(values.ahead, 0, 'ahead'),
    seed: wholeNumber(values.seed, 7, 'seed'),
    who,
  };
  const times = wholeNumber(values.times, 3, 'times');
  const known = await shippedIds();
  const ids = values.tree === undefined ? known : [oneOf(values.tree, known, 'tree')];
  const { trees, vocabulary, problems } = await loadTrees({ only: ids });
  if (!vocabulary) throw new UsageError(problems.map(formatProblem).join('\n'));
  const on = new Date().toISOString().slice(0, 10);
  let models: readonly ModelRow[] = [];
  if (values.tree === undefined) {
    models = MODELS.map((model) => modelRow(model, times, counts.seed));
    if (values.keep) await keep((kept) => ({ ...kept, models, modelsOn: on }));
    if (!values.json) console.log(modelTable(models));
  }
  if (!values.json)
    console.log(
      `Trees: ${counts.coaches} simulated coaches a tree, ${counts.beside} for each trial beside, seed ${counts.seed}, ${who}. Costs in minutes; +/- holds 19 times in 20.\n`,
    );
  const rows: TreeRow[] = [];
  for (const id of ids) {
    const tree = trees.get(id)?.value;
    if (!tree) throw new UsageError(`Tree "${id}" cannot be read. Run npm run lint:trees.`);
    const row = treeRow(tree, vocabulary, counts);
    rows.push(row);
    const mark = figuresMark(tree, vocabulary);
    if (values.keep)
      await keep((kept) => ({
        ...kept,
        trees: [...kept.trees.filter((each) => each.tree !== id), { ...row, on, counts, mark }].sort((a, b) =>
          a.tree < b.tree ? -1 : 1,
        ),
      }));
    if (!values.json) console.log(treeTable(row));
    if (values.confusion)
      console.log(
        confusion(scoreWay(adviceWay(), tree, vocabulary, { coaches: counts.coaches, seed: counts.seed, who })),
      );
  }
  if (values.json) console.log(JSON.stringify({ counts, times, models, trees: rows }, null, 2));
  return 0;
});
