import { describe, expect, it } from 'vitest';
import { type Circuit, circuitOf } from '../../../src/machine/circuit.ts';
import { type ElectricalModel, newObservation } from '../../../src/machine/electricalModel.ts';
import { NOTHING_INSERTED } from '../../../src/machine/inserted.ts';
import { noPoles } from '../../../src/machine/noPoles.ts';
import { supplyVector } from '../../../src/machine/supplyVector.ts';
import { threePoles } from '../../../src/machine/threePoles.ts';
import { twoPoles } from '../../../src/machine/twoPoles.ts';
import { DOUBLE_CAGE } from '../../support/textbookMachines.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';

const { machine } = DOUBLE_CAGE;
const supply = {
  ...DOUBLE_CAGE.supply,
  angle: 0.4,
  sourceResistance: 0.05,
  sourceInductance: 0.4e-3,
  cable: { resistance: 0.02, inductance: 0.15e-3 },
};
const circuit: Circuit = circuitOf(machine, supply, { ...NOTHING_INSERTED, lineResistance: 0.3 });
const FLUX = [0.9, -0.2, 0.85, 0.1, 0.8, -0.15];
const T = 0.0123;
const OMEGA_M = 61;
const THETA_M = 0.37;

const MODELS: readonly (readonly [string, ElectricalModel, readonly number[]])[] = [
  ['three poles, synchronous', threePoles(circuit, supplyVector(supply, [0, 1, 2])), FLUX],
  ['three poles, reverse sequence', threePoles(circuit, supplyVector(supply, [0, 2, 1])), FLUX],
  ['three poles, stationary', threePoles(circuit, supplyVector(supply, [0, 1, 2]), 'stationary'), FLUX],
  ['three poles, two terminals on one phase', threePoles(circuit, supplyVector(supply, [0, 0, 2])), FLUX],
  ['two poles, A open', twoPoles(circuit, supply, [-1, 1, 2]), FLUX],
  ['two poles, B open', twoPoles(circuit, supply, [0, -1, 2]), FLUX],
  ['two poles, C open, B on A', twoPoles(circuit, supply, [1, 0, -1]), FLUX],
  ['no poles', noPoles(circuit), FLUX],
];

/** A flux vector that the model can have: what is algebraic in it made so. */
function admissible(model: ElectricalModel, flux: readonly number[]): number[] {
  return [...model.toStationary(T, model.fromStationary(T, flux), 0)];
}

function observe(model: ElectricalModel, t: number, y: readonly number[], theta = 0) {
  const out = newObservation();
  model.observe(t, y, OMEGA_M, theta, out);
  return out;
}

/** Currents [is, ir1, ir2] of fluxes by the inductances, in stationary axes. */
function currentsOf(flux: readonly number[]): { is: [number, number]; ir: [number, number][] } {
  const g = [1 / circuit.L, ...machine.cages.map((cage) => 1 / cage.Llr)];
  const all = g.reduce((sum, x) => sum + x, 1 / machine.Lm);
  const main = [0, 1].map((axis) => g.reduce((sum, x, j) => sum + x * flux[2 * j + axis]!, 0) / all);
  const on = (j: number): [number, number] => [
    g[j]! * (flux[2 * j]! - main[0]!),
    g[j]! * (flux[2 * j + 1]! - main[1]!),
  ];
  return { is: on(0), ir: [on(1), on(2)] };
}

describe.each(MODELS)('the electrical model: %s', (_name, model, start) => {
  const flux = admissible(model, start);
  const y = model.fromStationary(T, flux);
  const seen = observe(model, T, y);
  const { is, ir } = currentsOf(flux);

  it('takes stationary fluxes to its states and back unchanged', () => {
    expect(y.length).toBe(model.size);
    expectAllWithin(model.toStationary(T, y, 0), flux, { absolute: 1e-14 }, 'flux');
  });

  it('shows the currents that the inductances give', () => {
    // A current is a small difference of fluxes over a leakage: rounding times a few hundred.
    expectAllWithin([seen.iAlpha, seen.iBeta], is, { absolute: 1e-10 }, 'stator current');
    expectWithin(seen.irSquared1, ir[0]![0] ** 2 + ir[0]![1] ** 2, { relative: 1e-10 }, 'cage 1');
    expectWithin(seen.irSquared2, ir[1]![0] ** 2 + ir[1]![1] ** 2, { relative: 1e-10 }, 'cage 2');
  });

  it('gives each terminal the projection of that current, and no current to an open one', () => {
    const third = (2 * Math.PI) / 3;
    for (const k of [0, 1, 2]) {
      const projected = is[0] * Math.cos(k * third) + is[1] * Math.sin(k * third);
      expectWithin(model.terminalCurrent(T, y, k), projected, { absolute: 1e-10 }, `terminal ${k}`);
    }
  });

  it('has the torque (3/2)·p·Im(ψs*·is) of the machine’s own flux', () => {
    const psi = [flux[0]! - circuit.seriesL * is[0], flux[1]! - circuit.seriesL * is[1]] as const;
    const torque = 1.5 * machine.polePairs * (psi[0] * is[1] - psi[1] * is[0]);
    expectWithin(seen.torque, torque, { absolute: 1e-8 }, 'observed torque');
    expectWithin(
      model.derivatives(T, y, OMEGA_M, []),
      torque,
      { absolute: 1e-8 },
      'torque of the right-hand side',
    );
    expectAllWithin([seen.psiAlpha, seen.psiBeta], psi, { absolute: 1e-12 }, 'stator flux');
  });

  it('stores ½·Σ L·i² in its inductances', () => {
    const sum = [is[0] + ir[0]![0] + ir[1]![0], is[1] + ir[0]![1] + ir[1]![1]];
    const square = ([a, b]: readonly number[]) => a! * a! + b! * b!;
    const energy =
      0.75 *
      (circuit.L * square(is) +
        machine.cages.reduce((total, cage, j) => total + cage.Llr * square(ir[j]!), 0) +
        machine.Lm * square(sum));
    expectWithin(seen.magneticEnergy, energy, { relative: 1e-11 }, 'magnetic energy');
  });

  it('obeys the voltage equations: source = R·i + dψs/dt on the closed terminals, 0 = Rr·ir + dψr/dt − jω_r·ψr', () => {
    // Derivatives of the stationary fluxes by central differences along the model's own right-hand side.
    const dydt: number[] = [];
    model.derivatives(T, y, OMEGA_M, dydt);
    const h = 1e-6;
    const at = (sign: number) =>
      model.toStationary(
        T + sign * h,
        y.map((value, i) => value + sign * h * dydt[i]!),
        sign * h * OMEGA_M,
      );
    const [before, after] = [at(-1), at(1)];
    const rate = flux.map((_, i) => (after[i]! - before[i]!) / (2 * h));
    // 400 V over h² of the third derivative (ω³·ψ/6) is 1e-5 V.
    const allowed = { absolute: 1e-4 };
    const omegaR = machine.polePairs * OMEGA_M;
    for (const j of [0, 1]) {
      const re = machine.cages[j]!.Rr * ir[j]![0] + rate[2 + 2 * j]! + omegaR * flux[3 + 2 * j]!;
      const im = machine.cages[j]!.Rr * ir[j]![1] + rate[3 + 2 * j]! - omegaR * flux[2 + 2 * j]!;
      expectAllWithin([re, im], [0, 0], allowed, `cage ${j} voltage`);
    }
    // Terminal voltage of the machine: Rs·i + d(ψs without the share of source and cable)/dt.
    const { is: isBefore } = currentsOf(before);
    const { is: isAfter } = currentsOf(after);
    const terminal = [0, 1].map((axis) => {
      const di = (isAfter[axis]! - isBefore[axis]!) / (2 * h);
      return machine.Rs * is[axis]! + rate[axis]! - circuit.seriesL * di;
    });
    expectAllWithin([seen.uAlpha, seen.uBeta], terminal, allowed, 'terminal voltage');
    // Power from the source less its own drop is what enters the machine.
    const source = seen.vAlpha * is[0] + seen.vBeta * is[1];
    const balance = (circuit.R * is[0] + rate[0]!) * is[0] + (circuit.R * is[1] + rate[1]!) * is[1];
    expectWithin(source, balance, { absolute: 1e-2 * Math.max(1, Math.hypot(...is) / 100) }, 'source power');
  });
});

describe('two poles', () => {
  it('show the line voltage of the two closed phases across the closed terminals, less the source’s drop', () => {
    const stiff = { ...DOUBLE_CAGE.supply, angle: supply.angle };
    const model = twoPoles(circuitOf(machine, stiff), stiff, [0, -1, 2]);
    const seen = observe(model, T, model.fromStationary(T, FLUX));
    // u_C − u_A from the space vector, against the definition of the supply.
    const third = (2 * Math.PI) / 3;
    const uC = seen.uAlpha * Math.cos(2 * third) + seen.uBeta * Math.sin(2 * third);
    const crest = 400 * Math.sqrt(2 / 3);
    const phase = (k: number) => crest * Math.cos(100 * Math.PI * T + 0.4 - k * third);
    expectWithin(uC - seen.uAlpha, phase(2) - phase(0), { absolute: 1e-9 }, 'line voltage');
  });
});

describe('no poles', () => {
  it('keep flux in rotor axes: a turn of the shaft turns what is seen', () => {
    const model = noPoles(circuit);
    const y = model.fromStationary(0, FLUX);
    const a = observe(model, T, y, 0);
    const b = observe(model, T, y, THETA_M);
    const angle = Math.atan2(b.psiRBeta, b.psiRAlpha) - Math.atan2(a.psiRBeta, a.psiRAlpha);
    expectWithin(angle, machine.polePairs * THETA_M, { absolute: 1e-12 }, 'angle');
    expect(b.torque).toBe(0);
  });
});
