import { describe, expect, it } from 'vitest';
import { circuitOf } from '../../../src/machine/circuit.ts';
import { connectedModel } from '../../../src/machine/connectedModel.ts';
import { newObservation } from '../../../src/machine/electricalModel.ts';
import { steadyFlux } from '../../../src/machine/steadyFlux.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { supplyVector } from '../../../src/machine/supplyVector.ts';
import { add, type Complex, divide, magnitude, multiply, subtract } from '../../../src/numeric/complex.ts';
import type { MachineData } from '../../../src/scenario/scenario.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';
import { CORE, LINEAR, OMEGA, oneCage, rhsOf, rungeKutta, SUPPLY, WITH_CORE } from './saturableMachine.ts';

const inverse = (z: Complex): Complex => divide([1, 0], z);
const NO_POLES = { kind: 'none', connection: [-1, -1, -1] } as const;

describe('the core with three poles conducting', () => {
  it('raises the input at no load by 3E²R/(R² + X²)', () => {
    const voltage: Complex = [SUPPLY.lineVoltage / Math.sqrt(3), 0];
    const { Rs, Lls } = LINEAR;
    const state = steadyState(WITH_CORE, SUPPLY, 0);
    const airGap = magnitude(subtract(voltage, multiply([Rs, OMEGA * Lls], state.statorCurrent)));
    const predicted = (3 * airGap ** 2 * CORE.R) / (CORE.R ** 2 + (OMEGA * CORE.L) ** 2);
    expect(predicted).toBeGreaterThan(400);
    const copper = (I: number) => 3 * Rs * I ** 2;
    expectWithin(state.inputPower - copper(state.current), predicted, { relative: 1e-12 }, 'with the core');
    const without = steadyState(LINEAR, SUPPLY, 0);
    expectWithin(without.inputPower, copper(without.current), { relative: 1e-12 }, 'without');
    expect(state.torque).toBe(0);

    // The same loss in the running model, which stands still there.
    const connection = [0, 1, 2] as const;
    const model = connectedModel(circuitOf(WITH_CORE, SUPPLY), SUPPLY, { kind: 'three', connection });
    const y = model.fromStationary(0, steadyFlux(WITH_CORE, SUPPLY, supplyVector(SUPPLY, connection), 0));
    const out = newObservation();
    model.observe(0, y, OMEGA / WITH_CORE.polePairs, 0, out);
    expectWithin(1.5 * CORE.R * out.coreSquared, predicted, { relative: 1e-11 }, 'loss in the model');
  });

  it('stands beside the cages at any slip: the series-parallel circuit written out', () => {
    for (const slip of [-0.05, 0.02, 1, 1.97]) {
      let air = add([0, -1 / (OMEGA * LINEAR.Lm)], inverse([CORE.R, OMEGA * CORE.L]));
      for (const { Rr, Llr } of LINEAR.cages) air = add(air, inverse([Rr / slip, OMEGA * Llr]));
      const impedance = add([LINEAR.Rs, OMEGA * LINEAR.Lls], inverse(air));
      const current = divide([SUPPLY.lineVoltage / Math.sqrt(3), 0], impedance);
      expectAllWithin(
        steadyState(WITH_CORE, SUPPLY, slip).statorCurrent,
        current,
        { absolute: 1e-11 },
        'current',
      );
    }
  });
});

describe('the core with two poles conducting', () => {
  it('takes the mean loss of the phasor circuit of one axis, rotor at rest', () => {
    const supply = { ...SUPPLY, angle: Math.PI / 2 };
    // A open: along its β axis acts (u_B − u_C)/√3 = Û·cos(ωt + φ − 90°), here Û·cos ωt.
    const crest = SUPPLY.lineVoltage * Math.sqrt(2 / 3);
    let air = add([0, -1 / (OMEGA * LINEAR.Lm)], inverse([CORE.R, OMEGA * CORE.L]));
    for (const { Rr, Llr } of LINEAR.cages) air = add(air, inverse([Rr, OMEGA * Llr]));
    const stator = divide([crest, 0], add([LINEAR.Rs, OMEGA * LINEAR.Lls], inverse(air)));
    const airGap = divide(stator, air);
    const core = divide(airGap, [CORE.R, OMEGA * CORE.L]);
    // One vector component of crest i has the mean square i²/2.
    const predicted = (1.5 * CORE.R * magnitude(core) ** 2) / 2;
    expect(predicted).toBeGreaterThan(20);

    // Flux phasors from the voltages: jω·ψm = E, and a leakage more for each winding; start on their real parts.
    const main = divide(airGap, [0, OMEGA]);
    const fluxes = [
      add(main, multiply([LINEAR.Lls, 0], stator)),
      ...LINEAR.cages.map(({ Rr, Llr }) =>
        subtract(main, multiply([Llr, 0], divide(airGap, [Rr, OMEGA * Llr]))),
      ),
      subtract(main, multiply([CORE.L, 0], core)),
    ];
    const states = (part: (z: Complex) => number) => [
      part(fluxes[0]!),
      ...fluxes.slice(1).flatMap((z) => [0, part(z)]),
    ];
    const model = connectedModel(circuitOf(WITH_CORE, supply), supply, {
      kind: 'two',
      connection: [-1, 1, 2],
    });
    const rhs = rhsOf(model, 0);
    const period = (2 * Math.PI) / OMEGA;
    const cells = 400;
    let y = states((z) => z[0]);
    let loss = 0;
    const out = newObservation();
    for (let n = 0; n < cells; n++) {
      const t = (n * period) / cells;
      model.observe(t, y, 0, 0, out);
      // The mean over evenly spaced points of a period is exact for a square of a sine.
      loss += (1.5 * CORE.R * out.coreSquared) / cells;
      y = rungeKutta(rhs, y, t, period / cells, 4);
      if (n === cells / 4 - 1) {
        const quarter = states((z) => -z[1]);
        expectAllWithin(y, quarter, { absolute: 1e-8 }, 'flux after a quarter of a period');
      }
    }
    expectWithin(loss, predicted, { relative: 1e-7 }, 'mean loss');
  });
});

describe('the core with no pole conducting', () => {
  it('and one cage at rest decay with the two eigenvalues of their circuit', () => {
    const machine = oneCage(WITH_CORE);
    const { Rr, Llr } = machine.cages[0]!;
    const { Lm } = machine;
    // (L·d/dt + R)·i = 0 with L = [[Llr + Lm, Lm], [Lm, Lfe + Lm]]: det(R + λL) = 0 is a quadratic in λ.
    const [Lr, Lf] = [Llr + Lm, CORE.L + Lm];
    const a = Lr * Lf - Lm * Lm;
    const b = Rr * Lf + CORE.R * Lr;
    const c = Rr * CORE.R;
    const root = Math.sqrt(b * b - 4 * a * c);
    const fast = (-b - root) / (2 * a);
    const model = connectedModel(circuitOf(machine, SUPPLY), SUPPLY, NO_POLES);
    // The product of the roots gives the slow one without cancellation.
    for (const lambda of [fast, c / a / fast]) {
      // First row of (R + λL)·i = 0
      const i = [-lambda * Lm, Rr + lambda * Lr] as const;
      const scale = 1 / Math.hypot(...i);
      const psi = [Lr * i[0] + Lm * i[1], Lm * i[0] + Lf * i[1]].map((x) => scale * x);
      const y = [psi[0]!, -0.4 * psi[0]!, psi[1]!, -0.4 * psi[1]!];
      const dydt: number[] = [];
      model.derivatives(0, y, 0, dydt);
      const expected = y.map((x) => lambda * x);
      const size = Math.max(...expected.map(Math.abs));
      expectAllWithin(dydt, expected, { absolute: 1e-9 * size }, `decay at ${lambda} 1/s`);
    }
    // Slower than the cage alone, whose flux the core helps to hold.
    expect(-c / a / fast).toBeLessThan(Rr / Lr);
  });

  it('brakes a turning rotor: a flux that the rotor carries round induces currents in the iron at rest', () => {
    // Without rotor resistance the rotor's flux is constant in its own axes, and the iron sees it turn: a phasor circuit
    // of frequency ω_r, source ψr·Lm/(Lm + Llr) behind Lm ∥ Llr.
    const cage = { ...LINEAR.cages[0]!, Rr: 0 };
    const machine: MachineData = { ...WITH_CORE, cages: [cage] };
    const circuit = circuitOf(machine, SUPPLY);
    const model = connectedModel(circuit, SUPPLY, NO_POLES);
    const psiR = 1.1;
    for (const omegaM of [100, -40, 5]) {
      const omegaR = machine.polePairs * omegaM;
      const open = (psiR * machine.Lm) / (machine.Lm + cage.Llr);
      const L = CORE.L + (machine.Lm * cage.Llr) / (machine.Lm + cage.Llr);
      // The iron turns backwards in rotor axes: 0 = R·i + jω_r·(open + L·i) with its own axes' sign
      const i = divide([0, omegaR * -open], [CORE.R, omegaR * L]);
      const flux = add([open, 0], multiply([L, 0], i));
      const dydt: number[] = [];
      const torque = model.derivatives(0, [psiR, 0, ...flux], omegaM, dydt);
      expectAllWithin(
        dydt.slice(0, 4),
        [0, 0, 0, 0],
        { absolute: 1e-9 },
        'everything stands still in rotor axes',
      );
      const loss = 1.5 * CORE.R * magnitude(i) ** 2;
      expectWithin(torque * omegaM, -loss, { relative: 1e-10 }, 'braking power');
      const out = newObservation();
      model.observe(0, [psiR, 0, ...flux], omegaM, 0, out);
      expectWithin(1.5 * CORE.R * out.coreSquared, loss, { relative: 1e-10 }, 'loss in the iron');
    }
  });
});
