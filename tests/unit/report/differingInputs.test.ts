import { describe, expect, it } from 'vitest';
import { parseScenarioWithOrigins } from '../../../src/estimate/parseScenarioWithOrigins.ts';
import { differingInputs } from '../../../src/report/differingInputs.ts';
import { exampleText } from '../../support/examples.ts';
import { editedExample } from '../../support/workFolder.ts';

const belt = parseScenarioWithOrigins(editedExample());
const edited = (...edits: readonly (readonly [string, string])[]) =>
  parseScenarioWithOrigins(editedExample(...edits));

describe('the inputs that differ', () => {
  it('are none between a scenario and itself, or the same in other words', () => {
    expect(differingInputs(belt, belt)).toEqual([]);
    const reworded = edited(
      ['lineVoltage: 400 V', 'lineVoltage: 0.4 kV'],
      ['closingTime: 18 ms', 'closingTime: 0.018 s'],
    );
    expect(differingInputs(belt, reworded)).toEqual([]);
  });

  it('do not contain the title, which heads the comparison', () => {
    expect(differingInputs(belt, edited(['title: Tea', 'title: Other tea']))).toEqual([]);
  });

  it('are those that are written, not those that follow from them', () => {
    // Ohms at rated frequency become other inductances; the machine is the same as written.
    expect(differingInputs(belt, edited(['frequency: 50 Hz', 'frequency: 60 Hz']))).toEqual([
      { path: 'supply.frequency', a: '50 Hz', b: '60 Hz' },
    ]);
    expect(differingInputs(belt, edited(['torque: 6 N m, atSpeed', 'torque: 7 N m, atSpeed']))).toEqual([
      { path: 'load.torque.1.torque', a: '6 N m', b: '7 N m' },
    ]);
  });

  it('show what only one states beside the default of the other, or beside nothing', () => {
    const more = edited(['poles: 4', 'poles: 4\n  ironLoss: 200 W'], ['  reverseCreep: 30 deg\n', '']);
    expect(differingInputs(belt, more)).toEqual([
      { path: 'machine.ironLoss', a: '0 W', b: '200 W' },
      { path: 'limits.reverseCreep', a: '30 deg', b: null },
    ]);
  });

  it('of a machine given by its nameplate are those of the nameplate', () => {
    const text = exampleText('what-if-only-the-nameplate-is-known.yaml');
    const other = text.replace('breakdownTorque: 2.9', 'breakdownTorque: 2.8');
    expect(other).not.toBe(text);
    const paths = differingInputs(parseScenarioWithOrigins(text), parseScenarioWithOrigins(other)).map(
      ({ path }) => path,
    );
    expect(paths).toEqual(['machine.nameplate.breakdownTorque']);
  });
});
