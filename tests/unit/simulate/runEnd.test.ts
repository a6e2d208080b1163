import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScenario, type Scenario, simulate } from '../../../src/index.ts';

const example = parseScenario(readFileSync('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8'));

function withLoad(torques: Scenario['load']['torques'], more: Partial<Scenario> = {}): Scenario {
  return { ...example, load: { ...example.load, torques }, ...more };
}

describe('a run with an automatic end time', () => {
  it('is finished after a plug stop although next to no friction is left to bring the shaft to rest', () => {
    const { status, trajectory } = simulate(withLoad([{ kind: 'friction', torque: 1e-3, breakaway: 1e-3 }]));
    expect(status.code).toBe('finished');
    const opened = trajectory.events.findLast((event) => event.kind === 'poleClears');
    expect(trajectory.tEnd - (opened?.t ?? 0)).toBeCloseTo(1, 9);
  });

  it('waits for the shaft where friction brings it to rest within a minute', () => {
    const { trajectory } = simulate(withLoad([{ kind: 'friction', torque: 2, breakaway: 2 }]));
    expect(trajectory.events.at(-1)?.kind).toBe('shaftHeld');
    expect(trajectory.at(trajectory.tEnd).speed).toBe(0);
  });

  it('follows a coasting fan down to a hundredth of synchronous speed', () => {
    const { trajectory } = simulate(
      withLoad([{ kind: 'viscous', coefficient: 0.05 }], {
        actions: [
          { at: 0, do: 'startForward' },
          { at: 1, do: 'coast' },
        ],
      }),
    );
    expect(trajectory.at(trajectory.tEnd).speed).toBeLessThan((0.01 * 2 * Math.PI * 50) / 2);
    expect(trajectory.at(trajectory.tEnd).speed).toBeGreaterThan(0);
  });
});

describe('an end time in the middle of an arc', () => {
  it('leaves the parting current measured and says that the pole still arcs', () => {
    const { metrics } = simulate({ ...example, solver: { ...example.solver, endTime: 1.0105 } });
    expect(metrics.runPoleAPartingCurrent.value).toBeGreaterThan(1);
    expect(metrics.runPoleAClearingTime).toMatchObject({
      value: null,
      missing: 'the pole still arcs when the run ends',
    });
  });
});

describe('the margin of a short circuit', () => {
  it('is that of the arcs at the fault although the same contactor had run before', () => {
    const { trajectory, metrics } = simulate({
      ...example,
      starter: { ...example.starter, changeoverDelay: 0, closingTime: 0.01, zeroSpeedSwitch: null },
      initial: 'rest',
      actions: [
        { at: 0, do: 'startForward' },
        { at: 0.6, do: 'coast' },
        { at: 0.7, do: 'startReverse' },
        { at: 1.5, do: 'startForward' },
      ],
    });
    expect(trajectory.status.code).toBe('lineToLineShortCircuit');
    const fault = trajectory.shortCircuit;
    const lateness = (fault?.lastExtinction ?? 0) - (fault?.t ?? 0);
    // First zero within half a period of 50 Hz, the other two poles a quarter period later at most.
    expect(lateness).toBeGreaterThan(0);
    expect(lateness).toBeLessThan(0.016);
    expect(metrics.ledgerResidual.value).toBeLessThan(1e-6);
  });
});
