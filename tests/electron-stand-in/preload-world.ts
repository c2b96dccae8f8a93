/** The function by which a page's `invoke` reaches the stand-in. Any script of the page can call it, as a page that has
 * been taken over could send anything: the checks on the machine side must stand without the preload. */
export const CARRIER = 'electronStandInCarrier';

/**
 * A script that runs the preload before the page's own, in the main frame alone. `require` gives what a sandboxed preload
 * gets of 'electron' here (contextBridge, ipcRenderer.invoke), and throws for everything else as the sandbox does. What is
 * exposed is copied and frozen, and so is every argument and answer, so that neither side holds an object of the other.
 *
 * @param preload  source text of the built preload, CommonJS.
 */
export function preloadScript(preload: string, options: { readonly contextIsolation: boolean }): string {
  return `(() => {
  if (window.top !== window) return;
  const carrier = window[${JSON.stringify(CARRIER)}];
  const bridged = (value) => {
    if (typeof value === 'function')
      return Object.freeze(async (...args) => structuredClone(await value(...structuredClone(args))));
    if (Array.isArray(value)) return Object.freeze(value.map(bridged));
    if (typeof value === 'object' && value !== null)
      return Object.freeze(Object.fromEntries(Object.entries(value).map(([name, each]) => [name, bridged(each)])));
    return value;
  };
  const contextBridge = {
    exposeInMainWorld(name, api) {
      if (!${String(options.contextIsolation)})
        throw new Error('contextBridge API can only be used when contextIsolation is enabled');
      Object.defineProperty(window, name, { value: bridged(api), enumerable: true });
    },
  };
  const ipcRenderer = { invoke: (channel, ...args) => carrier(channel, args) };
  const require = (name) => {
    if (name === 'electron') return { contextBridge, ipcRenderer };
    throw new Error('module not found: ' + name);
  };
  const module = { exports: {} };
  (function (require, module, exports) {
${preload}
  })(require, module, module.exports);
})();`;
}
