import type { ControlFinding } from '../measure/controlFindings.ts';
import type { RunResult } from '../measure/result.ts';
import { LARGEST_RESIDUAL } from '../measure/warnings.ts';

/** What a run says beside its figures. Words without a full stop. */
export interface RunReasons {
  /** Why none of its figures may be used; null: they may. */
  readonly unusable: string | null;
  /** What speaks against plugging by itself: how the run ended, and what its control did. */
  readonly against: readonly string[];
  /** What it lacks for a judgement; null: nothing. */
  readonly lacking: string | null;
}

/** Reads a run for reasons that come before any criterion. */
export function runReasons(result: RunResult): RunReasons {
  return {
    unusable: whyUnusable(result),
    against: [...badEnd(result), ...controlReasons(result)],
    lacking: whatIsLacking(result),
  };
}

function whatIsLacking(result: RunResult): string | null {
  const { operations, scenario } = result;
  const { duty } = scenario;
  if (operations.reversal === null) return `no plug or reversal takes place in this run${refusal(result)}`;
  if (duty !== undefined && duty.cycle !== 'fullReversal' && duty.pluggingShare === 0)
    return 'the duty contains no plugging (duty.cycle, duty.pluggingShare), so its heat and wear say nothing about it';
  return (scenario.starter.faults ?? []).length === 0
    ? null
    : 'the scenario assumes faults of the starter (starter.faults), and a healthy one is to be judged';
}

/** Why no figure of a run may be used: the integration failed, or the energy balance does not close; null: they may be used. */
export function whyUnusable({ status, ledger }: RunResult): string | null {
  if (status.code === 'nonFiniteValue' || status.code === 'stepLimit') return status.message;
  return ledger.residual <= LARGEST_RESIDUAL ? null : 'the energy balance of the run does not close';
}

function badEnd({ status, operations }: RunResult): readonly string[] {
  switch (status.code) {
    case 'lineToLineShortCircuit':
    case 'overspeed':
      return [status.message];
    case 'notSettled':
      return operations.reversal === null ? [] : [status.message];
    case 'switchNeverOpened': // a criterion of its own
    case 'finished':
    case 'endTimeReached':
    case 'nonFiniteValue':
    case 'stepLimit':
      return [];
    default:
      return status.code satisfies never;
  }
}

function refusal({ trajectory }: RunResult): string {
  const refused = trajectory.events.find(({ kind }) => kind === 'plugRefused');
  return refused === undefined ? '' : `: the plug command came to nothing, ${refused.text}`;
}

function controlReasons(result: RunResult): readonly string[] {
  const tested = result.scenario.actions.some(
    (action) => 'button' in action && action.button === 'overloadTest',
  );
  return result.controlFindings.flatMap((finding) => {
    if (finding.kind === 'overloadTrips' && tested) return [];
    const words = findingWords(finding);
    return words === null ? [] : [words];
  });
}

/** Null: a criterion tells it. */
function findingWords(finding: ControlFinding): string | null {
  const at = (t: number) => `at ${Number(t.toFixed(3))} s`;
  switch (finding.kind) {
    case 'runsUpInReverse':
    case 'doesNotStop':
    case 'stillRuns':
    case 'limitEndsBraking':
      return null;
    case 'startsByItself':
      return `the ${finding.contactor} contactor goes in by itself ${at(finding.t)}`;
    case 'notBraked':
      return `the stop ${at(finding.t)} does not brake`;
    case 'voltageDrops':
      return `the dip of the control voltage drops the ${finding.contactor} contactor ${at(finding.t)}`;
    case 'heldByInterlock':
      return `only the mechanical interlock keeps the ${finding.contactor} contactor out ${at(finding.t)}`;
    case 'overloadTrips':
      return `the overload relay trips ${at(finding.t)}`;
    default:
      return finding satisfies never;
  }
}
