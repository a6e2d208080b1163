/** Bands over the circuits that a nameplate leaves open. */
import { describe, expect, it } from 'vitest';
import { equallyGoodCircuits } from '../../../src/estimate/equallyGoodCircuits.ts';
import { circuitEstimator } from '../../../src/estimate/estimator.ts';
import { parseScenarioWithOrigins } from '../../../src/estimate/parseScenarioWithOrigins.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import { bandOf, plugBands } from '../../../src/survey/plugBands.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** A brake press of ordinary catalogue figures; invented. */
const parsed = (machine = '') =>
  parseScenarioWithOrigins(`
title: brake press
supply: { lineVoltage: 400 V, frequency: 50 Hz }
machine:
  nameplate: { power: 7.5 kW, speed: 1455 rpm, current: 14.9 A, powerFactor: 0.83, lockedRotorCurrent: 6.9 times, lockedRotorTorque: 2.4 times, breakdownTorque: 3 times }
${machine}
load: { inertia: 0.02 kg m^2, torque: { kind: friction, torque: 4 N m } }
starter: { zeroSpeedSwitch: { dropOutSpeed: 50 rpm, pickUpSpeed: 100 rpm } }
initial: running forward
actions: [{ at: 0.02 s, do: plug }]
`);

describe('the band over the circuits that a nameplate leaves open', () => {
  const { scenario, nameplate } = parsed();
  const bands = plugBands(scenario, nameplate!);
  const own = simulate(scenario).metrics;

  it('holds the figures of the estimated circuit, and has a width', () => {
    for (const key of [
      'plugPeakCurrent',
      'plugMinimumTorque',
      'stopTimeFromTouch',
      'plugRotorHeat',
    ] as const) {
      const { low, high } = bandOf(bands, key)!;
      const value = own[key].value!;
      // The runs of the band are integrated to 1e-6.
      const rounding = 1e-4 * Math.abs(value);
      expect(low, key).toBeLessThanOrEqual(value + rounding);
      expect(high, key).toBeGreaterThanOrEqual(value - rounding);
      expect(high - low, key).toBeGreaterThan(0.02 * Math.abs(value));
    }
    expect(bandOf(bands, 'startTime')).toBe(undefined);
    expect(bands.members).toBeGreaterThanOrEqual(8);
    expect(bands.sentence).toMatch(/IEC 60034-1 \(from memory/u);
  });

  it('has as its ends the runs of the circuits it names', () => {
    const estimated = circuitEstimator.fromNameplate(nameplate!);
    const variants = equallyGoodCircuits(nameplate!, estimated);
    expect(bands.members).toBe(variants.length + 1);
    const { high, highFrom, low, lowFrom } = bandOf(bands, 'plugPeakCurrent')!;
    for (const [end, label] of [
      [high, highFrom],
      [low, lowFrom],
    ] as const) {
      const variant = variants.find((one) => one.label === label);
      const machine = { ...scenario.machine, ...variant?.circuit };
      const { plugPeakCurrent } = simulate({ ...scenario, machine }).metrics;
      expectWithin(plugPeakCurrent.value, end, { relative: 1e-4 }, label);
    }
    const values = variants.map(({ circuit }) => {
      const machine = { ...scenario.machine, ...circuit };
      return simulate({ ...scenario, machine }).metrics.plugPeakCurrent.value!;
    });
    expectWithin(Math.max(...values, own.plugPeakCurrent.value!), high, { relative: 1e-4 }, 'highest');
    expectWithin(Math.min(...values, own.plugPeakCurrent.value!), low, { relative: 1e-4 }, 'lowest');
  });

  it('keeps what the scenario states in place of the estimate: temperature and inertia', () => {
    const hot = parsed('  temperature: { resistancesAt: 80 degC, winding: 120 degC, rotor: 140 degC }');
    const heavier = { ...hot.scenario.machine, inertia: 3 * hot.scenario.machine.inertia };
    const wide = plugBands({ ...hot.scenario, machine: heavier }, hot.nameplate!);
    const alone = simulate({ ...hot.scenario, machine: heavier }).metrics.stopTimeFromTouch.value!;
    const { low, high } = bandOf(wide, 'stopTimeFromTouch')!;
    expect(low).toBeLessThanOrEqual(alone);
    expect(high).toBeGreaterThanOrEqual(alone);
    // A member is the variant's circuit with the resistances as warm as the scenario's.
    const estimated = circuitEstimator.fromNameplate(hot.nameplate!).circuit;
    const stator = hot.scenario.machine.Rs / estimated.Rs;
    const rotor = hot.scenario.machine.cages[0]!.Rr / estimated.cages[0]!.Rr;
    expect(stator).toBeGreaterThan(1.1);
    expect(rotor).toBeGreaterThan(stator);
    const { lowFrom } = bandOf(wide, 'stopTimeFromTouch')!;
    const variants = equallyGoodCircuits(hot.nameplate!, circuitEstimator.fromNameplate(hot.nameplate!));
    const { circuit } = variants.find(({ label }) => label === lowFrom)!;
    const member = {
      ...heavier,
      ...circuit,
      inertia: heavier.inertia,
      Rs: circuit.Rs * stator,
      cages: circuit.cages.map(({ Rr, Llr }) => ({ Rr: Rr * rotor, Llr })),
    };
    const run = simulate({ ...hot.scenario, machine: member }).metrics.stopTimeFromTouch.value;
    expectWithin(run, low, { relative: 1e-4 }, lowFrom);
    // Three times the rotor's inertia: slower in every member than the band of the plain machine.
    expect(low).toBeGreaterThan(bandOf(bands, 'stopTimeFromTouch')!.low * 1.2);
  });
});
