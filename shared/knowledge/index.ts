export { readTree, type ReadTree } from './read-tree.ts';
export { readVocabulary } from './read-vocabulary.ts';
export { formatProblem, inFileOrder, type Problem, type ReadResult } from './problem.ts';
export { fitOf, weightOn, type Fit, type Layout } from './layout.ts';
export { CYLINDER_COUNTS, CYLINDERS, cylindersOf, PLACES, placesOn, takesIn } from './places.ts';
export {
  answerOf,
  answerWords,
  isAnswerTo,
  isSameAnswer,
  ticked,
  valuesOf,
  type LayoutAnswer,
} from './layout-answer.ts';
export { basisOf, type Basis } from './basis-of.ts';
export { weakSpots, type WeakSpot } from './weak-spots.ts';
export { REST, VERBAL_SCALE, verbalWord } from './verbal-scale.ts';
export * from './tree.ts';
export * from './vocabulary.ts';
export { STATUS_SAID, VERDICT_SAID } from './said-words.ts';
export type { Block, Blocks, Inline } from './blocks.ts';
export { inlineMarkdown, markdownBlocks, referencesIn, withNames } from './markdown.ts';
export { treeCard, type TreeCard } from './tree-card.ts';
export { treeData, vocabularyFrom, type TreeData } from './tree-data.ts';
export { complaintIndex, searchComplaints, type ComplaintIndex, type Hit } from './search.ts';
export { factsIn, recalledChecks, type RecalledCheck, type SaidFact } from './facts.ts';
export { twoComplaints, type ComplaintPart } from './two-complaints.ts';
export { EXCEPTION_CODES, LINT_RULES, lintTree, type LintRule } from './lint/index.ts';
export {
  ROAD_GAUGES,
  ROAD_PANELS,
  ROAD_PANEL_WORDS,
  ROAD_ROWS,
  ROAD_SIGNS,
  type RoadGauge,
  type RoadPanel,
  type RoadRow,
} from './road-sheet.ts';
