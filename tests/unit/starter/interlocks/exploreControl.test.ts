import { describe, expect, it } from 'vitest';
import type { ControlCircuit } from '../../../../src/starter/control/controlCircuit.ts';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import type { Counterexample } from '../../../../src/starter/interlocks/describePath.ts';
import { exploreControl } from '../../../../src/starter/interlocks/exploreControl.ts';
import { type ExploreOptions, exploreOptions } from '../../../../src/starter/interlocks/options.ts';
import type { PropertyId } from '../../../../src/starter/interlocks/property.ts';
import { controlOf } from './controlOf.ts';
import { mutations } from './removeContact.ts';

type Stated = Parameters<typeof controlOf>[0];

function counterexample(
  stated: Stated,
  property: PropertyId,
  changed: Partial<ExploreOptions> = {},
): Counterexample | undefined {
  const control = controlOf(stated);
  const { broken } = exploreControl(controlCircuit(control, false), {
    ...exploreOptions(control),
    ...changed,
  });
  return broken.find((one) => one.property === property);
}

describe('a shortest counterexample', () => {
  it('of the plain plug-stop circuit is a shaft turned by hand until the zero-speed switch picks up', () => {
    expect(counterexample({ scheme: 'plugStop' }, 'noStartByTurning')).toEqual({
      property: 'noStartByTurning',
      steps: [
        'supply switched on',
        'shaft turned by hand or load: forward speed rises above pick-up',
        'zero-speed switch (forward) picks up',
      ],
      outcome: 'the coil of the reverse contactor is energised',
    });
  });

  it('of the plain plug-stop circuit is the supply returning while the driven machine coasts', () => {
    expect(counterexample({ scheme: 'plugStop' }, 'noStartAfterPowerReturns')).toEqual({
      property: 'noStartAfterPowerReturns',
      steps: [
        'supply switched on',
        'forward button pressed',
        'forward contactor pulls in',
        'machine driven: forward speed rises above pick-up',
        'zero-speed switch (forward) picks up',
        'supply lost',
        'forward contactor drops out',
        'forward button released',
        'supply returns',
      ],
      outcome: 'the coil of the reverse contactor is energised',
    });
  });

  it('of the contact interlock alone is both buttons at the same instant', () => {
    expect(counterexample({ scheme: 'throughStop' }, 'neverBothCommandedBriefly')).toEqual({
      property: 'neverBothCommandedBriefly',
      steps: ['supply switched on', 'forward and reverse button pressed at the same instant'],
      outcome: 'both contactor coils are energised',
    });
  });

  it('of two contactors without mechanical interlock ends with both armatures arriving together', () => {
    const found = counterexample({ scheme: 'throughStop' }, 'neverBothClosed', {
      mechanicalInterlock: false,
    });
    expect(found?.steps.at(-1)).toBe('forward and reverse contactor pull in together');
    expect(found?.outcome).toBe('both contactors are closed');
  });

  it('of a welded braking contactor leaves it in after the switch has opened, its coil dead', () => {
    const found = counterexample({ scheme: 'plugStop', memoryRelay: true }, 'brakeEndsWithSwitch', {
      faults: [{ kind: 'weldedContactor', contactor: 'reverse' }],
    });
    expect(found?.steps).toContain('reverse contactor pulls in');
    expect(found?.steps).not.toContain('reverse contactor drops out');
    expect(found?.outcome).toBe('the reverse contactor is in, its coil dead');
  });

  it('of a fast machine with memory relays is braking from the other side', () => {
    const stated: Stated = { scheme: 'plugStopBoth', memoryRelay: true };
    expect(counterexample(stated, 'brakeEndsWithSwitch')).toBeUndefined();
    const found = counterexample(stated, 'brakeEndsWithSwitch', { speed: 'any' });
    expect(found?.outcome).toMatch(/^the coil of the (forward|reverse) contactor is energised$/u);
  });
});

describe('the exploration', () => {
  const oneCoil = (contacts: readonly string[]): ControlCircuit => ({
    title: 'One contactor',
    feed: { series: [] },
    coils: [
      {
        coil: 'forwardContactor',
        guard: { series: [] },
        branches: [
          {
            purpose: 'command',
            network: {
              series: contacts.map((device) => ({
                device: device as 'forwardButton',
                kind: 'make' as const,
                terminals: '13-14',
              })),
            },
          },
        ],
      },
    ],
  });
  const options: ExploreOptions = {
    ...exploreOptions(controlOf({ scheme: 'throughStop', overload: null })),
    properties: ['heldButton', 'emergencyStop'],
  };

  it('finds that a coil behind a button alone ignores the emergency stop and starts with a held button', () => {
    const { broken } = exploreControl(oneCoil(['forwardButton']), options);
    expect(broken.map(({ property, steps }) => [property, steps])).toEqual([
      ['heldButton', ['forward button pressed', 'supply switched on']],
      ['emergencyStop', ['supply switched on', 'emergency stop pressed', 'forward button pressed']],
    ]);
  });

  it('is the same every time, and counts each position with what it remembers of the past', () => {
    const first = exploreControl(oneCoil(['forwardButton']), options);
    const again = exploreControl(oneCoil(['forwardButton']), options);
    expect(again).toEqual(first);
    // 3 inputs, supply and armature: 32 positions; of 8 that the supply leaves live, the past is one of a few.
    expect(first.states).toBeGreaterThan(32);
    expect(first.states).toBeLessThan(32 * 6);
  });

  it('of category 1 lets no contactor brake that its zero-speed switch does not call', () => {
    const control = controlOf({ scheme: 'plugStop', emergencyStop: { category: 1, limit: 3 } });
    const circuit = controlCircuit(control, false);
    const asked: ExploreOptions = { ...exploreOptions(control), properties: ['emergencyStop'] };
    expect(exploreControl(circuit, asked).broken).toEqual([]);
    const blind = mutations(circuit).find(({ contact }) => contact.includes('brake: switchForward'))!;
    expect(exploreControl(blind.circuit, asked).broken[0]?.steps.at(-1)).toBe('emergency stop pressed');
  });

  it('does not trip an overload relay that is not there', () => {
    const control = controlOf({ scheme: 'direct' });
    const circuit = controlCircuit(control, false);
    const withRelay = exploreControl(circuit, exploreOptions(control));
    const without = exploreControl(circuit, exploreOptions({ ...control, overload: null }));
    expect(without.states).toBeLessThan(withRelay.states);
  });

  it('stays small: the largest healthy starter has less than a hundred thousand states', () => {
    const control = controlOf({
      scheme: 'plugStopBoth',
      memoryRelay: true,
      readyRelay: true,
      changeoverTimer: 0.3,
      emergencyStop: { category: 1, limit: 3 },
    });
    const { states } = exploreControl(controlCircuit(control, true), exploreOptions(control));
    expect(states).toBeLessThan(100_000);
  });
});
