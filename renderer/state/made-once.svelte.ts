/**
 * Makes a part of the window's state when a page of it is first opened, once a window: most windows never need it.
 *
 * @param make  gets the window's state, as far as the part wants to know it.
 */
export function madeOnce<App extends object, Part>(make: (app: App) => Part): (app: App) => Part {
  const made = new WeakMap<App, { readonly part: Part }>();
  return (app) => {
    const known = made.get(app);
    if (known) return known.part;
    const parts: Part[] = [];
    // A root of its own: the page that asks first goes away, what it has derived stays.
    $effect.root(() => {
      parts.push(make(app));
    });
    for (const part of parts) {
      made.set(app, { part });
      return part;
    }
    throw new Error('A root runs at once.');
  };
}
