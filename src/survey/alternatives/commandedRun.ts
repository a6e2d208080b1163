import type { RunResult } from '../../measure/result.ts';
import { stopCommand } from '../../measure/stopFigures.ts';
import type { Command, Scenario, StarterData } from '../../scenario/scenario.ts';

/** A run as commands to the coils, up to the command that stops it, so that it can be stopped otherwise. */
export interface CommandedRun {
  /** Without control circuit, faults and devices that only some ways of stopping need; its actions end before the stop. */
  readonly scenario: Scenario;
  /** When the stop is commanded, s. */
  readonly command: number;
  /** Direction of rotation at the command. */
  readonly direction: 1 | -1;
}

/**
 * The run before its stop, whichever way it was commanded. What the control circuit made of buttons becomes commands, and
 * the dead time that came out is kept.
 *
 * @returns null where the run has no stop
 */
export function commandedRun(result: RunResult): CommandedRun | null {
  const { scenario, trajectory, metrics } = result;
  const command = stopCommand(trajectory);
  if (command === null) return null;
  const { control, faults: _faults, injection, brake, ...plain } = scenario.starter;
  const dead = metrics.partingToTouch.value;
  const delay =
    control === undefined || dead === null
      ? plain.changeoverDelay
      : Math.max(0, dead - plain.closingTime + plain.openingTime);
  const before = trajectory.commands.filter(({ at }) => at < command);
  const does = (kind: Command['do']) => before.some((action) => action.do === kind);
  const starter: StarterData = {
    ...plain,
    changeoverDelay: delay,
    ...(brake !== undefined && (brake.sets === 'afterPlugging' || does('brake')) ? { brake } : {}),
    ...(injection !== undefined && does('injectDc') ? { injection } : {}),
  };
  return {
    scenario: {
      ...scenario,
      starter,
      actions: before,
      solver: { ...scenario.solver, endTime: 'auto' },
    },
    command,
    direction: trajectory.at(command, 'left').speed >= 0 ? 1 : -1,
  };
}

/** The run with one more command and changes to its starter. */
export function stoppedBy(
  run: CommandedRun,
  kind: Command['do'],
  starter: Partial<StarterData> = {},
  later: readonly Command[] = [],
): Scenario {
  return {
    ...run.scenario,
    starter: { ...run.scenario.starter, ...starter },
    actions: [...run.scenario.actions, { at: run.command, do: kind }, ...later],
  };
}
