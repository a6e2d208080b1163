import { firstParting } from './changeoverMetrics.ts';
import { heatMetrics, rotorHeat } from './heatMetrics.ts';
import type { IndependentMetrics } from './independentMetric.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';
import type { RunReader, Signal } from './runReader.ts';
import { runUp } from './runUp.ts';
import type { Closing, Opening } from './switchingRecord.ts';

/** From the command to standstill, and what comes after: creep or full reversal. */
export function stopMetrics(
  out: IndependentMetrics,
  run: PhaseVariableRun,
  reader: RunReader,
  command: number | null,
  opening: Opening | undefined,
  closing: Closing | undefined,
  direction: 1 | -1,
  startHeat: number | null,
): void {
  const { omega, theta } = run.circuit.index;
  const touch = closing?.circuitAt ?? null;
  const parted = firstParting(opening);
  const firstZero =
    command === null ? null : (run.log.find((e) => e.kind === 'zeroSpeed' && e.t >= command)?.t ?? null);
  // A shaft that stops before the incoming contactor has done anything has not been plugged.
  const zero = firstZero !== null && touch !== null && touch <= firstZero ? firstZero : null;
  const since = (from: number | null) => ({ value: zero === null || from === null ? null : zero - from });
  out.stopTimeFromParting = since(parted);
  out.stopTimeFromTouch = since(touch);

  const atCommand = command === null ? null : reader.stateAt(command);
  const atZero = zero === null ? null : reader.stateAt(zero);
  const revolutions = (a: Float64Array, b: Float64Array) => Math.abs(b[theta]! - a[theta]!) / (2 * Math.PI);
  out.stopRevolutions = { value: atCommand && atZero ? revolutions(atCommand, atZero) : null };
  const plugHeat = heatMetrics(out, 'plug', run, atCommand, atZero, atCommand);
  const resistorHeat = (present: boolean, at: number) => ({
    value: present && atCommand && atZero ? atZero[at]! - atCommand[at]! : null,
  });
  const { starter, machine } = run.scenario;
  const { lineResistorHeat, rotorResistorHeat } = run.circuit.index;
  out.plugLineResistorHeat = resistorHeat(starter.lineResistors !== undefined, lineResistorHeat);
  out.plugRotorResistorHeat = resistorHeat(machine.rotorResistors !== undefined, rotorResistorHeat);
  out.plugToStartHeatRatio = {
    value: plugHeat === null || startHeat === null ? null : plugHeat / startHeat,
  };

  const opened =
    command === null ? null : (run.log.find((e) => e.kind === 'switchOpens' && e.t >= command)?.t ?? null);
  out.switchOpeningTime = { value: null };
  out.switchOpeningSpeed = { value: null };
  out.creepSpeed = { value: null };
  out.creepRevolutions = { value: null };
  if (opened !== null) {
    out.switchOpeningTime = { value: touch === null ? null : opened - touch, time: opened };
    out.switchOpeningSpeed = { value: reader.stateAt(opened)[omega]!, time: opened };
    const backwards: Signal = {
      value: (y) => -direction * y[omega]!,
      rate: (_y, f) => -direction * f[omega]!,
    };
    const creep = reader.extreme(opened, run.endTime, backwards, 1);
    out.creepSpeed = creep && creep.value > 0 ? creep : { value: 0 };
    const end = reader.stateAt(run.endTime);
    const turned = atZero ? (-direction * (end[theta]! - atZero[theta]!)) / (2 * Math.PI) : 0;
    out.creepRevolutions = { value: Math.max(0, turned) };
  }

  const full =
    touch !== null && opened === null
      ? runUp(run, reader, touch, run.endTime, direction === 1 ? -1 : 1, run.steps.at(-1)!.mode.inserted)
      : null;
  out.reversalTime = { value: full === null || touch === null ? null : full - touch };
  const heat =
    full === null || atCommand === null
      ? null
      : rotorHeat(run, reader.stateAt(full)) - rotorHeat(run, atCommand);
  out.reversalRotorHeat = { value: heat };
  out.reversalToStartHeatRatio = {
    value: heat === null || startHeat === null ? null : heat / startHeat,
  };
  out.reversalRotorHeatMultiple = {
    value: heat === null ? null : heat / run.circuit.train.kinetic(atCommand!),
  };
}
