import { describe, expect, it } from 'vitest';
import { eventSentence, speedWords } from '../../../src/report/eventSentence.ts';
import { eventTable } from '../../../src/report/reportTables.ts';
import { eventRows } from '../../../src/report/sequenceEvents.ts';
import type { RunEvent } from '../../../src/simulate/trajectory.ts';
import { fakeSequence, OPENING_SPEED, OPENS, RELEASED } from './fakeSequence.ts';

const event = (kind: RunEvent['kind'], text: string, speed = OPENING_SPEED): RunEvent => ({
  t: 1.955,
  kind,
  text,
  speed,
});

describe('an event in words', () => {
  it.each([
    [
      event('switchOpens', 'zero-speed switch opens (forward)'),
      'zero-speed switch opens (forward) at 41 r/min',
    ],
    [
      event('coilReleased', 'reverse coil released: zero-speed switch opens'),
      'reverse coil released: zero-speed switch opens at 41 r/min',
    ],
    [
      event('overloadTrips', 'overload relay trips: its test button is pressed', 125.9),
      'overload relay trips at 1202 r/min: its test button is pressed',
    ],
    [event('emergencyStopPressed', 'emergency stop pressed', -155), 'emergency stop pressed at −1480 r/min'],
    [event('supplyReturns', 'the supply is back', 100), 'the supply is back at 955 r/min'],
  ])('of a switch, a trip or what follows from them states the speed: %#', (said, words) => {
    expect(eventSentence(said, 'SI')).toBe(words);
    expect(eventSentence(said, 'us')).toBe(words);
  });

  it.each([
    event('coilReleased', 'forward coil released: stop button pressed'),
    event('poleClears', 'forward pole B clears: its current zero'),
    event('action', 'command: plug'),
  ])('is its text alone where the speed explains nothing: %#', (said) => {
    expect(eventSentence(said, 'SI')).toBe(said.text);
  });

  it('a speed is read in whole revolutions a minute, with the sign of its direction and none at rest', () => {
    expect(speedWords((41.4 * Math.PI) / 30, 'SI')).toBe('41 r/min');
    expect(speedWords((-1479.6 * Math.PI) / 30, 'us')).toBe('−1480 r/min');
    expect(speedWords(-0.001, 'SI')).toBe('0 r/min');
  });
});

describe('the table of events', () => {
  const run = fakeSequence();
  const rows = eventRows(run, 'SI');

  it('has a row for every event of the run, in its order', () => {
    expect(rows.map(({ t }) => t)).toEqual(run.trajectory.events.map(({ t }) => t));
  });

  it('says of each what happened to which device, why, when and at what speed', () => {
    expect(rows.find(({ t }) => t === RELEASED)).toEqual({
      t: RELEASED,
      at: '1.9551 s',
      device: '-K2 reverse contactor',
      what: 'reverse coil released',
      cause: 'zero-speed switch opens',
      speed: '41 r/min',
    });
    expect(rows.find(({ t }) => t === OPENS)).toMatchObject({ device: 'zero-speed switch', cause: '' });
    expect(rows.find(({ t }) => t === 1.5023)).toMatchObject({ device: '-K1 forward pole B' });
  });

  it('a command is its own cause', () => {
    const commanded = fakeSequence({ events: [event('action', 'command: plug')] });
    expect(eventRows(commanded, 'SI')[0]).toMatchObject({ device: '', what: 'plug', cause: 'command' });
  });

  it('of the report speaks in the same sentences', () => {
    expect(eventTable(run, 'SI')).toContain('reverse coil released: zero-speed switch opens at 41 r/min');
  });
});
