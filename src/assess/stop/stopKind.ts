import type { Inserted } from '../../machine/inserted.ts';
import type { RunResult } from '../../measure/result.ts';

/**
 * How the first reversal of a run is meant to end.
 *
 * - plug: a plug command; the zero-speed switch is to end it at standstill.
 * - timed: the other direction is commanded and taken back before the machine has run up in it: plugging that ends on time alone.
 * - reversal: the machine goes on in the other direction.
 * - none: nothing opposes rotation in this run.
 */
export type StopKind = 'plug' | 'timed' | 'reversal' | 'none';

/** Finds how the first reversal of a run is meant to end. */
export function stopKind({ operations, trajectory, metrics }: RunResult): StopKind {
  const { reversal } = operations;
  if (reversal === null) return 'none';
  const command = trajectory.commands.find(({ at, do: what }) => at === reversal.command && what !== 'coast');
  if (command?.do === 'plug') return 'plug';
  const next = trajectory.commands.find(({ at }) => at > reversal.command);
  const takenBack = next !== undefined && !next.do.startsWith('start') && next.do !== 'plug';
  return takenBack && metrics.reversalTime.value === null ? 'timed' : 'reversal';
}

/** When the stop is over: the next command that energises a contactor, or the end of the run, s. */
export function endOfStop({ operations, trajectory }: RunResult): number {
  const { reversal } = operations;
  if (reversal === null) return trajectory.tEnd;
  const next = trajectory.commands.find(
    ({ at, do: what }) => at > reversal.command && (what.startsWith('start') || what === 'plug'),
  );
  return Math.min(next?.at ?? Number.POSITIVE_INFINITY, trajectory.tEnd);
}

/** What the starter has put into the circuit when the first reversal ends: it decides where a run-up the other way leads. */
export function insertedAtEnd({ operations, trajectory }: RunResult): Inserted | undefined {
  const { reversal } = operations;
  if (reversal === null) return undefined;
  return trajectory.segments.findLast(({ t0 }) => t0 <= reversal.to)?.inserted;
}
