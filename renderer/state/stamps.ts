import { EVENT_VERSION, newEventId, type EventHead, type VisitEventBody } from '../../shared/visit/index.ts';

/** Ids and heads of what this window writes. No id comes twice, and time never runs back within one window. */
export class Stamps {
  readonly #writer = Array.from(crypto.getRandomValues(new Uint8Array(5)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
  #counter = 0;
  #lastMs = 0;

  id(): string {
    return newEventId(this.#now(), ++this.#counter, this.#writer);
  }

  /** An event of now. @param by  name of whoever is at the window. */
  on<B extends VisitEventBody>(body: B, by: string): B & EventHead {
    const at = this.#now();
    return {
      id: newEventId(at, ++this.#counter, this.#writer),
      v: EVENT_VERSION,
      at: new Date(at).toISOString(),
      by,
      ...body,
    };
  }

  #now(): number {
    this.#lastMs = Math.max(Date.now(), this.#lastMs);
    return this.#lastMs;
  }
}
