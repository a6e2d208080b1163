import type { IndependentMetrics } from './independentMetric.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';
import type { RunReader } from './runReader.ts';
import type { Closing, Opening } from './switchingRecord.ts';
import { terminalVector } from './terminalVoltage.ts';

const PHASES = ['A', 'B', 'C'] as const;

/** Motor terminals (0, 1, 2) whose phases the reversing contactor exchanges. */
const EXCHANGED = { AB: [0, 1], BC: [1, 2], CA: [2, 0] } as const;

/** Instant at which the first pole of an opening parts. */
export function firstParting(opening: Opening | undefined): number | null {
  const times = opening?.poles.map((pole) => pole.partedAt).filter((t) => t !== null) ?? [];
  return times.length > 0 ? Math.min(...times) : null;
}

/** Intervals of the change-over, arc margin, and the voltages that meet at the first touch. */
export function changeoverMetrics(
  out: IndependentMetrics,
  run: PhaseVariableRun,
  reader: RunReader,
  command: number | null,
  opening: Opening | undefined,
  closing: Closing | undefined,
): void {
  const touch = closing?.circuitAt ?? null;
  const parted = firstParting(opening);
  const clearings = opening?.poles.map((pole) => pole.clearedAt).filter((t) => t !== null) ?? [];
  const since = (from: number | null) => ({ value: touch === null || from === null ? null : touch - from });
  out.commandToTouch = since(command);
  out.partingToTouch = since(parted);
  const extinguished = clearings.filter((t) => touch !== null && t <= touch);
  out.extinctionToTouch = since(extinguished.length > 0 ? Math.max(...extinguished) : null);

  const margins = EXCHANGED[run.scenario.starter.exchangedPhases].map((k) => {
    const touched = closing?.touchedAt[k] ?? null;
    const cleared = opening?.poles[k]?.clearedAt ?? null;
    return touched === null || cleared === null ? null : touched - cleared;
  });
  const known = margins.filter((margin) => margin !== null);
  out.arcMargin = { value: known.length > 0 ? Math.min(...known) : null };

  if (touch === null || closing === undefined) {
    for (const name of ['residualVoltage', 'residualAngle', 'supplyAngleAtTouch'])
      out[name] = { value: null };
    return;
  }
  const { lineVoltage, frequency, angle } = run.scenario.supply;
  const before = reader.pointAt(touch, 'left');
  const residual = terminalVector(run.circuit.terminalVoltages(before.y, before.f));
  const swap: [number, number, number] = [0, 1, 2];
  if (closing.contactor === 1) {
    const [a, b] = EXCHANGED[run.scenario.starter.exchangedPhases];
    swap[a] = b;
    swap[b] = a;
  }
  const applied = terminalVector([
    run.circuit.sourceVoltage(swap[0], touch),
    run.circuit.sourceVoltage(swap[1], touch),
    run.circuit.sourceVoltage(swap[2], touch),
  ]);
  const turn = 2 * Math.PI;
  const lead = applied.angle - residual.angle;
  out.residualVoltage = { value: residual.size / (Math.sqrt(2 / 3) * lineVoltage), time: touch };
  // Into (−π, π].
  out.residualAngle = { value: lead - turn * Math.ceil((lead - Math.PI) / turn), time: touch };
  const supplyAngle = (turn * frequency * touch + angle) % turn;
  out.supplyAngleAtTouch = { value: supplyAngle < 0 ? supplyAngle + turn : supplyAngle, time: touch };
}

/** What each pole of an opening interrupted. */
export function poleMetrics(
  out: IndependentMetrics,
  prefix: 'run' | 'plug',
  opening: Opening | undefined,
): void {
  PHASES.forEach((phase, k) => {
    const pole = opening?.poles[k];
    const parted = pole?.partedAt ?? null;
    const cleared = pole?.clearedAt ?? null;
    const name = `${prefix}Pole${phase}`;
    out[`${name}PartingCurrent`] = { value: pole && parted !== null ? pole.partingCurrent : null };
    out[`${name}ClearingTime`] = { value: parted === null || cleared === null ? null : cleared - parted };
    out[`${name}ArcCharge`] = { value: pole && cleared !== null ? pole.arcCharge : null };
  });
}
