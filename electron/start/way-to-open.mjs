// Where the program opens and what is said about it. Decides only; start.mjs acts.

/**
 * The desktop shell, or a browser. `electron` is the path of its binary or null, `display` whether a window can be shown.
 * Gives the binary to start, or null for a browser, and a line to print, or null.
 */
export function wayToOpen({ wantsBrowser, electron, display }) {
  if (wantsBrowser) return { electron: null, message: null };
  if (!display) return { electron: null, message: 'There is no display: the same program is served for a browser.' };
  if (electron === null)
    return { electron: null, message: 'Electron’s binary is not here: the same program opens in a browser.' };
  return { electron, message: null };
}

/** The command that shows an address, null when a person must open it; with the line that says so. */
export function browserCommand(address, { display, browser, opener }) {
  const byHand = `Open this address on this machine, once: ${address}`;
  if (!display) return { command: null, opened: null, byHand };
  return {
    command: browser ? [browser, `--app=${address}`] : [...opener, address],
    opened: 'Droplight is open. Ctrl+C here ends it; everything recorded is on disk.',
    byHand: `No browser could be opened. ${byHand}`,
  };
}
