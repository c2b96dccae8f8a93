export type * from './document.ts';
export type { HandOverInput, OtherFinding, OtherWork } from './input.ts';
export { handOver } from './report.ts';
export { shortText } from './short.ts';
export { textAt } from './tree-text.ts';
