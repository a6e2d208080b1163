import { describe, expect, it } from 'vitest';
import { expectClose } from './closeTo.ts';
import { MACHINE_3_HP, MACHINE_TWO_CAGES, scenarioOf } from './comparisonRuns.ts';
import { leakagePath } from './leakagePath.ts';
import { currentFor, curvedPath, straightPath } from './magnetisingPath.ts';
import { NOTHING, phaseCircuit } from './phaseCircuit.ts';
import { runPhaseVariableModel } from './phaseVariableModel.ts';
import { runReader } from './runReader.ts';
import { steadyCircuit } from './steadyCircuit.ts';
import { windingMachine } from './windingMachine.ts';

const MAIN = [
  { current: 5, flux: 0.345 },
  { current: 8, flux: 0.46 },
  { current: 14, flux: 0.55 },
  { current: 30, flux: 0.63 },
];
const FREE = { way: 0, held: false } as const;

describe('the magnetising path', () => {
  const path = curvedPath(MAIN);
  const read = (current: number) => {
    const out = { flux: 0, slope: 0 };
    path.read(current, out);
    return out;
  };

  it('passes through its points and is straight before the first and after the last', () => {
    for (const { current, flux } of MAIN) expectClose(read(current).flux, flux, 1e-14);
    expectClose(read(2.5).flux, 0.345 / 2, 1e-14);
    const beyond = [31, 45].map((current) => read(current));
    expectClose(beyond[1]!.flux - beyond[0]!.flux, 14 * beyond[0]!.slope, 1e-12);
    expect(beyond[1]!.slope).toBe(beyond[0]!.slope);
  });

  it('has the slope of its difference quotient, also across its points', () => {
    const STEP = 1e-5;
    for (const current of [1, 5, 6.3, 8, 11, 14, 22, 30, 40]) {
      const quotient = (read(current + STEP).flux - read(current - STEP).flux) / (2 * STEP);
      // Central difference: rounding of 1e-16/1e-5; at a point the second derivative jumps: an error of the order of the step.
      expectClose(read(current).slope, quotient, 1e-5);
    }
  });

  it('stores the area beside the curve, and a straight one half of flux times current', () => {
    const FLUX = 0.6;
    const STEPS = 4000;
    let area = 0;
    for (let k = 0; k < STEPS; k++) area += (currentFor(path, ((k + 0.5) * FLUX) / STEPS) * FLUX) / STEPS;
    // Midpoint rule: h²/24 of the curvature, some 1e-6 here.
    expectClose(path.stored(FLUX), area, 1e-6);
    expectClose(straightPath(0.07).stored(0.5), 0.5 ** 2 / 0.14, 1e-15);
    expectClose(curvedPath([{ current: 5, flux: 0.35 }]).stored(0.7), 0.7 ** 2 / 0.14, 1e-14);
  });
});

describe('the leakage path', () => {
  const path = leakagePath(0.002, { current: 40, remaining: 0.6 });

  it('has its inductance at small current, r of it at large, and r + (1 − r)/√2 at the knee', () => {
    expectClose(path.secant(0), 0.002, 1e-15);
    expectClose(path.secant(1e14), 0.0012, 1e-5);
    expectClose(path.secant(1600), 0.002 * (0.6 + 0.4 / Math.SQRT2), 1e-14);
  });

  it('has slope and energy that belong to its flux', () => {
    const STEP = 1e-4;
    const flux = (i: number) => path.secant(i * i) * i;
    for (const i of [3, 40, 170]) {
      const change = flux(i + STEP) - flux(i - STEP);
      expectClose(path.slope(i * i), change / (2 * STEP), 1e-7);
      expectClose(path.stored((i + STEP) ** 2) - path.stored((i - STEP) ** 2), i * change, 1e-6);
    }
  });
});

describe('the windings of a saturable machine with iron loss', () => {
  const scenario = scenarioOf({
    title: '',
    machine: {
      ...MACHINE_TWO_CAGES,
      connection: 'delta',
      mainSaturation: MAIN,
      leakageSaturation: {
        stator: { current: 30, remaining: 0.6 },
        cages: [{ current: 20, remaining: 0.5 }, null],
      },
      core: { R: 260, L: 0.1 },
    },
    actions: [],
    endTime: 1,
  });
  const wound = windingMachine(scenario);
  const currents = Float64Array.from([9, -25, 16, 11, -13, 2, -7, -4, 11, 0.8, -1.1, 0.3]);
  const STEP = 1e-6;
  const at = (di: Float64Array, dTheta: number) => {
    wound.set(
      currents.map((i, k) => i + di[k]!),
      0.7 + dTheta,
    );
    return { flux: wound.flux.slice(), energy: wound.energy(), torque: wound.torque() };
  };
  const along = (k: number) => {
    // A change that keeps the sum of its group zero, as all currents do.
    const di = new Float64Array(12);
    di[k] = STEP;
    di[3 * Math.floor(k / 3) + ((k + 1) % 3)] = -STEP;
    return di;
  };
  const none = new Float64Array(12);

  it('has incremental inductances and turning that are the derivatives of its fluxes', () => {
    at(none, 0);
    const inductance = wound.inductance.slice();
    const turning = wound.turning.slice();
    for (let k = 0; k < 12; k++) {
      const di = along(k);
      const up = at(di, 0).flux;
      const down = at(
        di.map((x) => -x),
        0,
      ).flux;
      for (let j = 0; j < 12; j++) {
        let expected = 0;
        for (let m = 0; m < 12; m++) expected += inductance[j * 12 + m]! * di[m]!;
        // Central difference of fluxes near 1 Wb: rounding 1e-16/1e-6, against inductances of 1e-3 H and more.
        expectClose((up[j]! - down[j]!) / 2, expected, 1e-6, 1e-15);
      }
    }
    const up = at(none, STEP).flux;
    const down = at(none, -STEP).flux;
    for (let j = 0; j < 12; j++) expectClose((up[j]! - down[j]!) / (2 * STEP), turning[j]!, 1e-8, 1e-9);
  });

  it('stores what current times change of flux brings in, and gives the rest as torque', () => {
    for (const [di, dTheta] of [
      [along(1), 0],
      [along(5), 0],
      [along(10), 0],
      [none, STEP],
    ] as const) {
      const up = at(di, dTheta);
      const down = at(
        di.map((x) => -x),
        -dTheta,
      );
      let brought = 0;
      currents.forEach((i, k) => {
        brought += i * (up.flux[k]! - down.flux[k]!);
      });
      const { torque } = at(none, 0);
      const work = (2 * dTheta * torque) / scenario.machine.polePairs;
      // Differences of energies near 10 J over steps of 1e-6.
      expectClose(up.energy - down.energy + work, brought, 1e-7, 1e-13);
    }
  });

  it('has a torque rate equal to the difference quotient of its torque', () => {
    const circuit = phaseCircuit(scenario);
    circuit.setMode({ supply: [0, 2, 1], inserted: NOTHING, motor: FREE, load: FREE, touching: 0 });
    const y = new Float64Array(circuit.size);
    y.set(currents);
    y[circuit.index.omega] = 90;
    y[circuit.index.theta] = 0.35;
    const f = new Float64Array(circuit.size);
    circuit.rhs(f, y, 0.003);
    const H = 1e-7;
    const moved = (sign: number) => circuit.torque(y.map((value, i) => value + sign * H * f[i]!));
    expectClose(circuit.torqueRate(y, f), (moved(1) - moved(-1)) / (2 * H), 1e-7);
  });
});

describe('steady state with saturation and iron loss', () => {
  it('is kept by the windings of star and delta machines', () => {
    for (const connection of ['star', 'delta'] as const) {
      const scenario = scenarioOf({
        title: '',
        machine: {
          ...MACHINE_3_HP,
          connection,
          mainSaturation: MAIN,
          leakageSaturation: {
            stator: { current: 40, remaining: 0.6 },
            cages: [{ current: 30, remaining: 0.5 }],
          },
          core: { R: 260, L: 0.1 },
          mechanicalLoss: { friction: 0.2, windage: 1e-5 },
        },
        starter: { windingOrder: 'AC' },
        initial: 'runningForward',
        load: { inertia: 0, torques: [{ kind: 'gravity', torque: 12 }] },
        actions: [],
        endTime: 0.06,
      });
      const { run } = runPhaseVariableModel(scenario);
      const end = runReader(run).stateAt(0.06);
      const omega = end[run.circuit.index.omega]!;
      const point = steadyCircuit(scenario, 1 - omega / ((120 * Math.PI) / 2));
      // Started in the steady state, nothing may drift: only the integrator's error is allowed.
      expectClose(omega, runReader(run).stateAt(0)[run.circuit.index.omega]!, 1e-9);
      expectClose(run.circuit.torque(end), 12 + 0.2 + 1e-5 * omega ** 2, 1e-8);
      const size = Math.hypot(end[0]!, (end[1]! - end[2]!) / Math.sqrt(3));
      expectClose(size, Math.hypot(...point.stator), 1e-8);
    }
  });
});

describe('a delta machine reconnected in star', () => {
  it.each(['AB', 'AC'] as const)('keeps the voltage of every open winding, order %s', (order) => {
    const circuit = phaseCircuit(
      scenarioOf({
        title: '',
        machine: { ...MACHINE_3_HP, connection: 'delta' },
        starter: { windingOrder: order },
        actions: [],
        endTime: 1,
      }),
    );
    const y = new Float64Array(circuit.size);
    y.set([0, 0, 0, 3, -5, 2]);
    y[circuit.index.omega] = 170;
    const terminals = (star: boolean) => {
      const supply = [-1, -1, -1] as const;
      circuit.setMode({ supply, inserted: { ...NOTHING, star }, motor: FREE, load: FREE, touching: 0 });
      const f = new Float64Array(circuit.size);
      circuit.rhs(f, y, 0);
      return circuit.terminalVoltages(y, f);
    };
    // In delta a winding shows the difference of two terminals, in star the terminal itself.
    const [a, b, c] = terminals(false);
    const windings = order === 'AB' ? [a - b, b - c, c - a] : [a - c, b - a, c - b];
    for (const [k, voltage] of terminals(true).entries()) expectClose(voltage, windings[k]!, 1e-13, 1e-12);
    expect(Math.abs(a)).toBeGreaterThan(10);
  });
});
