import { describe, expect, it } from 'vitest';
import { breakdown, stiff } from '../../../src/machine/breakdown.ts';
import { circuitOf } from '../../../src/machine/circuit.ts';
import { ratedPoint } from '../../../src/machine/ratedPoint.ts';
import { steadyFlux } from '../../../src/machine/steadyFlux.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { supplyVector } from '../../../src/machine/supplyVector.ts';
import { threePoles } from '../../../src/machine/threePoles.ts';
import { twoPoleSteadyState } from '../../../src/machine/twoPoleSteadyState.ts';
import { DOUBLE_CAGE, KRAUSE } from '../../support/textbookMachines.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';

const source = { sourceResistance: 0.04, sourceInductance: 0.5e-3 };

describe('circuitOf', () => {
  it('puts the source impedance in series with the stator', () => {
    const { machine, supply } = KRAUSE.hp3;
    const circuit = circuitOf(machine, { ...supply, ...source });
    expectWithin(circuit.R, 0.435 + 0.04, { relative: 1e-15 }, 'R');
    expectWithin(circuit.L, machine.Lls + 0.5e-3, { relative: 1e-15 }, 'L');
    const parallel = 1 / (1 / machine.Lm + 1 / machine.cages[0]!.Llr);
    expectWithin(circuit.Ltransient, circuit.L + parallel, { relative: 1e-15 }, 'transient inductance');
  });
});

describe('steadyState', () => {
  it('behind a source impedance recovers the voltage at the terminals', () => {
    const { machine, supply } = KRAUSE.hp50;
    const weak = { ...supply, ...source };
    const behind = steadyState(machine, weak, 0.5);
    // The same machine fed at its terminals with that voltage takes the same current.
    const fed = steadyState(machine, { ...supply, lineVoltage: behind.terminalVoltage }, 0.5);
    expectWithin(fed.current, behind.current, { relative: 1e-12 }, 'current');
    expectWithin(fed.torque, behind.torque, { relative: 1e-12 }, 'torque');
    expect(behind.terminalVoltage).toBeLessThan(0.9 * supply.lineVoltage);
  });

  it('motors below and generates above synchronous speed', () => {
    const { machine, supply } = DOUBLE_CAGE;
    expect(steadyState(machine, supply, 0.02).torque).toBeGreaterThan(0);
    expect(steadyState(machine, supply, -0.02).torque).toBeLessThan(0);
    expect(steadyState(machine, supply, 0).torque).toBe(0);
    expect(steadyState(machine, supply, 1.98).torque).toBeGreaterThan(0);
  });
});

describe('steadyFlux', () => {
  it.each([
    ['forward', [0, 1, 2]],
    ['reverse', [0, 2, 1]],
    ['reverse by A and B', [1, 0, 2]],
  ] as const)('is where the right-hand side stands still in synchronous axes, %s', (_name, connection) => {
    const { machine, synchronousSpeed } = DOUBLE_CAGE;
    const supply = { ...DOUBLE_CAGE.supply, ...source, angle: 1.1 };
    const applied = supplyVector(supply, connection);
    const slip = 0.03;
    const flux = steadyFlux(machine, supply, applied, slip);
    const model = threePoles(circuitOf(machine, supply), applied);
    const dydt: number[] = [];
    const omegaM = applied.sequence * (1 - slip) * synchronousSpeed;
    const torque = model.derivatives(0, model.fromStationary(0, flux), omegaM, dydt);
    // Volts: rounding of 400 V
    expectAllWithin(dydt.slice(0, 6), [0, 0, 0, 0, 0, 0], { absolute: 1e-9 }, 'derivative');
    const expected = applied.sequence * steadyState(machine, supply, slip).torque;
    expectWithin(torque, expected, { relative: 1e-10 }, 'torque');
  });
});

describe('breakdown', () => {
  it('finds the higher of two maxima of a double cage', () => {
    // A resistive outer cage and an inner one of little resistance: two humps, the outer one higher.
    const machine = {
      ...DOUBLE_CAGE.machine,
      cages: [
        { Rr: 1.6, Llr: 0.4e-3 },
        { Rr: 0.05, Llr: 6e-3 },
      ],
    };
    const top = breakdown(machine, DOUBLE_CAGE.supply);
    for (let slip = 0.002; slip < 4; slip *= 1.02)
      expect(steadyState(machine, DOUBLE_CAGE.supply, slip).torque).toBeLessThanOrEqual(
        top.torque * (1 + 1e-12),
      );
  });
});

describe('ratedPoint', () => {
  const { machine, supply } = KRAUSE.hp50;

  it('is the circuit at the slip that delivers the rated power, below breakdown', () => {
    const rated = ratedPoint(machine, supply);
    expectWithin(rated.torque * rated.speed!, 50 * 745.7, { relative: 1e-12 }, 'power');
    expect(rated.slip).toBeLessThan(breakdown(machine, supply).slip);
    expect([rated.currentOrigin, rated.torqueOrigin]).toEqual(['circuitAtRatedPower', 'circuitAtRatedPower']);
  });

  it('takes what the nameplate states', () => {
    const stated = { current: 60, torque: 200, power: null, speed: null };
    const rated = ratedPoint({ ...machine, rated: stated }, supply);
    expect(rated).toMatchObject({ current: 60, torque: 200, currentOrigin: 'given', torqueOrigin: 'given' });
  });

  it('reads the circuit at the rated speed when no power is stated', () => {
    const stated = { current: null, torque: null, power: null, speed: (1705 * 2 * Math.PI) / 60 };
    const rated = ratedPoint({ ...machine, rated: stated }, supply);
    // values of this machine at 1705 r/min, as in the table of the published tests
    expectWithin(rated.torque, 234.641, { absolute: 6e-4 }, 'torque');
    expectWithin(rated.current, 62.804, { absolute: 6e-4 }, 'current');
    expect(rated.currentOrigin).toBe('circuitAtRatedSpeed');
  });

  it('does not depend on source impedance and cable', () => {
    expect(ratedPoint(machine, { ...supply, ...source })).toEqual(ratedPoint(machine, supply));
    const cable = { resistance: 0.1, inductance: 1e-4 };
    expect(stiff({ ...supply, ...source, cable })).toEqual({
      ...supply,
      sourceResistance: 0,
      sourceInductance: 0,
    });
    expect(ratedPoint(machine, { ...supply, cable })).toEqual(ratedPoint(machine, supply));
  });

  it('refuses a power that the circuit cannot deliver, naming the limit', () => {
    const stated = { current: null, torque: null, power: 5e5, speed: null };
    expect(() => ratedPoint({ ...machine, rated: stated }, supply)).toThrow(/machine\.rated\.power/);
  });

  it('refuses a rating from which nothing follows', () => {
    const stated = { current: 60, torque: null, power: null, speed: null };
    expect(() => ratedPoint({ ...machine, rated: stated }, supply)).toThrow(/machine\.rated/);
  });
});

describe('twoPoleSteadyState', () => {
  it('has no mean torque at standstill and turns its sign with the direction', () => {
    const { machine, supply } = DOUBLE_CAGE;
    expectWithin(twoPoleSteadyState(machine, supply, 1).torque, 0, { absolute: 1e-9 }, 'standstill');
    const forward = twoPoleSteadyState(machine, supply, 0.1);
    const backward = twoPoleSteadyState(machine, supply, 1.9);
    expectWithin(backward.torque, -forward.torque, { relative: 1e-12 }, 'torque');
    expectWithin(backward.current, forward.current, { relative: 1e-12 }, 'current');
  });
});
