import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StarterFault } from '../../../../src/scenario/scenario.ts';
import { allContacts } from '../../../../src/starter/control/controlCircuit.ts';
import {
  conductingBranches,
  networkConducts,
  type Positions,
  wiringConducts,
} from '../../../../src/starter/control/evaluate.ts';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import { stuckContacts } from '../../../../src/starter/control/stuckContacts.ts';
import { circuitModel } from '../../../../src/starter/interlocks/circuitModel.ts';
import { inSeries } from '../../../../src/starter/interlocks/cubes.ts';
import { exploreOptions } from '../../../../src/starter/interlocks/options.ts';
import { controlOf } from './controlOf.ts';
import { FORMS } from './expectedVerdicts.ts';

const FAULTS: readonly (readonly StarterFault[])[] = [
  [],
  [{ kind: 'auxiliaryContact', contactor: 'forward', contact: 'interlock', stuck: 'closed' }],
  [{ kind: 'auxiliaryContact', contactor: 'reverse', contact: 'holdIn', stuck: 'open' }],
  [{ kind: 'zeroSpeedSwitch', mode: 'stuckOpen' }],
];

describe('the circuit as arithmetic', () => {
  it('energises the coils that the table energises, in every position of its devices', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FORMS),
        fc.constantFrom(...FAULTS),
        fc.nat(),
        fc.boolean(),
        (form, faults, pattern, supplied) => {
          const control = controlOf(form.control);
          const circuit = controlCircuit(control, form.lockout === true);
          const model = circuitModel(circuit, { ...exploreOptions(control), faults });
          const stuck = stuckContacts(faults);
          const positions: Positions = Object.fromEntries(
            model.devices.map((device, i) => [device, ((pattern >> i) & 1) === 1]),
          );
          const bits = pattern & (model.supply - 1);
          const state = supplied ? bits | model.supply : bits;
          for (const coil of circuit.coils) {
            const branches = conductingBranches(coil, positions, stuck);
            const wired = supplied && wiringConducts(circuit, coil, positions, stuck);
            const bit = model.bitOf[coil.coil];
            expect((model.energised(state) & bit) !== 0).toBe(wired && branches.length > 0);
            const commands = branches.some(({ purpose }) => purpose === 'command');
            if ((bit & model.contactors) !== 0)
              expect((model.commanded(state) & bit) !== 0).toBe(wired && commands);
          }
          expect(model.fed(state)).toBe(supplied && networkConducts(circuit.feed, positions, stuck));
        },
      ),
      { seed: 1, numRuns: 600 },
    );
  });

  it('gives every device of the circuit a bit of its own, and leaves room for the memory of the past', () => {
    for (const form of FORMS) {
      const control = controlOf(form.control);
      const circuit = controlCircuit(control, form.lockout === true);
      const model = circuitModel(circuit, exploreOptions(control));
      const bits = model.devices.map((device) => model.bitOf[device]);
      expect(new Set(bits).size).toBe(bits.length);
      for (const { device } of allContacts(circuit)) expect(model.bitOf[device]).toBeGreaterThan(0);
      expect(model.memoryShift + 6).toBeLessThanOrEqual(31);
    }
  });
});

describe('two networks in series', () => {
  it('conduct nowhere where one needs open what the other needs closed', () => {
    expect(inSeries([{ mask: 1, value: 1 }], [{ mask: 1, value: 0 }])).toEqual([]);
    expect(inSeries([{ mask: 1, value: 1 }], [{ mask: 2, value: 0 }])).toEqual([{ mask: 3, value: 1 }]);
  });
});
