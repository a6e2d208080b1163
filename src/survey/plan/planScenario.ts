import { assumedLoadInertia } from '../../estimate/assumedLoadInertia.ts';
import { parseScenario } from '../../estimate/parseScenario.ts';
import { DROP_OUT_SHARE, FRICTION_SHARE, PICK_UP_OVER_DROP_OUT } from '../../estimate/typicalDrive.ts';
import { polesFromSpeed } from '../../scenario/ratedBase.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { synchronousSpeed } from '../../scenario/synchronousSpeed.ts';
import { writeQuantity as write } from '../../scenario/writeQuantity.ts';
import type { PlanLoad, PlanMotor, PlanRow } from './planRow.ts';

/** Nobody sees it: what a table calls its starters need not be what a scenario may be called. */
const TITLE = 'Starter of a maintenance plan';
/** s; of steady running before the command that stops it. */
const RUNNING = 0.05;
/** s; a coasting motor's current is gone within a period of this command: no more of the run is needed. */
const COASTING_END = 0.2;

/** A scenario and what was assumed in it, in words. */
export interface PlanScenario {
  readonly scenario: Scenario;
  readonly assumed: readonly string[];
}

/** A row with what `missingOf` demands of its motor. */
type KnownMotor = PlanMotor & {
  readonly power: number;
  readonly lineVoltage: number;
  readonly frequency: number;
};

/**
 * The stop of a row's starter from steady running: by plugging, or coasting.
 *
 * @param row that lacks nothing
 * @param inertiaFactor by which the load inertia is multiplied
 * @throws ScenarioError where the data contradict themselves
 */
export function planScenario(row: PlanRow, stop: 'plug' | 'coast', inertiaFactor: number): PlanScenario {
  const motor = row.motor as KnownMotor;
  const poles = motor.poles ?? polesFromSpeed(motor.speed ?? 0, motor.frequency);
  const synchronous = synchronousSpeed(motor.frequency, poles);
  const assumed: string[] = [];
  if (motor.lockedRotorCurrent === null && motor.codeLetter === null)
    assumed.push('locked-rotor current by design letter or typical');
  const load = loadOf(row.load, motor, poles, inertiaFactor, assumed);
  const dropOut = DROP_OUT_SHARE * synchronous;
  const scenario = parseScenario({
    title: TITLE,
    supply: { lineVoltage: write(motor.lineVoltage, 'V'), frequency: write(motor.frequency, 'Hz') },
    machine: { poles, nameplate: nameplateOf(motor) },
    load,
    starter: {
      zeroSpeedSwitch: {
        dropOutSpeed: write(dropOut, 'rad/s'),
        pickUpSpeed: write(PICK_UP_OVER_DROP_OUT * dropOut, 'rad/s'),
      },
    },
    initial: 'running forward',
    actions: [{ at: write(RUNNING, 's'), do: stop }],
    ...(stop === 'coast' ? { solver: { endTime: write(COASTING_END, 's') } } : {}),
  });
  return { scenario, assumed };
}

function nameplateOf(motor: KnownMotor): Record<string, unknown> {
  const stated = (key: string, value: number | string | null, unit?: string) =>
    value === null
      ? {}
      : { [key]: unit === undefined || typeof value === 'string' ? value : write(value, unit) };
  const { lockedRotorCurrent } = motor;
  return {
    power: write(motor.power, 'W'),
    ...stated('speed', motor.speed, 'rad/s'),
    ...stated('current', motor.current, 'A'),
    ...stated('powerFactor', motor.powerFactor),
    ...stated('efficiency', motor.efficiency),
    ...(lockedRotorCurrent === null
      ? {}
      : {
          lockedRotorCurrent:
            lockedRotorCurrent.kind === 'amperes'
              ? write(lockedRotorCurrent.amperes, 'A')
              : write(lockedRotorCurrent.ofRated, 'times'),
        }),
    ...stated('codeLetter', motor.codeLetter),
    ...stated('lockedRotorTorque', motor.lockedRotorTorque),
    ...stated('breakdownTorque', motor.breakdownTorque),
    ...stated('design', motor.design),
    ...stated('inertia', motor.inertia, 'kg m^2'),
  };
}

function loadOf(
  load: PlanLoad,
  motor: KnownMotor,
  poles: number,
  inertiaFactor: number,
  assumed: string[],
): Record<string, unknown> {
  const speed = motor.speed ?? synchronousSpeed(motor.frequency, poles);
  const standard = assumedLoadInertia(motor.power, motor.frequency, poles);
  if (load.inertia === null) assumed.push(`load inertia (${standard.source})`);
  const inertia = write(inertiaFactor * (load.inertia ?? standard.value), 'kg m^2');
  const torque = write(load.torque ?? 0, 'N m');
  switch (load.kind) {
    case 'none':
      return { inertia, torque: 'none' };
    case 'friction':
    case 'gravity':
      return { inertia, torque: { kind: load.kind, torque } };
    case 'fan':
      return { inertia, torque: { kind: 'fan', torque, atSpeed: write(speed, 'rad/s') } };
    case null: {
      assumed.push('load torque (dry friction of 5 % of rated torque)');
      return {
        inertia,
        torque: { kind: 'friction', torque: write((FRICTION_SHARE * motor.power) / speed, 'N m') },
      };
    }
  }
}
