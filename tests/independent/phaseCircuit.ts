import { type DriveTrain, driveTrain, type ShaftMode } from './driveTrain.ts';
import { keepFluxes } from './keepFluxes.ts';
import { loopEquations } from './loopEquations.ts';
import type { ScenarioShape } from './scenarioShape.ts';
import { type StateIndex, stateIndex } from './stateIndex.ts';
import { impedanceScale, windingMachine } from './windingMachine.ts';

/**
 * Source, lines, machine and shaft as one system of equations. The states are currents: of the three lines, and of every other
 * winding. A winding of a delta machine carries (i_k − i_next)/3 while in delta, the line current while in star; nothing else
 * is different between the two.
 *   around every loop of conductors:  Σ (∂ψ/∂i)·di/dt = Σ (v − R·i − ω·∂ψ/∂θ)
 * Three poles: line loops A–C and B–C; two poles: the one loop through them; none: no line loop.
 */
export interface PhaseCircuit {
  readonly size: number;
  readonly index: StateIndex;
  readonly train: DriveTrain;
  setMode(mode: Mode): void;
  /** Derivative of the whole state in the mode last set. */
  rhs(dydt: Float64Array, y: Float64Array, t: number): void;
  /** Air-gap torque, N·m, in the mode last set. */
  torque(y: Float64Array): number;
  /** Its time derivative, N·m/s, from the state and the state's derivative. */
  torqueRate(y: Float64Array, f: Float64Array): number;
  /** Voltages between motor terminals and the star point of an equal star, V, also of terminals that are open. */
  terminalVoltages(y: Float64Array, f: Float64Array): readonly [number, number, number];
  /** Electromotive force of supply phase k (0, 1, 2), V. */
  sourceVoltage(k: number, t: number): number;
  /** Energy stored in all inductances, source and cable included, J. */
  magneticEnergy(y: Float64Array): number;
  /** Currents after poles have chopped: flux through every loop left in the mode last set is kept. */
  chop(y: Float64Array): void;
}

/** What stands in the circuit besides machine and source. */
export interface InsertedParts {
  /** In each line, Ω. */
  readonly line: number;
  /** At the slip rings, Ω of the equivalent star as built. */
  readonly rotor: number;
  /** A delta machine in star. */
  readonly star: boolean;
}

/** What is fixed between two switchings. */
export interface Mode extends ShaftMode {
  /** Supply phase (0, 1, 2) each motor terminal is connected to; −1: no current can flow there. */
  readonly supply: readonly [number, number, number];
  readonly inserted: InsertedParts;
}

export const NOTHING: InsertedParts = { line: 0, rotor: 0, star: false };

const HALF_SQRT3 = Math.sqrt(3) / 2;

/** Builds the circuit of a scenario's machine, source and load. */
export function phaseCircuit(scenario: ScenarioShape): PhaseCircuit {
  const { supply, machine } = scenario;
  const index = stateIndex(scenario);
  const train = driveTrain(scenario, index);
  const wound = windingMachine(scenario);
  const { windings } = wound;
  const scale = impedanceScale(scenario);
  const p = machine.polePairs;
  const crest = Math.sqrt(2 / 3) * supply.lineVoltage;
  const angularFrequency = 2 * Math.PI * supply.frequency;
  const feederR = supply.sourceResistance + (supply.cable?.resistance ?? 0);
  const feederL = supply.sourceInductance + (supply.cable?.inductance ?? 0);
  const isDelta = machine.connection === 'delta';
  // Winding k of the delta lies between terminal k and the next (AB) or the one before (AC).
  const partner = scenario.starter.windingOrder === 'AC' ? [2, 0, 1] : [1, 2, 0];
  const ironAt = machine.core ? windings - 3 : windings;

  const L = new Float64Array(windings * windings);
  const loops = loopEquations(L, windings);
  let mode: Mode | null = null;
  let delta = false;
  const w = new Float64Array(windings);
  const own = new Float64Array(windings);
  const ownRate = new Float64Array(windings);
  const emf = new Float64Array(3);
  const triple = new Float64Array(3);

  function setMode(next: Mode): void {
    if (next === mode) return;
    mode = next;
    delta = isDelta && !next.inserted.star;
    loops.clear();
    const live = [0, 1, 2].filter((k) => next.supply[k]! >= 0);
    const last = live.at(-1);
    if (last !== undefined) for (const k of live.slice(0, -1)) loops.add(k, last);
    for (let k = 3; k < windings; k += 3) {
      loops.add(k, k + 2);
      loops.add(k + 1, k + 2);
    }
  }

  /** Winding currents of a state (or of its derivative). */
  function toWindings(y: Float64Array, out: Float64Array): void {
    for (let k = 0; k < 3; k++) out[k] = delta ? (y[k]! - y[partner[k]!]!) / 3 : y[k]!;
    for (let k = 3; k < windings; k++) out[k] = y[k]!;
  }

  /** Turns what belongs to stator windings (voltages, fluxes) into what belongs to lines, in place. */
  function toLines(x: Float64Array): void {
    if (!delta) return;
    for (let k = 0; k < 3; k++) triple[k] = x[k]! / 3;
    for (let k = 0; k < 3; k++) {
      x[k] = triple[k]!;
    }
    for (let k = 0; k < 3; k++) x[partner[k]!] = x[partner[k]!]! - triple[k]!;
  }

  /** Incremental inductances seen from lines and other windings. */
  function fillInductances(): void {
    L.set(wound.inductance);
    if (delta) {
      const column = new Float64Array(3);
      for (let k = 0; k < windings; k++) {
        for (let s = 0; s < 3; s++) column[s] = L[s * windings + k]!;
        toLines(column);
        for (let s = 0; s < 3; s++) L[s * windings + k] = column[s]!;
      }
      for (let k = 0; k < windings; k++) {
        for (let s = 0; s < 3; s++) column[s] = L[k * windings + s]!;
        toLines(column);
        for (let s = 0; s < 3; s++) L[k * windings + s] = column[s]!;
      }
    }
    const phases = mode!.supply;
    for (let s = 0; s < 3; s++) {
      // Two terminals on one supply phase share its impedance.
      for (let k = 0; k < 3; k++) {
        if (phases[s]! >= 0 && phases[s] === phases[k]) L[s * windings + k] = L[s * windings + k]! + feederL;
      }
    }
  }

  function sourceVoltage(k: number, t: number): number {
    return crest * Math.cos(angularFrequency * t + supply.angle - (k * 2 * Math.PI) / 3);
  }

  function rhs(dydt: Float64Array, y: Float64Array, t: number): void {
    const { supply: phases, inserted } = mode!;
    const omega = y[index.omega]!;
    const electrical = p * omega;
    toWindings(y, own);
    wound.set(own, p * y[index.theta]!);
    fillInductances();

    let statorHeat = 0;
    for (let k = 0; k < 3; k++) {
      const drop = wound.resistance[k]! * own[k]!;
      statorHeat += drop * own[k]!;
      w[k] = -drop - electrical * wound.turning[k]!;
    }
    dydt[index.statorHeat] = statorHeat;
    toLines(w);

    const angle = angularFrequency * t + supply.angle;
    const real = crest * Math.cos(angle);
    const imaginary = crest * Math.sin(angle);
    emf[0] = real;
    emf[1] = -0.5 * real + HALF_SQRT3 * imaginary;
    emf[2] = -0.5 * real - HALF_SQRT3 * imaginary;
    let power = 0;
    let lineHeat = 0;
    for (let s = 0; s < 3; s++) {
      const current = y[s]!;
      const phase = phases[s]!;
      if (phase >= 0) {
        let voltage = emf[phase]! - inserted.line * current;
        power += emf[phase]! * current;
        lineHeat += inserted.line * current * current;
        for (let k = 0; k < 3; k++) if (phases[k] === phase) voltage -= feederR * y[k]!;
        w[s] = w[s]! + voltage;
      }
      dydt[index.charge + s] = current;
      dydt[index.square + s] = current * current;
    }
    dydt[index.lineResistorHeat] = lineHeat;
    dydt[index.electricalIn] = power;

    const outside = scale * inserted.rotor;
    let ironHeat = 0;
    let outsideHeat = 0;
    for (let g = 1; 3 * g < windings; g++) {
      let heat = 0;
      for (let k = 3 * g; k < 3 * g + 3; k++) {
        const drop = wound.resistance[k]! * own[k]!;
        heat += drop * own[k]!;
        w[k] = -drop - electrical * wound.turning[k]!;
        if (g === 1) {
          w[k] = w[k]! - outside * own[k]!;
          outsideHeat += outside * own[k]! * own[k]!;
        }
      }
      if (3 * g === ironAt) ironHeat = heat;
      else dydt[index.rotorHeat + g - 1] = heat;
    }
    dydt[index.ironHeat] = ironHeat;
    dydt[index.rotorResistorHeat] = outsideHeat;
    loops.solve(w, dydt);

    const torque = wound.torque();
    dydt[index.airGapWork] = torque * omega;
    train.rates(dydt, y, torque, mode!);
  }

  function torque(y: Float64Array): number {
    toWindings(y, own);
    wound.setFluxOnly(own, p * y[index.theta]!);
    return wound.torque();
  }

  function torqueRate(y: Float64Array, f: Float64Array): number {
    torque(y);
    toWindings(f, ownRate);
    return wound.torqueRate(ownRate, p * y[index.omega]!);
  }

  function terminalVoltages(y: Float64Array, f: Float64Array): [number, number, number] {
    toWindings(y, own);
    toWindings(f, ownRate);
    wound.set(own, p * y[index.theta]!);
    const out = new Float64Array(3);
    for (let s = 0; s < 3; s++) {
      let voltage = wound.resistance[s]! * own[s]! + p * y[index.omega]! * wound.turning[s]!;
      for (let k = 0; k < windings; k++) voltage += wound.inductance[s * windings + k]! * ownRate[k]!;
      out[s] = voltage;
    }
    toLines(out);
    return [out[0]!, out[1]!, out[2]!];
  }

  /** Sum of the currents that a supply phase delivers. */
  function delivered(phase: number, y: Float64Array): number {
    let sum = 0;
    for (let k = 0; k < 3; k++) if (mode!.supply[k] === phase) sum += y[k]!;
    return sum;
  }

  function magneticEnergy(y: Float64Array): number {
    torque(y);
    let ahead = 0;
    for (let phase = 0; phase < 3; phase++) ahead += 0.5 * feederL * delivered(phase, y) ** 2;
    return wound.energy() + ahead;
  }

  /** Flux linkages of lines (feeder included) and windings at a state, into `out`. */
  function linkages(y: Float64Array, out: Float64Array): void {
    torque(y);
    out.set(wound.flux);
    toLines(out);
    for (let s = 0; s < 3; s++) {
      const phase = mode!.supply[s]!;
      if (phase >= 0) out[s] = out[s]! + feederL * delivered(phase, y);
    }
  }

  /** Difference of linkages around the loops, into `out`: what all conductors of a group share does not count. */
  function missingFlux(before: Float64Array, y: Float64Array, out: Float64Array): number {
    linkages(y, out);
    let square = 0;
    for (let g = 0; g < windings; g += 3) {
      const inLoops = [g, g + 1, g + 2].filter((k) => k > 2 || mode!.supply[k]! >= 0);
      let mean = 0;
      for (const k of inLoops) mean += (before[k]! - out[k]!) / inLoops.length;
      for (let k = g; k < g + 3; k++) {
        out[k] = inLoops.includes(k) ? before[k]! - out[k]! - mean : 0;
        square += out[k]! ** 2;
      }
    }
    return Math.sqrt(square);
  }

  function chop(y: Float64Array): void {
    const before = new Float64Array(windings);
    linkages(y, before);
    y.fill(0, 0, 3);
    keepFluxes(
      y,
      windings,
      before.reduce((most, value) => Math.max(most, Math.abs(value)), 0),
      {
        missing: (state, out) => missingFlux(before, state, out),
        currentsFor(state, flux, out) {
          toWindings(state, own);
          wound.set(own, p * state[index.theta]!);
          fillInductances();
          loops.solve(flux, out);
        },
      },
    );
  }

  return {
    size: index.size,
    index,
    train,
    setMode,
    rhs,
    torque,
    torqueRate,
    terminalVoltages,
    sourceVoltage,
    magneticEnergy,
    chop,
  };
}
