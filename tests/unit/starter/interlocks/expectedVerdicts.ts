import type { ControlData } from '../../../../src/scenario/scenario.ts';
import {
  antiPlugging,
  bothWaysPlain,
  categoryOne,
  direct,
  endsRunning,
  limited,
  plugStop,
  type Row,
  throughStop,
  timed,
  withLockout,
  withMemory,
  withReady,
} from './expectedRows.ts';

/** A starter and what is expected of it. */
export interface Form {
  readonly name: string;
  readonly control: Partial<ControlData> & Pick<ControlData, 'scheme'>;
  readonly lockout?: true;
  readonly expected: Row;
}

/** Every form that is judged. */
export const FORMS: readonly Form[] = [
  { name: 'through stop', control: { scheme: 'throughStop' }, expected: throughStop },
  { name: 'direct', control: { scheme: 'direct' }, expected: direct },
  { name: 'plug to stop', control: { scheme: 'plugStop' }, expected: plugStop },
  { name: 'plug to stop, both directions', control: { scheme: 'plugStopBoth' }, expected: bothWaysPlain },
  { name: 'anti-plugging', control: { scheme: 'antiPlugging' }, expected: antiPlugging },
  { name: 'inching', control: { scheme: 'jog' }, expected: bothWaysPlain },

  {
    name: 'through stop, ready relay',
    control: { scheme: 'throughStop', readyRelay: true },
    expected: { ...throughStop, ...withReady },
  },
  {
    name: 'direct, ready relay',
    control: { scheme: 'direct', readyRelay: true },
    expected: { ...direct, ...withReady },
  },
  {
    name: 'anti-plugging, ready relay',
    control: { scheme: 'antiPlugging', readyRelay: true },
    expected: { ...antiPlugging, ...withReady },
  },
  {
    name: 'plug to stop, ready relay',
    control: { scheme: 'plugStop', readyRelay: true },
    expected: { ...plugStop, ...withReady },
  },
  {
    name: 'plug to stop, memory relay',
    control: { scheme: 'plugStop', memoryRelay: true },
    expected: { ...plugStop, ...withMemory },
  },
  {
    name: 'plug to stop, memory and ready relay',
    control: { scheme: 'plugStop', memoryRelay: true, readyRelay: true },
    expected: { ...plugStop, ...withMemory, ...withReady },
  },
  {
    name: 'plug to stop, both directions, memory relays',
    control: { scheme: 'plugStopBoth', memoryRelay: true },
    expected: { ...bothWaysPlain, ...withMemory },
  },
  {
    name: 'plug to stop, both directions, memory and ready relays',
    control: { scheme: 'plugStopBoth', memoryRelay: true, readyRelay: true },
    expected: { ...bothWaysPlain, ...withMemory, ...withReady },
  },
  {
    name: 'inching, memory relays',
    control: { scheme: 'jog', memoryRelay: true },
    expected: { ...bothWaysPlain, ...withMemory },
  },
  {
    name: 'inching, memory and ready relays',
    control: { scheme: 'jog', memoryRelay: true, readyRelay: true },
    expected: { ...bothWaysPlain, ...withMemory, ...withReady },
  },

  {
    name: 'plug to stop, lockout',
    control: { scheme: 'plugStop' },
    lockout: true,
    expected: { ...plugStop, ...withLockout },
  },
  {
    name: 'plug to stop, both directions, lockout',
    control: { scheme: 'plugStopBoth' },
    lockout: true,
    expected: { ...bothWaysPlain, ...withLockout },
  },
  {
    name: 'inching, lockout',
    control: { scheme: 'jog' },
    lockout: true,
    expected: { ...bothWaysPlain, ...withLockout },
  },

  {
    name: 'through stop, category 1',
    control: { scheme: 'throughStop', ...categoryOne },
    expected: { ...throughStop, emergencyStop: endsRunning },
  },
  {
    name: 'plug to stop, category 1',
    control: { scheme: 'plugStop', ...categoryOne },
    expected: { ...plugStop, emergencyStop: limited },
  },
  {
    name: 'plug to stop, memory and ready relay, category 1',
    control: { scheme: 'plugStop', memoryRelay: true, readyRelay: true, ...categoryOne },
    expected: { ...plugStop, ...withMemory, ...withReady, emergencyStop: limited },
  },
  {
    name: 'plug to stop, both directions, memory and ready relays, category 1',
    control: { scheme: 'plugStopBoth', memoryRelay: true, readyRelay: true, ...categoryOne },
    expected: { ...bothWaysPlain, ...withMemory, ...withReady, emergencyStop: limited },
  },
  {
    name: 'inching, memory relays, category 1',
    control: { scheme: 'jog', memoryRelay: true, ...categoryOne },
    expected: { ...bothWaysPlain, ...withMemory, emergencyStop: limited },
  },

  {
    name: 'direct, change-over timer',
    control: { scheme: 'direct', changeoverTimer: 0.3 },
    expected: { ...direct, ...timed },
  },
  {
    name: 'plug to stop, memory and ready relay, change-over timer',
    control: { scheme: 'plugStop', memoryRelay: true, readyRelay: true, changeoverTimer: 0.3 },
    expected: {
      ...plugStop,
      ...withMemory,
      ...withReady,
      ...timed,
      neverBothCommandedBriefly: [
        'holds',
        'each direction has a timer of its own: a start within the change-over time finds its own timer run out and opens the other circuit',
      ],
    },
  },
  {
    name: 'through stop, no mechanical interlock',
    control: { scheme: 'throughStop', mechanicalInterlock: false },
    expected: {
      ...throughStop,
      neverBothClosed: [
        'broken',
        'two armatures that set off together arrive together: the break contacts come too late',
      ],
    },
  },
  {
    name: 'direct, no mechanical interlock',
    control: { scheme: 'direct', mechanicalInterlock: false },
    expected: {
      ...direct,
      neverBothClosed: [
        'holds',
        'the coils are never energised together, and one waits until the other armature is out',
      ],
    },
  },
];
