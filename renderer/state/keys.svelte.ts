/** Single-letter keys of the screen in front; the newest screen that registered is asked first. */
export type KeyMap = Readonly<Record<string, () => void>>;

export class Keys {
  readonly #maps: (() => KeyMap)[] = [];
  enabled = $state(true);

  /** Adds a screen's keys; call what comes back to take them away. */
  add(map: () => KeyMap): () => void {
    this.#maps.push(map);
    return () => {
      this.#maps.splice(this.#maps.indexOf(map), 1);
    };
  }

  /** Handles a key press on the window. Letters rest while a field has the focus; Escape leaves the field first. */
  press(event: KeyboardEvent): void {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    const inField =
      event.target instanceof HTMLElement &&
      event.target.matches('input:not([type=radio], [type=checkbox]), textarea, select');
    if (inField) {
      if (event.key === 'Escape' && event.target instanceof HTMLElement) {
        event.target.blur();
        event.preventDefault();
      }
      return;
    }
    // Enter and Space work the control that has the focus.
    const onControl = event.target instanceof HTMLElement && event.target.matches('button, a, summary, input');
    if (onControl && (event.key === 'Enter' || event.key === ' ')) return;
    if (!this.enabled && event.key.length === 1) return;
    const key = event.key === ' ' ? 'Space' : event.key;
    for (const map of [...this.#maps].reverse()) {
      const action = map()[key];
      if (!action) continue;
      event.preventDefault();
      action();
      return;
    }
  }
}
