import { describe, expect, it } from 'vitest';
import { sequenceMarks } from '../../../src/report/sequenceMarks.ts';
import { brakingEndWindow, changeoverWindow } from '../../../src/report/sequenceWindows.ts';
import type { RunEvent, RunEventKind, Trajectory } from '../../../src/simulate/trajectory.ts';
import { END, REVERSE, TOUCH, ZERO } from './fakeRun.ts';
import { fakeSequence, OPENING_SPEED, OPENS, RELEASED, SEQUENCE_EVENTS, STOP } from './fakeSequence.ts';

const said = (t: number, kind: RunEventKind, more: Partial<RunEvent> = {}): RunEvent => ({
  t,
  kind,
  speed: 150,
  text: kind,
  ...more,
});

function withEvents(more: readonly RunEvent[], kept: readonly RunEvent[] = SEQUENCE_EVENTS): Trajectory {
  return fakeSequence({ events: [...kept, ...more].sort((a, b) => a.t - b.t) }).trajectory;
}

const run = withEvents([]);
const beforeStop = SEQUENCE_EVENTS.filter(({ t }) => t < STOP);
/** The forward contactor opens at once after 0.8 s. */
const opening = [
  said(0.8, 'coilReleased', { contactor: 'forward', device: 'forwardContactor' }),
  said(0.81, 'poleParts', { contactor: 'forward', phase: 'A' }),
  said(0.8123, 'poleClears', { contactor: 'forward', phase: 'B' }),
  said(0.8161, 'poleClears', { contactor: 'forward', phase: 'A' }),
];

describe('the window of a change-over', () => {
  it('goes from the release of the outgoing coil to the touch of the incoming poles, with a margin on both sides', () => {
    const window = changeoverWindow(run)!;
    expect(window).toMatchObject({ from: STOP, to: REVERSE, trigger: null });
    expect(window.closing?.contactor).toBe('reverse');
    expect(window.t0).toBeLessThan(STOP);
    expect(window.t1).toBeGreaterThan(REVERSE);
    expect(window.t1 - window.t0).toBeLessThan(0.1);
  });

  it('begins with the hand that set it off, where relays lie between', () => {
    const late = SEQUENCE_EVENTS.map((event) =>
      event.kind === 'coilReleased' && event.contactor === 'forward'
        ? { ...event, t: STOP + 0.004, rootTime: STOP }
        : event,
    );
    expect(changeoverWindow(withEvents([], late))?.from).toBe(STOP);
  });

  it('lasts until the last of scattered poles has touched', () => {
    const scattered = SEQUENCE_EVENTS.map((event) =>
      event.kind === 'poleTouches' && event.contactor === 'reverse' && event.phase === 'C'
        ? { ...event, t: REVERSE + 0.006 }
        : event,
    );
    expect(
      changeoverWindow(
        withEvents(
          [],
          scattered.toSorted((a, b) => a.t - b.t),
        ),
      )?.to,
    ).toBe(REVERSE + 0.006);
  });

  it.each(['overloadTrips', 'emergencyStopPressed'] as const)(
    'of %s goes to the extinction of the last arc where nothing closes on it',
    (kind) => {
      const window = changeoverWindow(withEvents([said(0.8, kind), ...opening], beforeStop))!;
      expect(window).toMatchObject({ from: 0.8, to: 0.8161, closing: null });
      expect(window.trigger?.kind).toBe(kind);
    },
  );

  it('is that of the trip where a trip comes before the first plugging', () => {
    const reclosed = [
      said(1.2, 'coilEnergised', { contactor: 'forward' }),
      said(1.22, 'poleTouches', { contactor: 'forward', phase: 'A' }),
      said(1.22, 'poleTouches', { contactor: 'forward', phase: 'B' }),
    ];
    expect(changeoverWindow(withEvents([said(0.8, 'overloadTrips'), ...opening, ...reclosed]))?.from).toBe(
      0.8,
    );
  });

  it('of an emergency stop that brakes begins with the stop and ends with the closing of the braking contactor', () => {
    const window = changeoverWindow(withEvents([said(STOP - 0.01, 'emergencyStopPressed')]))!;
    expect(window).toMatchObject({ from: STOP - 0.01, to: REVERSE });
    expect(window.trigger?.kind).toBe('emergencyStopPressed');
    expect(window.closing?.kind).toBe('plug');
  });

  it('ends with a short circuit where the incoming contactor closes onto contacts that have not parted', () => {
    const touches = [
      said(STOP + 0.005, 'poleTouches', { contactor: 'reverse', phase: 'A' }),
      said(STOP + 0.005, 'poleTouches', { contactor: 'reverse', phase: 'B' }),
    ];
    const events = [...SEQUENCE_EVENTS.filter(({ t }) => t <= STOP), ...touches];
    const window = changeoverWindow({ ...withEvents([], events), tEnd: STOP + 0.005 })!;
    expect(window).toMatchObject({ from: STOP, to: STOP + 0.005, t1: STOP + 0.005 });
    expect(window.closing?.parting).toBeNull();
  });

  it('does not exist in a run that only starts, nor where it would be most of the run', () => {
    expect(changeoverWindow(withEvents([], beforeStop))).toBeNull();
    expect(changeoverWindow({ ...run, tStart: 1.47, tEnd: 1.6 })).toBeNull();
  });
});

describe('the window of the end of braking', () => {
  it('goes from the opening of the switch that drops the coil to rest', () => {
    expect(brakingEndWindow(run)).toMatchObject({ from: OPENS, to: ZERO, zero: ZERO });
    expect(brakingEndWindow(run)?.release.t).toBe(RELEASED);
  });

  it('goes to the extinction of the last arc where the shaft does not stop soon after', () => {
    const turning = SEQUENCE_EVENTS.filter(({ kind }) => kind !== 'zeroSpeed');
    expect(brakingEndWindow(withEvents([], turning))).toMatchObject({ to: 1.9713, zero: null });
  });

  it('does not exist where the opening of the switch drops no coil', () => {
    const hand = SEQUENCE_EVENTS.map((event) =>
      event.t === RELEASED ? { ...event, text: 'reverse coil released: emergency stop pressed' } : event,
    );
    expect(brakingEndWindow(withEvents([], hand))).toBeNull();
  });
});

describe('marks of the sequence chart', () => {
  const marks = (trajectory: Trajectory, t0 = 0, t1 = END, detail: 'run' | 'changeover' = 'run') =>
    sequenceMarks(trajectory, { t0, t1, units: 'SI', detail });

  it('name the hand, the contactors, the end of braking with its speed, and rest', () => {
    expect(marks(run)).toEqual([
      { t: 0, label: 'forward button pressed' },
      { t: TOUCH, label: 'forward contactor closes' },
      { t: STOP, label: 'stop button pressed' },
      { t: 1.52, label: 'reverse coil picks up' },
      { t: REVERSE, label: 'reverse contactor closes' },
      { t: RELEASED, label: 'reverse coil drops, 41 r/min' },
      { t: ZERO, label: 'zero speed' },
    ]);
    expect(OPENING_SPEED * (30 / Math.PI)).toBeCloseTo(41, 0);
  });

  it('of a change-over name each step of coils, contacts and arcs', () => {
    expect(marks(run, 1.48, 1.56, 'changeover').map(({ label }) => label)).toEqual([
      'stop button pressed',
      'forward contacts part',
      'forward poles clear',
      'reverse coil picks up',
      'reverse contactor closes',
    ]);
  });

  it('are in order of time, inside the window, and far enough apart to be told apart', () => {
    for (const [t0, t1] of [
      [0, END],
      [1.4, 2],
      [1.94, 1.99],
    ] as const) {
      const times = marks(run, t0, t1, 'changeover').map(({ t }) => t);
      expect(times.length).toBeGreaterThan(1);
      for (const [i, t] of times.entries()) {
        expect(t).toBeGreaterThanOrEqual(t0);
        expect(t).toBeLessThanOrEqual(t1);
        if (i > 0) expect(t - times[i - 1]!).toBeGreaterThan((t1 - t0) / 150);
      }
    }
  });

  it('leave a kind of event out as a whole where it does not fit in, and keep trips', () => {
    const chatter = Array.from({ length: 60 }, (_, i) =>
      said(0.5 + 0.01 * i, i % 2 === 0 ? 'coilReleased' : 'coilEnergised', { contactor: 'forward' }),
    );
    const labels = marks(withEvents([...chatter, said(0.75, 'overloadTrips')])).map(({ label }) => label);
    expect(labels).toContain('overload relay trips, 1432 r/min');
    expect(labels).toContain('stop button pressed');
    expect(labels.filter((label) => label.startsWith('forward coil'))).toEqual([]);
    expect(labels.length).toBeLessThanOrEqual(10);
  });

  it('are short enough for a narrow drawing, whatever the speed', () => {
    const fast = (['switchOpens', 'overloadTrips', 'emergencyStopPressed', 'supplyReturns'] as const).map(
      (kind, i) => said(0.5 + 0.2 * i, kind, { speed: -377 }),
    );
    const found = marks(withEvents(fast));
    expect(found.map(({ label }) => label)).toContain('emergency stop, −3600 r/min');
    for (const { label } of found) expect(label.length, label).toBeLessThanOrEqual(33);
  });
});
