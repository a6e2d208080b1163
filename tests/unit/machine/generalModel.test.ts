import { describe, expect, it } from 'vitest';
import { type Circuit, circuitOf } from '../../../src/machine/circuit.ts';
import { type ConductingSet, connectedModel } from '../../../src/machine/connectedModel.ts';
import {
  type ElectricalModel,
  newObservation,
  type Observation,
} from '../../../src/machine/electricalModel.ts';
import { magneticsOf } from '../../../src/machine/magnetics.ts';
import type { MachineData } from '../../../src/scenario/scenario.ts';
import { errorInTolerances, expectAllWithin, expectWithin } from '../../support/tolerance.ts';
import {
  LINEAR,
  oneCage,
  RATED_FLUX,
  repeatableNumbers,
  SUPPLY,
  WITH_ALL,
  WITH_CORE,
  WITH_LEAKAGE,
  WITH_MAIN,
} from './saturableMachine.ts';

const T = 0.0123;
const THETA = 0.37;
const weak = {
  ...SUPPLY,
  angle: 0.4,
  sourceResistance: 0.05,
  sourceInductance: 0.4e-3,
  cable: { resistance: 0.03, inductance: 0.1e-3 },
};
const inserted = { lineResistance: 0.2, rotorResistance: 0.1, star: false };

type Case = readonly [string, ConductingSet, 'auto' | 'stationary'];
const CASES: readonly Case[] = [
  ['three poles, synchronous', { kind: 'three', connection: [0, 1, 2] }, 'auto'],
  ['three poles, reverse sequence', { kind: 'three', connection: [0, 2, 1] }, 'auto'],
  ['three poles, stationary', { kind: 'three', connection: [0, 1, 2] }, 'stationary'],
  ['three poles, two terminals on one phase', { kind: 'three', connection: [0, 0, 2] }, 'auto'],
  ['two poles, A open', { kind: 'two', connection: [-1, 1, 2] }, 'auto'],
  ['two poles, C open, B on A', { kind: 'two', connection: [1, 0, -1] }, 'auto'],
  ['no poles', { kind: 'none', connection: [-1, -1, -1] }, 'auto'],
];

/** Every branch saturable by form, yet a straight line. */
function straightened(machine: MachineData): MachineData {
  return {
    ...machine,
    mainSaturation: [0.7, 1.1].map((flux) => ({ flux, current: flux / machine.Lm })),
    leakageSaturation: {
      stator: { current: 50, remaining: 1 },
      cages: machine.cages.map(() => ({ current: 40, remaining: 1 })),
    },
  };
}

const modelOf = (circuit: Circuit, [, poles, frame]: Case) => connectedModel(circuit, weak, poles, frame);

function seenBy(
  model: ElectricalModel,
  t: number,
  y: readonly number[],
  omegaM: number,
  theta = THETA,
): Observation {
  const out = newObservation();
  model.observe(t, y, omegaM, theta, out);
  return out;
}

/** Fluxes around a common vector, so that currents are a few times rated. */
function randomFlux(circuit: Circuit, random: () => number): number[] {
  const common = [1.2 * RATED_FLUX * random(), 1.2 * RATED_FLUX * random()];
  const pairs = 1 + circuit.cageCount + (circuit.core ? 1 : 0);
  return Array.from({ length: 2 * pairs }, (_, n) => common[n % 2]! + 0.25 * RATED_FLUX * random());
}

describe.each(CASES)('the general model with straight curves, %s', (...which) => {
  it.each([
    ['one cage', oneCage(LINEAR)],
    ['two cages', LINEAR],
  ])('is the plain model: %s', (_name, machine) => {
    const plain = circuitOf(machine, weak, inserted);
    const straight = circuitOf(straightened(machine), weak, inserted);
    expect(plain.saturation).toBe(null);
    expect(straight.saturation).not.toBe(null);
    const [expected, general] = [modelOf(plain, which), modelOf(straight, which)];
    expect([general.size, general.frame]).toEqual([expected.size, expected.frame]);
    const random = repeatableNumbers(3);
    for (let n = 0; n < 50; n++) {
      const omegaM = 100 * random();
      const flux = randomFlux(plain, random);
      const y = expected.fromStationary(T, flux);
      expect(general.fromStationary(T, flux)).toEqual(y);
      // Currents are differences of fluxes over a leakage: ε·1 Wb/0.4 mH is 5e-13 A of several hundred.
      const near = { relative: 1e-12, absolute: 1e-11 };
      expectAllWithin(general.toStationary(T, y, THETA), expected.toStationary(T, y, THETA), near, 'flux');
      const [a, b] = [[], []] as [number[], number[]];
      const torque = expected.derivatives(T, y, omegaM, a);
      expectWithin(
        general.derivatives(T, y, omegaM, b),
        torque,
        { relative: 1e-12, absolute: 1e-10 },
        'torque',
      );
      expectAllWithin(b, a, near, 'derivative');
      const [wanted, seen] = [seenBy(expected, T, y, omegaM), seenBy(general, T, y, omegaM)];
      // Volts come from rates of current, 1e6 A/s; energies and squared currents from hundreds of amperes squared.
      for (const key of Object.keys(wanted) as (keyof Observation)[])
        expectWithin(seen[key], wanted[key], { relative: 1e-12, absolute: 1e-9 }, key);
      for (const k of [0, 1, 2])
        expectWithin(
          general.terminalCurrent(T, y, k),
          expected.terminalCurrent(T, y, k),
          near,
          `terminal ${k}`,
        );
    }
  });
});

describe.each(
  [
    ['main saturation', WITH_MAIN],
    ['leakage saturation', WITH_LEAKAGE],
    ['core', WITH_CORE],
    ['everything', WITH_ALL],
    ['everything and one cage', oneCage(WITH_ALL)],
  ].flatMap(([name, machine]) => CASES.map((which) => [`${name}, ${which[0]}`, machine, which] as const)),
)('the general model: %s', (_name, machine, which) => {
  const circuit = circuitOf(machine as MachineData, weak, inserted);
  const model = modelOf(circuit, which);
  const stator = which[1].kind === 'three' ? 'both' : which[1].kind === 'two' ? 'beta' : 'open';
  const magnetics = magneticsOf(circuit, stator);
  const axis = which[1].kind === 'two' ? (which[1].connection.indexOf(-1) * 2 * Math.PI) / 3 : 0;

  it('balances: source power = resistive losses + change of stored energy + torque × speed', () => {
    const random = repeatableNumbers(5);
    for (let n = 0; n < 50; n++) {
      const omegaM = 150 * random();
      const y = model.fromStationary(T, randomFlux(circuit, random));
      const seen = seenBy(model, T, y, omegaM, 0);
      const dydt: number[] = [];
      model.derivatives(T, y, omegaM, dydt);
      // Σ i·dψ/dt of every winding in stationary axes: turn of the axes times the flux added to the model's rates.
      const synchronous = model.frame.startsWith('synchronous') ? (which[1].connection[1] === 1 ? 1 : -1) : 0;
      const turn =
        stator === 'open' ? circuit.polePairs * omegaM : synchronous * 2 * Math.PI * weak.frequency;
      const offset = stator === 'both' ? 0 : stator === 'beta' ? 1 : 2;
      for (let m = offset; m < magnetics.psi.length; m++) magnetics.psi[m] = y[m - offset]!;
      magnetics.solve();
      const { psi, current } = magnetics;
      const rate = (m: number) =>
        (m < offset ? 0 : dydt[m - offset]!) + (m % 2 === 0 ? -turn * psi[m + 1]! : turn * psi[m - 1]!);
      let stored = 0;
      let thrown = 0;
      for (let m = offset; m < psi.length; m++) {
        stored += 1.5 * current[m]! * rate(m);
        thrown += Math.abs(1.5 * current[m]! * rate(m));
      }
      const source = 1.5 * (seen.vAlpha * seen.iAlpha + seen.vBeta * seen.iBeta);
      const losses =
        1.5 *
        (circuit.R * (seen.iAlpha ** 2 + seen.iBeta ** 2) +
          circuit.Rr[0]! * seen.irSquared1 +
          (circuit.Rr[1] ?? 0) * seen.irSquared2 +
          (circuit.core?.R ?? 0) * seen.coreSquared);
      const scale = thrown + losses + Math.abs(source);
      expectWithin(losses + stored + seen.torque * omegaM, source, { absolute: 1e-12 * scale }, 'power');
    }
  });

  it('shows a stored energy that changes by Σ i·dψ', () => {
    const random = repeatableNumbers(6);
    const y = model.fromStationary(T, randomFlux(circuit, random));
    const offset = stator === 'both' ? 0 : stator === 'beta' ? 1 : 2;
    for (let m = offset; m < magnetics.psi.length; m++) magnetics.psi[m] = y[m - offset]!;
    magnetics.solve();
    const h = 1e-6;
    for (let m = 0; m < model.size; m++) {
      const energy = (by: number) =>
        seenBy(
          model,
          T,
          y.map((value, k) => (k === m ? value + by : value)),
          50,
        ).magneticEnergy;
      // Differences of a smooth energy: h² of its third derivative against rounding ε·W/h.
      const slope = (energy(h) - energy(-h)) / (2 * h);
      expectWithin(
        slope,
        1.5 * magnetics.current[m + offset]!,
        { relative: 1e-6, absolute: 1e-4 },
        `current ${m}`,
      );
    }
  });

  it('obeys the voltage equations on the closed terminals, in the rotor and in the core', () => {
    const random = repeatableNumbers(8);
    const omegaM = 61;
    const y = model.fromStationary(T, randomFlux(circuit, random));
    const seen = seenBy(model, T, y, omegaM, 0);
    const dydt: number[] = [];
    model.derivatives(T, y, omegaM, dydt);
    const h = 1e-7;
    const at = (time: number) => {
      const moved = y.map((value, m) => value + time * dydt[m]!);
      const theta = time * omegaM;
      const out = seenBy(model, T + time, moved, omegaM, theta);
      return { flux: model.toStationary(T + time, moved, theta), i: [out.iAlpha, out.iBeta] as const };
    };
    const [before, now, after] = [at(-h), at(0), at(h)];
    const rate = now.flux.map((_, m) => (after.flux[m]! - before.flux[m]!) / (2 * h));
    const di = [0, 1].map((a) => (after.i[a]! - before.i[a]!) / (2 * h));
    // Fluxes of 1 Wb rounded over 2e-7 s are 1e-9 V; the third derivative of a turning flux, ω³·ψ·h², is 1e-7 V. Source and
    // cable turn the rate of current (rounded: 1e-12 A over 2e-7 s) into volts.
    const allowed = { absolute: 1e-5 };
    const terminal = [0, 1].map((a) => circuit.Rs * now.i[a]! + rate[a]! - circuit.seriesL * di[a]!);
    expectAllWithin([seen.uAlpha, seen.uBeta], terminal, allowed, 'terminal voltage');
    const source = [seen.vAlpha, seen.vBeta].map((v, a) => v - circuit.R * now.i[a]! - rate[a]!);
    // Along the axis of an open terminal no source acts.
    const closed = stator === 'both' ? source : [source[1]! * Math.cos(axis) - source[0]! * Math.sin(axis)];
    if (stator !== 'open')
      expectAllWithin(
        closed,
        closed.map(() => 0),
        allowed,
        'source less drops',
      );
    // Rotor: 0 = Rr·ir + dψr/dt − jω_r·ψr, so that |dψr/dt − jω_r·ψr| = Rr·|ir|; the core is at rest.
    const induced = (pair: number, turn: number) =>
      Math.hypot(rate[pair]! + turn * now.flux[pair + 1]!, rate[pair + 1]! - turn * now.flux[pair]!);
    const omegaR = circuit.polePairs * omegaM;
    expectWithin(induced(2, omegaR), circuit.Rr[0]! * Math.sqrt(seen.irSquared1), allowed, 'cage 1');
    if (circuit.cageCount > 1)
      expectWithin(induced(4, omegaR), circuit.Rr[1]! * Math.sqrt(seen.irSquared2), allowed, 'cage 2');
    if (circuit.core)
      expectWithin(
        induced(2 + 2 * circuit.cageCount, 0),
        circuit.core.R * Math.sqrt(seen.coreSquared),
        allowed,
        'core',
      );
  });

  it('pulls the rotor one way and what stands still the other', () => {
    const random = repeatableNumbers(9);
    const y = model.fromStationary(T, randomFlux(circuit, random));
    const offset = stator === 'both' ? 0 : stator === 'beta' ? 1 : 2;
    for (let m = offset; m < magnetics.psi.length; m++) magnetics.psi[m] = y[m - offset]!;
    magnetics.solve();
    const { main, current } = magnetics;
    let pull = 0;
    for (let k = 1; k <= circuit.cageCount; k++)
      pull -= 1.5 * circuit.polePairs * (main[0]! * current[2 * k + 1]! - main[1]! * current[2 * k]!);
    const torque = model.derivatives(T, y, 50, []);
    // The pulls cancel as far as the currents along the main flux do: roundings of some thousand N·m.
    expectWithin(torque, pull, { relative: 1e-12, absolute: 1e-9 }, 'torque on the cages');
  });
});

describe('an element that is absent', () => {
  it('makes a circuit that the plain models serve, and changes no bit of its constants', () => {
    const plain = circuitOf(LINEAR, weak);
    expect([plain.core, plain.saturation]).toEqual([null, null]);
    const bare = circuitOf(LINEAR, { sourceResistance: 0.05, sourceInductance: 0.4e-3 });
    expect(bare.R).toBe(LINEAR.Rs + 0.05);
    expect(bare.L).toBe(LINEAR.Lls + 0.4e-3);
    expect(bare.Rr).toEqual(LINEAR.cages.map((cage) => cage.Rr));
    expect(bare.gr).toEqual(LINEAR.cages.map((cage) => 1 / cage.Llr));
    expect([bare.seriesR, bare.seriesL]).toEqual([0.05, 0.4e-3]);
    const stator = [{ stator: null, cages: [null, null] }];
    expect(circuitOf({ ...LINEAR, leakageSaturation: stator[0]! }, weak).saturation).toBe(null);
  });
});

describe('a general model', () => {
  it('gives an open terminal no current and the other two opposite ones', () => {
    const model = connectedModel(circuitOf(WITH_ALL, weak), weak, { kind: 'two', connection: [0, -1, 2] });
    const y = model.fromStationary(T, randomFlux(circuitOf(WITH_ALL, weak), repeatableNumbers(2)));
    const [iA, iB, iC] = [0, 1, 2].map((k) => model.terminalCurrent(T, y, k));
    expect(Math.abs(iB!)).toBe(0);
    expect(errorInTolerances(iA!, -iC!, { relative: 1e-14 })).toBeLessThanOrEqual(1);
    expect(Math.abs(iA!)).toBeGreaterThan(1);
  });
});
