/** Where the machine side gets the time; tests pass their own. */
export interface Clock {
  now(): Date;
}

export const systemClock: Clock = { now: () => new Date() };
