/** The part of Electron's events by which a listener says no. */
export class Preventable {
  #prevented = false;

  get defaultPrevented(): boolean {
    return this.#prevented;
  }

  preventDefault(): void {
    this.#prevented = true;
  }
}
