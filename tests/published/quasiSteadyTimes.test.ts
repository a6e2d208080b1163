/**
 * Time to change speed under the steady-state torque, no load: closed form for any R_th by integrating J·dω/T(s) (derivation
 * elementary; numbers computed, to the digits given). The full model tends to it as the inertia grows.
 */
import { describe, it } from 'vitest';
import { steadyState } from '../../src/machine/steadyState.ts';
import { publishedSource } from '../support/published.ts';
import { run } from '../support/readings.ts';
import { exchangeAtOnce } from '../support/scenarios.ts';
import { KRAUSE, type TextbookMachine } from '../support/textbookMachines.ts';

const { compare, listedInGuide } = publishedSource(
  'quasiSteadyTimes',
  'Times without load: the closed form of the integral of inertia over steady-state torque, for the ' +
    'machines of Krause’s table; and whole runs of an independent model with growing inertia, which tend ' +
    'to it (what is left is the offset of the flux at the exchange, which is least at φ = 90°).',
  'exact',
);

/** ∫ J·ω_s ds / T(s) from s2 to s1 by Simpson's rule in ln s. */
function quasiSteadyTime(
  { machine, supply, synchronousSpeed }: TextbookMachine,
  s1: number,
  s2: number,
): number {
  const count = 400;
  const step = Math.log(s1 / s2) / count;
  let sum = 0;
  for (let i = 0; i <= count; i++) {
    const slip = s2 * Math.exp(i * step);
    const weight = i === 0 || i === count ? 1 : i % 2 === 1 ? 4 : 2;
    sum += (weight * slip) / steadyState(machine, supply, slip).torque;
  }
  return (machine.inertia * synchronousSpeed * sum * step) / 3;
}

describe('the time under the steady-state torque curve', () => {
  it.each([
    ['3 hp', KRAUSE.hp3, 0.32456, 0.40108, 0.72564, 41.827],
    ['50 hp', KRAUSE.hp50, 0.47838, 0.79463, 1.273, 394.246],
    ['500 hp', KRAUSE.hp500, 1.27321, null, null, 573.338],
    ['2250 hp', KRAUSE.hp2250, 2.08287, null, null, 1961.797],
  ] as const)(
    'is the closed form’s for the %s machine',
    (name, textbook, start, stop, reversal, meanTorque) => {
      // Simpson's error is below 1e-9 here: the tolerance is the last digit given.
      const last = { absolute: 6e-6 };
      const time = (from: number, to: number) =>
        `time under the steady-state torque, slip ${from} to ${to}, ${name}`;
      compare(quasiSteadyTime(textbook, 1, 0.05), start, last, time(1, 0.05), 's');
      const stopping = quasiSteadyTime(textbook, 2, 1);
      if (stop !== null) compare(stopping, stop, last, time(2, 1), 's');
      if (reversal !== null) compare(quasiSteadyTime(textbook, 2, 0.05), reversal, last, time(2, 0.05), 's');
      const mean = (textbook.machine.inertia * textbook.synchronousSpeed) / stopping;
      compare(mean, meanTorque, { absolute: 6e-4 }, `mean torque in time from slip 2 to 1, ${name}`, 'N·m');
    },
  );
});

describe('the full model with growing inertia (exchange at φ = 90°)', () => {
  it.each([
    ['3 hp', KRAUSE.hp3, [0.98382, 0.99679, 0.9992], [2.95508, 2.99107, 2.99777]],
    ['50 hp', KRAUSE.hp50, [0.98962, 0.99793, 0.99948], [2.9759, 2.99519, 2.9988]],
  ] as const)(
    'tends to the closed-form time and to three times the kinetic energy, %s',
    (name, textbook, times, heats) => {
      for (const [k, factor] of [1, 5, 20].entries()) {
        const inertia = factor * textbook.machine.inertia;
        const scenario = exchangeAtOnce(textbook, Math.PI / 2, 0.9 * factor + 0.2, { inertia });
        const stop = run(scenario);
        const zero = stop.zeroSpeed();
        const quasi = factor * quasiSteadyTime(textbook, 2, 1);
        const kinetic = 0.5 * inertia * textbook.synchronousSpeed ** 2;
        const stopping = `plug stop (exchange at φ = 90°) of ${name} with ${factor} times its inertia`;
        compare(
          zero / quasi,
          times[k]!,
          { absolute: 1.1e-5 },
          `${stopping}: time over that under the steady-state torque`,
          '',
          'computed independently',
        );
        const heat = stop.integral('cage1Loss', 0, zero);
        compare(
          heat / kinetic,
          heats[k]!,
          { absolute: 6e-6 },
          `${stopping}: rotor heat over kinetic energy`,
          '',
          'computed independently',
        );
      }
    },
  );
});

listedInGuide();
