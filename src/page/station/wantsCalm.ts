/** True where the reader has asked for less motion: nothing then moves by itself. */
export function wantsCalm(): boolean {
  return window.matchMedia('(prefers-reduced-motion: reduce)').matches;
}
