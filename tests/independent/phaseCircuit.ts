import { type LoadSum, loadSum } from './loadTorque.ts';
import { loopEquations } from './loopEquations.ts';
import type { ScenarioShape } from './scenarioShape.ts';

/**
 * Three stator windings and three windings per rotor cage, magnetically coupled through inductances that depend on
 * the rotor angle. No transformation: the states are the winding currents themselves.
 *
 * Winding k of the stator lies at k·120°, winding k of every cage at θ + k·120° (electrical):
 *   stator self Lls + (2/3)Lm, stator mutual −(1/3)Lm, likewise on the rotor (cages share the main flux),
 *   stator s – rotor r (2/3)Lm·cos(θ + (r − s)·120°).
 * Both stars are isolated, so the currents are expressed by loops, each entering one winding and leaving by another:
 *   L_loop(θ)·dx/dt = v_loop − R·i − ω·(dL/dθ)·i,   torque = p·½·iᵀ(dL/dθ)i.
 * Three poles: stator loops A–C and B–C; two poles: the one loop through them; none: no stator loop.
 */
export interface PhaseCircuit {
  readonly size: number;
  readonly index: StateIndex;
  readonly inertia: number;
  readonly load: LoadSum;
  setMode(mode: Mode): void;
  /** Derivative of the whole state in the mode last set. */
  rhs(dydt: Float64Array, y: Float64Array, t: number): void;
  /** Air-gap torque, N·m. */
  torque(y: Float64Array): number;
  /** Its time derivative, N·m/s, from the state and the state's derivative. */
  torqueRate(y: Float64Array, f: Float64Array): number;
  /** Voltages between motor terminals and motor star point, V, also of terminals that are open. */
  windingVoltages(y: Float64Array, f: Float64Array): readonly [number, number, number];
  /** Electromotive force of supply phase k (0, 1, 2), V. */
  sourceVoltage(k: number, t: number): number;
  /** Energy stored in all inductances, source included, J. */
  magneticEnergy(y: Float64Array): number;
  /** Currents after poles have chopped: flux through every loop left in the mode last set is kept. */
  chop(y: Float64Array): void;
}

/** What is fixed between two switchings. */
export interface Mode {
  /** Supply phase (0, 1, 2) each motor terminal is connected to; −1: no current can flow there. */
  readonly supply: readonly [number, number, number];
  /** Direction in which dry friction is overcome; 0 without dry friction. */
  readonly rubbing: -1 | 0 | 1;
  /** Shaft held at rest by dry friction. */
  readonly held: boolean;
}

/** Position of each quantity in the state; the winding currents come first, stator A, B, C ahead. */
export interface StateIndex {
  readonly windings: number;
  readonly omega: number;
  readonly theta: number;
  /** ∫i dt of stator phase A; B and C follow. */
  readonly charge: number;
  /** ∫i² dt of stator phase A; B and C follow. */
  readonly square: number;
  /** Heat of the first cage, J; the others follow. */
  readonly rotorHeat: number;
  readonly cages: number;
  readonly electricalIn: number;
  readonly airGapWork: number;
  readonly frictionLoss: number;
  readonly loadWork: number;
}

const HALF_SQRT3 = Math.sqrt(3) / 2;

/** Builds the circuit of a scenario's machine, source and load. */
export function phaseCircuit(scenario: ScenarioShape): PhaseCircuit {
  const { supply, machine } = scenario;
  const cages = machine.cages.length;
  const windings = 3 + 3 * cages;
  const index: StateIndex = {
    windings,
    omega: windings,
    theta: windings + 1,
    charge: windings + 2,
    square: windings + 5,
    rotorHeat: windings + 8,
    cages,
    electricalIn: windings + 8 + cages,
    airGapWork: windings + 9 + cages,
    frictionLoss: windings + 10 + cages,
    loadWork: windings + 11 + cages,
  };
  const size = windings + 12 + cages;
  const inertia = machine.inertia + scenario.load.inertia;
  const load = loadSum(scenario.load.torques);
  const p = machine.polePairs;
  const M = (2 / 3) * machine.Lm;
  const crest = Math.sqrt(2 / 3) * supply.lineVoltage;
  const angularFrequency = 2 * Math.PI * supply.frequency;

  const resistance = new Float64Array(windings).fill(machine.Rs, 0, 3);
  machine.cages.forEach((cage, c) => {
    resistance.fill(cage.Rr, 3 + 3 * c, 6 + 3 * c);
  });

  // Full inductance matrix (row-major) and the loop equations; the blocks that turn with the rotor are rewritten at every call.
  const L = new Float64Array(windings * windings);
  const loops = loopEquations(L, windings);
  let mode: Mode | null = null;
  const w = new Float64Array(windings);
  const emf = new Float64Array(3);
  const cosine = new Float64Array(3);
  const sine = new Float64Array(3);
  const rotorSum = new Float64Array(3);
  const statorPull = new Float64Array(3);
  const rotorPull = new Float64Array(3);

  /** Cosine and sine of θ + m·120°, m = 0, 1, 2. */
  function turnTo(thetaMechanical: number): void {
    const c = Math.cos(p * thetaMechanical);
    const s = Math.sin(p * thetaMechanical);
    cosine[0] = c;
    cosine[1] = -0.5 * c - HALF_SQRT3 * s;
    cosine[2] = -0.5 * c + HALF_SQRT3 * s;
    sine[0] = s;
    sine[1] = -0.5 * s + HALF_SQRT3 * c;
    sine[2] = -0.5 * s - HALF_SQRT3 * c;
  }

  function fillCoupling(): void {
    for (let s = 0; s < 3; s++) {
      for (let r = 0; r < 3; r++) {
        const value = M * cosine[(r - s + 3) % 3]!;
        for (let row = 3 + r; row < windings; row += 3) {
          L[s * windings + row] = value;
          L[row * windings + s] = value;
        }
      }
    }
  }

  /** (dL/dθ)·i per stator winding and per rotor winding position, into statorPull and rotorPull. */
  function pull(currents: Float64Array): void {
    for (let r = 0; r < 3; r++) {
      let sum = 0;
      for (let k = 3 + r; k < windings; k += 3) sum += currents[k]!;
      rotorSum[r] = sum;
      rotorPull[r] = 0;
    }
    for (let s = 0; s < 3; s++) {
      let sum = 0;
      for (let r = 0; r < 3; r++) {
        const slope = -M * sine[(r - s + 3) % 3]!;
        sum += slope * rotorSum[r]!;
        rotorPull[r] = rotorPull[r]! + slope * currents[s]!;
      }
      statorPull[s] = sum;
    }
  }

  function torqueHere(y: Float64Array): number {
    return p * (y[0]! * statorPull[0]! + y[1]! * statorPull[1]! + y[2]! * statorPull[2]!);
  }

  function setMode(next: Mode): void {
    if (next === mode) return;
    mode = next;
    loops.clear();
    const live = [0, 1, 2].filter((k) => next.supply[k]! >= 0);
    const last = live.at(-1);
    if (last !== undefined) for (const k of live.slice(0, -1)) loops.add(k, last);
    for (let c = 0; c < cages; c++) {
      loops.add(3 + 3 * c, 5 + 3 * c);
      loops.add(4 + 3 * c, 5 + 3 * c);
    }
    L.fill(0);
    for (let s = 0; s < 3; s++) {
      for (let k = 0; k < 3; k++) {
        // Two terminals on one supply phase share its impedance.
        const shared =
          next.supply[s]! >= 0 && next.supply[s] === next.supply[k] ? supply.sourceInductance : 0;
        L[s * windings + k] = (s === k ? machine.Lls + M : -M / 2) + shared;
      }
    }
    for (let a = 3; a < windings; a++) {
      for (let b = 3; b < windings; b++) {
        const leakage = a === b ? machine.cages[Math.floor(a / 3) - 1]!.Llr : 0;
        L[a * windings + b] = ((a - b) % 3 === 0 ? M : -M / 2) + leakage;
      }
    }
  }

  function sourceVoltage(k: number, t: number): number {
    return crest * Math.cos(angularFrequency * t + supply.angle - (k * 2 * Math.PI) / 3);
  }

  function rhs(dydt: Float64Array, y: Float64Array, t: number): void {
    const terminals = mode!.supply;
    const omega = y[index.omega]!;
    const electrical = p * omega;
    turnTo(y[index.theta]!);
    fillCoupling();
    pull(y);

    const angle = angularFrequency * t + supply.angle;
    const real = crest * Math.cos(angle);
    const imaginary = crest * Math.sin(angle);
    emf[0] = real;
    emf[1] = -0.5 * real + HALF_SQRT3 * imaginary;
    emf[2] = -0.5 * real - HALF_SQRT3 * imaginary;

    let power = 0;
    for (let s = 0; s < 3; s++) {
      const current = y[s]!;
      const phase = terminals[s]!;
      let voltage = 0;
      if (phase >= 0) {
        voltage = emf[phase]!;
        power += voltage * current;
        for (let k = 0; k < 3; k++) if (terminals[k] === phase) voltage -= supply.sourceResistance * y[k]!;
      }
      w[s] = voltage - resistance[s]! * current - electrical * statorPull[s]!;
      dydt[index.charge + s] = current;
      dydt[index.square + s] = current * current;
    }
    for (let c = 0; c < cages; c++) {
      let heat = 0;
      for (let r = 0; r < 3; r++) {
        const k = 3 + 3 * c + r;
        const drop = resistance[k]! * y[k]!;
        heat += drop * y[k]!;
        w[k] = -drop - electrical * rotorPull[r]!;
      }
      dydt[index.rotorHeat + c] = heat;
    }
    loops.solve(w, dydt);

    const torque = torqueHere(y);
    const steady = load.steady(omega);
    const friction = load.friction * mode!.rubbing;
    dydt[index.omega] = mode!.held ? 0 : (torque - steady - friction) / inertia;
    dydt[index.theta] = omega;
    dydt[index.electricalIn] = power;
    dydt[index.airGapWork] = torque * omega;
    dydt[index.frictionLoss] = friction * omega;
    dydt[index.loadWork] = steady * omega;
  }

  function torque(y: Float64Array): number {
    turnTo(y[index.theta]!);
    pull(y);
    return torqueHere(y);
  }

  function torqueRate(y: Float64Array, f: Float64Array): number {
    turnTo(y[index.theta]!);
    // d/dt of iₛᵀ·(dL/dθ)·iᵣ: by the stator currents, by the rotor currents, by the angle (d²L/dθ² = −L in this block).
    pull(y);
    let sum = f[0]! * statorPull[0]! + f[1]! * statorPull[1]! + f[2]! * statorPull[2]!;
    for (let s = 0; s < 3; s++) {
      for (let r = 0; r < 3; r++) {
        sum -= p * y[index.omega]! * y[s]! * M * cosine[(r - s + 3) % 3]! * rotorSum[r]!;
      }
    }
    pull(f);
    sum += y[0]! * statorPull[0]! + y[1]! * statorPull[1]! + y[2]! * statorPull[2]!;
    return p * sum;
  }

  function windingVoltages(y: Float64Array, f: Float64Array): [number, number, number] {
    turnTo(y[index.theta]!);
    pull(y);
    const out: [number, number, number] = [0, 0, 0];
    for (let s = 0; s < 3; s++) {
      let fluxRate = machine.Lls * f[s]! + p * y[index.omega]! * statorPull[s]!;
      for (let k = 0; k < 3; k++) fluxRate += (k === s ? M : -M / 2) * f[k]!;
      for (let k = 3; k < windings; k++) fluxRate += M * cosine[(k - s) % 3]! * f[k]!;
      out[s] = machine.Rs * y[s]! + fluxRate;
    }
    return out;
  }

  function magneticEnergy(y: Float64Array): number {
    turnTo(y[index.theta]!);
    fillCoupling();
    let sum = 0;
    for (let a = 0; a < windings; a++) {
      for (let b = 0; b < windings; b++) sum += 0.5 * y[a]! * L[a * windings + b]! * y[b]!;
    }
    return sum;
  }

  function chop(y: Float64Array): void {
    turnTo(y[index.theta]!);
    fillCoupling();
    for (let a = 0; a < windings; a++) {
      let flux = 0;
      for (let b = 0; b < windings; b++) flux += L[a * windings + b]! * y[b]!;
      w[a] = flux;
    }
    loops.solve(w, y);
  }

  return {
    size,
    index,
    inertia,
    load,
    setMode,
    rhs,
    torque,
    torqueRate,
    windingVoltages,
    sourceVoltage,
    magneticEnergy,
    chop,
  };
}
