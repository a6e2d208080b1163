import { loadSum } from './loadTorque.ts';
import type { ScenarioShape } from './scenarioShape.ts';

type Complex = readonly [number, number];

/** Steady state at one slip, per phase, crest values with the source voltage as the real axis. */
export interface SteadyPoint {
  readonly stator: Complex;
  /** Into each cage. */
  readonly rotor: readonly Complex[];
  /** N·m, in the direction of the applied sequence. */
  readonly torque: number;
}

const multiply = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const add = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
const invert = (a: Complex): Complex => {
  const size = a[0] * a[0] + a[1] * a[1];
  return [a[0] / size, -a[1] / size];
};

/** The per-phase equivalent circuit (T form, source impedance in series) at a slip. */
export function steadyCircuit(scenario: ScenarioShape, slip: number): SteadyPoint {
  const { machine, supply } = scenario;
  const omega = 2 * Math.PI * supply.frequency;
  const series: Complex = [
    machine.Rs + supply.sourceResistance,
    omega * (machine.Lls + supply.sourceInductance),
  ];
  // Written with slip in the numerator so that slip 0 needs no special case.
  const rotorAdmittances = machine.cages.map((cage): Complex => {
    const [re, im] = invert([cage.Rr, slip * omega * cage.Llr]);
    return [slip * re, slip * im];
  });
  const shunt = rotorAdmittances.reduce(add, invert([0, omega * machine.Lm]));
  const crest = Math.sqrt(2 / 3) * supply.lineVoltage;
  const input = invert(add(series, invert(shunt)));
  const stator: Complex = [crest * input[0], crest * input[1]];
  const main = multiply(stator, invert(shunt));
  let torque = 0;
  const rotor = rotorAdmittances.map((y): Complex => {
    const current = multiply(main, y);
    // Air-gap power 1.5·Re(u·i*) of this cage over the synchronous mechanical speed.
    torque += (1.5 * (main[0] * current[0] + main[1] * current[1]) * machine.polePairs) / omega;
    return [-current[0], -current[1]];
  });
  return { stator, rotor, torque };
}

/**
 * Speed (rad/s, signed) at which motor and load balance on the stable branch next to synchronous speed.
 * @param direction +1 forward, −1 reverse sequence
 * @returns null where the load is heavier than the machine can carry
 */
export function steadySpeed(scenario: ScenarioShape, direction: 1 | -1): number | null {
  const load = loadSum(scenario.load.torques);
  const synchronous = (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
  const speedAt = (slip: number) => direction * synchronous * (1 - slip);
  // Surplus of motor over load torque, counted in the direction of rotation.
  const surplus = (slip: number) =>
    steadyCircuit(scenario, slip).torque - direction * load.steady(speedAt(slip)) - load.friction;
  const atSynchronous = surplus(0);
  if (atSynchronous === 0) return speedAt(0);
  const side = atSynchronous < 0 ? 1 : -1;
  const SLIP_STEP = 1e-3;
  for (let inner = 0; inner < 1; inner += SLIP_STEP) {
    let low = inner;
    let high = inner + SLIP_STEP;
    if (side * surplus(side * high) < 0) continue;
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (side * surplus(side * middle) < 0) low = middle;
      else high = middle;
    }
    return speedAt(side * high);
  }
  return null;
}

/**
 * Puts the steady state at t = 0, rotor angle 0, into the currents of a state.
 * @param supplyPhases supply phase on each motor terminal
 */
export function steadyCurrents(
  scenario: ScenarioShape,
  slip: number,
  supplyPhases: readonly [number, number, number],
  y: Float64Array,
): void {
  const point = steadyCircuit(scenario, slip);
  [point.stator, ...point.rotor].forEach((phasor, group) => {
    for (let k = 0; k < 3; k++) {
      const angle = scenario.supply.angle - (supplyPhases[k]! * 2 * Math.PI) / 3;
      y[3 * group + k] = phasor[0] * Math.cos(angle) - phasor[1] * Math.sin(angle);
    }
  });
}
