import type { Trajectory } from '../simulate/trajectory.ts';
import type { EnergyLedger } from './energyLedger.ts';
import type { Metrics } from './metric.ts';
import type { Operations } from './operations.ts';

/** A residual above this says loudly that the energy balance does not close (at default tolerance it is below 1e-6). */
export const LARGEST_RESIDUAL = 1e-6;

/**
 * A margin between arc extinction and touch below this is less than what operating times wander from operation to
 * operation, s (common practice, no source).
 */
const SMALL_MARGIN = 2e-3;

/** Slower than this fraction of synchronous speed at the end of a start, the machine counts as stalled. */
const STALLED_FRACTION = 0.05;

/** What a reader must know about the figures of a run; empty when there is nothing. */
export function warningsOf(
  trajectory: Trajectory,
  operations: Operations,
  metrics: Metrics,
  ledger: EnergyLedger,
): string[] {
  return [
    ...ledgerWarning(ledger),
    ...startWarning(trajectory, operations, metrics),
    ...refusedPlugs(trajectory),
    ...marginWarning(metrics),
    ...overhaulWarning(trajectory),
    ...dampingWarning(trajectory),
    ...resistorWarning(trajectory, operations),
    ...furtherActions(operations),
  ];
}

function ledgerWarning(ledger: EnergyLedger): string[] {
  if (ledger.residual <= LARGEST_RESIDUAL) return [];
  return [
    `The energy balance does not close: its error is ${ledger.residual.toExponential(1)} of the energy put through ` +
      '(at most 1e-6 is expected). Do not use these figures; tighten solver.relativeTolerance.',
  ];
}

function startWarning(trajectory: Trajectory, { start }: Operations, metrics: Metrics): string[] {
  if (start === null || start.touch === null || metrics.startTime.value !== null) return [];
  if (trajectory.shortCircuit !== null && trajectory.shortCircuit.t <= start.to) return [];
  const { supply, machine } = trajectory.scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  const reached = (start.direction * trajectory.at(start.to, 'left').speed) / synchronous;
  const percent = `${(100 * reached).toFixed(0)} % of synchronous speed`;
  const after = (start.to - start.touch).toPrecision(3);
  return [
    reached < -STALLED_FRACTION
      ? `The load drives the machine backwards: ${after} s after the contactor closed it turns at ${percent}.`
      : reached < STALLED_FRACTION
        ? `The machine does not start: ${after} s after the contactor closed it turns at ${percent}, with the rotor as good as locked.`
        : `The start is cut short: ${after} s after the contactor closed the machine turns at ${percent}.`,
  ];
}

function refusedPlugs(trajectory: Trajectory): string[] {
  return trajectory.events
    .filter((event) => event.kind === 'plugRefused')
    .map(
      (event) =>
        `The plug command came to nothing: at ${event.t.toFixed(3)} s ${event.text}. The machine coasts.`,
    );
}

function marginWarning({ arcMargin }: Metrics): string[] {
  if (arcMargin.value === null || arcMargin.value < 0 || arcMargin.value >= SMALL_MARGIN) return [];
  return [
    `The last arc is out only ${(arcMargin.value * 1000).toPrecision(2)} ms before the incoming contactor touches. Operating times wander ` +
      'more than that from one operation to the next: expect line-to-line short circuits. Lengthen the dead time.',
  ];
}

function overhaulWarning(trajectory: Trajectory): string[] {
  const { shaft, segments, events } = trajectory;
  const last = segments.at(-1);
  const released = events.some((event) => event.kind === 'poleClears');
  if (last === undefined || last.kind !== 'none' || last.held || !released) return [];
  if (Math.abs(shaft.gravity) <= shaft.breakaway) return [];
  return [
    'Once the poles are open the load drives the shaft and nothing in the scenario holds it: the speed goes on rising ' +
      'after the run ends, and creep is only what happened until then. Such a load needs a holding brake.',
  ];
}

function dampingWarning({ scenario }: Trajectory): string[] {
  if (scenario.load.coupling?.damping !== 0) return [];
  return [
    'The coupling is without damping: its torsional oscillation grows while the machine plugs, and the longer it does the larger the ' +
      'coupling torque shown. Real couplings damp; state what yours does.',
  ];
}

function resistorWarning({ segments, scenario }: Trajectory, { reversal }: Operations): string[] {
  if (scenario.starter.lineResistors === undefined || reversal === null || reversal.touch === null) return [];
  const { touch } = reversal;
  const first = segments.find((segment) => segment.t0 >= touch && segment.kind !== 'none');
  if (first === undefined || first.inserted.lineResistance > 0) return [];
  return [
    'The line resistors are not in the lines when the incoming contactor closes: the bypass contactor opens too late or closes too ' +
      'early, and the peaks are those without resistors.',
  ];
}

function furtherActions({ otherActions, start, reversal }: Operations): string[] {
  if (otherActions === 0 || (start === null && reversal === null)) return [];
  return [
    `The figures are those of the first start and the first reversal, each up to the next action; ${otherActions} other ` +
      `action${otherActions > 1 ? 's are' : ' is'} in the trace only.`,
  ];
}
