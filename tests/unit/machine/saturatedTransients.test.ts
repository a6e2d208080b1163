import { describe, expect, it } from 'vitest';
import { circuitOf } from '../../../src/machine/circuit.ts';
import { connectedModel } from '../../../src/machine/connectedModel.ts';
import type { MachineData } from '../../../src/scenario/scenario.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';
import {
  LINEAR,
  magnetisingCurrent,
  magnetisingSlope,
  mainFlux,
  OMEGA,
  oneCage,
  RATED_FLUX,
  rhsOf,
  rungeKutta,
  SUPPLY,
  WITH_ALL,
  WITH_CORE,
  WITH_LEAKAGE,
  WITH_MAIN,
} from './saturableMachine.ts';
import { type AxisWinding, axisCurrents, axisFluxes } from './singleAxis.ts';

const NO_POLES = { kind: 'none', connection: [-1, -1, -1] } as const;

/** Stator (unless open), cages and core of a machine on one axis. */
function windingsOf(machine: MachineData, stator: ((t: number) => number) | null): AxisWinding[] {
  const { leakageSaturation: leakage, core } = machine;
  return [
    ...(stator
      ? [{ R: machine.Rs, L: machine.Lls, saturation: leakage?.stator ?? null, voltage: stator }]
      : []),
    ...machine.cages.map((cage, j) => ({
      R: cage.Rr,
      L: cage.Llr,
      saturation: leakage?.cages[j] ?? null,
      voltage: null,
    })),
    ...(core ? [{ R: core.R, L: core.L, saturation: null, voltage: null }] : []),
  ];
}

const mainOf = (machine: MachineData) => (machine.mainSaturation ? null : { Lm: machine.Lm });

const MACHINES = [
  ['linear, two cages', LINEAR],
  ['main saturation, one cage', oneCage(WITH_MAIN)],
  ['main saturation, two cages', WITH_MAIN],
  ['leakage saturation, one cage', oneCage(WITH_LEAKAGE)],
  ['leakage saturation, two cages', WITH_LEAKAGE],
  ['core', WITH_CORE],
  ['everything', WITH_ALL],
] as const;

describe('two poles, rotor at rest: the circuit of one axis', () => {
  /**
   * Steps of 7.5 µs. The increments of the curve used in currents have a kink at the knee, which leaves errors of h²: at twice the
   * steps they are a quarter.
   */
  const DURATION = 0.03;
  const STEPS = 4000;

  it.each(MACHINES)('carries the currents of an independent integration: %s', (_name, machine) => {
    const angle = 0.3;
    // A open: the axis lies along the line voltage B–C, of crest V_LL·√2/√3 and angle φ − 90°.
    const crest = SUPPLY.lineVoltage * Math.sqrt(2 / 3);
    const phase = (t: number, k: number) => crest * Math.cos(OMEGA * t + angle - (k * 2 * Math.PI) / 3);
    const voltage = (t: number) => (phase(t, 1) - phase(t, 2)) / Math.sqrt(3);
    const windings = windingsOf(machine, voltage);
    const expected = axisCurrents(
      windings,
      mainOf(machine),
      windings.map(() => 0),
      DURATION,
      STEPS,
    );
    // Steady currents of the shorted circuit are several hundred amperes.
    expect(Math.abs(expected[0]!)).toBeGreaterThan(50);

    const supply = { ...SUPPLY, angle };
    const model = connectedModel(circuitOf(machine, supply), supply, { kind: 'two', connection: [-1, 1, 2] });
    const y = rungeKutta(rhsOf(model, 0), new Array<number>(model.size).fill(0), 0, DURATION, STEPS);
    const wanted = axisFluxes(windings, mainOf(machine), expected);
    // States: the stator's β, then pairs of which only β is excited.
    const beta = [y[0]!, ...wanted.slice(1).map((_, j) => y[2 + 2 * j]!)];
    expectAllWithin(beta, wanted, { absolute: 2e-6 * RATED_FLUX }, 'flux along the axis');
    for (let j = 1; j < model.size; j += 2) expect(y[j]).toBe(0);
    const current = (Math.sqrt(3) / 2) * expected[0]!;
    expectWithin(model.terminalCurrent(DURATION, y, 1), current, { relative: 1e-5 }, 'line current');
  });
});

describe('no poles', () => {
  it.each(MACHINES)(
    'let the flux decay as an independent integration in currents does: %s',
    (_name, machine) => {
      const windings = windingsOf(machine, null);
      // A start far from the steady ratio of the currents: the cages exchange current before both decay.
      const start = windings.map((_, k) => [160, -110, 0.5][k]!);
      const duration = 0.02;
      const expected = axisCurrents(windings, mainOf(machine), start, duration, 4000);
      const model = connectedModel(circuitOf(machine, SUPPLY), SUPPLY, NO_POLES);
      const y0 = axisFluxes(windings, mainOf(machine), start).flatMap((flux) => [flux, 0]);
      const y = rungeKutta(rhsOf(model, 0), y0, 0, duration, 4000);
      const wanted = axisFluxes(windings, mainOf(machine), expected);
      expectAllWithin(
        wanted.map((_, j) => y[2 * j]!),
        wanted,
        { absolute: 1e-8 * RATED_FLUX },
        'flux',
      );
    },
  );

  it('with a saturated main flux decay from one flux to another in the time ∫ dψr/(Rr·im)', () => {
    const machine = oneCage(WITH_MAIN);
    const { Rr, Llr } = machine.cages[0]!;
    const [from, to] = [1.5 * RATED_FLUX, 0.5 * RATED_FLUX];
    // ψr = ψm + Llr·im(ψm): dψr = (1 + Llr·dim/dψm)·dψm, by the midpoint rule.
    const cells = 20_000;
    const h = (from - to) / cells;
    let time = 0;
    for (let n = 0; n < cells; n++) {
      const flux = to + (n + 0.5) * h;
      time += (h * (1 + Llr * magnetisingSlope(flux))) / (Rr * magnetisingCurrent(flux));
    }
    const model = connectedModel(circuitOf(machine, SUPPLY), SUPPLY, NO_POLES);
    const rotorFlux = (flux: number) => flux + Llr * magnetisingCurrent(flux);
    const omegaM = 70;
    const y = rungeKutta(rhsOf(model, omegaM), [rotorFlux(from), 0], 0, time, 4000);
    // The midpoint rule leaves h²/24 of the bend: 1e-9.
    expectAllWithin(y, [rotorFlux(to), 0], { absolute: 1e-8 * RATED_FLUX }, 'rotor flux');
    // The linear machine needs ln 3 time constants, more than this.
    expect(time).toBeLessThan((Math.log(3) * (machine.Lm + Llr)) / Rr);
  });

  it('at 1.5 times rated flux decay faster than the linear machine by the ratio of the magnetising currents', () => {
    const machine = oneCage(WITH_MAIN);
    const { Rr, Llr } = machine.cages[0]!;
    const flux = 1.5 * RATED_FLUX;
    const rate = (data: MachineData, psiR: number) => {
      const dydt: number[] = [];
      connectedModel(circuitOf(data, SUPPLY), SUPPLY, NO_POLES).derivatives(0, [psiR, 0], 0, dydt);
      return dydt[0]!;
    };
    const im = magnetisingCurrent(flux);
    expectWithin(rate(machine, flux + Llr * im), -Rr * im, { relative: 1e-12 }, 'saturated');
    const linear = flux / machine.Lm;
    expectWithin(rate(oneCage(LINEAR), flux + Llr * linear), -Rr * linear, { relative: 1e-12 }, 'linear');
    expectWithin(mainFlux(im), flux, { relative: 1e-14 }, 'curve');
    expect(im / linear).toBeGreaterThan(2);
  });
});
