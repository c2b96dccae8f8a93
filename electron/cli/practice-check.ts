/**
 * Whether practice charges what the evaluation charges: `npm run practice-check [-- --tree ID] [--exercises N] [--seed N]`. The
 * planner plays exercises; its mean bill is held against the cost over coaches that the evaluation draws for itself.
 */
import { formatProblem } from '../../shared/knowledge/index.ts';
import { agreementOf } from '../../shared/practice/agreement.ts';
import { loadTrees, shippedIds } from './load-trees.ts';
import { oneOf, optionsOf, runCommand, UsageError, wholeNumber } from './usage.ts';

const OPTIONS = { tree: { type: 'string' }, exercises: { type: 'string' }, seed: { type: 'string' } } as const;
/** Standard errors beyond which sixteen means that agree would differ less than once in a hundred runs. */
const MOST = 3.5;

await runCommand(async () => {
  const values = optionsOf(OPTIONS, '[--tree ID] [--exercises N] [--seed N]');
  const exercises = wholeNumber(values.exercises, 10_000, 'exercises');
  const seed = wholeNumber(values.seed, 7, 'seed');
  const known = await shippedIds();
  const ids = values.tree === undefined ? known : [oneOf(values.tree, known, 'tree')];
  const { trees, vocabulary, problems } = await loadTrees({ only: ids });
  if (!vocabulary) throw new UsageError(problems.map(formatProblem).join('\n'));
  console.log(
    `${exercises} exercises a tree on the usual coach, seed ${seed}. Means in minutes with their standard error.\n`,
  );
  let apart = 0;
  for (const id of ids) {
    const tree = trees.get(id)?.value;
    if (!tree) throw new UsageError(`Tree "${id}" cannot be read. Run npm run lint:trees.`);
    const found = agreementOf({ tree, vocabulary, hash: '0'.repeat(64) }, { exercises, seed });
    const agrees = Math.abs(found.z) <= MOST && found.largestGap < 1e-6;
    if (!agrees) apart += 1;
    console.log(
      [
        id.padEnd(40),
        `practice ${found.practice.toFixed(1)} +/- ${found.practiceError.toFixed(1)}`,
        `evaluation ${found.evaluation.toFixed(1)} +/- ${found.evaluationError.toFixed(1)}`,
        `${found.z.toFixed(2)} standard errors`,
        `same coach ${found.largestGap.toExponential(0)}`,
        agrees ? 'agrees' : 'DIFFERS',
      ].join('   '),
    );
  }
  return apart === 0 ? 0 : 1;
});
