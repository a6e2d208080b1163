import { expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import { runTrajectory } from '../../../src/simulate/run.ts';
import { ARCING_STARTER, scenarioOf, startAtOnce } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';

it('a coupling that swings far faster than the supply never carries torque across its free play', () => {
  // 2·10⁶ N·m/rad on 0.002 kg·m² swings at 5 kHz, far between the probes of a supply period: the steps are short there.
  const coupling = { stiffness: 2e6, damping: 2, backlash: 0.004 };
  const { segments, status } = runTrajectory(
    startAtOnce(KRAUSE.hp3, 0.03, { load: { inertia: 0.002, torques: [], coupling } }),
  );
  expect(status.code).toBe('endTimeReached');
  const edge = coupling.backlash / 2;
  /** Width to which an event is located times the speed of twisting, with room. */
  const close = 1e-9;
  let contacts = 0;
  for (const { steps, model, mode } of segments) {
    if (mode.flank !== 0) contacts++;
    for (const step of steps)
      for (let i = 0; i <= 20; i++) {
        const twist = step.value(model.size + 3, step.t0 + (i * (step.t1 - step.t0)) / 20);
        if (mode.flank === 0) expect(Math.abs(twist)).toBeLessThanOrEqual(edge + close);
        else expect(mode.flank * twist).toBeGreaterThanOrEqual(edge - close);
      }
  }
  expect(contacts).toBeGreaterThanOrEqual(5);
});

it('a run ends when the load is held, though a motor without bearing friction swings on in its coupling', () => {
  const { status, trajectory, metrics } = simulate(
    scenarioOf(KRAUSE.hp3, {
      starter: { ...ARCING_STARTER, zeroSpeedSwitch: { dropOutSpeed: 5, pickUpSpeed: 10, delay: 0 } },
      load: {
        inertia: 0.05,
        torques: [{ kind: 'friction', torque: 3, breakaway: 4 }],
        coupling: { stiffness: 5000, damping: 0.5, backlash: 0 },
      },
      initial: 'runningForward',
      actions: [{ at: 0.01, do: 'plug' }],
    }),
  );
  expect(status.code).toBe('finished');
  expect(trajectory.tEnd).toBeLessThan(metrics.stopTimeFromTouch.time! + 1);
  const [motor, load] = trajectory.segments.at(-1)!.mode.masses;
  expect(load!.held).toBe(true);
  expect(motor!.held).toBe(false);
});

it('a coupling stated to be without damping brings a warning: its oscillation grows while the machine plugs', () => {
  const warnings = (damping: number) =>
    simulate(
      startAtOnce(KRAUSE.hp3, 0.05, {
        load: { inertia: 0.05, torques: [], coupling: { stiffness: 5000, damping, backlash: 0 } },
      }),
    ).warnings.filter((text) => text.includes('without damping'));
  expect(warnings(0)).toHaveLength(1);
  expect(warnings(0.5)).toHaveLength(0);
});
