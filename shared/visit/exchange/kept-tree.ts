import { readTree, readVocabulary } from '../../knowledge/index.ts';
import { packError, readPackHead, unsafeDrawing, type PackProblem } from '../../knowledge/pack/index.ts';
import { activePart } from './active-text.ts';

/**
 * What is wrong with a tree that came with a visit.
 *
 * @param hash    the name of its folder.
 * @param files   "tree.yaml", "vocabulary/*.yaml", and from a pack "pack.yaml" and "pictures/*.svg" → text.
 * @param hashOf  SHA-256 over names and contents of tree and vocabulary, hex.
 * @param known   the program has this very tree itself: its content needs no second look.
 */
export function keptTreeProblems(
  hash: string,
  files: ReadonlyMap<string, string>,
  { hashOf, known }: { readonly hashOf: (files: Record<string, string>) => string; readonly known: boolean },
): PackProblem[] {
  const at = (file: string): string => `trees/${hash}/${file}`;
  const hashed = Object.fromEntries([...files].filter(([name]) => /^(tree|vocabulary\/[a-z]+)\.yaml$/.test(name)));
  if (hashOf(hashed) !== hash)
    return [
      packError(
        'wrong-tree',
        at('tree.yaml'),
        'The tree is not the one that its name says: it was changed after the visit was made. Export the visit anew.',
      ),
    ];
  const problems = [...files].flatMap(([name, text]): PackProblem[] => {
    if (name.endsWith('.svg')) {
      const part = unsafeDrawing(text);
      return part ? [{ ...packError('unsafe-drawing', at(name), part.message), line: part.line }] : [];
    }
    if (name === 'pack.yaml')
      return readPackHead(text).problems.map((problem) => ({ ...problem, file: at('pack.yaml') }));
    const active = known ? null : activePart(text);
    return active === null
      ? []
      : [
          packError(
            'script-in-text',
            at(name),
            `The file holds “${active}”, which could run or load something. A tree is written in plain Markdown.`,
          ),
        ];
  });
  if (problems.length > 0 || known) return problems;
  const { 'tree.yaml': treeYaml = '', ...vocabularyFiles } = hashed;
  const vocabulary = readVocabulary(vocabularyFiles);
  const read = vocabulary.value ? readTree({ treeYaml, file: 'tree.yaml', vocabulary: vocabulary.value }) : null;
  if (read?.value) return [];
  const first = [...vocabulary.problems, ...(read?.problems ?? [])].find(({ level }) => level === 'error');
  return [
    packError(
      'tree-not-readable',
      at(first?.file ?? 'tree.yaml'),
      `This version cannot read the tree of the visit${first ? ` (line ${first.line}: ${first.message})` : ''}. Bring this program up to date, or export the visit anew.`,
    ),
  ];
}
