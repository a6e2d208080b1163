/** s */
const MINUTE = 60;
const HOUR = 3600;
const DAY = 86_400;

/** From `from` on, s, a time is told in a larger unit and a smaller part of it. */
const STEPS = [
  { from: 2 * DAY, size: DAY, name: 'days', part: HOUR, partName: 'h' },
  { from: HOUR, size: HOUR, name: 'h', part: MINUTE, partName: 'min' },
  { from: 10 * MINUTE, size: MINUTE, name: 'min', part: MINUTE, partName: 'min' },
  { from: MINUTE, size: MINUTE, name: 'min', part: 1, partName: 's' },
] as const;

/**
 * A remaining time in words, no finer than it can be known: `45 s`, `1 min 5 s`, `12 min`, `41 h 5 min`, `3 days 2 h`.
 *
 * @param seconds more than a second is never told as none
 */
export function timeLeft(seconds: number): string {
  const whole = Math.max(1, Math.round(seconds));
  for (const { from, size, name, part, partName } of STEPS) {
    // Rounded first: what rounds up to the next unit is told in it.
    const rounded = Math.round(whole / part) * part;
    if (rounded < from) continue;
    const rest = (rounded % size) / part;
    const larger = `${Math.floor(rounded / size)} ${name}`;
    return rest === 0 ? larger : `${larger} ${rest} ${partName}`;
  }
  return `${whole} s`;
}
