/** Edit distance with neighbouring letters exchanged counted as one slip (restricted Damerau-Levenshtein). */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last: number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, before[j - 2]! + 1);
      row.push(cost);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}

/**
 * The candidate most like a word, for "Nearest: …" in messages; null when nothing is near.
 *
 * @returns the first candidate of least edit distance, when that is at most half the word's length plus one.
 * @example nearest('compresor', ['governor', 'compressor']) // 'compressor'
 */
export function nearest(word: string, candidates: Iterable<string>): string | null {
  let best: string | null = null;
  let least = Math.floor(word.length / 2) + 2;
  for (const candidate of candidates) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}
