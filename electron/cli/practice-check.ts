/**
 * Whether practice charges what the evaluation charges: `npm run practice-check [-- --tree ID] [--exercises N] [--coaches N]
 * [--seed N] [--ahead]`. The planner plays exercises; its mean bill is held against the cost over coaches that the evaluation draws for
 * itself, and the taught order on the same exercises must not be cheaper. The planner is the rule that advises and that the
 * reckoning plays, the row “this program” of `npm run evaluate`; with `--ahead` the row “many steps”, hours a tree.
 */
import { formatProblem } from '../../shared/knowledge/index.ts';
import { adviceWay, plannerWay } from '../../shared/planning/evaluation/index.ts';
import { agreementOf, type Mean } from '../../shared/practice/agreement.ts';
import { loadTrees, shippedIds } from './load-trees.ts';
import { oneOf, optionsOf, runCommand, UsageError, wholeNumber } from './usage.ts';

const OPTIONS = {
  tree: { type: 'string' },
  exercises: { type: 'string' },
  coaches: { type: 'string' },
  seed: { type: 'string' },
  ahead: { type: 'boolean' },
} as const;
/** Standard errors beyond which sixteen means that agree would differ less than once in a hundred runs. */
const MOST = 3.5;

await runCommand(async () => {
  const values = optionsOf(OPTIONS, '[--tree ID] [--exercises N] [--coaches N] [--seed N] [--ahead]');
  const exercises = wholeNumber(values.exercises, 10_000, 'exercises');
  const coaches = wholeNumber(values.coaches, 2_000, 'coaches');
  const seed = wholeNumber(values.seed, 7, 'seed');
  const known = await shippedIds();
  const ids = values.tree === undefined ? known : [oneOf(values.tree, known, 'tree')];
  const { trees, vocabulary, problems } = await loadTrees({ only: ids });
  if (!vocabulary) throw new UsageError(problems.map(formatProblem).join('\n'));
  const way = values.ahead === true ? plannerWay : adviceWay;
  console.log(
    `${exercises} exercises a tree on the usual coach against ${coaches} coaches of the evaluation, seed ${seed}, played by “${way().name}”. Means in minutes with their standard error.\n`,
  );
  let apart = 0;
  for (const id of ids) {
    const tree = trees.get(id)?.value;
    if (!tree) throw new UsageError(`Tree "${id}" cannot be read. Run npm run lint:trees.`);
    const found = agreementOf({ tree, vocabulary, hash: '0'.repeat(64) }, way(), { exercises, coaches, seed });
    const agrees = Math.abs(found.z) <= MOST && found.largestGap < 1e-6;
    const beaten = found.taughtMore.mean < -MOST * found.taughtMore.error;
    if (!agrees || beaten) apart += 1;
    console.log(
      [
        id.padEnd(40),
        `practice ${withError(found.practice)}`,
        `evaluation ${withError(found.evaluation)}`,
        `${found.z.toFixed(2)} standard errors`,
        `same coach ${found.largestGap.toExponential(0)}`,
        `taught order ${found.taughtMore.mean < 0 ? '' : '+'}${withError(found.taughtMore)}`,
        agrees ? 'agrees' : 'DIFFERS',
        ...(beaten ? ['BEATEN by the taught order'] : []),
      ].join('   '),
    );
  }
  return apart === 0 ? 0 : 1;
});

function withError({ mean, error }: Mean): string {
  return `${mean.toFixed(1)} +/- ${error.toFixed(1)}`;
}
