import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { applyEdits } from '../../../../src/scenario/edit/applyEdits.ts';
import type { Edit } from '../../../../src/scenario/edit/edit.ts';
import { CIRCUITS, changedLines, edited, example } from './editing.ts';

describe('a hand on a button', () => {
  const text = example('what-happens-after-the-stop-button');

  it('is added, and what was done later is forgotten', () => {
    const after = edited(text, { kind: 'button', at: 0.9, do: 'press', button: 'emergencyStop' });
    expect(after).toContain(
      '  - { at: 0.4 s, do: press forward }\n  - { at: 0.9 s, do: press emergency stop }\n',
    );
    expect(after).not.toContain('press stop');
    expect(changedLines(text, after).gone).toEqual(['  - { at: 1.8 s, do: press stop }']);
  });

  it.each([
    ['press', 'forward', 'press forward'],
    ['hold', 'stop', 'hold stop'],
    ['release', 'reset', 'release reset'],
    ['hold', 'emergencyStop', 'press emergency stop'],
    ['release', 'emergencyStop', 'release emergency stop'],
    ['press', 'overloadTest', 'trip overload'],
    ['press', 'overloadReset', 'reset overload'],
  ] as const)('%s %s is written as %s', (verb, button, word) => {
    const after = edited(text, { kind: 'button', at: 2.123456, do: verb, button });
    expect(after.trimEnd().split('\n').at(-1)).toBe(`  - { at: 2.12346 s, do: ${word} }`);
  });

  it('lets a run that ended too early last until its work is done', () => {
    const bounded = edited(text, { kind: 'endTime', value: 3 });
    expect(parseScenario(bounded).solver.endTime).toBe(3);
    const after = edited(bounded, { kind: 'button', at: 2.5, do: 'press', button: 'forward' });
    expect(parseScenario(after).solver.endTime).toBe('auto');
    const long = edited(text, { kind: 'endTime', value: 30 });
    expect(
      parseScenario(edited(long, { kind: 'button', at: 2.5, do: 'press', button: 'forward' })).solver.endTime,
    ).toBe(30);
  });

  it('is refused where there are no buttons, as a command is where there are', () => {
    const press: Edit = { kind: 'button', at: 1, do: 'press', button: 'forward' };
    expect(applyEdits(example('may-this-belt-be-plugged'), [press]).applied).toBe(false);
    expect(applyEdits(text, [{ kind: 'command', at: 1, do: 'plug' }]).applied).toBe(false);
  });
});

describe('a command', () => {
  it('is added, and what came at that instant or later is forgotten', () => {
    const after = edited(example('may-this-belt-be-plugged'), { kind: 'command', at: 1, do: 'coast' });
    expect(parseScenario(after).actions).toEqual([
      { at: 0, do: 'startForward' },
      { at: 1, do: 'coast' },
    ]);
    expect(after).toContain('# From here on: what');
  });

  it('needs its device', () => {
    expect(
      applyEdits(example('may-this-belt-be-plugged'), [{ kind: 'command', at: 1, do: 'brake' }]).refusal,
    ).toBe('the scenario has no brake');
  });

  it('to plug says first that there is no switch', () => {
    const silent = example('what-does-a-full-reversal-cost').replace(/^ {2}zeroSpeedSwitch.*\n/mu, '');
    const { actions, starter } = parseScenario(edited(silent, { kind: 'command', at: 1, do: 'plug' }));
    expect([actions.at(-1)?.do, starter.zeroSpeedSwitch]).toEqual(['plug', null]);
  });
});

describe('no actions', () => {
  it.each(CIRCUITS)('leave one that changes nothing, which goes when a hand comes: %s', (name) => {
    const cleared = edited(example(name), { kind: 'clearActions' });
    const { actions, starter } = parseScenario(cleared);
    expect(actions).toEqual([
      starter.control === undefined ? { at: 0, do: 'coast' } : { at: 0, do: 'release', button: 'stop' },
    ]);
    const first: Edit =
      starter.control === undefined
        ? { kind: 'command', at: 0.5, do: 'startForward' }
        : { kind: 'button', at: 0.5, do: 'hold', button: 'forward' };
    expect(parseScenario(edited(cleared, first)).actions).toHaveLength(1);
  });

  it('keep a running machine running', () => {
    const running = `initial: running reverse\n${example('may-this-belt-be-plugged')}`;
    expect(parseScenario(edited(running, { kind: 'clearActions' })).actions).toEqual([
      { at: 0, do: 'startReverse' },
    ]);
  });
});
