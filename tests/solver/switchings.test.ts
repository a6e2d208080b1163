/** What a whole run does at the instants at which the solver is stopped and started again. */
import { describe, expect, it } from 'vitest';
import type { Trajectory } from '../../src/simulate/trajectory.ts';
import { run } from '../support/readings.ts';
import { ARCING_STARTER, scenarioOf } from '../support/scenarios.ts';
import { KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const plugStop = scenarioOf(KRAUSE.hp3, {
  starter: {
    ...ARCING_STARTER,
    closingScatter: [0, 0.0011, 0.0004],
    openingScatter: [0.0003, 0, 0.0012],
    zeroSpeedSwitch: { dropOutSpeed: 8, pickUpSpeed: 14, delay: 0.011 },
  },
  load: { inertia: 0.1, torques: [{ kind: 'friction', torque: 2, breakaway: 3 }] },
  actions: [
    { at: 0.1, do: 'startForward' },
    { at: 1.3, do: 'plug' },
  ],
});
const { trajectory } = run(plugStop);

/** Instants at which one segment ends and the next begins. */
function switchings({ segments }: Trajectory): number[] {
  return segments.slice(1).map((segment) => segment.t0);
}

describe('the segments of a run', () => {
  it('join without gap, each step inside its segment', () => {
    expect(trajectory.segments.length).toBeGreaterThan(15);
    let at = 0;
    for (const segment of trajectory.segments) {
      expect(segment.t0).toBe(at);
      expect(segment.steps[0]?.t0).toBe(segment.t0);
      let inside = segment.t0;
      for (const step of segment.steps) {
        expect(step.t0).toBe(inside);
        inside = step.t1;
      }
      expectWithin(inside, segment.t1, { absolute: 4e-16 }, 'end of the last step');
      at = segment.t1;
    }
    expect(trajectory.tEnd).toBe(at);
  });

  it('end at the scheduled instants to the last bit', () => {
    const touch = 0.1 + 0.022;
    const part = 1.3 + 0.012;
    for (const t of [touch, touch + 0.0011, touch + 0.0004, part, part + 0.0003])
      expect(switchings(trajectory)).toContain(t);
  });

  it('keep fluxes, speed and position through every switching', () => {
    const fluxScale = (220 * Math.sqrt(2 / 3)) / (120 * Math.PI);
    for (const t of switchings(trajectory)) {
      const left = trajectory.at(t, 'left');
      const right = trajectory.at(t, 'right');
      // A pole that clears 1e-12 s beside its zero leaves 1e-9 A; everything else is rounding of a change of axes.
      for (const flux of ['psiAlpha', 'psiBeta', 'psiRAlpha', 'psiRBeta'] as const)
        expectWithin(right[flux], left[flux], { absolute: 1e-9 * fluxScale }, `${flux} at ${t}`);
      // Speed is set to exactly zero where it passes zero.
      expectWithin(right.speed, left.speed, { absolute: 1e-8 }, `speed at ${t}`);
      expectWithin(
        right.position,
        left.position,
        { absolute: 1e-12 * Math.max(1, left.position) },
        `position at ${t}`,
      );
    }
  });

  it('keep the phase currents through every switching of arcing poles', () => {
    const crest = 120;
    for (const t of switchings(trajectory)) {
      const left = trajectory.at(t, 'left');
      const right = trajectory.at(t, 'right');
      for (const current of ['iA', 'iB', 'iC'] as const)
        expectWithin(right[current], left[current], { absolute: 1e-7 * crest }, `${current} at ${t}`);
    }
  });

  it('show both values of the terminal voltage where it jumps', () => {
    const touch = trajectory.events.find(
      (event) => event.kind === 'poleTouches' && event.contactor === 'reverse',
    )!;
    const jumps = switchings(trajectory).filter((t) => {
      const left = trajectory.at(t, 'left');
      const right = trajectory.at(t, 'right');
      return Math.hypot(left.uAlpha - right.uAlpha, left.uBeta - right.uBeta) > 10;
    });
    expect(jumps.some((t) => t >= touch.t && t < touch.t + 0.002)).toBe(true);
  });

  it('clear each pole at a zero of its own current', () => {
    const clearings = trajectory.events.filter((event) => event.kind === 'poleClears');
    expect(clearings.length).toBe(6);
    for (const event of clearings) {
      const current = trajectory.at(event.t, 'left')[`i${event.phase!}`];
      // di/dt is at most ω·Î = 5e4 A/s, times the width of 1e-12 s of the search, and the integration's 1e-9.
      expectWithin(current, 0, { absolute: 1e-6 }, event.text);
    }
  });
});

describe('splitting a segment', () => {
  it('at instants where nothing changes leaves every reading within tolerance', () => {
    // A start command to a contactor that is in changes nothing but ends the segment.
    const idle = [0.4, 0.5001, 0.73, 1.1].map((at) => ({ at, do: 'startForward' as const }));
    const [start, plug] = plugStop.actions;
    const split = run({ ...plugStop, actions: [start!, ...idle, plug!] }).trajectory;
    expect(split.segments.length).toBeGreaterThanOrEqual(trajectory.segments.length + 4);
    for (const t of [0.13, 0.45, 0.8, 1.29, 1.35, 1.5, trajectory.tEnd - 0.01]) {
      const a = trajectory.at(t);
      const b = split.at(t);
      expectWithin(b.speed, a.speed, { absolute: 1e-6 }, `speed at ${t}`);
      expectWithin(b.torque, a.torque, { absolute: 1e-5 }, `torque at ${t}`);
      expectWithin(b.iA, a.iA, { absolute: 1e-5 }, `iA at ${t}`);
    }
    expectWithin(split.tEnd, trajectory.tEnd, { absolute: 1e-7 }, 'end');
  });
});
