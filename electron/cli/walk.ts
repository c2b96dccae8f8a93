/**
 * One assessment without a window: `npm run -s walk -- --tree ID --findings FILE.json [--who ROLE] [--access STATE] [--json]`.
 * Prints belief, next check, drive verdict and conclusion. The stop-rule questions cannot be answered here; the verdict
 * says that they are open.
 */
import { readFile } from 'node:fs/promises';
import { text as readAll } from 'node:stream/consumers';
import { formatProblem, ROLES, type Role } from '../../shared/knowledge/index.ts';
import { assess, defaultCosts, idsOf, move, needOf, vocabularyGraph } from '../../shared/planning/index.ts';
import { readFindings } from './findings-file.ts';
import { loadTrees, shippedIds } from './load-trees.ts';
import { oneOf, optionsOf, runCommand, UsageError } from './usage.ts';
import { walkReport, walkText } from './walk-report.ts';

const OPTIONS = {
  tree: { type: 'string' },
  findings: { type: 'string' },
  who: { type: 'string' },
  access: { type: 'string' },
  json: { type: 'boolean' },
} as const;

async function textOf(file: string): Promise<string> {
  if (file === '-') return readAll(process.stdin);
  try {
    return await readFile(file, 'utf8');
  } catch (problem) {
    if (!(problem instanceof Error && 'code' in problem)) throw problem;
    throw new UsageError(`${file} cannot be read (${String(problem.code)}). Look at the path.`);
  }
}

await runCommand(async () => {
  const options = optionsOf(OPTIONS, '--tree ID --findings FILE.json [--who ROLE] [--access STATE] [--json]');
  const ids = await shippedIds();
  if (options.tree === undefined) throw new UsageError(`--tree is missing. Trees: ${ids.join(', ')}.`);
  const id = oneOf(options.tree, ids, 'tree');
  const { trees, vocabulary, problems } = await loadTrees({ only: [id] });
  if (!vocabulary) throw new UsageError(`The vocabulary cannot be read:\n${problems.map(formatProblem).join('\n')}`);
  const { value: tree, problems: faults } = trees.get(id)!;
  if (!tree) throw new UsageError(`Tree "${id}" cannot be read:\n${faults.map(formatProblem).join('\n')}`);
  const who: Role = options.who === undefined ? 'mechanic' : oneOf(options.who, ROLES, 'role');
  const findings =
    options.findings === undefined
      ? []
      : readFindings(
          await textOf(options.findings),
          options.findings === '-' ? 'standard input' : options.findings,
          tree,
          vocabulary,
        );
  const access =
    options.access === undefined
      ? []
      : openAt(
          oneOf(
            options.access,
            vocabulary.access.map((state) => state.id),
            'access state',
          ),
        );
  const assessment = assess(
    { tree, vocabulary, who, layout: {}, findings, stopAnswers: {}, corrections: [], access, costs: defaultCosts(who) },
    { skipTriage: true },
  );
  const report = walkReport(tree, who, assessment);
  process.stdout.write(options.json ? `${JSON.stringify(report, null, 2)}\n` : walkText(report, tree));
  return 0;

  function openAt(state: string): string[] {
    const graph = vocabularyGraph(vocabulary!.access);
    return idsOf(graph, move(graph, 0, needOf(graph, vocabulary!.access, state)).state);
  }
});
