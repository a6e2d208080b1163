/** The same numbers every time, spread over 0 … 1 by multiples of the golden ratio, and mapped. */
export function numbersOf(count: number, map: (share: number) => number): number[] {
  return Array.from({ length: count }, (_, i) => map(((i + 1) * 0.6180339887498949) % 1));
}
