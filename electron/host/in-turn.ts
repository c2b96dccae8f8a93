/** Runs what it is given one after the other: each call sees the disk as the last one left it. */
type InTurn = <T>(run: () => Promise<T>) => Promise<T>;

/** A queue of its own, empty. A call that fails tells its caller; the next one starts all the same. */
export function inTurn(): InTurn {
  let last: Promise<unknown> = Promise.resolve();
  return (run) => {
    const mine = last.then(run, run);
    last = mine;
    return mine;
  };
}
