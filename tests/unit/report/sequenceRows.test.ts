import { describe, expect, it } from 'vitest';
import type { StateRow } from '../../../src/report/figureSpec.ts';
import { sequenceRows } from '../../../src/report/sequenceRows.ts';
import type { RunEvent } from '../../../src/simulate/trajectory.ts';
import { DESIGNATIONS, type Device } from '../../../src/starter/control/controlCircuit.ts';
import { END, PARTING, REVERSE, TOUCH } from './fakeRun.ts';
import { coil, device, fakeSequence, OPENS, RELEASED, type SequenceParts, STOP } from './fakeSequence.ts';

function rows(parts: SequenceParts = {}, t0 = 0, t1 = END): StateRow[] {
  return sequenceRows(fakeSequence(parts).trajectory, t0, t1);
}

function row(label: string, of: readonly StateRow[] = rows()): StateRow {
  const found = of.find((one) => one.label === label);
  if (found === undefined) throw new Error(`no row ${label} in ${of.map((one) => one.label).join(', ')}`);
  return found;
}

const labels = (of: readonly StateRow[]) => of.map((one) => one.label);

describe('rows of the sequence chart', () => {
  it('stand in groups from the hand to the machine, by designation, under headings that say what a bar means', () => {
    expect(labels(rows())).toEqual([
      'Buttons: pressed',
      '-S0 stop button',
      '-S1 forward button',
      'Relays and timers: operated',
      '-K3 forward memory relay',
      'Coils: energised',
      '-K1 forward contactor coil',
      '-K2 reverse contactor coil',
      'Contactors: armature in',
      '-K1 forward contactor',
      '-K2 reverse contactor',
      'Main poles: closed, arcing',
      '-K1 forward pole A',
      '-K1 forward pole B',
      '-K1 forward pole C',
      '-K2 reverse pole A',
      '-K2 reverse pole B',
      '-K2 reverse pole C',
      'Zero-speed switch: actuated',
      '-B1 zero-speed switch (forward)',
    ]);
    const headings = rows().filter((one) => one.heading === true);
    expect(headings).toHaveLength(6);
    for (const heading of headings) expect(heading.intervals).toEqual([]);
  });

  it('a device is on exactly between the changes of its channel', () => {
    expect(row('-S1 forward button').intervals).toEqual([{ x0: 0, x1: 0.2, state: 'on' }]);
    expect(row('-S0 stop button').intervals).toEqual([{ x0: STOP, x1: 1.69, state: 'on' }]);
    expect(row('-B1 zero-speed switch (forward)').intervals).toEqual([{ x0: 0.12, x1: OPENS, state: 'on' }]);
  });

  it('a coil and the armature that follows it have rows of their own', () => {
    expect(row('-K2 reverse contactor coil').intervals).toEqual([{ x0: 1.52, x1: RELEASED, state: 'on' }]);
    expect(row('-K2 reverse contactor').intervals).toEqual([{ x0: REVERSE, x1: 1.965, state: 'on' }]);
  });

  it('a pole is closed from touch to parting and arcs until it clears', () => {
    expect(row('-K1 forward pole B').intervals).toEqual([
      { x0: TOUCH, x1: PARTING, state: 'closed' },
      { x0: PARTING, x1: 1.5023, state: 'arcing' },
    ]);
  });

  it('what is on at its last change stays on up to the end of the run', () => {
    const stuck = rows({ channels: [coil('reverseContactor', 1.52)] });
    expect(row('-K2 reverse contactor coil', stuck).intervals).toEqual([{ x0: 1.52, x1: END, state: 'on' }]);
  });

  it('every interval of a chattering contactor is there', () => {
    const times = Array.from({ length: 40 }, (_, i) => 0.5 + 0.01 * i);
    const { intervals } = row(
      '-K1 forward contactor',
      rows({ channels: [device('forwardContactor', ...times)] }),
    );
    expect(intervals).toHaveLength(20);
    expect(intervals[7]).toEqual({ x0: times[14], x1: times[15], state: 'on' });
  });

  it('a window cuts intervals at its edges and leaves out what lies beyond', () => {
    const cut = rows({}, 1.51, 1.6);
    expect(row('-S0 stop button', cut).intervals).toEqual([{ x0: 1.51, x1: 1.6, state: 'on' }]);
    expect(row('-K2 reverse pole A', cut).intervals).toEqual([{ x0: REVERSE, x1: 1.6, state: 'closed' }]);
    expect(row('-K1 forward pole A', cut).intervals).toEqual([]);
  });

  it('buttons that nobody presses and a relay that does not trip have no row; a coil that stays dead has one', () => {
    const quiet = rows({
      channels: [
        device('emergencyStop'),
        device('overload'),
        device('switchForward'),
        coil('reverseContactor'),
      ],
    });
    expect(labels(quiet)).toEqual([
      'Coils: energised',
      '-K2 reverse contactor coil',
      'Zero-speed switch: actuated',
      '-B1 zero-speed switch (forward)',
    ]);
    const tripped = rows({ channels: [device('overload', 1.2), device('emergencyStop', 1.3)] });
    expect(labels(tripped)).toEqual([
      'Buttons: pressed',
      '-S4 emergency stop',
      'Overload relay: tripped',
      '-F2 overload relay',
    ]);
  });

  it('a timer shows its coil and its late contact; of other relays the contacts speak for the coil', () => {
    const found = labels(
      rows({
        channels: [
          device('reverseTimer', 0.06),
          coil('reverseTimer', 0),
          device('ready', 0.01),
          coil('ready', 0),
        ],
      }),
    );
    expect(found).toEqual([
      'Relays and timers: operated',
      '-K11 change-over timer to reverse',
      '-K7 ready relay',
      'Coils: energised',
      '-K11 change-over timer to reverse coil',
    ]);
  });

  it('the control voltage is on while it holds coils in', () => {
    const of = { kind: 'controlVoltage' } as const;
    const changes = [
      { t: 0, value: 'on' },
      { t: 1, value: 'off' },
      { t: 1.2, value: 'on' },
    ] as const;
    expect(row('control voltage', rows({ channels: [{ of, changes }] })).intervals).toEqual([
      { x0: 0, x1: 1, state: 'on' },
      { x0: 1.2, x1: END, state: 'on' },
    ]);
  });

  it('a supply phase that is lost carries its current on to a zero and is there again when the supply returns', () => {
    const common = { speed: 180, text: '' };
    const events: readonly RunEvent[] = [
      { ...common, t: 0.8, kind: 'phaseLost', phase: 'A' },
      { ...common, t: 0.806, kind: 'phaseClears', phase: 'A' },
      { ...common, t: 1.1, kind: 'supplyReturns' },
    ];
    expect(row('supply phase A', rows({ events })).intervals).toEqual([
      { x0: 0, x1: 0.8, state: 'closed' },
      { x0: 0.8, x1: 0.806, state: 'arcing' },
      { x0: 1.1, x1: END, state: 'closed' },
    ]);
    expect(labels(rows({ events }))).not.toContain('supply phase B');
    expect(labels(rows({ events })).at(-2)).toBe('Supply: there');
  });

  it('every device of the circuits fits beside a drawing by its short label', () => {
    for (const name of Object.keys(DESIGNATIONS) as Device[]) {
      const [heading, ...named] = rows({ channels: [device(name, 0.5)] });
      expect(heading?.heading).toBe(true);
      expect(named).toHaveLength(1);
      expect(named[0]?.short?.length, name).toBeLessThanOrEqual(12);
    }
  });
});
