import { quadratureOf } from '../../measure/quadrature.ts';
import { assertScenario } from '../../scenario/assertScenario.ts';
import type { ControlData, Scenario } from '../../scenario/scenario.ts';
import { ScenarioError } from '../../scenario/scenarioError.ts';
import { synchronousSpeed } from '../../scenario/synchronousSpeed.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import { runTrajectory } from '../../simulate/run.ts';
import type { RunStatusCode } from '../../simulate/status.ts';
import { type Bench, type BenchTimes, benchOf } from './bench.ts';
import { emergencyTests, overloadTests } from './emergency.ts';
import { faultTests } from './faults.ts';
import { handlingTests } from './handling.ts';
import { operationTests, pluggingTest, startTest } from './operation.ts';
import { type Readings, readingsOf } from './readings.ts';
import { type BenchRun, type FinalState, finalState } from './run.ts';
import { type Sequence, sequenceOf } from './sequence.ts';
import { supplyTests } from './supply.ts';
import type { CommissioningTest } from './test.ts';
import { timeOf, timeToShare, timeToSlow } from './timings.ts';

/** What came of a test. `unmet`: requirements that the simulation does not meet, in words. */
export type RowVerdict =
  | { readonly kind: 'agrees' }
  /** Requirements that the simulation does not meet, in words. */
  | { readonly kind: 'differs'; readonly unmet: readonly string[] }
  /** No figures: why. */
  | { readonly kind: 'notSimulated'; readonly reason: string };

/** One row of the commissioning sheet. */
export interface CommissioningRow {
  /** Number of the row, from 1. */
  readonly number: number;
  readonly test: CommissioningTest;
  readonly verdict: RowVerdict;
  /** What is dangerous about what the simulation shows; empty: nothing. */
  readonly dangers: readonly string[];
  /** null where it was not simulated. */
  readonly shows: RowResult | null;
}

/** What the simulation of a row shows. */
export interface RowResult {
  readonly sequence: Sequence;
  readonly end: FinalState;
  readonly readings: Readings;
  /** What was timed, and its `value`, s; null where it does not happen in the run. */
  readonly durations: readonly { readonly words: string; readonly value: number | null }[];
}

/** The standard set of tests of a scenario's starter, each simulated. */
export interface CommissioningSheet {
  readonly scenario: Scenario;
  readonly control: ControlData;
  readonly rows: readonly CommissioningRow[];
}

/** Tolerance of the runs behind a sheet, relative: readings have three digits. */
const SHEET_TOLERANCE = 1e-6;
/** Integration steps after which a row is given up: it does not come to an end. */
const MOST_STEPS = 20_000;

/**
 * Runs the standard set of tests of a scenario's starter. Each row is one simulation of the scenario with actions and faults of
 * its own; instants such as "at half speed" come from the rows of the normal start and stop.
 *
 * @throws ScenarioError where the scenario has no control circuit, or is impossible by itself
 */
export function commissioningSheet(scenario: Scenario): CommissioningSheet {
  assertScenario(scenario);
  const { control } = scenario.starter;
  if (control === undefined) throw noControl();
  const bench = runnableBench(scenario, control);
  const rows = commissioningTests(bench).map((test, k) => rowOf(k + 1, test, bench.run));
  return { scenario, control, rows };
}

/** Every test that the scheme has, in the order of the sheet. */
export function commissioningTests(bench: Bench): readonly CommissioningTest[] {
  return [
    ...operationTests(bench),
    ...emergencyTests(bench),
    ...overloadTests(bench),
    ...supplyTests(bench),
    ...handlingTests(bench),
    ...faultTests(bench),
  ];
}

/** A bench whose times come from runs on it; a test is run once. */
export function runnableBench(
  scenario: Scenario,
  control: ControlData,
): Bench & { readonly run: (test: CommissioningTest) => BenchRun | string } {
  const done = new Map<string, BenchRun | string>();
  const run = (test: CommissioningTest): BenchRun | string => {
    const before = done.get(test.id);
    if (before !== undefined) return before;
    const result = runTest(scenario, test);
    done.set(test.id, result);
    return result;
  };
  const times: BenchTimes = {
    start: (direction) => {
      const test = startTest(bench, direction);
      const result = run(test);
      const at = (share: number) =>
        typeof result === 'string' ? null : timeToShare(result, test.mark, direction, share);
      return { half: at(HALF) ?? UNKNOWN.half, full: at(FULL) ?? UNKNOWN.full };
    },
    plug: (direction) => {
      const test = pluggingTest(bench, direction);
      const result = test === null ? '' : run(test);
      if (test === null || typeof result === 'string') return { half: UNKNOWN.half, rest: UNKNOWN.full };
      return {
        half: timeToSlow(result, test.mark, HALF) ?? UNKNOWN.half,
        rest: timeOf(result, test.mark, 'zeroSpeed') ?? UNKNOWN.full,
      };
    },
    left: (test) => {
      const result = run(test);
      if (typeof result === 'string') return { switchOpens: null, stands: null };
      const opens = timeOf(result, test.mark, 'switchOpens');
      return {
        switchOpens: opens === null ? null : test.mark + opens,
        stands: finalState(result).kind === 'rest' ? result.trajectory.tEnd : null,
      };
    },
  };
  const bench = benchOf(scenario, control, times);
  return { ...bench, run };
}

const HALF = 0.5;
const FULL = 0.95;
/** Where the machine never gets there, s. */
const UNKNOWN = { half: 0.2, full: 1 } as const;

/** Statuses with which the figures cannot be used. */
const FAILED: readonly RunStatusCode[] = ['nonFiniteValue', 'stepLimit'];

/** The run of a test, or why there is none. */
function runTest(scenario: Scenario, test: CommissioningTest): BenchRun | string {
  const variant: Scenario = {
    ...scenario,
    initial: test.initial,
    actions: test.actions,
    starter: { ...scenario.starter, faults: test.faults },
    solver: {
      ...scenario.solver,
      endTime: test.endTime,
      relativeTolerance: Math.max(SHEET_TOLERANCE, scenario.solver.relativeTolerance),
      maxSteps: Math.min(MOST_STEPS, scenario.solver.maxSteps),
    },
  };
  try {
    assertScenario(variant);
    const trajectory = runTrajectory(variant);
    if (FAILED.includes(trajectory.status.code)) return trajectory.status.message;
    const { supply, machine, starter } = scenario;
    const synchronous = synchronousSpeed(supply.frequency, 2 * machine.polePairs);
    return {
      test,
      trajectory,
      quadrature: quadratureOf(trajectory),
      steady: { forward: steadySpeed(scenario, 1), reverse: steadySpeed(scenario, -1) },
      synchronous,
      standing: STANDING * synchronous,
      turning: starter.zeroSpeedSwitch?.pickUpSpeed ?? TURNING * synchronous,
    };
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    return error.problems.map(({ message }) => message).join('; ');
  }
}

/** Of synchronous speed: what counts as standing. */
const STANDING = 0.01;
/** The same for turning the other way for good, where no zero-speed switch says so. */
const TURNING = 0.1;

/** A row from the run of its test. */
export function rowOf(
  number: number,
  test: CommissioningTest,
  runOf: (test: CommissioningTest) => BenchRun | string,
): CommissioningRow {
  const run = runOf(test);
  if (typeof run === 'string')
    return { number, test, verdict: { kind: 'notSimulated', reason: run }, dangers: [], shows: null };
  const unmet = test.requirements.filter((one) => !one.isMet(run));
  const dangers = [
    ...(test.danger === null ? [] : [test.danger]),
    ...unmet.flatMap(({ danger }) => (danger === undefined ? [] : [`${capital(danger)}.`])),
  ];
  return {
    number,
    test,
    verdict:
      unmet.length === 0 ? { kind: 'agrees' } : { kind: 'differs', unmet: unmet.map(({ words }) => words) },
    dangers: [...new Set(dangers)],
    shows: {
      sequence: sequenceOf(run),
      end: finalState(run),
      readings: readingsOf(run),
      durations: test.timings.map(({ words, of }) => ({ words, value: of(run) })),
    },
  };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function noControl(): ScenarioError {
  return new ScenarioError([
    {
      file: 'scenario',
      line: null,
      column: null,
      code: 'missingKey',
      path: 'starter.control',
      found: null,
      message: 'is missing: the sheet tests a control circuit',
      expected: 'the control circuit, such as `{ scheme: plug to stop }`',
    },
  ]);
}
