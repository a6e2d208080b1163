import { stiff } from '../machine/breakdown.ts';
import { type CharacteristicPoint, characteristicCurve } from '../machine/characteristicCurve.ts';
import { ratedPoint } from '../machine/ratedPoint.ts';
import type { Estimation } from '../scenario/nameplate.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { shaftOf } from '../shaft/shaft.ts';
import { steadyTorqueAt } from '../shaft/steadySpeed.ts';
import type { MotorPoint, MotorPointKind, MotorSheet } from './motorSheet.ts';

/**
 * Everything about the motor of a scenario by itself: circuit, curves and points of the steady state at rated voltage at its
 * terminals (source and cable left out, as on a maker's sheet; nothing in the lines or at the slip rings).
 *
 * @throws ScenarioError where the rated power is more than the circuit delivers
 */
export function buildMotorSheet(scenario: Scenario, estimation: Estimation | null): MotorSheet {
  const { machine, supply, title } = scenario;
  const nominal = stiff(supply);
  const { points, marks } = characteristicCurve(machine, nominal);
  const named: readonly (readonly [MotorPointKind, CharacteristicPoint | null])[] = [
    ['noLoad', marks.synchronous],
    ['rated', marks.rated],
    ['breakdown', marks.breakdown],
    ['pullUp', marks.pullUp],
    ['lockedRotor', marks.lockedRotor],
    ['plugging', marks.reverseSynchronous],
  ];
  const column = (key: 'speed' | 'torque' | 'current') => Float64Array.from(points, (point) => point[key]);
  return {
    title,
    machine,
    lineVoltage: supply.lineVoltage,
    frequency: supply.frequency,
    rated: ratedPoint(machine, supply),
    points: named.flatMap(([kind, point]): MotorPoint[] => (point === null ? [] : [{ kind, ...point }])),
    curve: { speed: column('speed'), torque: column('torque'), current: column('current') },
    load: loadCurve(scenario, column('speed')),
    estimation,
  };
}

/** What holds the load at a constant speed; friction jumps at rest, which takes two points there. */
function loadCurve(scenario: Scenario, speeds: Float64Array): MotorSheet['load'] {
  if (scenario.load.torques.length === 0) return null;
  const shaft = shaftOf(scenario);
  const at = (speed: number, direction: -1 | 1) => ({
    speed,
    torque: steadyTorqueAt(shaft, speed, direction),
  });
  const points = [
    ...Array.from(
      speeds.filter((speed) => speed < 0),
      (speed) => at(speed, -1),
    ),
    at(0, -1),
    at(0, 1),
    ...Array.from(
      speeds.filter((speed) => speed > 0),
      (speed) => at(speed, 1),
    ),
  ];
  return {
    speed: Float64Array.from(points, (point) => point.speed),
    torque: Float64Array.from(points, (point) => point.torque),
  };
}
