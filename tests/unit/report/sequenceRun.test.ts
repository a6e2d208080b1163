import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../../src/index.ts';
import { eventRows } from '../../../src/report/sequenceEvents.ts';
import { sequenceDetailFigure, sequenceFigure, sequenceFigures } from '../../../src/report/sequenceFigure.ts';
import { sequenceRows } from '../../../src/report/sequenceRows.ts';
import type { RunEventKind } from '../../../src/simulate/trajectory.ts';

/** The belt of the examples, but with the control circuit of a plug to stop and people at its buttons. */
const BELT = readFileSync('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8')
  .replace(/ {2}changeoverDelay:.*/u, '  control: { scheme: plug to stop, memoryRelay: yes }')
  .replace('do: start forward', 'do: press forward')
  .replace('do: plug', 'do: press stop');

const run = simulate(parseScenario(BELT));
const { trajectory } = run;
const { tStart, tEnd } = trajectory;
const rows = sequenceRows(trajectory, tStart, tEnd);
const intervals = (label: string) => rows.find((row) => row.label === label)?.intervals ?? [];
const at = (kind: RunEventKind, which: object = {}) =>
  trajectory.events
    .filter(
      (event) => event.kind === kind && Object.entries(which).every(([k, v]) => event[k as 'kind'] === v),
    )
    .map(({ t }) => t);

describe('the sequence chart of a plug to stop', () => {
  it('shows each coil energised between its two events', () => {
    for (const contactor of ['forward', 'reverse'] as const)
      expect(intervals(`-${contactor === 'forward' ? 'K1' : 'K2'} ${contactor} contactor coil`)).toEqual([
        { x0: at('coilEnergised', { contactor })[0], x1: at('coilReleased', { contactor })[0], state: 'on' },
      ]);
  });

  it('shows each pole closed from its touch to its parting, and arcing to its clearing', () => {
    for (const phase of ['A', 'B', 'C'] as const) {
      const of = { contactor: 'reverse', phase };
      const [touches, parts, clears] = (['poleTouches', 'poleParts', 'poleClears'] as const).map(
        (kind) => at(kind, of)[0],
      );
      expect(intervals(`-K2 reverse pole ${phase}`)).toEqual([
        { x0: touches, x1: parts, state: 'closed' },
        { x0: parts, x1: clears, state: 'arcing' },
      ]);
    }
  });

  it('shows the buttons that were pressed, and no other', () => {
    const pressed = rows.filter(({ label }) => label.startsWith('-S')).map(({ label }) => label);
    expect(pressed).toEqual(['-S0 stop button', '-S1 forward button']);
    expect(intervals('-S0 stop button')[0]?.x0).toBe(1);
  });

  it('names the zero-speed switch as the cause that drops the reverse coil, at the speed of the shaft then', () => {
    const released = eventRows(run, 'SI').findLast(({ what }) => what === 'reverse coil released')!;
    expect(released.cause).toMatch(/^zero-speed switch opens/u);
    expect(released.device).toBe('-K2 reverse contactor');
    const rpm = Math.round((trajectory.at(released.t).speed * 30) / Math.PI);
    expect(released.speed).toBe(`${rpm} r/min`);
    // The contact opens its delay of 5 ms after the drop-out speed.
    expect(rpm).toBeLessThan(60);
    expect(rpm).toBeGreaterThan(0);
    expect(sequenceFigure(run, { units: 'SI' }).title).toContain(`at ${rpm} r/min`);
  });

  it('enlarges its change-over and the end of its braking', () => {
    expect(sequenceFigures(run, { units: 'SI' }).map(({ id }) => id)).toEqual([
      'sequence',
      'sequence-changeover',
      'sequence-braking-end',
    ]);
  });

  it('measures the change-over from coil to touch: the opening of the outgoing contactor, then the closing of the incoming one', () => {
    // The incoming coil is energised by the break contact of the outgoing contactor: 9 ms, then 18 ms.
    expect(sequenceDetailFigure(run, { units: 'SI' })?.title).toMatch(
      /^Reverse contactor closes 27\.0 ms after the forward coil drops/u,
    );
  });

  it('of the same drive without a control circuit has coils, poles and switch', () => {
    const plain = simulate(
      parseScenario(readFileSync('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8')),
    );
    const headings = sequenceRows(plain.trajectory, 0, plain.trajectory.tEnd).filter(
      (row) => row.heading === true,
    );
    expect(headings.map(({ label }) => label)).toEqual([
      'Coils: energised',
      'Main poles: closed, arcing',
      'Zero-speed switch: actuated',
    ]);
  });
});
