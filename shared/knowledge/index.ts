export { readTree, type ReadTree } from './read-tree.ts';
export { readVocabulary } from './read-vocabulary.ts';
export { formatProblem, inFileOrder, type Problem, type ReadResult } from './problem.ts';
export { fitOf, type Fit, type Layout } from './layout.ts';
export { REST, VERBAL_SCALE } from './verbal-scale.ts';
export * from './tree.ts';
export * from './vocabulary.ts';
export type { Block, Blocks, Inline } from './blocks.ts';
export { inlineMarkdown, markdownBlocks, referencesIn, withNames } from './markdown.ts';
