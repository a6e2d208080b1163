/**
 * Torque after switching a machine without resistance at constant speed (closed forms derived from the flux equations; T0, T1 and
 * the extremes computed, to the digits given). The extremes −3√3/2, −2.367823 and ±1 are exact to those digits.
 */
import { describe, it } from 'vitest';
import { publishedSource } from '../support/published.ts';
import { run } from '../support/readings.ts';
import { exchangeAtOnce, scenarioOf } from '../support/scenarios.ts';
import { KRAUSE, type TextbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';
import { allowedError, type Comparison, worstOf } from '../support/worstOf.ts';

const { compare, listedInGuide } = publishedSource(
  'losslessTorque',
  'Closed forms from the flux equations of a machine without resistance at constant speed, for the ' +
    'machines of Krause’s table; φ is the angle of the supply at the exchange, 0° where the two phases ' +
    'exchanged have equal voltage, and T0 the amplitude in T = T0·(sin 2θ − 2·cos φ·sin θ), θ = ωt + φ. ' +
    'Of 543 instants the one that is off most is shown for each machine.',
  'exact',
);

/** Ω: decays by 1e-8 over a period. */
const NEARLY_NOTHING = 1e-9;
const HUGE = 1e12;
const degrees = (angle: number) => (angle * Math.PI) / 180;

/** Demands all of them, and lists the one that is off most. */
function compareWorst(all: readonly Comparison[]): void {
  const { ours, published, tolerance, quantity, unit } = worstOf(all, allowedError);
  compare(ours, published, tolerance, quantity, unit);
}

function lossless(textbook: TextbookMachine): TextbookMachine {
  const { machine } = textbook;
  const cages = machine.cages.map((cage) => ({ ...cage, Rr: NEARLY_NOTHING }));
  const rated = { current: 1, torque: 1, power: null, speed: null };
  return { ...textbook, machine: { ...machine, Rs: NEARLY_NOTHING, cages, rated } };
}

function constants({ machine, supply }: TextbookMachine) {
  const omega = 2 * Math.PI * supply.frequency;
  const Ls = machine.Lls + machine.Lm;
  const Lr = machine.cages[0]!.Llr + machine.Lm;
  const D = Ls * Lr - machine.Lm ** 2;
  const flux = (supply.lineVoltage * Math.sqrt(2 / 3)) / omega;
  return {
    omega,
    T0: 1.5 * machine.polePairs * (machine.Lm / D) * (machine.Lm / Ls) * flux ** 2,
    T1: 1.5 * machine.polePairs * (Lr / D) * flux ** 2,
    /** Residual voltage, pu, with λs = (Lm/Lr)·λr. */
    residual: machine.Lm ** 2 / (Ls * Lr),
  };
}

describe('instant exchange of two phases', () => {
  it.each([
    ['3 hp', KRAUSE.hp3, 163.1426],
    ['50 hp', KRAUSE.hp50, 1795.889],
    ['500 hp', KRAUSE.hp500, 11255.56],
    ['2250 hp', KRAUSE.hp2250, 60507.12],
  ] as const)('has the tabulated T0 and follows sin 2θ − 2·cos φ·sin θ, %s', (name, textbook, tabulated) => {
    const { T0, omega } = constants(textbook);
    expectWithin(T0, tabulated, { relative: 5e-7 }, 'T0');
    const all: Comparison[] = [];
    // Resistance left: 1e-9 Ω over leakage of 1e-3 H for 34 ms, 1e-7 with the integration's error.
    const tolerance = { absolute: 2e-7 * T0 };
    for (const phi of [0, 30, 90]) {
      const swap = run(exchangeAtOnce(lossless(textbook), degrees(phi), 0.034, { inertia: HUGE }));
      for (let k = 0; k <= 34; k++) {
        const t = 0.001 * k;
        const theta = omega * t + degrees(phi);
        all.push({
          ours: swap.trajectory.at(t).torque,
          published: T0 * (Math.sin(2 * theta) - 2 * Math.cos(degrees(phi)) * Math.sin(theta)),
          tolerance,
          quantity: `torque ${k} ms after an exchange at φ = ${phi}°, ${name} without resistance`,
          unit: 'N·m',
        });
      }
      // At 90° the formula is T0·sin 2θ. The digits given, and the resistance left.
      if (phi === 90)
        compare(
          swap.extreme('torque', 'max').value,
          tabulated,
          { relative: 7e-7 },
          `largest torque after an exchange at φ = 90°, which is T0, ${name} without resistance`,
          'N·m',
        );
    }
    compareWorst(all);
  });

  it.each([
    [0, -2.598076, 120],
    [30, -2.367823, null],
    [90, -1, null],
  ])('at φ = %d° has the lossless minimum', (phi, minimum, angle) => {
    const { T0, omega } = constants(KRAUSE.hp50);
    const swap = run(exchangeAtOnce(lossless(KRAUSE.hp50), degrees(phi), 0.0166, { inertia: HUGE }));
    const found = swap.extreme('torque', 'min');
    compare(
      found.value / T0,
      minimum,
      { absolute: 1e-6 },
      `most negative torque after an exchange at φ = ${phi}°, multiple of T0, 50 hp without resistance`,
      '',
    );
    if (angle !== null)
      compare(
        (found.time * omega * 180) / Math.PI,
        angle,
        { absolute: 0.01 },
        `angle of the supply from the exchange at φ = ${phi}° to that torque, 50 hp without resistance`,
        '°',
      );
  });

  it('in a real machine may exceed the lossless minimum (it is no bound)', () => {
    // real / lossless at φ = 0, three digits given
    for (const [name, textbook, share] of [
      ['3 hp', KRAUSE.hp3, 0.932],
      ['50 hp', KRAUSE.hp50, 1.043],
      ['500 hp', KRAUSE.hp500, 0.947],
      ['2250 hp', KRAUSE.hp2250, 0.972],
    ] as const) {
      const real = run(exchangeAtOnce(textbook, 0, 0.05)).extreme('torque', 'min').value;
      compare(
        real / (-2.598076 * constants(textbook).T0),
        share,
        { absolute: 6e-4 },
        `most negative torque after an exchange at φ = 0°, ${name} with its resistances, over that without ` +
          '(three digits)',
        '',
        'computed independently',
      );
    }
  });
});

describe('reversal after a dead time without decay', () => {
  it('follows T1·a·[sin(2ωt − δ) − a·sin ωt − sin(ωt − δ)]', () => {
    const textbook = lossless(KRAUSE.hp50);
    const { T1, residual, omega } = constants(KRAUSE.hp50);
    expectWithin(T1, 1879.775, { relative: 3e-7 }, 'T1');
    const deadTime = 0.01;
    // The residual voltage is in phase with the supply: δ = −2·(ωT + φ).
    const all: Comparison[] = [];
    for (const delta of [0, 60, 200]) {
      const { trajectory } = run(
        scenarioOf(textbook, {
          supply: { angle: -omega * deadTime - degrees(delta) / 2 },
          inertia: HUGE,
          initial: 'runningForward',
          starter: { changeoverDelay: deadTime },
          actions: [{ at: 0, do: 'startReverse' }],
          solver: { endTime: 0.05 },
        }),
      );
      for (let k = 0; k <= 40; k++) {
        const t = 0.001 * k;
        const published =
          T1 *
          residual *
          (Math.sin(2 * omega * t - degrees(delta)) -
            residual * Math.sin(omega * t) -
            Math.sin(omega * t - degrees(delta)));
        all.push({
          ours: trajectory.at(deadTime + t).torque,
          published,
          tolerance: { absolute: 3e-7 * T1 },
          quantity:
            `torque ${k} ms after a reversal with 10 ms without supply, supply ${delta}° ahead of the residual ` +
            'voltage, 50 hp without resistance',
          unit: 'N·m',
        });
      }
    }
    compareWorst(all);
  });
});

listedInGuide();
