export { ExchangeCheck } from './exchange-check.ts';
export { BACKUP_LIMITS, VISIT_LIMITS } from './limits.ts';
export type { LogsOf } from './places.ts';
export { photosNamed, readLogLines, type LogRecord } from './log-lines.ts';
export { isManifest, manifestText, readManifest, type Manifest } from './manifest.ts';
export { mergeLogs } from './merge-logs.ts';
export { pictureFault } from './picture-size.ts';
export { placeOf, type Place } from './places.ts';
