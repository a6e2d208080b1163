/**
 * Double-cage circuit: forward model per unit (inner and outer cage in parallel, no mutual leakage) computed, six digits; the
 * transient against fixtures/doubleCageExchange (currents as states, DOP853 at 1e-10; script beside it).
 */
import { describe, it } from 'vitest';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import reference from '../fixtures/doubleCageExchange/doubleCageExchange.json' with { type: 'json' };
import { publishedSource } from '../support/published.ts';
import { run } from '../support/readings.ts';
import { exchangeAtOnce } from '../support/scenarios.ts';
import { DOUBLE_CAGE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'doubleCage',
  'Two invented double-cage machines: steady state of a circuit per unit, inner and outer cage in parallel; and the exchange of two ' +
    'phases of a 22 kW machine with a fan load behind a source impedance, by a separate program with currents as states ' +
    '(tests/fixtures/doubleCageExchange).',
  'computed independently',
);

describe('the per-unit double-cage circuit', () => {
  // ω = 1 rad/s makes every reactance its inductance; a phase voltage of 1 V makes T = 3·Σ r·I²/s.
  const supply = {
    lineVoltage: Math.sqrt(3),
    frequency: 1 / (2 * Math.PI),
    sourceResistance: 0,
    sourceInductance: 0,
  };
  const machine = {
    ...DOUBLE_CAGE.machine,
    polePairs: 1,
    Rs: 0.02,
    Lls: 0.08,
    Lm: 3,
    cages: [
      { Rr: 0.016, Llr: 0.12 },
      { Rr: 0.08, Llr: 0.05 },
    ],
  };
  // One unit of the last digit: 8.0021845 is rounded down in the list.
  const digit = { absolute: 1e-6 };

  it.each([
    [0.01, 0.800605, 0.681391, 0.867107],
    [0.015, 1.128567, 0.989967, 0.899761],
    [0.02, 1.450679, 1.270834, 0.905041],
    [1, 7.263127, 1.763592, 0.388077],
    [1.98, 8.002184, 1.233669, 0.31421],
  ])('at slip %d has the computed current, torque and power factor', (slip, current, torque, powerFactor) => {
    const state = steadyState(machine, supply, slip);
    compare(state.current, current, digit, `current at slip ${slip}, circuit per unit`, 'pu');
    compare(state.torque / 3, torque, digit, `torque at slip ${slip}, circuit per unit`, 'pu');
    compare(state.powerFactor, powerFactor, digit, `power factor at slip ${slip}, circuit per unit`, '');
  });

  it('at slip 2 and at breakdown has the computed values', () => {
    const state = steadyState(machine, supply, 2);
    compare(state.current, 8.009862, digit, 'current at slip 2, circuit per unit', 'pu');
    compare(state.torque / 3, 1.224943, digit, 'torque at slip 2, circuit per unit', 'pu');
    const top = breakdown(machine, supply);
    compare(top.torque / 3, 2.610334, digit, 'breakdown torque, circuit per unit', 'pu');
    compare(top.slip, 0.087269, digit, 'slip at breakdown, circuit per unit', '');
  });

  it('does not depend on the order of the cages', () => {
    const swapped = { ...machine, cages: [...machine.cages].reverse() };
    const a = steadyState(machine, supply, 0.3);
    const b = steadyState(swapped, supply, 0.3);
    expectWithin(b.torque, a.torque, { relative: 1e-14 }, 'torque');
    expectWithin(b.current, a.current, { relative: 1e-14 }, 'current');
  });
});

describe('exchange of two phases of a loaded double-cage machine behind a source impedance', () => {
  it('agrees with the reference in speed, peaks, time and every heat', () => {
    const stop = run(
      exchangeAtOnce(DOUBLE_CAGE, (25 * Math.PI) / 180, 0.3, {
        supply: { sourceResistance: 0.02, sourceInductance: 0.1e-3 },
        inertia: 0.42 + 0.6,
        load: { torques: [{ kind: 'fan', coefficient: 0.012 }] },
      }),
    );
    const both = { relative: 1e-7 };
    const zero = stop.zeroSpeed();
    const low = stop.extreme('torque', 'min');
    const { minimumTorque, peakCurrent } = reference;
    const before = stop.trajectory.at(0).speed;
    compare(before, reference.initialSpeed, { relative: 1e-12 }, 'speed before the exchange, 22 kW', 'rad/s');
    compare(low.value, minimumTorque.value, both, 'greatest braking torque, 22 kW', 'N·m');
    compare(
      1000 * low.time,
      1000 * minimumTorque.time,
      { absolute: 1e-3 },
      'time of the greatest braking torque, 22 kW',
      'ms',
    );
    for (const [k, phase] of (['A', 'B', 'C'] as const).entries())
      compare(
        stop.extreme(`i${phase}`, 'magnitude').value,
        peakCurrent[k]!.value,
        both,
        `peak current of phase ${phase}, 22 kW`,
        'A',
      );
    compare(zero, reference.zeroSpeed, both, 'time to standstill, 22 kW', 's');
    const heats = [
      ['sourceLoss', reference.sourceHeatToZero, 'source'],
      ['statorLoss', reference.statorHeatToZero, 'stator'],
      ['cage1Loss', reference.cageHeatToZero[0]!, 'outer cage'],
      ['cage2Loss', reference.cageHeatToZero[1]!, 'inner cage'],
    ] as const;
    for (const [name, heat, part] of heats)
      compare(stop.integral(name, 0, zero), heat, both, `heat in the ${part} to standstill, 22 kW`, 'J');
  });
});

listedInGuide();
