import { describe, expect, it } from 'vitest';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import { checkCircuit } from '../../../../src/starter/interlocks/checkInterlocks.ts';
import { controlOf } from './controlOf.ts';
import { FAULT_FORMS } from './expectedFaults.ts';

describe('a device fault breaks what its description lets expect, and nothing else', () => {
  it.each(FAULT_FORMS)('$name', ({ control: stated, faults }) => {
    const control = controlOf(stated);
    const report = checkCircuit(controlCircuit(control, false), control, false);
    const found = report.faults.map(
      ({ fault, breaks }) => `${JSON.stringify(fault)}: ${breaks.map(({ property }) => property).sort()}`,
    );
    const expected = faults.map(({ fault, breaks }) => `${JSON.stringify(fault)}: ${[...breaks].sort()}`);
    expect(found.sort()).toEqual(expected.sort());
  });
});
