import { keepText, keptText } from './kept-text.ts';

const KEY = 'droplight-timer';

/** When the timer of a check runs out, clock in ms; null where none was running for it when the window was left. */
export function keptTimer(check: string): number | null {
  const [of, ends] = (keptText(KEY) ?? '').split('\n');
  const at = Number(ends);
  return of === check && ends !== undefined && Number.isFinite(at) ? at : null;
}

/** @param ends  null = it was stopped. */
export function keepTimer(check: string, ends: number | null): void {
  keepText(KEY, ends === null ? null : `${check}\n${ends}`);
}
