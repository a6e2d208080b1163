import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { simulate } from '../../../../src/measure/simulate.ts';
import type { RunView } from '../../../../src/report/live/runView.ts';
import { runViewOf } from '../../../../src/report/live/runViewOf.ts';
import type { StarterFault } from '../../../../src/scenario/scenario.ts';

const EXAMPLE = fileURLToPath(
  new URL('../../../../examples/teacher/what-happens-after-the-stop-button.yaml', import.meta.url),
);

/** A machine that is started and plugged by its push buttons. */
export const EXAMPLE_TEXT = readFileSync(EXAMPLE, 'utf8');

/** Every kind of fault, and every mode of the zero-speed switch and of the auxiliary contacts. */
export const EVERY_FAULT: readonly StarterFault[] = [
  { kind: 'lostPhase', phase: 'B', from: 1.2 },
  { kind: 'weldedPole', contactor: 'forward', pole: 'A' },
  { kind: 'deadPole', contactor: 'reverse', pole: 'C' },
  { kind: 'weldedContactor', contactor: 'reverse' },
  { kind: 'zeroSpeedSwitch', mode: 'stuckClosed' },
  { kind: 'zeroSpeedSwitch', mode: 'stuckOpen' },
  { kind: 'zeroSpeedSwitch', mode: 'doesNotPickUp' },
  { kind: 'auxiliaryContact', contactor: 'forward', contact: 'holdIn', stuck: 'open' },
  { kind: 'auxiliaryContact', contactor: 'forward', contact: 'interlock', stuck: 'closed' },
  { kind: 'overloadNeverTrips' },
  { kind: 'supplyLost', from: 1.2, until: 1.4 },
  { kind: 'mechanicalInterlockMissing' },
];

const known = new Map<string, RunView>();

/** The example's run with these faults, as the page has it; it ends at 2.6 s, after the stop. Made once, never changed. */
export function viewWith(faults: readonly StarterFault[]): RunView {
  const name = JSON.stringify(faults);
  const view = known.get(name) ?? newView(faults);
  known.set(name, view);
  return view;
}

function newView(faults: readonly StarterFault[]): RunView {
  const scenario = parseScenario(EXAMPLE_TEXT);
  const result = simulate({
    ...scenario,
    starter: { ...scenario.starter, ...(faults.length === 0 ? {} : { faults }) },
    solver: { ...scenario.solver, endTime: 2.6 },
  });
  return runViewOf(result, 'SI');
}

/** Every text in a value, however deep. */
export function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
  return Object.values(value).flatMap(textsOf);
}
