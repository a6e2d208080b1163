/** Every kind of load through zero and into reverse, against closed forms; the air-gap torque is given. */
import { describe, expect, it } from 'vitest';
import type { LoadTorque } from '../../../src/scenario/scenario.ts';
import { initialShaft } from '../../../src/shaft/initialShaft.ts';
import { loadTorqueAt } from '../../../src/shaft/loadTorque.ts';
import { newShaftObservation, observeShaft } from '../../../src/shaft/observeShaft.ts';
import type { Shaft } from '../../../src/shaft/shaft.ts';
import { expectWithin } from '../../support/tolerance.ts';
import { type Drive, driveShaft, type Moment, shaftWith } from './driveShaft.ts';

const J = 0.1;
/** Of the fourth-order integration with the steps used here. */
const INTEGRATED = { relative: 1e-9, absolute: 1e-9 };

const constantPower = { kind: 'constantPower', power: 1000, baseSpeed: 50 } as const;
const table = (mirrored: boolean, ...points: readonly (readonly [number, number])[]) =>
  ({ kind: 'table', mirrored, points: points.map(([speed, torque]) => ({ speed, torque })) }) as const;

function loadTorque(shaft: Shaft, { y, mode }: Moment): number {
  const out = newShaftObservation();
  observeShaft(shaft, mode, y, 0, 0, out);
  return out.loadTorque;
}

const kinds = (run: Drive) => run.events.map(({ kind }) => kind);

describe('a reversal through zero by a constant torque', () => {
  const cases: readonly (readonly [string, LoadTorque, (omega: number) => number])[] = [
    ['dry friction', { kind: 'friction', torque: 8, breakaway: 9 }, (omega) => 8 * Math.sign(omega)],
    ['viscous', { kind: 'viscous', coefficient: 0.2 }, (omega) => 0.2 * omega],
    ['fan', { kind: 'fan', coefficient: 2e-3 }, (omega) => 2e-3 * omega * Math.abs(omega)],
    ['gravity', { kind: 'gravity', torque: 12 }, () => 12],
    ['constant power', constantPower, (omega) => Math.sign(omega) * (1000 / Math.max(50, Math.abs(omega)))],
    [
      'a mirrored table',
      table(true, [0, 5], [40, 15]),
      (omega) => Math.sign(omega) * (5 + Math.min(Math.abs(omega), 40) / 4),
    ],
    [
      'a table of signed speeds',
      table(false, [-60, -20], [0, 10], [60, 25]),
      (omega) => (omega >= 0 ? 10 + Math.min(omega, 60) / 4 : 10 + Math.max(omega, -60) / 2),
    ],
  ];

  it.each(cases)('meets the load torque with its own sign on either side: %s', (_name, load, law) => {
    const shaft = shaftWith({ torques: [load] });
    const run = driveShaft(shaft, () => -50, 0.5, 1e-3, initialShaft(shaft, 80));
    expect(kinds(run).filter((kind) => kind === 'zeroSpeed').length).toBe(1);
    expect(run.end.y[0]).toBeLessThan(-60);
    for (const moment of run.moments.filter(({ y }) => y[0] !== 0))
      expectWithin(
        loadTorque(shaft, moment),
        law(moment.y[0]!),
        { absolute: 1e-11 },
        `torque at ${moment.y[0]}`,
      );
    for (const omega of [80, 3, -3, -80])
      expectWithin(
        loadTorqueAt(shaft, omega, omega > 0 ? 1 : -1),
        law(omega),
        { absolute: 1e-12 },
        `torque at ${omega}`,
      );
  });

  it.each(cases)('spends the energy that the law says, found by a sum over speed: %s', (_name, load, law) => {
    const shaft = shaftWith({ torques: [load] });
    const run = driveShaft(shaft, () => -50, 0.5, 1e-3, initialShaft(shaft, 80));
    // t = ∫ J dω/(−50 − T(ω)) from 80 down: the midpoint rule on 4000 parts.
    let t = 0;
    const last = run.end.y[0]!;
    const cuts = [80, 60, 50, 40, 0, -40, -50, -60, last].filter((omega) => omega >= last);
    for (let i = 1; i < cuts.length; i++) {
      const width = (cuts[i]! - cuts[i - 1]!) / 500;
      for (let k = 0; k < 500; k++) t += (J * width) / (-50 - law(cuts[i - 1]! + (k + 0.5) * width));
    }
    // Midpoint rule: (width·T'/T)²/24 of each part, below 1e-6.
    expectWithin(t, 0.5, { relative: 1e-6 }, 'time');
  });
});

describe('constant power', () => {
  const shaft = shaftWith({ torques: [constantPower] });

  it.each([1, -1])('slows as ω² = ω₀² − 2·P·t/J to the base speed, then evenly to rest: %d', (side) => {
    const run = driveShaft(shaft, () => 0, 1, 1e-3, initialShaft(shaft, 120 * side));
    const corner = (J * (120 ** 2 - 50 ** 2)) / (2 * 1000);
    const rest = corner + (J * 50) / (1000 / 50);
    expect(kinds(run)).toEqual(['corner', 'zeroSpeed']);
    expectWithin(run.events[0]!.t, corner, INTEGRATED, 'time of the base speed');
    expectWithin(run.events[1]!.t, rest, INTEGRATED, 'time of rest');
    expectWithin(
      run.end.y[1],
      (side * (J * (120 ** 3 - 50 ** 3))) / 3000 + (side * J * 50 ** 2) / 40,
      INTEGRATED,
      'angle',
    );
    expect(run.end.y[0]).toBe(0);
    expect(run.notes.map(({ kind }) => kind)).toEqual(['zeroSpeed', 'shaftHeld']);
  });

  it('holds at rest up to P/ω_base and passes the corner on the way up', () => {
    const run = driveShaft(shaft, (t) => 100 * t, 0.6, 1e-3);
    expect(kinds(run)).toEqual(['breakaway', 'corner']);
    expectWithin(run.events[0]!.t, 0.2, { absolute: 1e-12 }, 'time of breaking away');
    // J·ω = 100·(t − 0.2)²/2
    expectWithin(run.events[1]!.t, 0.2 + Math.sqrt((2 * J * 50) / 100), INTEGRATED, 'time of the base speed');
    const at = run.moments.find(({ t }) => t === run.events[1]!.t)!;
    expectWithin(at.y[0], 50, { absolute: 1e-9 }, 'speed at the corner');
  });

  it('behind a gear acts at the speed of the load', () => {
    const gear = { ratio: 4, efficiency: 1, backwardEfficiency: 1 };
    const geared = shaftWith({ torques: [{ ...constantPower, baseSpeed: 12.5 }], gear });
    const run = driveShaft(geared, () => 0, 0.7, 1e-3, initialShaft(geared, 120));
    expectWithin(run.events[0]!.t, (J * (120 ** 2 - 50 ** 2)) / 2000, INTEGRATED, 'time of the base speed');
  });
});

describe('a table', () => {
  it('follows its straight lines, with the last values beyond its ends', () => {
    const shaft = shaftWith({ torques: [table(true, [20, 10], [100, 30])] });
    const run = driveShaft(shaft, () => 0, 2, 1e-3, initialShaft(shaft, 130));
    // 30 N·m to 100 rad/s; then T = 5 + ω/4 to 20 rad/s; then 10 N·m to rest.
    const level = (J * 30) / 30;
    const line = (J / 0.25) * Math.log(30 / 10);
    expect(kinds(run)).toEqual(['corner', 'corner', 'zeroSpeed']);
    [level, level + line, level + line + (J * 20) / 10].forEach((t, i) => {
      expectWithin(run.events[i]!.t, t, INTEGRATED, `time of event ${i}`);
    });
  });

  it('of a first point of no torque holds nothing, and starts either way', () => {
    const shaft = shaftWith({ torques: [table(true, [0, 0], [100, 20])] });
    for (const sign of [1, -1]) {
      const run = driveShaft(shaft, (t) => sign * 40 * t, 0.5, 1e-3);
      // J·dω/dt = 40·t − ω/5: ω = 200·(t − τ·(1 − e^{−t/τ})), τ = 0.5 s.
      const expected = sign * 200 * (0.5 - 0.5 * (1 - Math.exp(-1)));
      expectWithin(run.end.y[0], expected, { relative: 1e-6 }, 'speed');
      expect(run.notes).toEqual([]);
    }
  });

  it('may overhaul: as given it drives the shaft through its corners', () => {
    const shaft = shaftWith({ torques: [table(false, [-100, -20], [0, 10], [100, 20])] });
    const run = driveShaft(shaft, () => 0, 1, 1e-3);
    // From rest it pulls backward with 10 N·m + 0.3·ω, towards −33.3 rad/s.
    const expected = (-100 / 3) * (1 - Math.exp((-0.3 * 1) / J));
    expectWithin(run.end.y[0], expected, INTEGRATED, 'speed');
  });

  it('passes a corner that two tables share with both of them', () => {
    const twice = [table(true, [20, 10], [100, 30]), table(true, [20, 4], [100, 0])] as const;
    const shaft = shaftWith({ torques: twice });
    const run = driveShaft(shaft, () => 0, 3, 1e-3, initialShaft(shaft, 130));
    for (const moment of run.moments.filter(({ y }) => y[0] !== 0)) {
      const x = Math.min(Math.max(moment.y[0]!, 20), 100);
      expectWithin(
        loadTorque(shaft, moment),
        5 + x / 4 + 5 - x / 20,
        { absolute: 1e-9 },
        `torque at ${moment.y[0]}`,
      );
    }
    expect(run.end.y[0]).toBe(0);
  });
});
