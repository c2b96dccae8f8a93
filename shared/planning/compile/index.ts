export { CANNOT_SHARE, compileTree, PRINT_THRESHOLD, type CompileOptions } from './compile.ts';
export type * from './compiled-tree.ts';
export { eventOf, stateName, toMachine, type StateMeta } from './machine.ts';
export { outlineOf, outlineText, type OutlineEntry } from './outline.ts';
export { pagesOf, type Page, type PageSize, type Row } from './pages.ts';
export { answersTo, situationAlong, wayTaken, type Way } from './way.ts';
