/**
 * At constant speed (inertia → ∞) the electrical equations are linear with constant coefficients in the axes of the applied
 * sequence: exact solution by a matrix exponential, written from the inductance matrix. No published numbers.
 */
import { describe, it } from 'vitest';
import { linearMachine, phasesOf } from '../support/constantSpeed.ts';
import { run } from '../support/readings.ts';
import { exchangeAtOnce } from '../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const HUGE = 1e12;

describe.each([
  ['3 hp', KRAUSE.hp3, 0],
  ['50 hp', KRAUSE.hp50, 0.7],
  ['2250 hp', KRAUSE.hp2250, -1.1],
  ['double-cage', DOUBLE_CAGE, 0.3],
] as const)('plugging the %s machine at constant speed', (_name, textbook, phi) => {
  it('has the exact currents and torque at every instant', () => {
    const { machine, supply, synchronousSpeed } = textbook;
    const omega = 2 * Math.PI * supply.frequency;
    const crest = supply.lineVoltage * Math.sqrt(2 / 3);
    const before = linearMachine(machine, omega, synchronousSpeed).steady([
      crest * Math.cos(phi),
      crest * Math.sin(phi),
    ]);
    const after = linearMachine(machine, -omega, synchronousSpeed);
    const plug = run(exchangeAtOnce(textbook, phi, 0.4, { inertia: HUGE }));
    const largest = plug.extreme('iC', 'magnitude').value;
    const swing = -plug.extreme('torque', 'min').value;
    for (let k = 0; k <= 50; k++) {
      const t = 0.0079 * k;
      const exact = after.currents(before, [crest * Math.cos(phi), -crest * Math.sin(phi)], t);
      const [a, b, c] = phasesOf([exact[0]!, exact[1]!], -omega * t);
      const point = plug.trajectory.at(t);
      // Integrated to 1e-9 of the no-load flux; a current is that over the leakage, about twenty times as much.
      const allowed = { absolute: 1e-7 * largest };
      expectWithin(point.iA, a, allowed, `iA at ${t}`);
      expectWithin(point.iB, b, allowed, `iB at ${t}`);
      expectWithin(point.iC, c, allowed, `iC at ${t}`);
      expectWithin(point.torque, after.torque(exact), { absolute: 1e-7 * swing }, `torque at ${t}`);
    }
  });
});

describe('the first peak and the inertia (50 hp, φ = 0)', () => {
  it.each([
    [1.662, -4866.63, 6.518],
    [4.986, -4861.56, 6.477],
    [33.24, -4859.3, 6.459],
    [HUGE, -4858.89, 6.456],
  ])('with J = %d kg·m² is as computed with an independent formulation', (inertia, torque, ms) => {
    const peak = run(exchangeAtOnce(KRAUSE.hp50, 0, 0.05, { inertia })).extreme('torque', 'min');
    // 25 µs samples with a parabola: 1e-5
    expectWithin(peak.value, torque, { relative: 1e-5 }, 'torque');
    expectWithin(peak.time * 1000, ms, { absolute: 1.1e-3 }, 'time');
  });
});
