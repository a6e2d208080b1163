/**
 * At constant speed (inertia → ∞) the electrical equations are linear with constant coefficients in the axes of the applied
 * sequence: exact solution by a matrix exponential, written from the inductance matrix. No published numbers.
 */
import { describe, it } from 'vitest';
import { linearMachine, phasesOf } from '../support/constantSpeed.ts';
import { pointComparisons } from '../support/pointComparisons.ts';
import { publishedSource } from '../support/published.ts';
import { run } from '../support/readings.ts';
import { exchangeAtOnce } from '../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE } from '../support/textbookMachines.ts';
import { allowedError, type Comparison, worstOf } from '../support/worstOf.ts';

const { compare, listedInGuide } = publishedSource(
  'constantSpeedPlugging',
  'Plugging at constant synchronous speed (inertia without limit), where the equations are linear: exact solution by a matrix ' +
    'exponential, written from the inductance matrix; of 816 comparisons, every 7.9 ms for 395 ms, the table has each machine’s torque ' +
    'and phase current that are farthest off, measured against the largest of the run (at most 10⁻⁷ of it is allowed).',
  'exact',
);

const HUGE = 1e12;

describe.each([
  ['3 hp', KRAUSE.hp3, 0],
  ['50 hp', KRAUSE.hp50, 0.7],
  ['2250 hp', KRAUSE.hp2250, -1.1],
  ['double-cage', DOUBLE_CAGE, 0.3],
] as const)('plugging the %s machine at constant speed', (name, textbook, phi) => {
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
    const currents: Comparison[] = [];
    const torques: Comparison[] = [];
    for (let k = 0; k <= 50; k++) {
      const t = 0.0079 * k;
      const exact = after.currents(before, [crest * Math.cos(phi), -crest * Math.sin(phi)], t);
      const phases = phasesOf([exact[0]!, exact[1]!], -omega * t);
      const point = plug.trajectory.at(t);
      const when = `${(1000 * t).toFixed(1)} ms after the exchange, ${name} machine`;
      const at = { phases, torque: after.torque(exact) };
      const made = pointComparisons(point, at, { current: largest, torque: swing }, when);
      currents.push(...made.currents);
      torques.push(made.torque);
    }
    for (const all of [torques, currents]) {
      const { ours, published, tolerance, quantity, unit } = worstOf(all, allowedError);
      compare(ours, published, tolerance, quantity, unit);
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
    const which =
      inertia === HUGE
        ? '50 hp machine at constant speed'
        : `50 hp machine with an inertia of ${inertia} kg·m²`;
    const certainty = 'computed independently';
    // 25 µs samples with a parabola: 1e-5
    compare(peak.value, torque, { relative: 1e-5 }, `first torque peak, ${which}`, 'N·m', certainty);
    compare(
      peak.time * 1000,
      ms,
      { absolute: 1.1e-3 },
      `time of the first torque peak, ${which}`,
      'ms',
      certainty,
    );
  });
});

listedInGuide();
