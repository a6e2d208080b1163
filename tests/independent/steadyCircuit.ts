import { driveTrain } from './driveTrain.ts';
import { leakagePath } from './leakagePath.ts';
import { curvedPath, straightPath } from './magnetisingPath.ts';
import { type InsertedParts, NOTHING } from './phaseCircuit.ts';
import type { LeakageShape, ScenarioShape } from './scenarioShape.ts';
import { stateIndex } from './stateIndex.ts';

type Complex = readonly [number, number];

/** Steady state at one slip, per phase of the equivalent star, crest values with the source voltage as the real axis. */
export interface SteadyPoint {
  readonly stator: Complex;
  /** Into each cage. */
  readonly rotor: readonly Complex[];
  /** Into the iron; null without loss there. */
  readonly iron: Complex | null;
  /** N·m, in the direction of the applied sequence. */
  readonly torque: number;
}

const multiply = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const add = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
const invert = (a: Complex): Complex => {
  const size = a[0] * a[0] + a[1] * a[1];
  return [a[0] / size, -a[1] / size];
};
const square = (a: Complex) => a[0] * a[0] + a[1] * a[1];

/** Repetitions with the inductances of the last currents; each lessens the error by a third or better. */
const MOST_ROUNDS = 400;
/** Two rounds that agree to this fraction end the repetition. */
const SAME = 1e-14;

/**
 * The per-phase equivalent circuit (T form, source and cable in series) at a slip. Saturable branches take the inductances of
 * the currents they carry: the linear circuit is solved over and over until they fit.
 */
export function steadyCircuit(
  scenario: ScenarioShape,
  slip: number,
  inserted: InsertedParts = NOTHING,
): SteadyPoint {
  const { machine, supply } = scenario;
  const scale = inserted.star ? 3 : 1;
  const root = Math.sqrt(scale);
  const omega = 2 * Math.PI * supply.frequency;
  const crest = Math.sqrt(2 / 3) * supply.lineVoltage;
  const path = (L: number, law: LeakageShape | null | undefined) =>
    leakagePath(scale * L, law ? { ...law, current: law.current / root } : null);
  const ofStator = path(machine.Lls, machine.leakageSaturation?.stator);
  const ofCages = machine.cages.map((cage, c) => path(cage.Llr, machine.leakageSaturation?.cages[c]));
  const main = machine.mainSaturation
    ? curvedPath(machine.mainSaturation.map((q) => ({ current: q.current / root, flux: q.flux * root })))
    : straightPath(scale * machine.Lm);
  const R = scale * machine.Rs + supply.sourceResistance + (supply.cable?.resistance ?? 0) + inserted.line;
  const ahead = supply.sourceInductance + (supply.cable?.inductance ?? 0);
  const ironAdmittance = machine.core
    ? invert([scale * machine.core.R, omega * scale * machine.core.L])
    : null;

  function solve(Ls: number, Lm: number, Lr: readonly number[]) {
    const series: Complex = [R, omega * (Ls + ahead)];
    // Written with slip in the numerator so that slip 0 needs no special case.
    const admittances = machine.cages.map((cage, c): Complex => {
      const Rr = scale * (cage.Rr + (c === 0 ? inserted.rotor : 0));
      const [re, im] = invert([Rr, slip * omega * Lr[c]!]);
      return [slip * re, slip * im];
    });
    let shunt = admittances.reduce(add, invert([0, omega * Lm]));
    if (ironAdmittance) shunt = add(shunt, ironAdmittance);
    const input = invert(add(series, invert(shunt)));
    const stator: Complex = [crest * input[0], crest * input[1]];
    const gap = multiply(stator, invert(shunt));
    const into = admittances.map((y): Complex => multiply(gap, y));
    return { stator, gap, into };
  }

  let Ls = ofStator.initial;
  let Lm = main.initial;
  let Lr = ofCages.map((cage) => cage.initial);
  let found = solve(Ls, Lm, Lr);
  if (machine.mainSaturation || machine.leakageSaturation) {
    const reading = { flux: 0, slope: 0 };
    for (let round = 0; ; round++) {
      if (round === MOST_ROUNDS) throw new Error(`no steady state at slip ${slip}`);
      const magnetising = Math.sqrt(square(found.gap)) / (omega * Lm);
      main.read(magnetising, reading);
      const mix = (before: number, now: number) => 0.5 * (before + now);
      const next = [
        mix(Ls, ofStator.secant(square(found.stator))),
        mix(Lm, reading.flux / magnetising),
        ...ofCages.map((cage, c) => mix(Lr[c]!, cage.secant(square(found.into[c]!)))),
      ];
      const before = [Ls, Lm, ...Lr];
      [Ls, Lm] = next as [number, number];
      Lr = next.slice(2);
      found = solve(Ls, Lm, Lr);
      if (next.every((L, k) => Math.abs(L - before[k]!) <= SAME * L)) break;
    }
  }
  let torque = 0;
  for (const current of found.into) {
    // Air-gap power 1.5·Re(u·i*) of this cage over the synchronous mechanical speed.
    const power = found.gap[0] * current[0] + found.gap[1] * current[1];
    torque += (1.5 * power * machine.polePairs) / omega;
  }
  const negative = (a: Complex): Complex => [-a[0], -a[1]];
  return {
    stator: found.stator,
    rotor: found.into.map(negative),
    iron: ironAdmittance && negative(multiply(found.gap, ironAdmittance)),
    torque,
  };
}

/**
 * Speed (rad/s, signed) at which motor and load balance on the stable branch next to synchronous speed.
 * @param direction +1 forward, −1 reverse sequence
 * @returns null where the load is heavier than the machine can carry
 */
export function steadySpeed(
  scenario: ScenarioShape,
  direction: 1 | -1,
  inserted: InsertedParts = NOTHING,
): number | null {
  const train = driveTrain(scenario, stateIndex(scenario));
  const synchronous = (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
  const speedAt = (slip: number) => direction * synchronous * (1 - slip);
  // Surplus of motor over load torque, counted in the direction of rotation.
  const surplus = (slip: number) =>
    steadyCircuit(scenario, slip, inserted).torque - direction * train.steadyTorque(speedAt(slip), direction);
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
 * Puts the steady state at t = 0, rotor angle 0, into the currents of a state. Windings of a delta carry (i_k − i_next)/3 of
 * what the phases of the equivalent star do.
 * @param supplyPhases supply phase on each motor terminal
 */
export function steadyCurrents(
  scenario: ScenarioShape,
  slip: number,
  supplyPhases: readonly [number, number, number],
  y: Float64Array,
): void {
  const point = steadyCircuit(scenario, slip);
  const partner = scenario.starter.windingOrder === 'AC' ? [2, 0, 1] : [1, 2, 0];
  const all = [point.stator, ...point.rotor, ...(point.iron ? [point.iron] : [])];
  all.forEach((phasor, group) => {
    const phases = supplyPhases.map((phase) => {
      const angle = scenario.supply.angle - (phase * 2 * Math.PI) / 3;
      return phasor[0] * Math.cos(angle) - phasor[1] * Math.sin(angle);
    });
    const wound = group > 0 && scenario.machine.connection === 'delta';
    for (let k = 0; k < 3; k++) {
      y[3 * group + k] = wound ? (phases[k]! - phases[partner[k]!]!) / 3 : phases[k]!;
    }
  });
}
