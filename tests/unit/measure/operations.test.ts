import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScenario, type Scenario, simulate } from '../../../src/index.ts';

const example = parseScenario(readFileSync('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8'));
const alone = simulate(example);

function withActions(actions: Scenario['actions'], more: Partial<Scenario> = {}): Scenario {
  return { ...example, actions, ...more };
}

describe('figures belong to one operation, from its command to the next action', () => {
  it('a plug that another action interrupts has no stopping figures, with the reason', () => {
    const { metrics } = simulate(
      withActions([
        { at: 0, do: 'startForward' },
        { at: 1, do: 'plug' },
        { at: 1.06, do: 'startForward' },
        { at: 1.6, do: 'plug' },
      ]),
    );
    for (const key of [
      'stopTimeFromTouch',
      'stopRevolutions',
      'plugRotorHeat',
      'plugToStartHeatRatio',
    ] as const)
      expect(metrics[key]).toMatchObject({ value: null, missing: expect.stringContaining('1.06 s') });
  });

  it('a further cycle after a plug stop changes none of its figures', () => {
    const twice = simulate(
      withActions([
        { at: 0, do: 'startForward' },
        { at: 1, do: 'plug' },
        { at: 2, do: 'startForward' },
        { at: 3, do: 'plug' },
      ]),
    );
    for (const key of [
      'plugMaximumTorque',
      'plugPeakCurrent',
      'creepSpeed',
      'creepRevolutions',
      'plugRotorHeat',
    ] as const)
      expect(twice.metrics[key].value).toBeCloseTo(alone.metrics[key].value ?? Number.NaN, 6);
    expect(twice.warnings.join()).toContain('2 other actions');
  });

  it('a reversal after coasting counts from the contacts that parted for the coasting', () => {
    const { metrics, trajectory } = simulate(
      withActions(
        [
          { at: 0, do: 'startForward' },
          { at: 1, do: 'coast' },
          { at: 1.15, do: 'startReverse' },
        ],
        { starter: { ...example.starter, zeroSpeedSwitch: null } },
      ),
    );
    const parted = trajectory.events.find((event) => event.kind === 'poleParts')?.t ?? 0;
    const touched = metrics.partingToTouch.time ?? 0;
    expect(parted).toBeCloseTo(1.009, 9);
    expect(metrics.partingToTouch.value).toBeCloseTo(touched - parted, 12);
    expect(metrics.runPoleAClearingTime.value).toBeGreaterThan(0);
    expect(metrics.extinctionToTouch.value).toBeGreaterThan(0.1);
  });

  it('a hoist that its load turns before the first start is started, not plugged', () => {
    const { metrics, operations } = simulate(
      withActions([{ at: 0.1, do: 'startForward' }], {
        load: { inertia: 0.05, torques: [{ kind: 'gravity', torque: 20 }] },
      }),
    );
    expect(operations.reversal).toBeNull();
    expect(operations.start).not.toBeNull();
    expect(metrics.startTime.value).toBeGreaterThan(0);
  });
});

describe('a comparison with a start', () => {
  it('is not made when the start was cut short', () => {
    const { metrics, warnings } = simulate(
      withActions([
        { at: 0, do: 'startForward' },
        { at: 0.15, do: 'plug' },
      ]),
    );
    expect(metrics.plugRotorHeat.value).toBeGreaterThan(0);
    expect(metrics.plugToStartHeatRatio.value).toBeNull();
    expect(metrics.startRotorHeatMultiple.value).toBeNull();
    expect(warnings.join()).toContain('cut short');
  });

  it('of a full reversal takes the heat of the whole reversal', () => {
    const { metrics } = simulate(
      withActions(
        [
          { at: 0, do: 'startForward' },
          { at: 1, do: 'startReverse' },
        ],
        { starter: { ...example.starter, zeroSpeedSwitch: null } },
      ),
    );
    const ratio = (metrics.reversalRotorHeat.value ?? 0) / (metrics.startRotorHeat.value ?? 0);
    expect(metrics.reversalToStartHeatRatio.value).toBeCloseTo(ratio, 12);
    expect(ratio).toBeGreaterThan(metrics.plugToStartHeatRatio.value ?? Number.POSITIVE_INFINITY);
  });
});

describe('warnings', () => {
  it('name a machine that does not start', () => {
    const { warnings } = simulate(
      withActions(
        [
          { at: 0, do: 'startForward' },
          { at: 1, do: 'coast' },
        ],
        { load: { inertia: 0.05, torques: [{ kind: 'friction', torque: 400, breakaway: 400 }] } },
      ),
    );
    expect(warnings.join()).toContain('does not start');
  });

  it('name a margin that the operating times will use up', () => {
    const starter = { ...example.starter, closingTime: 0 };
    const { metrics } = simulate({ ...example, starter });
    const arcs = (metrics.partingToTouch.value ?? 0) - (metrics.arcMargin.value ?? 0);
    const changeoverDelay = arcs + starter.openingTime + 0.0005;
    const near = simulate({ ...example, starter: { ...starter, changeoverDelay } });
    expect(near.metrics.arcMargin.value).toBeCloseTo(0.0005, 5);
    expect(near.warnings.join()).toContain('Lengthen the dead time');
  });

  it('name a load that drives the shaft once the poles are open', () => {
    const load = { inertia: 0.05, torques: [{ kind: 'gravity', torque: 20 } as const] };
    expect(simulate({ ...example, load }).warnings.join()).toContain('holding brake');
    expect(alone.warnings).toEqual([]);
  });

  it('make a run unusable when its energy balance does not close', () => {
    const solver = { ...example.solver, relativeTolerance: 1e-3 };
    const rough = simulate({ ...example, solver });
    expect(rough.usable).toBe(false);
    expect(rough.warnings[0]).toContain('Do not use these figures');
    expect(alone.usable).toBe(true);
  });
});

describe('a plug that never takes hold', () => {
  const late = (changeoverDelay: number, zeroSpeedSwitch: Scenario['starter']['zeroSpeedSwitch']) =>
    simulate({ ...example, starter: { ...example.starter, changeoverDelay, zeroSpeedSwitch } });

  it('because the switch opens before the incoming coil is energised is no reversal, and said so', () => {
    const { operations, warnings, metrics } = late(30, example.starter.zeroSpeedSwitch);
    expect(operations.reversal).toBeNull();
    expect(warnings.join()).toContain("before the reverse coil's turn");
    expect(metrics.stopTimeFromParting.value).toBeNull();
  });

  it('because friction stops the shaft first has no stopping figures', () => {
    const { metrics } = late(30, null);
    expect(metrics.commandToTouch.value).toBeGreaterThan(30);
    for (const key of ['stopTimeFromParting', 'plugRotorHeat', 'plugToStartHeatRatio'] as const)
      expect(metrics[key].missing).toContain('comes to rest by itself');
  });
});

it('a short circuit at the very instant of the command is a failed reversal, not a run without one', () => {
  const starter = { ...example.starter, openingTime: 0, closingTime: 0, changeoverDelay: 0 };
  const { operations, metrics, status } = simulate({ ...example, starter });
  expect(status.code).toBe('lineToLineShortCircuit');
  expect(operations.reversal?.command).toBe(status.time);
  expect(metrics.arcMargin.value).toBeLessThan(0);
});

it('a plug that came to nothing does not end the start it was given in', () => {
  const { metrics, operations } = simulate(
    withActions([
      { at: 0, do: 'startForward' },
      { at: 0.02, do: 'plug' },
    ]),
  );
  expect(operations.reversal).toBeNull();
  expect(operations.start?.to).toBeGreaterThan(0.02);
  expect(metrics.startPeakCurrent.value).toBeGreaterThan(50);
});

it('a load that drives the machine backwards is not called stalled', () => {
  const load = { inertia: 0.05, torques: [{ kind: 'gravity', torque: 400 } as const] };
  const { warnings, status } = simulate(withActions([{ at: 0, do: 'startForward' }], { load }));
  expect(status.code).toBe('overspeed');
  expect(warnings.join()).toContain('backwards');
  expect(warnings.join()).not.toContain('locked');
});
