import fc from 'fast-check';
import { expect } from 'vitest';
import { simulate } from '../../src/measure/simulate.ts';
import type { ButtonAction, ButtonName, ControlData, Scenario } from '../../src/scenario/scenario.ts';
import type { Channel } from '../../src/simulate/channels.ts';
import { controlScenario } from './controlScenario.ts';

/** Hands on buttons within a second and a half, and a circuit to press them on. */
export interface Handling {
  readonly control: Partial<ControlData> & Pick<ControlData, 'scheme'>;
  readonly actions: readonly ButtonAction[];
}

const SCHEMES = ['throughStop', 'direct', 'plugStop', 'plugStopBoth', 'antiPlugging', 'jog'] as const;
const BUTTONS: readonly ButtonName[] = [
  'forward',
  'reverse',
  'stop',
  'reset',
  'emergencyStop',
  'overloadTest',
  'overloadReset',
];

/** Any scheme with any of its relays, and up to fourteen hands at random instants. */
export const anyHandling: fc.Arbitrary<Handling> = fc
  .record({
    scheme: fc.constantFrom(...SCHEMES),
    memoryRelay: fc.boolean(),
    readyRelay: fc.boolean(),
    changeoverTimer: fc.constantFrom(0, 0.03),
    scanTime: fc.constantFrom(0, 0.012),
    hands: fc.array(
      fc.record({
        at: fc.integer({ min: 0, max: 1500 }),
        do: fc.constantFrom('press', 'release'),
        button: fc.constantFrom(...BUTTONS),
      }),
      { minLength: 2, maxLength: 14 },
    ),
  })
  .map(({ hands, memoryRelay, scheme, ...rest }) => {
    const brakes = scheme === 'plugStop' || scheme === 'plugStopBoth' || scheme === 'jog';
    const overload = { setting: 14.6, tripClass: '10', start: 'cold', memory: 'kept' } as const;
    const actions = hands
      .filter(({ button }) => scheme !== 'plugStop' || button !== 'reverse')
      .filter(({ button }) => rest.readyRelay || button !== 'reset')
      .filter(({ button, do: verb }) => verb === 'press' || !button.startsWith('overload'))
      .map((hand): ButtonAction => ({ ...hand, at: hand.at / 1000 }));
    const ready: ButtonAction[] = rest.readyRelay ? [{ at: 0, do: 'press', button: 'reset' }] : [];
    return {
      control: { scheme, memoryRelay: memoryRelay && brakes, overload, ...rest },
      actions: [...ready, { at: 0.02, do: 'press', button: 'forward' }, ...actions],
    };
  });

/** Stretches in which a channel is on, s. */
function stretches(
  channels: readonly Channel[],
  kind: 'coil' | 'device',
  device: string,
  tEnd: number,
): [number, number][] {
  const found = channels.find(({ of }) => of.kind === kind && 'device' in of && of.device === device);
  const changes = found?.changes ?? [];
  return changes.flatMap(({ t, value }, i): [number, number][] =>
    value === 'on' ? [[t, changes[i + 1]?.t ?? tEnd]] : [],
  );
}

function overlap(a: readonly [number, number][], b: readonly [number, number][]): number {
  return Math.max(0, ...a.flatMap(([a0, a1]) => b.map(([b0, b1]) => Math.min(a1, b1) - Math.max(a0, b0))));
}

/** What holds whatever hands do to a starter without a fault. */
export function expectControlLaws({ control, actions }: Handling): void {
  const scenario: Scenario = controlScenario(control, actions, [], (s) => ({
    ...s,
    solver: { ...s.solver, endTime: 1.9 },
  }));
  const result = simulate(scenario);
  const { trajectory } = result;
  const { channels, tEnd } = trajectory;
  const coil = (device: string) => stretches(channels, 'coil', device, tEnd);
  const [forward, reverse] = [coil('forwardContactor'), coil('reverseContactor')];
  // Two coils at once: at most until the first armature's break contact has opened.
  expect(overlap(forward, reverse)).toBeLessThanOrEqual(scenario.starter.closingTime + 1e-12);
  for (const stopper of ['emergencyStop', 'overload'])
    for (const stretch of [forward, reverse])
      expect(overlap(stretches(channels, 'device', stopper, tEnd), stretch), stopper).toBe(0);
  const armature = (device: string) => stretches(channels, 'device', device, tEnd);
  expect(overlap(armature('forwardContactor'), armature('reverseContactor'))).toBe(0);
  expect(trajectory.shortCircuit).toBeNull();
  expect(['endTimeReached', 'switchNeverOpened']).toContain(trajectory.status.code);
  expect(result.ledger.residual).toBeLessThan(1e-6);
  const times = trajectory.commands.map(({ at }) => at);
  expect(times).toEqual(times.toSorted((a, b) => a - b));
}
