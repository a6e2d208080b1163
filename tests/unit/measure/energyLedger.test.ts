/** The ledger with every term on, each against a dense sum over the trace. */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import { everyElement, everySlipRingElement } from '../../support/everyElement.ts';
import { ARCING_STARTER, scenarioOf } from '../../support/scenarios.ts';
import { DOUBLE_CAGE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const supply = { sourceResistance: 0.05, sourceInductance: 0.3e-3, angle: 0.5 };
const result = simulate(
  scenarioOf(DOUBLE_CAGE, {
    supply,
    starter: ARCING_STARTER,
    load: {
      inertia: 0.3,
      torques: [
        { kind: 'friction', torque: 6, breakaway: 7 },
        { kind: 'viscous', coefficient: 0.05 },
        { kind: 'fan', coefficient: 0.001 },
        { kind: 'gravity', torque: 12 },
      ],
    },
    actions: [
      { at: 0.02, do: 'startForward' },
      { at: 0.7, do: 'startReverse' },
    ],
    solver: { endTime: 1.4, relativeTolerance: 1e-8 },
  }),
);
const { ledger, trajectory } = result;
const H = 1e-5;
const count = Math.round(trajectory.tEnd / H) + 1;
const trace = trajectory.sample(0, trajectory.tEnd, count);
const sum = (f: (i: number) => number) => {
  let total = 0;
  for (let i = 1; i < count; i++) total += (H * (f(i - 1) + f(i))) / 2;
  return total;
};
/** Trapezoids of 10 µs: (ωh)²/12 of a swing at 100 Hz is 3e-6; jumps at switchings cost half a step each. */
const BY_HAND = { relative: 1e-5 };

describe('the energy ledger', () => {
  it.each([
    ['source, two cages and the four plain loads', result.ledger, []],
    [
      'cable, line resistors, star, saturation, iron, gear, play, all loads',
      simulate(everyElement()).ledger,
      [],
    ],
    [
      'slip rings, a lost phase, saturation, iron, gear, play',
      simulate(everySlipRingElement()).ledger,
      ['rotorResistorLoss', 'twistChange'],
    ],
  ] as const)('closes below 1e-7 with every term on: %s', (_name, closed, more) => {
    const { airGapWork, electricalIn, residual, throughput, ...terms } = closed;
    const plain = ['sourceLoss', 'statorLoss', 'rotorLoss', 'magneticChange', 'frictionLoss', 'loadWork'];
    const elements = ['cableLoss', 'lineResistorLoss', 'ironLoss', 'windageLoss', 'gearLoss', 'couplingLoss'];
    const expected = [...plain, ...(closed === result.ledger ? ['kineticChange'] : elements), ...more];
    for (const [name, value] of Object.entries(terms)) {
      const size = Math.abs([value].flat().reduce((a, b) => a + b, 0));
      if (expected.includes(name)) expect(size, name).toBeGreaterThan(1e-9 * throughput);
      else if (name !== 'twistChange' && name !== 'kineticChange')
        expect(size, name).toBeLessThan(1e-9 * throughput);
    }
    expect(Math.abs(airGapWork)).toBeGreaterThan(1);
    expect(electricalIn).toBeGreaterThan(1);
    expect(residual).toBeLessThan(1e-7);
  });

  it('has copper losses of source and stator as the squared currents of the trace', () => {
    const squared = sum((i) => trace.iA[i]! ** 2 + trace.iB[i]! ** 2 + trace.iC[i]! ** 2);
    expectWithin(ledger.statorLoss, 0.16 * squared, BY_HAND, 'stator');
    expectWithin(ledger.sourceLoss, 0.05 * squared, BY_HAND, 'source');
  });

  it('has an electrical input that is terminal power, source loss and the energy of the source inductance', () => {
    const terminals = sum(
      (i) =>
        trace.uAlpha[i]! * trace.iA[i]! + (trace.uBeta[i]! * (trace.iB[i]! - trace.iC[i]!)) / Math.sqrt(3),
    );
    const last = trajectory.at(trajectory.tEnd);
    const inSource = 0.5 * 0.3e-3 * (last.iA ** 2 + last.iB ** 2 + last.iC ** 2);
    expectWithin(
      ledger.electricalIn,
      1.5 * terminals + ledger.sourceLoss + inSource,
      BY_HAND,
      'electrical input',
    );
  });

  it('has mechanical terms as the torques of the trace times speed', () => {
    expectWithin(
      ledger.airGapWork,
      sum((i) => trace.torque[i]! * trace.speed[i]!),
      BY_HAND,
      'air gap',
    );
    expectWithin(ledger.frictionLoss, 6 * sum((i) => Math.abs(trace.speed[i]!)), BY_HAND, 'friction');
    const smooth = sum((i) => {
      const w = trace.speed[i]!;
      return w * (12 + 0.05 * w + 0.001 * w * Math.abs(w));
    });
    expectWithin(ledger.loadWork, smooth, BY_HAND, 'load');
    expectWithin(
      ledger.kineticChange,
      0.5 * 0.72 * trajectory.at(trajectory.tEnd).speed ** 2,
      { relative: 1e-12 },
      'kinetic',
    );
  });

  it('is part of the metrics', () => {
    expect(result.metrics.ledgerResidual.value).toBe(ledger.residual);
    expect(result.warnings).toEqual([]);
  });

  it('warns loudly when it does not close', () => {
    const sloppy = simulate(
      scenarioOf(DOUBLE_CAGE, {
        initial: 'runningForward',
        actions: [{ at: 0, do: 'startReverse' }],
        solver: { endTime: 0.4, relativeTolerance: 1e-3 },
      }),
    );
    expect(sloppy.ledger.residual).toBeGreaterThan(1e-6);
    expect(sloppy.warnings.some((warning) => warning.includes('does not close'))).toBe(true);
  });
});
