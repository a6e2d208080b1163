/**
 * Synchronous speed of the shaft, 2πf over the number of pole pairs.
 *
 * @param frequency Hz
 * @param poles number of poles
 * @returns rad/s, mechanical
 */
export function synchronousSpeed(frequency: number, poles: number): number {
  return (4 * Math.PI * frequency) / poles;
}

/** The same for people: `1500 rpm`. */
export function inRpm(speed: number): string {
  return `${Number(((speed * 30) / Math.PI).toPrecision(6))} rpm`;
}
