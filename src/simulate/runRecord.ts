import { type Command, isCommand, type Scenario } from '../scenario/scenario.ts';
import type { Channel, ThermalRecord } from './channels.ts';
import { madeCommands } from './madeCommands.ts';
import { channelRecorder } from './recordChannels.ts';
import type { RunState } from './runState.ts';
import type { Heat } from './thermalMemory.ts';
import type { RunEvent } from './trajectory.ts';

/** What a run leaves behind of discrete things and of the overload relay's heat. */
export interface RunRecord {
  /** Grows as the run goes on. */
  readonly events: readonly RunEvent[];
  /** Events of an instant at which the motor shaft has this speed, rad/s. */
  readonly note: (speed: number, ...events: readonly Omit<RunEvent, 'speed'>[]) => void;
  /** The starter has changed, t in s. */
  readonly starterIs: (t: number, starter: RunState['starter']) => void;
  /** The relay's heat at an instant, s. */
  readonly heatIs: (t: number, heat: Heat) => void;
  /** What of it a trajectory carries. */
  readonly kept: () => {
    readonly events: readonly RunEvent[];
    readonly channels: readonly Channel[];
    readonly thermal: ThermalRecord | null;
    readonly commands: readonly Command[];
  };
}

/** The record of a run that begins in this state. */
export function runRecord(scenario: Scenario, first: RunState): RunRecord {
  const events: RunEvent[] = [];
  const recorder = channelRecorder(first.starter);
  const thermal: { t: number[]; value: number[] } = { t: [], value: [] };
  const heatIs = (t: number, heat: Heat) => {
    thermal.t.push(t);
    thermal.value.push(Math.max(...heat));
  };
  recorder.take(first.t, first.starter);
  if (first.heat !== null) heatIs(first.t, first.heat);
  return {
    events,
    note: (speed, ...noted) => {
      for (const event of noted) events.push({ ...event, speed });
    },
    starterIs: recorder.take,
    heatIs,
    kept: () => ({
      events,
      channels: recorder.channels(),
      thermal: first.heat === null ? null : thermal,
      commands: first.starter.control === null ? scenario.actions.filter(isCommand) : madeCommands(events),
    }),
  };
}
