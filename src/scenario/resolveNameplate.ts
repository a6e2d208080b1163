import type { Nameplate, TestReadings } from './nameplate.ts';
import { derivedValue, type Note } from './origin.ts';
import { polesFromSpeed } from './ratedBase.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import { stated } from './stated.ts';
import { synchronousSpeed } from './synchronousSpeed.ts';
import { meanCurrent } from './testsRules.ts';

type MachineInput = ScenarioInput['machine'];

/** What the supply lends to a nameplate that does not say it. */
export interface SupplyRating {
  /** V between lines */
  readonly lineVoltage: number;
  /** Hz */
  readonly frequency: number;
}

/**
 * Fills in a nameplate: voltage and frequency of the supply, poles from the speed, speed from the slip.
 *
 * @param machine with a nameplate, in SI
 * @param supply where the nameplate states neither voltage nor frequency
 * @param note takes down what was not given
 */
export function resolveNameplate(
  machine: MachineInput,
  plate: NonNullable<MachineInput['nameplate']>,
  supply: SupplyRating,
  note: Note,
): Nameplate {
  const { lineVoltage, frequency } = ratedValues('nameplate', plate, supply, note);
  const poles = machine.poles ?? polesFromSpeed(stated(plate.speed, 'speed'), frequency);
  if (machine.poles === undefined) note('poles', String(poles), 'derived', 'from the rated speed');
  let speed = plate.speed ?? null;
  if (plate.slip !== undefined) {
    speed = (1 - plate.slip) * synchronousSpeed(frequency, poles);
    note('nameplate.speed', derivedValue((speed * 30) / Math.PI, 'rpm'), 'derived');
  }
  return {
    connection: machine.connection ?? 'star',
    power: plate.power,
    lineVoltage,
    frequency,
    poles,
    speed,
    current: plate.current ?? null,
    powerFactor: plate.powerFactor ?? null,
    efficiency: plate.efficiency ?? null,
    lockedRotorCurrent:
      plate.lockedRotorCurrent ??
      (plate.codeLetter === undefined ? null : { kind: 'codeLetter', letter: plate.codeLetter }),
    lockedRotorTorque: plate.lockedRotorTorque ?? null,
    breakdownTorque: plate.breakdownTorque ?? null,
    design: plate.design ?? null,
    inertia: plate.inertia ?? machine.inertia ?? null,
  };
}

/**
 * Fills in test readings: the mean of three currents, the resistance from a direct voltage and current.
 *
 * @param machine with tests, in SI
 * @param supply where the tests state neither rated voltage nor rated frequency
 * @param note takes down what was not given
 */
export function resolveTests(
  machine: MachineInput,
  tests: NonNullable<MachineInput['tests']>,
  supply: SupplyRating,
  note: Note,
): TestReadings {
  const { lineVoltage, frequency } = ratedValues('tests', tests, supply, note);
  const reading = (name: 'noLoad' | 'lockedRotor') => {
    const test = tests[name];
    const mean = stated(meanCurrent(test.current), 'current');
    if (typeof test.current !== 'number')
      note(`tests.${name}.meanCurrent`, derivedValue(mean, 'A'), 'derived');
    if (test.frequency === undefined) note(`tests.${name}.frequency`, `${frequency} Hz`, 'default');
    return {
      voltage: test.voltage,
      current: mean,
      power: test.power,
      frequency: test.frequency ?? frequency,
    };
  };
  let terminalResistance = tests.terminalResistance;
  if (tests.dc !== undefined) {
    terminalResistance = tests.dc.voltage / tests.dc.current;
    note('tests.terminalResistance', derivedValue(terminalResistance, 'ohm'), 'derived');
  }
  return {
    connection: machine.connection ?? 'star',
    poles: stated(machine.poles, 'poles'),
    lineVoltage,
    frequency,
    terminalResistance: stated(terminalResistance, 'terminalResistance'),
    noLoad: reading('noLoad'),
    lockedRotor: reading('lockedRotor'),
    statorLeakageShare: tests.statorLeakageShare ?? null,
    design: tests.design ?? null,
    inertia: machine.inertia ?? null,
  };
}

function ratedValues(
  group: 'nameplate' | 'tests',
  given: { readonly lineVoltage?: number | undefined; readonly frequency?: number | undefined },
  supply: SupplyRating,
  note: Note,
): SupplyRating {
  if (given.lineVoltage === undefined)
    note(`${group}.lineVoltage`, `${supply.lineVoltage} V`, 'default', 'as the supply');
  if (given.frequency === undefined)
    note(`${group}.frequency`, `${supply.frequency} Hz`, 'default', 'as the supply');
  return {
    lineVoltage: given.lineVoltage ?? supply.lineVoltage,
    frequency: given.frequency ?? supply.frequency,
  };
}
