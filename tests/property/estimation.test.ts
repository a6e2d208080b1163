/** Circuit to nameplate to circuit, over random plausible double-cage machines. */
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { estimateCircuit } from '../../src/estimate/estimateCircuit.ts';
import { onRatedSupply } from '../../src/estimate/toMachine.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import type { MachineData, Supply } from '../../src/scenario/scenario.ts';
import { exactNameplate } from '../support/arbitraryNameplate.ts';
import { expectWithin } from '../support/tolerance.ts';

const RUNS = { numRuns: 24, seed: 31, endOnFailure: true } as const;
/** The promise of the estimation. */
const PROMISED = { relative: 0.01 };

/** Largest torque from rest on; 400 points a decade miss a crest by less than 1e-4 of it. */
function crest(machine: MachineData, supply: Supply): number {
  const slips = Array.from({ length: 1000 }, (_, i) => 10 ** (-i / 400));
  return Math.max(...slips.map((slip) => steadyState(machine, supply, slip).torque));
}

describe('the circuit estimated from an exact nameplate', () => {
  it('has rated, locked-rotor and breakdown torque and current of the machine within 1 %', () => {
    fc.assert(
      fc.property(exactNameplate, ({ machine: { machine, supply, synchronousSpeed }, nameplate }) => {
        const { circuit } = estimateCircuit(nameplate);
        const { machine: estimated } = onRatedSupply(circuit, nameplate);
        const slip = 1 - nameplate.speed! / synchronousSpeed;
        const lossTorque =
          circuit.mechanicalLoss!.friction + circuit.mechanicalLoss!.windage * nameplate.speed! ** 2;
        const [rated, theirs] = [steadyState(estimated, supply, slip), steadyState(machine, supply, slip)];
        expectWithin(rated.current, theirs.current, PROMISED, 'rated current');
        // The machine has no mechanical loss; the estimate is free to have some, and delivers the same at the shaft.
        expectWithin(rated.torque - lossTorque, theirs.torque, PROMISED, 'rated torque');
        const [locked, theirLocked] = [steadyState(estimated, supply, 1), steadyState(machine, supply, 1)];
        expectWithin(locked.current, theirLocked.current, PROMISED, 'locked-rotor current');
        expectWithin(locked.torque, theirLocked.torque, PROMISED, 'locked-rotor torque');
        expectWithin(crest(estimated, supply), crest(machine, supply), PROMISED, 'breakdown torque');
      }),
      RUNS,
    );
  });
});
