import { describe, expect, it } from 'vitest';
import { equallyGoodCircuits } from '../../../src/estimate/equallyGoodCircuits.ts';
import { estimateCircuit } from '../../../src/estimate/estimateCircuit.ts';
import { onRatedSupply } from '../../../src/estimate/toMachine.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { nameplateOf } from '../../support/arbitraryNameplate.ts';
import { BARE_PLATE, FULL_PLATE } from '../../support/ratedMotor.ts';
import { DOUBLE_CAGE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const plate = nameplateOf(DOUBLE_CAGE, 'star', 2.6);
const estimated = estimateCircuit(plate);
const variants = equallyGoodCircuits(plate, estimated);
const lockedRotor = (circuit: (typeof variants)[number]['circuit']) => {
  const { machine, supply } = onRatedSupply(circuit, plate);
  return steadyState(machine, supply, 1);
};
const labelled = (label: string) => variants.find((variant) => variant.label === label)!.circuit;
const before = lockedRotor(estimated.circuit);

describe('equallyGoodCircuits', () => {
  it('gives 8 to 20 circuits, each with a label of its own', () => {
    expect(variants.length).toBeGreaterThanOrEqual(8);
    expect(variants.length).toBeLessThanOrEqual(20);
    expect(new Set(variants.map(({ label }) => label)).size).toBe(variants.length);
  });

  it('moves what no nameplate says and keeps what it says', () => {
    for (const { label, kind, circuit } of variants) {
      if (kind !== 'unknown') continue;
      const { current, torque } = lockedRotor(circuit);
      // What counts as fitting: 2 %.
      expectWithin(current, before.current, { relative: 0.02 }, `current, ${label}`);
      expectWithin(torque, before.torque, { relative: 0.02 }, `torque, ${label}`);
    }
    expect(labelled('less of the leakage in the stator').Lls).toBeLessThan(0.95 * estimated.circuit.Lls);
    expect(labelled('more of the leakage in the stator').Lls).toBeGreaterThan(1.05 * estimated.circuit.Lls);
    expect(labelled('more loss in the stator winding').Rs).toBeGreaterThan(1.05 * estimated.circuit.Rs);
    expect(labelled('leakage saturates with current').leakageSaturation?.stator?.remaining).toBeLessThan(0.9);
  });

  it('moves an item to the end of its tolerance', () => {
    const current = lockedRotor(labelled('locked-rotor current 20 % higher')).current;
    expectWithin(current, 1.2 * before.current, { relative: 0.06 }, 'current');
    const weak = lockedRotor(labelled('locked-rotor torque 15 % lower')).torque;
    expectWithin(weak, 0.85 * before.torque, { relative: 0.06 }, 'torque');
    const strong = lockedRotor(labelled('locked-rotor torque 25 % higher')).torque;
    expectWithin(strong, 1.25 * before.torque, { relative: 0.06 }, 'torque');
  });

  it('keeps the base of all multiples', () => {
    for (const { circuit } of variants) expect(circuit.rated).toEqual(estimated.circuit.rated);
  });

  it('starts from a saturating estimate as well', () => {
    const labels = equallyGoodCircuits(FULL_PLATE, estimateCircuit(FULL_PLATE)).map(({ label }) => label);
    expect(labels).toContain('leakage saturates only from a larger current on');
    expect(labels.some((label) => label.startsWith('locked-rotor current 20 % higher'))).toBe(true);
    // What a corner does not quite reach stands in its label.
    expect(
      labels.some((label) =>
        /% (higher|lower).* \(its circuit has a .* % (below|above) that\)$/u.test(label),
      ),
    ).toBe(true);
  });

  it('takes filled-in items to the limits of their standard', () => {
    const labels = equallyGoodCircuits(BARE_PLATE, estimateCircuit(BARE_PLATE)).map(({ label }) => label);
    expect(labels).toContain('locked-rotor current at the most of its standard');
    expect(labels).toContain('locked-rotor torque at the least of its standard');
  });

  it('gives the same list every time', () => {
    expect(equallyGoodCircuits(plate, estimated)).toEqual(variants);
  });
});
