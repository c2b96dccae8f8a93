export type * from './document.ts';
export type { HandOverInput, InspectedPart, OtherFinding, OtherWork } from './input.ts';
export { leavingOut, mayLeaveOut } from './leaving-out.ts';
export { handOver } from './report.ts';
export { shortText } from './short.ts';
export { textAt } from './tree-text.ts';
export { isDrawn, type Element, type Markup } from './paper/element.ts';
export { fileName, htmlFile } from './paper/html-file.ts';
export { reportMarkup } from './paper/report-markup.ts';
