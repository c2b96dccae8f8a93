import { HostError } from '../../shared/host/host-api.ts';

/** State whose acts the machine side may refuse: the sentence is kept to be shown, what was typed stays. */
export class Guarded {
  fault = $state<string | null>(null);

  /** Something that was asked for; what went wrong before is past. @returns false when it was refused. */
  protected guard(run: () => Promise<void>): Promise<boolean> {
    this.fault = null;
    return this.said(run);
  }

  /** The same for what nobody asked for: what went wrong before stays. */
  protected async said(run: () => Promise<void>): Promise<boolean> {
    try {
      await run();
      return true;
    } catch (problem) {
      if (!(problem instanceof HostError)) throw problem;
      this.fault = problem.message;
      return false;
    }
  }
}
