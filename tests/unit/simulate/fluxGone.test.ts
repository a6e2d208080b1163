import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import { realMachine } from '../../support/everyElement.ts';
import { ARCING_STARTER, scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

describe('a machine with iron loss that coasts until its flux is gone', () => {
  const again = 4;
  const scenario = scenarioOf(KRAUSE.hp3, {
    starter: ARCING_STARTER,
    load: { inertia: 1, torques: [{ kind: 'viscous', coefficient: 1e-3 }] },
    initial: 'runningForward',
    actions: [
      { at: 0.1, do: 'coast' },
      { at: again, do: 'startForward' },
    ],
    solver: { endTime: 4.5, relativeTolerance: 1e-8 },
  });
  const run = simulate({ ...scenario, machine: { ...realMachine(KRAUSE.hp3), inertia: 0.089 } });
  const { trajectory, ledger } = run;
  const dead = trajectory.segments.find(({ frame }) => frame === 'none: no flux is left')!;

  it('is integrated without it from there on, in few steps', () => {
    // T_r0 = 0.087 s: ln 10⁶ of it is 1.2 s. The winding of the iron would take 3000 steps a second.
    expect(dead.t0).toBeGreaterThan(0.5);
    expect(dead.t0).toBeLessThan(2);
    expect(dead.t1).toBeGreaterThanOrEqual(again);
    expect(dead.steps.length).toBeLessThan(100);
    const { uAlpha, uBeta } = trajectory.at(dead.t0 - 1e-6);
    const crest = Math.sqrt(2 / 3) * 220;
    expect(Math.hypot(uAlpha, uBeta) / crest).toBeLessThan(2e-6);
    expect(Math.hypot(uAlpha, uBeta) / crest).toBeGreaterThan(1e-8);
    expect(trajectory.at(2).uAlpha).toBe(0);
  });

  it('loses nothing worth speaking of, and slows down on', () => {
    expect(ledger.residual).toBeLessThan(1e-8);
    const speed = (t: number) => trajectory.at(t).speed;
    // J·dω/dt = −b·ω − friction − windage·ω², here by a step of 0.2 s across the instant, parabola error below 1e-6.
    const { t0 } = dead;
    const slope = (speed(t0 + 0.1) - speed(t0 - 0.1)) / 0.2;
    const omega = speed(t0);
    expectWithin(
      slope,
      -(1e-3 * omega + 0.6 + 2e-5 * omega ** 2) / 1.089,
      { relative: 1e-5 },
      'slowing down',
    );
  });

  it('starts again from no flux and no current', () => {
    const touch = trajectory.events.find(({ kind, t }) => kind === 'poleTouches' && t > again)!;
    const { iA, iB, iC, psiAlpha, psiBeta } = trajectory.at(touch.t);
    for (const value of [iA, iB, iC, psiAlpha, psiBeta])
      expectWithin(value, 0, { absolute: 1e-9 }, 'at the touch');
    expect(Math.abs(trajectory.at(touch.t + 0.005).iA)).toBeGreaterThan(10);
  });
});
