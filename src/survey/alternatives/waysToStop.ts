import { openCircuitTime } from '../../machine/openCircuitTime.ts';
import { steadyState } from '../../machine/steadyState.ts';
import { bisect } from '../../numeric/bisect.ts';
import type { Command, Scenario, StarterData } from '../../scenario/scenario.ts';
import { synchronousSpeed } from '../../scenario/synchronousSpeed.ts';
import type { Alternative, StopName } from './alternative.ts';
import { type CommandedRun, stoppedBy } from './commandedRun.ts';
import { chooseInjection, FLUX_DECAY } from './directCurrent.ts';

/** A way to stop as a scenario to be simulated, or why there is none. */
export type WayToStop =
  | { readonly scenario: Scenario; readonly setting: string; readonly chosen?: Alternative['chosen'] }
  | { readonly missing: string };

/** What the settings of the other ways are chosen by. */
export interface StopGoals {
  /** Command that plugs: `plug`, or the start in the other direction. */
  readonly plugging: Extract<Command['do'], 'plug' | 'startForward' | 'startReverse'>;
  /** A r.m.s. */
  readonly ratedCurrent: number;
  /** How long a stop may take where the current is chosen for it, s. */
  readonly wantedTime: number;
  /** When the coasting load stands, s after the command; null: it does not within the run. */
  readonly coastingTime: number | null;
  /** Smallest line resistor with which no criterion fails, Ω; null: none was looked for, or none does. */
  readonly resistorForLimits: number | null;
}

/** Speeds of the zero-speed switch where the starter has none, shares of synchronous speed. Common practice, no source. */
const ASSUMED_SWITCH = { dropOut: 0.04, pickUp: 0.08 } as const;
/** Between standstill and the start in the other direction, s: a hand presses the other button. Assumed. */
const HAND_TIME = 0.5;
/** Slip at the beginning of a plug stop. */
const PLUGGING_SLIP = 2;

/** The scenario of one way to stop. */
export function wayToStop(name: StopName, run: CommandedRun, goals: StopGoals): WayToStop {
  const { machine, starter, alternatives } = run.scenario;
  const plug = (changes: Partial<StarterData> = {}) =>
    stoppedBy(run, goals.plugging, { ...theSwitch(run, goals), ...changes });
  switch (name) {
    case 'plug':
      return { scenario: plug(), setting: settingOfSwitch(run, goals) };
    case 'coast':
      return { scenario: stoppedBy(run, 'coast'), setting: '' };
    case 'mechanicalBrake': {
      const brake = alternatives?.mechanicalBrake ?? null;
      if (brake === null)
        return { missing: 'the torque of a brake is missing (alternatives: mechanicalBrake)' };
      const { torque, delay } = brake;
      return {
        scenario: stoppedBy(run, 'brake', { brake: { torque, delay, sets: 'onCommand' } }),
        setting: 'torque and delay given',
      };
    }
    case 'directCurrent': {
      const { injection, current, origin } = chooseInjection(
        withSwitch(run),
        goals.ratedCurrent,
        goals.wantedTime,
      );
      const wait =
        alternatives?.injectionDelay == null
          ? `after ${FLUX_DECAY} open-circuit time constants`
          : 'delay given';
      return {
        scenario: stoppedBy(withSwitch(run), 'injectDc', { injection }),
        setting: [`current ${origin}`, wait, switchWords(run)].filter(Boolean).join('; '),
        chosen: { value: current, unit: 'A' },
      };
    }
    case 'lineResistors': {
      if (starter.lineResistors !== undefined)
        return { missing: 'the starter as it stands plugs through line resistors' };
      const { resistance, origin } = resistorOf(run, goals);
      if (resistance <= 0) return { missing: origin };
      const { closingTime, openingTime } = starter;
      return {
        scenario: plug({ lineResistors: { resistance, closingTime, openingTime, bypassAfter: null } }),
        setting: origin,
        chosen: { value: resistance, unit: 'Ω' },
      };
    }
    case 'starPlugging':
      if (machine.connection === 'star') return { missing: 'the machine is connected in star as it is' };
      if (starter.plugConnection === 'star') return { missing: 'the starter as it stands plugs in star' };
      if (goals.plugging !== 'plug')
        return { missing: 'a full reversal runs on in the connection it runs in' };
      return { scenario: plug({ plugConnection: 'star' }), setting: '' };
    case 'longerDeadTime': {
      const given = alternatives?.deadTime ?? null;
      const deadTime = given ?? FLUX_DECAY * openCircuitTime(machine);
      const changeoverDelay = deadTime - starter.closingTime + starter.openingTime;
      if (changeoverDelay <= starter.changeoverDelay)
        return { missing: 'the starter as it stands has a dead time as long' };
      return {
        scenario: plug({ changeoverDelay }),
        setting:
          given === null ? `dead time of ${FLUX_DECAY} open-circuit time constants` : 'dead time given',
        chosen: { value: deadTime, unit: 's' },
      };
    }
    case 'throughStop': {
      if (goals.coastingTime === null)
        return { missing: 'the coasting load does not come to rest within the run' };
      const start: Command = {
        at: run.command + goals.coastingTime + HAND_TIME,
        do: run.direction === 1 ? 'startReverse' : 'startForward',
      };
      return {
        scenario: stoppedBy(run, 'coast', {}, [start]),
        setting: `started the other way ${HAND_TIME} s after standstill`,
      };
    }
  }
}

/** The run with a zero-speed switch, an assumed one where it has none. */
function withSwitch(run: CommandedRun): CommandedRun {
  const { scenario } = run;
  if (scenario.starter.zeroSpeedSwitch !== null) return run;
  const synchronous = synchronousSpeed(scenario.supply.frequency, 2 * scenario.machine.polePairs);
  const zeroSpeedSwitch = {
    dropOutSpeed: ASSUMED_SWITCH.dropOut * synchronous,
    pickUpSpeed: ASSUMED_SWITCH.pickUp * synchronous,
    delay: 0,
  };
  return { ...run, scenario: { ...scenario, starter: { ...scenario.starter, zeroSpeedSwitch } } };
}

function theSwitch(run: CommandedRun, goals: StopGoals): Partial<StarterData> {
  return goals.plugging === 'plug'
    ? { zeroSpeedSwitch: withSwitch(run).scenario.starter.zeroSpeedSwitch }
    : {};
}

function switchWords({ scenario }: CommandedRun): string {
  return scenario.starter.zeroSpeedSwitch === null
    ? `ended by an assumed zero-speed switch at ${100 * ASSUMED_SWITCH.dropOut} % of synchronous speed`
    : '';
}

function settingOfSwitch(run: CommandedRun, goals: StopGoals): string {
  return goals.plugging === 'plug' ? switchWords(run) : '';
}

function resistorOf(run: CommandedRun, goals: StopGoals): { resistance: number; origin: string } {
  const { machine, supply, alternatives } = run.scenario;
  const given = alternatives?.lineResistance ?? null;
  if (given !== null) return { resistance: given, origin: 'resistance given' };
  if (goals.resistorForLimits !== null)
    return {
      resistance: goals.resistorForLimits,
      origin: 'chosen: the smallest with which no criterion fails',
    };
  const start = steadyState(machine, supply, 1).current;
  const excess = (lineResistance: number) =>
    steadyState(machine, supply, PLUGGING_SLIP, { lineResistance, rotorResistance: 0, star: false }).current -
    start;
  if (excess(0) <= 0)
    return {
      resistance: 0,
      origin: 'plugging draws no more steady current than a start: no resistor is needed for that',
    };
  const impedance = supply.lineVoltage / Math.sqrt(3) / start;
  return {
    resistance: bisect(excess, 0, impedance),
    origin: 'chosen: with it the steady current of plugging is that of a start',
  };
}
