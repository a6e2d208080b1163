import type { Scenario } from '../scenario/scenario.ts';

/**
 * What a reader must know of peaks of current and torque where the circuit leaves out the saturation of the leakage paths; empty
 * where it is modelled.
 */
export function saturationRemark({ machine }: Pick<Scenario, 'machine'>): string {
  return machine.leakageSaturation === undefined
    ? 'the circuit is without saturation of the leakage paths: real peaks are higher, by tens of per cent'
    : '';
}

/** Joins remarks, leaving out empty ones. */
export function joinRemarks(...remarks: readonly string[]): string {
  return remarks.filter((remark) => remark !== '').join('; ');
}
