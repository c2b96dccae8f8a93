/**
 * Small texts that outlive a reload of this window and nothing more: they never leave the machine and never enter a visit.
 * A store that is full or switched off keeps nothing; the window works without.
 */
export function keptText(key: string): string | null {
  return guarded(() => globalThis.sessionStorage.getItem(key));
}

/** @param text  null takes it out. */
export function keepText(key: string, text: string | null): void {
  guarded(() => {
    if (text === null) globalThis.sessionStorage.removeItem(key);
    else globalThis.sessionStorage.setItem(key, text);
    return null;
  });
}

function guarded(run: () => string | null): string | null {
  try {
    return run();
  } catch (problem) {
    if (problem instanceof DOMException) return null;
    throw problem;
  }
}
