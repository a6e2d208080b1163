import type { ControlData } from '../../../../src/scenario/scenario.ts';

/** A circuit and the contacts whose loss changes no verdict, each with the reason why another contact does its work. */
export interface MutationForm {
  readonly name: string;
  readonly control: Partial<ControlData> & Pick<ControlData, 'scheme'>;
  readonly lockout?: true;
  readonly redundant: Readonly<Record<string, string>>;
}

const alreadyBroken =
  'no interlock: without it the contactor starts by itself, but in the plain circuit the braking contactor does so already';
const resetOnly =
  'without it the ready relay sets itself once no start button is pressed: a held button still starts nothing, only the asking for a ' +
  'reset is lost';
const memoryDropsToo = 'the memory relay drops with the same switch and opens the same branch';
const oneDirection = 'the switch shows one direction at a time, so that one memory relay alone can pick up';
const buttonsExclude =
  'the push buttons open the other run relay first, and each contactor waits for the break contact of the other';
const timerWaits =
  'the change-over timer runs only while both contactors are out: it bars the other direction as well';
const nothingBrakes = 'where nothing brakes, the emergency stop has already opened both coil circuits';

const memory = {
  'forwardMemory: reverseMemory break 21-22': oneDirection,
  'reverseMemory: forwardMemory break 21-22': oneDirection,
  'forwardContactor: brake: switchReverse make 33-34': memoryDropsToo,
  'reverseContactor: brake: switchForward make 13-14': memoryDropsToo,
};

/** Circuits whose every contact is taken out in turn. */
export const MUTATION_FORMS: readonly MutationForm[] = [
  { name: 'through stop', control: { scheme: 'throughStop' }, redundant: {} },
  { name: 'direct', control: { scheme: 'direct' }, redundant: {} },
  { name: 'anti-plugging', control: { scheme: 'antiPlugging' }, redundant: {} },
  {
    name: 'plug to stop',
    control: { scheme: 'plugStop' },
    redundant: {
      'forwardContactor: command: forwardButton make 13-14': alreadyBroken,
      'forwardContactor: command: forwardContactor make 13-14': alreadyBroken,
    },
  },
  {
    name: 'plug to stop, both directions',
    control: { scheme: 'plugStopBoth' },
    redundant: {
      'forwardRun: reverseRun break 21-22': buttonsExclude,
      'reverseRun: forwardRun break 21-22': buttonsExclude,
      'forwardRun: command: forwardButton make 13-14': alreadyBroken,
      'forwardRun: command: forwardRun make 13-14': alreadyBroken,
      'reverseRun: command: reverseButton make 13-14': alreadyBroken,
      'reverseRun: command: reverseRun make 13-14': alreadyBroken,
    },
  },
  {
    name: 'inching',
    control: { scheme: 'jog' },
    redundant: {
      'forwardContactor: command: forwardButton make 13-14': alreadyBroken,
      'reverseContactor: command: reverseButton make 13-14': alreadyBroken,
    },
  },
  {
    name: 'plug to stop, memory and ready relay',
    control: { scheme: 'plugStop', memoryRelay: true, readyRelay: true },
    redundant: {
      'ready: follow: resetButton make 13-14': resetOnly,
      'reverseContactor: brake: switchForward make 13-14': memoryDropsToo,
    },
  },
  {
    name: 'plug to stop, both directions, memory relays',
    control: { scheme: 'plugStopBoth', memoryRelay: true },
    redundant: memory,
  },
  { name: 'inching, memory relays', control: { scheme: 'jog', memoryRelay: true }, redundant: memory },
  {
    name: 'anti-plugging, ready relay',
    control: { scheme: 'antiPlugging', readyRelay: true },
    redundant: { 'ready: follow: resetButton make 13-14': resetOnly },
  },
  {
    name: 'plug to stop, memory and ready relay, category 1',
    control: {
      scheme: 'plugStop',
      memoryRelay: true,
      readyRelay: true,
      emergencyStop: { category: 1, limit: 3 },
    },
    redundant: {
      'ready: follow: resetButton make 13-14': resetOnly,
      'reverseContactor: brake: switchForward make 13-14': memoryDropsToo,
    },
  },
  {
    name: 'direct, category 1',
    control: { scheme: 'direct', emergencyStop: { category: 1, limit: 3 } },
    redundant: { 'feed: limitTimer make 17-18': nothingBrakes },
  },
  {
    name: 'direct, change-over timer',
    control: { scheme: 'direct', changeoverTimer: 0.3 },
    redundant: {
      'forwardContactor: reverseContactor break 21-22': timerWaits,
      'reverseContactor: forwardContactor break 21-22': timerWaits,
    },
  },
  {
    name: 'plug to stop, lockout',
    control: { scheme: 'plugStop' },
    lockout: true,
    redundant: {
      'forwardContactor: command: forwardButton make 13-14': alreadyBroken,
      'forwardContactor: command: forwardContactor make 13-14': alreadyBroken,
    },
  },
];
