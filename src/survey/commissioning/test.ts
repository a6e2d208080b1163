import type { ButtonAction, InitialState, StarterFault } from '../../scenario/scenario.ts';
import type { BenchRun } from './run.ts';

/** Headings of the sheet, in its order. */
export type TestGroup =
  | 'running'
  | 'reversing'
  | 'stopping'
  | 'emergencyStop'
  | 'overload'
  | 'supply'
  | 'handling'
  | 'faults';

/** Something that must be so, in words and as a question to a run. */
export interface Requirement {
  /** Without a full stop: "comes to rest". */
  readonly words: string;
  /**
   * Whether a run of the test meets it.
   *
   * @internal
   */
  readonly isMet: (run: BenchRun) => boolean;
  /** What it means for people where it is not so; absent: no danger by itself. */
  readonly danger?: string;
}

/** What is timed with a stop-watch. */
export interface Timing {
  /** Behind a time: "to standstill". */
  readonly words: string;
  /**
   * The time in a run, s; null where it does not happen in it.
   *
   * @internal
   */
  readonly of: (run: BenchRun) => number | null;
}

/** One test of the commissioning sheet: what the hands do, what must come of it. One simulation. */
export interface CommissioningTest {
  /** Unique on a sheet, for programs. */
  readonly id: string;
  readonly group: TestGroup;
  readonly title: string;
  /** What the hands do, in sentences. */
  readonly hands: string;
  readonly initial: InitialState;
  readonly actions: readonly ButtonAction[];
  readonly faults: readonly StarterFault[];
  /** When its run ends, s, or 'auto': when the last action has done its work. */
  readonly endTime: number | 'auto';
  /** The decisive instant, from which times count, s. */
  readonly mark: number;
  /** What happens at it: "stop pressed". */
  readonly markWords: string;
  /** Until here it runs steadily, s; null: it does not. */
  readonly steadyUntil: number | null;
  readonly requirements: readonly Requirement[];
  readonly timings: readonly Timing[];
  /** Instants `t`, s, at which the speed is read besides those before and after. */
  readonly moments: readonly { readonly words: string; readonly t: number }[];
  /** What the expected behaviour means for people where it is dangerous; null: it is not. */
  readonly danger: string | null;
  /** What one should know; null: nothing. */
  readonly remark: string | null;
}

/** What a test states; the rest is: at rest, no faults, no timings, no moments, no danger, no remark, ends by itself. */
export type TestInput = Pick<
  CommissioningTest,
  'id' | 'group' | 'title' | 'hands' | 'actions' | 'mark' | 'markWords' | 'requirements'
> &
  Partial<CommissioningTest>;

/** A test with everything filled in, its actions in order of time. */
export function commissioningTest(input: TestInput): CommissioningTest {
  return {
    initial: 'rest',
    faults: [],
    endTime: 'auto',
    steadyUntil: null,
    timings: [],
    moments: [],
    danger: null,
    remark: null,
    ...input,
    actions: [...input.actions].sort((a, b) => a.at - b.at),
  };
}
