/**
 * A sweep over the inertia without load torque against the exact quasi-steady laws. Torque of a single-cage circuit behind its Thévenin
 * impedance: T = 2·T_b·(1 + a·s_b) / (s/s_b + s_b/s + 2·a·s_b), a = R_th/R_r (Kloss's formula with stator resistance; textbooks, from
 * memory; the derivation is elementary). Integrating J·dω/T from slip 2 to slip 1 gives
 * t = J·ω_s / (2·T_b·(1 + a·s_b)) · [3/(2·s_b) + s_b·ln 2 + 2·a·s_b], and integrating s·dω the rotor heat 3·(½·J·ω_s²), which holds
 * for any torque curve. The full model tends to both as the inertia grows: its transients last as long for any inertia.
 */
import { expect, it } from 'vitest';
import { shortRun } from '../../../support/shortRun.ts';
import { expectWithin } from '../../../support/tolerance.ts';
import { made, surveyOn } from './made.ts';

/** Inertia of the rotor of the example, kg·m². */
const ROTOR = 0.036;
/** Synchronous speed of four poles at 50 Hz, rad/s. */
const SYNCHRONOUS = 50 * Math.PI;

/** Circuit of the example, Ω per phase. */
const CIRCUIT = { r1: 0.56, x1: 1.25, xm: 39, r2: 0.52, x2: 1.45, lineVoltage: 400 };

/** Of time and heat at the smallest inertia, 14 times the rotor's: the share of the transients. Computed: 5 % and 3 %. */
const LARGEST_DEVIATION = 0.06;

/** Time from slip 2 to slip 1 per inertia, s/(kg·m²). */
function quasiSteadyTime(): number {
  const { r1, x1, xm, r2, x2, lineVoltage } = CIRCUIT;
  const square = r1 ** 2 + (x1 + xm) ** 2;
  const voltage = ((lineVoltage / Math.sqrt(3)) * xm) / Math.sqrt(square);
  const rTh = (r1 * xm ** 2) / square;
  const xTh = (xm * (r1 ** 2 + x1 * (x1 + xm))) / square;
  const whole = Math.hypot(rTh, xTh + x2);
  const breakdown = (3 * voltage ** 2) / (2 * SYNCHRONOUS * (rTh + whole));
  const slip = r2 / whole;
  const a = rTh / r2;
  const bracket = 3 / (2 * slip) + slip * Math.LN2 + 2 * a * slip;
  return (SYNCHRONOUS / (2 * breakdown * (1 + a * slip))) * bracket;
}

it('stop time and rotor heat of a sweep grow with the inertia as the quasi-steady laws say', () => {
  const free = shortRun(
    [/ {2}torque:\n(?: {4}.*\n)+/u.exec(shortRun())![0], '  torque: none\n'],
    ['actions:\n', 'initial: running forward\nactions:\n'],
    ['  - { at: 0 s, do: start forward }\n', ''],
    ['at: 0.35 s', 'at: 0.02 s'],
    // Without friction the shaft would never come to rest after the switch has opened the contactor.
    [/ {2}zeroSpeedSwitch: .*\n/u.exec(shortRun())![0], '  zeroSpeedSwitch: off\n'],
  );
  const inertias = [0.5, 1.5, 4.5];
  const survey = surveyOn(free, {
    ask: 'sweep',
    metrics: ['stopTimeFromTouch', 'plugRotorHeat'],
    vary: [{ field: 'load.inertia', values: inertias.map((inertia) => `${inertia} kg m^2`) }],
  });
  const errors = made(survey).map(({ status, metrics: [time, heat] }, k) => {
    expect(status).toBe('good');
    const inertia = ROTOR + inertias[k]!;
    return {
      time: time! / (quasiSteadyTime() * inertia) - 1,
      heat: heat! / (1.5 * inertia * SYNCHRONOUS ** 2) - 1,
    };
  });
  for (const key of ['time', 'heat'] as const) {
    const [small, middle, large] = errors.map((error, k) => error[key] * (ROTOR + inertias[k]!));
    expectWithin(errors[0]![key], 0, { absolute: LARGEST_DEVIATION }, `${key} at the smallest inertia`);
    // What the transients add is the same for every inertia …
    expectWithin(small, large!, { relative: 0.02 }, `${key}: deviation times inertia`);
    // … so that what is left of the deviation at an infinite inertia is nothing.
    const left = (large! - middle!) / (inertias[2]! - inertias[1]!);
    expectWithin(left, 0, { absolute: 2e-4 }, `${key}: deviation at an infinite inertia`);
  }
});
