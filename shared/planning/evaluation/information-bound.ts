/** A check as a channel from the cause to its result. */
export interface Channel {
  readonly minutes: number;
  /** Rows = causes, columns = results; each row sums to 1. */
  readonly likelihood: readonly (readonly number[])[];
}

const ROUNDS = 60;

/**
 * Least expected cost of turns when each natural unit of information about the cause costs `price`; from below, whatever
 * the number of rounds.
 *
 * @param shares  P(cause), sums to 1.
 * @param turns   cost of each turn (columns) for each cause (rows).
 * @source Blahut 1972 and Csiszár 1974 for the rate-distortion function: any output distribution gives a lower bound.
 */
export function wrongTurnCost(shares: readonly number[], turns: readonly (readonly number[])[], price: number): number {
  const least = turns.map((row) => Math.min(...row));
  const weight = turns.map((row, i) => row.map((cost) => Math.exp((least[i]! - cost) / price)));
  const count = turns[0]!.length;
  let output = Array.from({ length: count }, () => 1 / count);
  const normal = (): number[] => weight.map((row) => 1 / row.reduce((sum, each, a) => sum + output[a]! * each, 0));
  const growth = (scale: readonly number[]): number[] =>
    output.map((_, a) => shares.reduce((sum, p, i) => sum + p * scale[i]! * weight[i]![a]!, 0));
  for (let round = 0; round < ROUNDS; round++) {
    const factors = growth(normal());
    output = output.map((each, a) => each * factors[a]!);
  }
  const scale = normal();
  const excess = Math.log(Math.max(...growth(scale)));
  return shares.reduce((sum, p, i) => sum + p * (price * Math.log(scale[i]!) + least[i]!), 0) - price * excess;
}

/**
 * Most that making a check, in whatever states of knowledge, can bring when information is worth `price`, its minutes
 * deducted; from above, whatever the number of rounds.
 *
 * @source The states in which it is made hold a part q ≤ p of the causes. For any distribution r of results the gain is at
 *   most Σ p_c·max(0, price·D(P_c‖r) − minutes); r is moved towards the results of the best q (conditional gradient).
 */
export function informationValue(shares: readonly number[], channel: Channel, price: number): number {
  const { likelihood, minutes } = channel;
  let part = [...shares];
  let best = Infinity;
  for (let round = 0; round < ROUNDS / 2; round++) {
    const total = part.reduce((sum, each) => sum + each, 0);
    if (total < 1e-12) break;
    const results = likelihood[0]!.map((_, r) =>
      part.reduce((sum, each, i) => sum + (each * likelihood[i]![r]!) / total, 0),
    );
    const gains = likelihood.map(
      (row) =>
        price * row.reduce((sum, p, r) => (p > 0 ? sum + p * Math.log(p / Math.max(results[r]!, 1e-300)) : sum), 0) -
        minutes,
    );
    best = Math.min(
      best,
      gains.reduce((sum, gain, i) => sum + shares[i]! * Math.max(0, gain), 0),
    );
    const step = 2 / (round + 3);
    part = part.map((each, i) => each + (Number(gains[i]! > 0) * shares[i]! - each) * step);
  }
  return Math.max(0, best);
}
