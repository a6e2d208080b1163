import type { ActionKind, ButtonName, Scenario, StarterData } from '../../scenario/scenario.ts';
import { DESIGNATIONS, type InputDevice, inputsOf } from '../../starter/control/controlCircuit.ts';
import { circuitOfStarter } from '../../starter/control/schemes.ts';

/** A button of the station and how it is marked. */
export interface ButtonFace {
  readonly button: ButtonName;
  /** Reference designation, as in the wiring diagram: "S1". */
  readonly designation: string;
  readonly words: string;
}

/** A command to a starter without a control circuit. */
export interface CommandFace {
  readonly command: ActionKind;
  readonly words: string;
}

/** The device whose contacts a button moves. */
export const DEVICE_OF_BUTTON: Readonly<Record<ButtonName, InputDevice>> = {
  forward: 'forwardButton',
  reverse: 'reverseButton',
  stop: 'stopButton',
  reset: 'resetButton',
  emergencyStop: 'emergencyStop',
  overloadTest: 'overload',
  overloadReset: 'overload',
};

const WORDS: Readonly<Record<ButtonName, string>> = {
  forward: 'Forward',
  reverse: 'Reverse',
  stop: 'Stop',
  reset: 'Reset',
  emergencyStop: 'Emergency stop',
  overloadTest: 'Trip overload',
  overloadReset: 'Reset overload',
};

/** In the order they stand on the station. */
const BUTTONS: readonly ButtonName[] = ['forward', 'reverse', 'stop', 'reset', 'emergencyStop'];

/** The buttons that a scenario's control circuit has; none without one. */
export function stationButtons({ starter }: Scenario): readonly ButtonFace[] {
  const known = facesOf.get(starter);
  if (known !== undefined) return known;
  const faces = facesOfStarter(starter);
  facesOf.set(starter, faces);
  return faces;
}

/** Asked for with every picture; a starter never changes. */
const facesOf = new WeakMap<StarterData, readonly ButtonFace[]>();

function facesOfStarter(starter: StarterData): readonly ButtonFace[] {
  const circuit = circuitOfStarter(starter);
  if (circuit === null) return [];
  const wired = new Set(inputsOf(circuit));
  const buttons = BUTTONS.filter((button) => wired.has(DEVICE_OF_BUTTON[button]));
  const relay: readonly ButtonName[] =
    starter.control?.overload == null ? [] : ['overloadTest', 'overloadReset'];
  return [...buttons, ...relay].map((button) => ({
    button,
    designation: DESIGNATIONS[DEVICE_OF_BUTTON[button]],
    words: WORDS[button],
  }));
}

/** The commands that a scenario without a control circuit understands; none with one. */
export function stationCommands({ starter }: Scenario): CommandFace[] {
  if (starter.control !== undefined) return [];
  return [
    { command: 'startForward', words: 'Start forward' },
    { command: 'startReverse', words: 'Start reverse' },
    { command: 'plug', words: 'Plug' },
    { command: 'coast', words: 'Coast' },
    ...(starter.brake === undefined ? [] : [{ command: 'brake', words: 'Apply brake' } as const]),
    ...(starter.injection === undefined ? [] : [{ command: 'injectDc', words: 'Inject DC' } as const]),
  ];
}
