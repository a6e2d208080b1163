/**
 * Finds the word a person most likely meant.
 *
 * @param word what was written
 * @param known what could have been written
 * @returns the nearest known word, or undefined where none is near: more than a third of the letters would have to
 *   change and neither word contains the other; a word with one slip in it is nearer than one that is only contained
 */
export function closestWord(word: string, known: readonly string[]): string | undefined {
  // A key of a hostile file may be long; nothing in a scenario is.
  if (word.length === 0 || word.length > 60) return undefined;
  const written = word.toLowerCase();
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const right = candidate.toLowerCase();
    const edits = editDistance(written, right);
    const distance = contains(written, right) ? Math.min(edits, asContained) : edits;
    if (
      distance < bestDistance &&
      (distance === asContained || distance <= Math.max(1, Math.floor(right.length / 3)))
    ) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** Further than one slip, nearer than two. */
const asContained = 1.5;

/** True where one word holds the other and is not much longer. */
function contains(a: string, b: string): boolean {
  const [short, long] = a.length < b.length ? [a, b] : [b, a];
  return short.length >= 4 && 3 * short.length >= long.length && long.includes(short);
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
