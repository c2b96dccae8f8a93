import { getApp } from './app-state.svelte.ts';
import type { KeyMap } from './keys.svelte.ts';

/** Adds a screen's single keys while it is shown. */
export function useKeys(map: () => KeyMap): void {
  const app = getApp();
  $effect(() => app.keys.add(map));
}
