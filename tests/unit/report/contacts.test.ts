import { describe, expect, it } from 'vitest';
import { findClosings } from '../../../src/report/closings.ts';
import {
  bypassIntervals,
  joinIntervals,
  poleIntervals,
  supplyIntervals,
  switchIntervals,
} from '../../../src/report/contactIntervals.ts';
import { conductingBands, timedMarks } from '../../../src/report/eventMarks.ts';
import { stateRows } from '../../../src/report/timeFigure.ts';
import {
  END,
  FAKE_EVENTS,
  fakeRun,
  fakeScenario,
  fakeTrajectory,
  PARTING,
  REVERSE,
  TOUCH,
  ZERO,
} from './fakeRun.ts';

const run = fakeTrajectory(fakeScenario());

describe('intervals of contacts', () => {
  it('a pole is closed from touch to parting and arcs until it clears', () => {
    expect(poleIntervals(run, 'forward', 'B')).toEqual([
      { x0: TOUCH, x1: PARTING, state: 'closed' },
      { x0: PARTING, x1: 1.5023, state: 'arcing' },
    ]);
  });

  it('a pole of a machine that runs at t = 0 is closed from the start of the run', () => {
    const running = {
      ...run,
      scenario: { ...run.scenario, initial: 'runningForward' as const },
      events: FAKE_EVENTS.filter((event) => event.t > 1),
    };
    expect(poleIntervals(running, 'forward', 'A')[0]).toEqual({ x0: 0, x1: PARTING, state: 'closed' });
  });

  it('a pole that is still closed at the end is closed up to the end', () => {
    const cut = { ...run, events: FAKE_EVENTS.filter((event) => event.t < 1.6) };
    expect(poleIntervals(cut, 'reverse', 'C')).toEqual([{ x0: REVERSE, x1: END, state: 'closed' }]);
  });

  it('the zero-speed switch is closed between its two events', () => {
    expect(switchIntervals(run)).toEqual([{ x0: 0.12, x1: 1.955, state: 'closed' }]);
  });

  it('the bypass of line resistors is closed between its two events, and at first where the machine runs', () => {
    const events = [
      { t: 0.02, kind: 'bypassCloses', text: '', speed: 0 },
      { t: 1.5, kind: 'bypassOpens', text: '', speed: 0 },
    ] as const;
    expect(bypassIntervals({ ...run, events })).toEqual([{ x0: 0.02, x1: 1.5, state: 'closed' }]);
    const running = { ...run.scenario, initial: 'runningForward' as const };
    expect(bypassIntervals({ ...run, scenario: running, events: events.slice(1) })).toEqual([
      { x0: 0, x1: 1.5, state: 'closed' },
    ]);
  });

  it('a lost supply phase is there until it is lost and carries its current on to the next zero', () => {
    const events = [
      { t: 0.8, kind: 'phaseLost', phase: 'A', text: '', speed: 0 },
      { t: 0.806, kind: 'phaseClears', phase: 'A', text: '', speed: 0 },
    ] as const;
    expect(supplyIntervals({ ...run, events }, 'A')).toEqual([
      { x0: 0, x1: 0.8, state: 'closed' },
      { x0: 0.8, x1: 0.806, state: 'arcing' },
    ]);
    const rows = (lost: typeof events | readonly []) =>
      stateRows({ ...fakeRun(), trajectory: { ...run, events: [...FAKE_EVENTS, ...lost] } }).map(
        (row) => row.label,
      );
    expect(rows(events)[0]).toBe('supply A');
    expect(rows([])[0]).toBe('forward A');
  });

  it('overlapping intervals of one state become one', () => {
    const closed = (x0: number, x1: number) => ({ x0, x1, state: 'closed' as const });
    expect(joinIntervals([closed(2, 3), closed(0, 1), closed(0.5, 2)])).toEqual([closed(0, 3)]);
  });
});

describe('closings', () => {
  it('a start and a plugging are told apart by the speed they meet', () => {
    expect(findClosings(run).map(({ kind, contactor, touch }) => ({ kind, contactor, touch }))).toEqual([
      { kind: 'start', contactor: 'forward', touch: TOUCH },
      { kind: 'plug', contactor: 'reverse', touch: REVERSE },
    ]);
  });

  it('a plugging knows when the contacts parted and the last pole cleared before it', () => {
    const plug = findClosings(run)[1];
    expect(plug?.parting).toBe(PARTING);
    expect(plug?.cleared).toBe(1.5061);
  });

  it('with scattered poles the second touch completes the circuit', () => {
    const scattered = FAKE_EVENTS.map((event) =>
      event.kind === 'poleTouches' && event.contactor === 'forward' && event.phase !== 'A'
        ? { ...event, t: event.t + (event.phase === 'B' ? 0.001 : 0.002) }
        : event,
    );
    expect(findClosings({ ...run, events: scattered })[0]?.touch).toBe(TOUCH + 0.001);
  });
});

describe('event marks', () => {
  it('are in order of time and inside the window', () => {
    const times = timedMarks(run, 1, 2, 'all').map((mark) => mark.t);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(Math.min(...times)).toBeGreaterThanOrEqual(1);
  });

  it('the first page names start, plugging and rest', () => {
    expect(timedMarks(run, 0, END, 'few')).toEqual([
      { t: TOUCH, label: 'start: forward closes' },
      { t: REVERSE, label: 'plug: reverse closes' },
      { t: ZERO, label: 'zero speed' },
    ]);
  });

  it('a second passage of zero that friction ends is named a standstill, the first one is the stop', () => {
    const later = ZERO + 0.02;
    const events = [
      ...FAKE_EVENTS,
      { t: later, kind: 'zeroSpeed', text: '', speed: 0 },
      { t: later, kind: 'shaftHeld', text: '', speed: 0 },
    ] as const;
    const labels = timedMarks({ ...run, events }, ZERO, END, 'usual')
      .filter((mark) => mark.t === ZERO || mark.t === later)
      .map((mark) => mark.label);
    expect(labels).toEqual(['zero speed', 'shaft held at rest']);
  });

  it.each([
    ['bypassCloses', {}, '', 'line resistors bypassed'],
    ['bypassOpens', {}, '', 'line resistors in'],
    ['rotorStep', {}, 'slip-ring resistance 0.500 ohm', 'slip-ring resistance 0.500 ohm'],
    ['windingReconnected', {}, 'windings are connected in star', 'windings are connected in star'],
    ['phaseLost', { phase: 'A' }, '', 'supply phase A lost'],
  ] as const)('a %s has words', (kind, more, words, label) => {
    const events = [...FAKE_EVENTS, { t: 1.7, kind, text: words, speed: 0, ...more }];
    const labels = (detail: 'usual' | 'few') =>
      timedMarks({ ...run, events }, 1.6, 1.8, detail).map((mark) => mark.label);
    expect(labels('usual')).toEqual([label]);
    expect(labels('few').includes('phase A lost')).toBe(kind === 'phaseLost');
  });

  it('the end of the current of a lost phase is named in figures of milliseconds only', () => {
    const events = [...FAKE_EVENTS, { t: 1.7, kind: 'phaseClears', phase: 'A', text: '', speed: 0 } as const];
    const marks = (detail: 'usual' | 'all') => timedMarks({ ...run, events }, 1.6, 1.8, detail);
    expect(marks('usual')).toEqual([]);
    expect(marks('all')).toEqual([{ t: 1.7, label: 'lost phase A clears' }]);
  });

  it('bands cover the stretches with fewer than three conducting poles', () => {
    expect(conductingBands(run, 1.4, 1.6)).toEqual([
      { x0: 1.5023, x1: 1.5061, label: 'two phases' },
      { x0: 1.5061, x1: REVERSE, label: 'no current' },
    ]);
  });
});
