import { brakes } from '../../scenario/controlWords.ts';
import type {
  ButtonAction,
  ButtonName,
  ControlData,
  InitialState,
  Scenario,
  StarterFault,
} from '../../scenario/scenario.ts';
import { inputsOf } from '../../starter/control/controlCircuit.ts';
import { circuitOfStarter } from '../../starter/control/schemes.ts';
import { type Direction, opposite } from '../../starter/starter.ts';
import type { CommissioningTest } from './test.ts';

/** How long a button is pressed at least, s. */
const SHORTEST_PRESS = 0.2;
/** A hand is in no hurry: beyond what relays and contactors take, s. */
const PRESS_MARGIN = 0.1;
/** A running machine is left alone this long before anything is done, s: one window of a clamp meter and a little more. */
export const LEAD = 0.15;

/** How long the machine takes, s, from runs of this same scenario. */
export interface BenchTimes {
  /** Button to half and to full speed. */
  readonly start: (direction: Direction) => { readonly half: number; readonly full: number };
  /** Command that plugs a running machine to half its speed and to standstill. */
  readonly plug: (direction: Direction) => { readonly half: number; readonly rest: number };
  /** What becomes of the machine in a test that leaves it alone from its decisive instant on. */
  readonly left: (test: CommissioningTest) => LeftAlone;
}

/** A machine that is stopped and left alone: instants of the run, s; null: not in the run. */
export interface LeftAlone {
  /** The zero-speed switch opens for the first time. */
  readonly switchOpens: number | null;
  /** It stands for good, nothing connected. */
  readonly stands: number | null;
}

/** What the starter on the bench can do, read from its scheme. */
export interface Bench {
  readonly scenario: Scenario;
  readonly control: ControlData;
  /** There is a reverse button. */
  readonly reverses: boolean;
  /** Letting go or stop brakes with the opposite contactor. */
  readonly brakes: boolean;
  /** It runs only while a button is held. */
  readonly inches: boolean;
  /** Its circuit has a contact of the zero-speed switch. */
  readonly usesSwitch: boolean;
  /** Something mechanical holds one armature while the other is in. */
  readonly interlocked: boolean;
  /** How long a button is pressed: until its contactor has gone in, s. */
  readonly pressTime: number;
  readonly times: BenchTimes;
}

/** A state of the machine in which a test does something. */
export interface Preparation {
  readonly initial: InitialState;
  readonly actions: readonly ButtonAction[];
  /** Now it is so, s. */
  readonly at: number;
  /** "While it runs forward", without a comma. */
  readonly words: string;
  /** The button that is held down all the while. */
  readonly held: 'forward' | 'reverse' | null;
  /** Until here it runs steadily, s; null: it does not. */
  readonly steadyUntil: number | null;
  /** How it turns. */
  readonly rotation: Direction;
}

/** The bench of a scenario. */
export function benchOf(scenario: Scenario, control: ControlData, times: BenchTimes): Bench {
  const { starter } = scenario;
  const inputs = inputsOf(circuitOfStarter(starter)!);
  const { closingTime, openingTime, closingScatter, openingScatter } = starter;
  const travel = closingTime + openingTime + Math.max(...closingScatter) + Math.max(...openingScatter);
  const passing = control.changeoverTimer + 3 * (control.relayTime + control.scanTime);
  return {
    scenario,
    control,
    reverses: control.scheme !== 'plugStop',
    brakes: brakes(control.scheme),
    inches: control.scheme === 'jog',
    usesSwitch: inputs.includes('switchForward') || inputs.includes('switchReverse'),
    interlocked: control.mechanicalInterlock,
    pressTime: Math.max(SHORTEST_PRESS, PRESS_MARGIN + travel + passing),
    times,
  };
}

/** A button pressed for a while, s. */
export function press(button: ButtonName, at: number, duration: number): ButtonAction[] {
  return [hold(button, at), letGo(button, at + duration)];
}

/** A button pressed and not let go. */
export function hold(button: ButtonName, at: number): ButtonAction {
  return { at, do: 'press', button };
}

/** A button let go. */
export function letGo(button: ButtonName, at: number): ButtonAction {
  return { at, do: 'release', button };
}

/** At rest and ready to be started: where there is a ready relay, it has been set. */
export function atRest(bench: Bench): Pick<Preparation, 'actions' | 'at'> {
  const { control, pressTime } = bench;
  if (!control.readyRelay) return { actions: [], at: SETTLING };
  return { actions: press('reset', SETTLING, pressTime), at: SETTLING + 1.5 * pressTime };
}

/** Nothing is done in the first instants: relays that are in at rest have gone in, s. */
const SETTLING = 0.05;

/** "Press reset first." where there is something to reset. */
export function readyWords({ control }: Bench): string {
  return control.readyRelay ? 'Press reset. ' : '';
}

/** It runs at its steady speed. */
export function running(bench: Bench, direction: Direction): Preparation {
  if (!bench.inches)
    return {
      initial: direction === 'forward' ? 'runningForward' : 'runningReverse',
      actions: [],
      at: LEAD,
      words: `While it runs ${direction}`,
      held: null,
      steadyUntil: LEAD,
      rotation: direction,
    };
  const { actions, at } = atRest(bench);
  // Past full speed by half as much again the machine runs steadily.
  const settled = at + 1.5 * bench.times.start(direction).full + LEAD;
  return {
    initial: 'rest',
    actions: [...actions, hold(direction, at)],
    at: settled,
    words: `While ${direction} is held and it runs at full speed`,
    held: direction,
    steadyUntil: settled,
    rotation: direction,
  };
}

/** It runs up and has reached half its speed. */
export function starting(bench: Bench, direction: Direction): Preparation {
  const { actions, at } = atRest(bench);
  const half = bench.times.start(direction).half;
  const common = { initial: 'rest' as const, at: at + half, steadyUntil: null, rotation: direction };
  if (bench.inches)
    return {
      ...common,
      actions: [...actions, hold(direction, at)],
      words: `While ${direction} is held and it runs up, at about half speed`,
      held: direction,
    };
  return {
    ...common,
    actions: [...actions, ...press(direction, at, bench.pressTime)],
    words: `While it runs up ${direction}, at about half speed`,
    held: null,
  };
}

/** What makes a running machine be plugged, and the instant of that command; null where the scheme prevents it. */
export function plugged(bench: Bench, direction: Direction): Preparation | null {
  const from = running(bench, direction);
  const other = opposite(direction);
  const after = (actions: readonly ButtonAction[], at: number, words: string): Preparation => ({
    ...from,
    actions: [...from.actions, ...actions],
    at,
    words,
    held: null,
  });
  switch (bench.control.scheme) {
    case 'antiPlugging':
      return null;
    case 'direct':
      return after(press(other, from.at, bench.pressTime), from.at, `${from.words}, press ${other}`);
    case 'throughStop': {
      const second = from.at + 1.25 * bench.pressTime;
      return after(
        [...press('stop', from.at, bench.pressTime), ...press(other, second, bench.pressTime)],
        second,
        `${from.words}, press stop and at once ${other}`,
      );
    }
    case 'plugStop':
    case 'plugStopBoth':
      return after(press('stop', from.at, bench.pressTime), from.at, `${from.words}, press stop`);
    case 'jog':
      return after([letGo(direction, from.at)], from.at, `${from.words}, let ${direction} go`);
  }
}

/** It is being plugged and turns at half the speed it had; null where the scheme prevents that. */
export function plugging(bench: Bench, direction: Direction): Preparation | null {
  const begun = plugged(bench, direction);
  if (begun === null) return null;
  return {
    ...begun,
    at: begun.at + bench.times.plug(direction).half,
    words: `${begun.words}; while it is plugged, at about half speed`,
  };
}

/** Letting go of what is held, a little after an instant. */
export function letGoHeld({ held }: Preparation, at: number): ButtonAction[] {
  return held === null ? [] : [letGo(held, at)];
}

/** The first instant from `at` on at which every button that was pressed for a while has been let go for a moment, s. */
export function handsOff({ actions }: Preparation, at: number): number {
  const releases = actions.filter((action) => action.do === 'release').map((action) => action.at);
  return Math.max(at, ...releases.map((release) => release + MOMENT));
}

const MOMENT = 0.05;

/** "forward" and, where the machine can be driven that way, "reverse". */
export function directionsOf({ reverses }: Bench): readonly Direction[] {
  return reverses ? ['forward', 'reverse'] : ['forward'];
}

/** All supply phases are away for a while. */
export function outage(from: number, until: number): StarterFault {
  return { kind: 'supplyLost', from, until };
}
