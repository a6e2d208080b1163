import { changeoverMetrics, poleMetrics } from './changeoverMetrics.ts';
import { heatMetrics } from './heatMetrics.ts';
import type { IndependentMetrics } from './independentMetric.ts';
import { ledgerResidual } from './ledgerResidual.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';
import { type RunReader, runReader } from './runReader.ts';
import { runUp } from './runUp.ts';
import { stopMetrics } from './stopMetrics.ts';
import { stressMetrics, torsionalFrequency } from './stressMetrics.ts';
import { lowestTerminalVoltage } from './terminalVoltage.ts';
import { windowMetrics } from './windowMetrics.ts';

/** Everything measured on a run of the phase-variable model; null where the run does not contain it. */
export function measureRun(run: PhaseVariableRun): IndependentMetrics {
  const reader = runReader(run);
  const running = runningDirections(run);
  const out: IndependentMetrics = {};
  const command = running.command;
  const startAt = running.startAt;
  const startEnd = command ?? run.endTime;

  windowMetrics(out, 'start', run, reader, startAt, startEnd);
  stressMetrics(out, 'start', run, reader, startAt, startEnd);
  const startHeat = startMetrics(out, run, reader, startAt, startEnd, running.startDirection);
  windowMetrics(out, 'plug', run, reader, command, run.endTime);
  const opening = command === null ? undefined : run.openings.find((o) => o.releasedAt >= command);
  const closing =
    command === null
      ? undefined
      : run.closings.find((c) => c.energisedAt >= command && c.contactor !== opening?.contactor);
  stressMetrics(out, 'plug', run, reader, closing?.circuitAt ?? command, run.endTime);
  changeoverMetrics(out, run, reader, command, opening, closing);
  stopMetrics(out, run, reader, command, opening, closing, running.runDirection, startHeat);
  out.lowestTerminalVoltage = lowestTerminalVoltage(run, run.steps);
  out.torsionalFrequency = { value: torsionalFrequency(run.scenario) };
  poleMetrics(out, 'run', opening);
  const plugOpening =
    closing &&
    run.openings.find((o) => o.contactor === closing.contactor && o.releasedAt >= closing.energisedAt);
  poleMetrics(out, 'plug', plugOpening);
  out.ledgerResidual = { value: ledgerResidual(run) };
  return out;
}

interface Operation {
  readonly startAt: number | null;
  readonly startDirection: 1 | -1;
  /** The first action that opposes rotation. */
  readonly command: number | null;
  readonly runDirection: 1 | -1;
}

function runningDirections(run: PhaseVariableRun): Operation {
  const { scenario } = run;
  let direction: 1 | -1 | null =
    scenario.initial === 'rest' ? null : scenario.initial === 'runningForward' ? 1 : -1;
  let startAt: number | null = null;
  let startDirection: 1 | -1 = 1;
  for (const action of scenario.actions) {
    if (action.at > run.endTime) break;
    const wanted = action.do === 'startForward' ? 1 : action.do === 'startReverse' ? -1 : null;
    if (direction !== null && (action.do === 'plug' || (wanted !== null && wanted !== direction))) {
      return { startAt, startDirection, command: action.at, runDirection: direction };
    }
    if (wanted !== null && direction === null) {
      direction = wanted;
      startAt = action.at;
      startDirection = wanted;
    }
  }
  return { startAt, startDirection, command: null, runDirection: direction ?? 1 };
}

function startMetrics(
  out: IndependentMetrics,
  run: PhaseVariableRun,
  reader: RunReader,
  from: number | null,
  to: number,
  direction: 1 | -1,
): number | null {
  const touch = from === null ? null : (run.closings.find((c) => c.energisedAt >= from)?.circuitAt ?? null);
  const reached = touch === null ? null : runUp(run, reader, touch, to, direction);
  out.startTime = { value: touch === null || reached === null ? null : reached - touch };
  if (from === null) return heatMetrics(out, 'start', run, null, null, null);
  // Heat belongs to the start until the machine is up to speed, or the next action cuts it short.
  const end = reader.stateAt(reached ?? to);
  const heat = heatMetrics(out, 'start', run, reader.stateAt(from, 'right'), end, end);
  if (reached !== null) return heat;
  // A start that was cut short is no whole start to compare with.
  out.startRotorHeatMultiple = { value: null };
  return null;
}
