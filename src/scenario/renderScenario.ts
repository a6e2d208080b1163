import { contactorTimes } from './contactorTimes.ts';
import type { ActionKind, InitialState, LoadTorque, Scenario, StarterData } from './scenario.ts';

const actionWords: Readonly<Record<ActionKind, string>> = {
  startForward: 'start forward',
  startReverse: 'start reverse',
  plug: 'plug',
  coast: 'coast',
};

const initialWords: Readonly<Record<InitialState, string>> = {
  rest: 'rest',
  runningForward: 'running forward',
  runningReverse: 'running reverse',
};

/**
 * Renders a scenario in the form a person writes, in plain SI units with all digits: parsing it again gives the same
 * scenario to the last bit.
 *
 * @remarks A dead time that is not a whole number of picoseconds, and a default delay that is not the opening time,
 *   cannot come from a file; such a delay is rendered as `changeoverDelay`.
 * @param scenario in SI
 * @returns plain data, ready for JSON or YAML
 */
export function renderScenario(scenario: Scenario): Readonly<Record<string, unknown>> {
  const { supply, machine, load, solver } = scenario;
  return {
    schemaVersion: scenario.schemaVersion,
    title: scenario.title,
    ...(scenario.description === '' ? {} : { description: scenario.description }),
    supply: {
      lineVoltage: write(supply.lineVoltage, 'V'),
      frequency: write(supply.frequency, 'Hz'),
      angle: write(supply.angle, 'rad'),
      sourceResistance: write(supply.sourceResistance, 'ohm'),
      sourceInductance: write(supply.sourceInductance, 'H'),
    },
    machine: {
      poles: 2 * machine.polePairs,
      connection: machine.connection,
      circuitGivenAs: 'equivalentStar',
      statorResistance: write(machine.Rs, 'ohm'),
      statorLeakage: write(machine.Lls, 'H'),
      magnetising: write(machine.Lm, 'H'),
      cages: machine.cages.map(({ Rr, Llr }) => ({ resistance: write(Rr, 'ohm'), leakage: write(Llr, 'H') })),
      inertia: write(machine.inertia, 'kg m^2'),
      rated: Object.fromEntries(
        (
          [
            ['power', machine.rated.power, 'W'],
            ['speed', machine.rated.speed, 'rad/s'],
            ['current', machine.rated.current, 'A'],
            ['torque', machine.rated.torque, 'N m'],
          ] as const
        ).flatMap(([key, value, unit]) => (value === null ? [] : [[key, write(value, unit)]])),
      ),
    },
    load: {
      inertia: write(load.inertia, 'kg m^2'),
      torque: load.torques.length === 0 ? 'none' : load.torques.map(renderTorque),
    },
    starter: renderStarter(scenario.starter),
    initial: initialWords[scenario.initial],
    actions: scenario.actions.map((action) => ({ at: write(action.at, 's'), do: actionWords[action.do] })),
    solver: {
      relativeTolerance: solver.relativeTolerance,
      endTime: solver.endTime === 'auto' ? 'auto' : write(solver.endTime, 's'),
      maxSteps: solver.maxSteps,
      frame: solver.frame,
    },
  };
}

function renderTorque(load: LoadTorque): Readonly<Record<string, string>> {
  switch (load.kind) {
    case 'friction':
      return { kind: load.kind, torque: write(load.torque, 'N m'), breakaway: write(load.breakaway, 'N m') };
    case 'viscous':
      return { kind: load.kind, coefficient: write(load.coefficient, 'N m s/rad') };
    case 'fan':
      return { kind: load.kind, coefficient: write(load.coefficient, 'N m s^2/rad^2') };
    case 'gravity':
      return { kind: load.kind, torque: write(load.torque, 'N m') };
    default:
      return load satisfies never;
  }
}

function renderStarter(starter: StarterData): Readonly<Record<string, unknown>> {
  const { zeroSpeedSwitch } = starter;
  return {
    poles: starter.poles,
    closingTime: write(starter.closingTime, 's'),
    openingTime: write(starter.openingTime, 's'),
    closingScatter: starter.closingScatter.map((time) => write(time, 's')),
    openingScatter: starter.openingScatter.map((time) => write(time, 's')),
    ...renderChangeover(starter),
    minimumArcingTime: write(starter.minimumArcingTime, 's'),
    exchangedPhases: starter.exchangedPhases,
    zeroSpeedSwitch:
      zeroSpeedSwitch === null
        ? 'off'
        : {
            dropOutSpeed: write(zeroSpeedSwitch.dropOutSpeed, 'rad/s'),
            pickUpSpeed: write(zeroSpeedSwitch.pickUpSpeed, 'rad/s'),
            delay: write(zeroSpeedSwitch.delay, 's'),
          },
  };
}

function renderChangeover(starter: StarterData): Readonly<Record<string, string>> {
  const { closingTime, openingTime, changeoverDelay, changeoverGivenAs } = starter;
  if (changeoverGivenAs === 'default' && changeoverDelay === openingTime) return {};
  if (changeoverGivenAs === 'deadTime') {
    const deadTime = Math.max(0, changeoverDelay + closingTime - openingTime);
    const parsed = contactorTimes({ closingTime, openingTime, deadTime });
    if (parsed.changeoverDelay === changeoverDelay) return { deadTime: write(deadTime, 's') };
  }
  return { changeoverDelay: write(changeoverDelay, 's') };
}

/** All digits a number needs to come back the same. */
function write(value: number, unit: string): string {
  return `${value} ${unit}`;
}
