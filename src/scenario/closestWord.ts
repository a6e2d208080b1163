/**
 * Finds the word a person most likely meant.
 *
 * @param word what was written
 * @param known what could have been written
 * @returns the nearest known word, or undefined where none is near: more than a third of the letters would have to
 *   change and neither word contains the other
 */
export function closestWord(word: string, known: readonly string[]): string | undefined {
  // A key of a hostile file may be long; nothing in a scenario is.
  if (word.length === 0 || word.length > 60) return undefined;
  const written = word.toLowerCase();
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const right = candidate.toLowerCase();
    const contained =
      Math.min(written.length, right.length) >= 4 && (right.includes(written) || written.includes(right));
    const distance = contained ? 1 : editDistance(written, right);
    if (distance < bestDistance && distance <= Math.max(1, Math.floor(right.length / 3))) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** Fewest insertions, deletions, replacements and exchanges of neighbours. Source: Damerau (1964), Levenshtein (1966). */
function editDistance(a: string, b: string): number {
  let beforeLast: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const exchanges = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const exchanged = exchanges ? beforeLast[j - 2]! + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(replaced, exchanged, last[j]! + 1, row[j - 1]! + 1));
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
