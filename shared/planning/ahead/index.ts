export { lookAhead, type Memory } from './look-ahead.ts';
export type { LookedAhead } from './looked-ahead.ts';
