import { describe, expect, it } from 'vitest';
import { breakdown } from '../../../src/machine/breakdown.ts';
import { circuitOf } from '../../../src/machine/circuit.ts';
import { connectedModel } from '../../../src/machine/connectedModel.ts';
import { newObservation } from '../../../src/machine/electricalModel.ts';
import { ratedPoint } from '../../../src/machine/ratedPoint.ts';
import { steadyFlux } from '../../../src/machine/steadyFlux.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { supplyVector } from '../../../src/machine/supplyVector.ts';
import { twoPoleSteadyState } from '../../../src/machine/twoPoleSteadyState.ts';
import { add, type Complex, magnitude, multiply } from '../../../src/numeric/complex.ts';
import type { MachineData, Supply } from '../../../src/scenario/scenario.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';
import {
  LEAKAGE_SATURATION,
  LINEAR,
  leakageFlux,
  magnetisingCurrent,
  OMEGA,
  oneCage,
  RATED_FLUX,
  SUPPLY,
  WITH_ALL,
  WITH_CORE,
  WITH_LEAKAGE,
  WITH_MAIN,
} from './saturableMachine.ts';

/** Main and leakage saturation, no core. */
const WITH_BOTH: MachineData = { ...WITH_MAIN, leakageSaturation: LEAKAGE_SATURATION };

/** The supply whose phase voltage has a given crest. */
const suppliedAt = (crest: number): Supply => ({ ...SUPPLY, lineVoltage: crest * Math.sqrt(3 / 2) });

/**
 * A steady state chosen by its currents, all crest values: the main flux, then the cage currents that this flux drives, the
 * stator current as their sum, and last the voltage that it all takes. Nothing has to be solved but the cage's scalar
 * equation |Rr/s + jω·λ(i)/i|·i = ωψ, by bisection.
 */
function chosenByFlux(machine: MachineData, flux: number, slip: number): { crest: number; current: number } {
  const { leakageSaturation: leakage } = machine;
  const airGap: Complex = [0, OMEGA * flux];
  const im = machine.mainSaturation ? magnetisingCurrent(flux) : flux / machine.Lm;
  let stator: Complex = [im, 0];
  for (const [j, { Rr, Llr }] of machine.cages.entries()) {
    const saturation = leakage?.cages[j] ?? null;
    const drop = (i: number) =>
      Math.hypot((Rr * i) / slip, OMEGA * leakageFlux(Llr, saturation, i)) - OMEGA * flux;
    let [low, high] = [0, (OMEGA * flux * Math.abs(slip)) / Rr];
    for (let n = 0; n < 80; n++) {
      if (drop((low + high) / 2) < 0) low = (low + high) / 2;
      else high = (low + high) / 2;
    }
    const i = slip === 0 ? 0 : (low + high) / 2;
    if (i === 0) continue;
    const R = Rr / slip;
    const X = (OMEGA * leakageFlux(Llr, saturation, i)) / i;
    const norm = R * R + X * X;
    stator = add(stator, multiply(airGap, [R / norm, -X / norm]));
  }
  const i = magnitude(stator);
  const X = (OMEGA * leakageFlux(machine.Lls, leakage?.stator ?? null, i)) / i;
  return { crest: magnitude(add(airGap, multiply([machine.Rs, X], stator))), current: i };
}

describe('saturation in steady state', () => {
  it('of the main flux: at no load the current is that of the curve', () => {
    const { Rs, Lls } = WITH_MAIN;
    for (const pu of [0.5, 0.9, 1, 1.1, 1.4]) {
      const flux = pu * RATED_FLUX;
      const im = magnetisingCurrent(flux);
      // Flux and current in phase: u = Rs·i + jω·(Lls·i + ψ)
      const supply = suppliedAt(Math.hypot(Rs * im, OMEGA * (Lls * im + flux)));
      const state = steadyState(WITH_MAIN, supply, 0);
      expectWithin(
        state.current,
        im / Math.SQRT2,
        { relative: 1e-13 },
        `no-load current at ${pu} of rated flux`,
      );
    }
    // And as much more than the linear circuit takes at 1.1 times rated flux.
    const flux = 1.1 * RATED_FLUX;
    const im = magnetisingCurrent(flux);
    const supply = suppliedAt(Math.hypot(Rs * im, OMEGA * (Lls * im + flux)));
    expect(
      steadyState(WITH_MAIN, supply, 0).current / steadyState(LINEAR, supply, 0).current,
    ).toBeGreaterThan(1.5);
  });

  it.each([
    ['main flux, one cage', oneCage(WITH_MAIN)],
    ['leakage, one cage', oneCage(WITH_LEAKAGE)],
    ['leakage, two cages', WITH_LEAKAGE],
    ['both, two cages', WITH_BOTH],
  ])('gives the current of a state chosen beforehand, locked, running, plugging: %s', (_name, machine) => {
    for (const slip of [1, 2, 1.9, 0.3, 0.03, 1e-6, -0.03, -1])
      for (const pu of [0.1, 0.5, 0.9, 1.3]) {
        const { crest, current } = chosenByFlux(machine, pu * RATED_FLUX, slip);
        const state = steadyState(machine, suppliedAt(crest), slip);
        // Inverse problem: a rounding of the voltage moves the current by the slope of the curve, tenfold at most.
        expectWithin(state.current, current / Math.SQRT2, { relative: 1e-12 }, `slip ${slip}, flux ${pu}`);
      }
  });

  it('raises the locked-rotor current of the leakage paths above that of the linear circuit', () => {
    const ratio = steadyState(WITH_LEAKAGE, SUPPLY, 1).current / steadyState(LINEAR, SUPPLY, 1).current;
    // Both leakages fall to about two thirds; the resistances stay.
    expect(ratio).toBeGreaterThan(1.2);
    expect(ratio).toBeLessThan(1.6);
  });

  it('vanishes at small voltage', () => {
    const weak = { ...SUPPLY, lineVoltage: 0.4 };
    for (const slip of [0, 0.05, 1, 2]) {
      const state = steadyState(WITH_BOTH, weak, slip);
      // 1 A of 100: the leakage law bends by (i/I)²/2.
      expectWithin(
        state.current,
        steadyState(LINEAR, weak, slip).current,
        { relative: 1e-4 },
        `slip ${slip}`,
      );
    }
  });
});

describe('steadyFlux with everything switched on', () => {
  const source = {
    ...SUPPLY,
    angle: 1.1,
    sourceResistance: 0.04,
    sourceInductance: 0.5e-3,
    cable: { resistance: 0.02, inductance: 0.05e-3 },
  };
  const inserted = { lineResistance: 0.3, rotorResistance: 0.4, star: false };
  const synchronous = OMEGA / WITH_ALL.polePairs;

  it.each([
    ['main flux', WITH_MAIN],
    ['leakage', WITH_LEAKAGE],
    ['core', WITH_CORE],
    ['everything', WITH_ALL],
    ['everything, one cage', oneCage(WITH_ALL)],
  ])('is where the right-hand side stands still, at any slip and voltage: %s', (_name, machine) => {
    for (const connection of [
      [0, 1, 2],
      [0, 2, 1],
    ] as const)
      for (const voltage of [0.1, 1, 3])
        for (let slip = -2; slip <= 2.001; slip += 0.1) {
          const supply = { ...source, lineVoltage: voltage * source.lineVoltage };
          const applied = supplyVector(supply, connection);
          const model = connectedModel(
            circuitOf(machine, supply, inserted),
            supply,
            { kind: 'three', connection },
            'auto',
          );
          const flux = steadyFlux(machine, supply, applied, slip, inserted);
          const y = model.fromStationary(0, flux);
          const omegaM = applied.sequence * (1 - slip) * synchronous;
          const dydt: number[] = [];
          const torque = model.derivatives(0, y, omegaM, dydt);
          // Volts: roundings of 400 V, carried through currents of kiloamperes.
          expectAllWithin(
            dydt,
            dydt.map(() => 0),
            { absolute: 1e-10 * supply.lineVoltage },
            `slip ${slip}`,
          );
          const state = steadyState(machine, supply, slip, inserted);
          const out = newObservation();
          model.observe(0, y, omegaM, 0, out);
          const close = { relative: 1e-10, absolute: 1e-7 };
          expectWithin(torque, applied.sequence * state.torque, close, 'torque');
          expectWithin(Math.hypot(out.iAlpha, out.iBeta), Math.SQRT2 * state.current, close, 'current');
          const terminal = Math.sqrt(1.5) * Math.hypot(out.uAlpha, out.uBeta);
          expectWithin(terminal, state.terminalVoltage, close, 'terminal voltage');
        }
  });
});

describe('figures of a saturating machine', () => {
  it('breakdown is the largest torque of the saturated curve', () => {
    const top = breakdown(WITH_ALL, SUPPLY);
    for (let slip = 0.002; slip < 4; slip *= 1.05)
      expect(steadyState(WITH_ALL, SUPPLY, slip).torque).toBeLessThanOrEqual(top.torque * (1 + 1e-12));
    expect(top.torque).toBeGreaterThan(breakdown(WITH_CORE, SUPPLY).torque);
  });

  it('rated point delivers the rated power at the shaft, bearings and windage taken off', () => {
    const loss = { friction: 2, windage: 1e-3 };
    const rated = ratedPoint({ ...WITH_ALL, mechanicalLoss: loss }, SUPPLY);
    const state = steadyState(WITH_ALL, SUPPLY, rated.slip!);
    expectWithin(rated.torque * rated.speed!, 22e3, { relative: 1e-12 }, 'power');
    const lost = loss.friction + loss.windage * rated.speed! ** 2;
    expectWithin(state.torque - rated.torque, lost, { relative: 1e-10 }, 'torque lost on the way');
    expectWithin(rated.current, state.current, { relative: 1e-14 }, 'current');
  });

  it('two terminals: no closed form with saturation, and it says so', () => {
    expect(() => twoPoleSteadyState(WITH_MAIN, SUPPLY, 0.1)).toThrow(/linear/);
    expect(() => twoPoleSteadyState(WITH_LEAKAGE, SUPPLY, 0.1)).toThrow(/linear/);
    expect(twoPoleSteadyState(WITH_CORE, SUPPLY, 0.1).torque).toBeGreaterThan(0);
  });
});
