import { coastDown } from '../../assess/stop/coastDown.ts';
import { stiff } from '../../machine/breakdown.ts';
import { ratedPoint } from '../../machine/ratedPoint.ts';
import { steadyState } from '../../machine/steadyState.ts';
import { bisect } from '../../numeric/bisect.ts';
import { squared } from '../../numeric/raised.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { synchronousSpeed } from '../../scenario/synchronousSpeed.ts';
import { shaftOf } from '../../shaft/shaft.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import type { Quantities } from './quantities.ts';

/** Two windings in series between two terminals; of a delta the equivalent star has them. */
const WINDINGS_BETWEEN_TERMINALS = 2;

/**
 * What is read without any switching: resistance, running light, locked rotor, run-down. Absent: what the set does not do or its
 * circuit does not tell.
 */
export function steadyQuantities(scenario: Scenario, direction: 1 | -1): Quantities {
  return {
    terminalResistance: WINDINGS_BETWEEN_TERMINALS * scenario.machine.Rs,
    ...runningLight(scenario, direction),
    ...lockedRotor(scenario),
    ...runDown(scenario, direction),
  };
}

/** Magnitude of the speed at which the set runs with its own load, rad/s; null: it cannot drive it. */
export function runningSpeed(scenario: Scenario, direction: 1 | -1): number | null {
  const speed = steadySpeed(scenario, direction);
  return speed === null ? null : Math.abs(speed);
}

/** Kinetic energy of rotor and load at the running speed, J; 0 where there is none. */
export function storedEnergy(scenario: Scenario, direction: 1 | -1): number {
  return (shaftOf(scenario).inertia * squared(runningSpeed(scenario, direction) ?? 0)) / 2;
}

function runningLight(scenario: Scenario, direction: 1 | -1): Quantities {
  const { machine, supply } = scenario;
  const speed = runningSpeed(scenario, direction);
  if (speed === null) return {};
  const slip = 1 - speed / synchronousSpeed(supply.frequency, 2 * machine.polePairs);
  const { current, inputPower, terminalVoltage } = steadyState(machine, supply, slip);
  const series = supply.sourceResistance + (supply.cable?.resistance ?? 0);
  return {
    noLoadCurrent: current,
    noLoadSpeed: speed,
    noLoadReactance: terminalVoltage / Math.sqrt(3) / current,
    // A circuit without iron loss does not know a good part of this power.
    ...(machine.core !== undefined && { noLoadPower: inputPower - 3 * squared(current) * series }),
  };
}

/** At the rated current, at the motor terminals. */
function lockedRotor({ machine, supply }: Scenario): Quantities {
  const rated = ratedPoint(machine, supply).current;
  const at = (lineVoltage: number) => steadyState(machine, { ...stiff(supply), lineVoltage }, 1);
  const full = at(supply.lineVoltage).current;
  if (full <= rated) return {};
  const voltage = bisect((lineVoltage) => at(lineVoltage).current - rated, 0, supply.lineVoltage);
  const { inputPower } = at(voltage);
  const resistance = inputPower / (3 * squared(rated));
  const impedance = voltage / Math.sqrt(3) / rated;
  return {
    lockedRotorVoltage: voltage,
    lockedRotorPower: inputPower,
    shortCircuitResistance: resistance,
    shortCircuitReactance: Math.sqrt(squared(impedance) - squared(resistance)),
  };
}

/** Poles open, from the running speed. */
function runDown(scenario: Scenario, direction: 1 | -1): Quantities {
  const speed = runningSpeed(scenario, direction);
  if (speed === null) return {};
  const shaft = shaftOf(scenario);
  const whole = coastDown(shaft, direction * speed);
  const fromHalf = coastDown(shaft, (direction * speed) / 2);
  // Where rest is only approached the two are not counted to the same speed.
  if (whole.outcome !== 'rest' || whole.time === null || fromHalf.time === null) return {};
  const halfSpeedTime = whole.time - fromHalf.time;
  return {
    runDownTime: whole.time,
    halfSpeedTime,
    meanFriction: (shaft.inertia * speed) / 2 / halfSpeedTime,
  };
}
