import type { RunResult } from '../../measure/result.ts';
import { shaftOf } from '../../shaft/shaft.ts';
import type { Trajectory } from '../../simulate/trajectory.ts';
import type { Bench } from './bench.ts';
import type { QuantityKey } from './quantities.ts';
import type { Range } from './ranges.ts';
import { STEP_PLANS, type StepPlan } from './steps.ts';
import { pullsOneWay } from './suitable.ts';

/** Longest run-down that a class waits for, s. Common practice, no source. */
const LONGEST_RUN_DOWN = 3600;

type Ranges = ReadonlyMap<QuantityKey, Range>;

/** What a class can read and use, of all that a set shows. */
export function readable(ranges: Ranges, { scenario }: Pick<Bench, 'scenario'>): Ranges {
  const dropped: readonly QuantityKey[] = [
    ...(isLong(ranges) ? (['runDownTime', 'halfSpeedTime', 'meanFriction'] as const) : []),
    // Friction alone is what it is meant for.
    ...(pullsOneWay(shaftOf(scenario)) ? (['meanFriction'] as const) : []),
  ];
  return new Map([...ranges].filter(([key]) => !dropped.includes(key)));
}

/** Null where nothing stands against a step. */
export function whyWithout(
  { key }: Pick<StepPlan, 'key'>,
  result: RunResult,
  { plugs, scenario }: Bench,
  ranges: Ranges,
): string | null {
  const switched = key === 'plugStop' || key === 'creep';
  if (!plugs && (switched || key === 'reversal')) return whyNothingPlugs(result, ranges);
  if (switched && scenario.starter.zeroSpeedSwitch === null) return NO_SWITCH;
  return null;
}

const WITHOUT = 'so that plug stop, late switch and reversal are left out';
const NO_SWITCH =
  'The starter has no zero-speed switch: a plug stop would run on into the other direction, so that plug stop and late switch are left out and what concerns the stop is read in the reversal.';

/** The run itself neither plugs nor reverses a turning set. */
function whyNothingPlugs({ trajectory }: RunResult, ranges: Ranges): string {
  const before = beforePlug(trajectory);
  if (before === null)
    return `The scenario plugs and reverses nothing, ${WITHOUT}; an action \`do: plug\` after the start brings them in.`;
  if (!ranges.has('startTime'))
    return `The set does not come up to speed: there is nothing to plug or to reverse, ${WITHOUT}.`;
  return before === 'started'
    ? `The scenario plugs or reverses before the set is up to speed, ${WITHOUT}; a later plug brings them in.`
    : `The scenario plugs or reverses only after the set was switched off, ${WITHOUT}; a plug while it runs brings them in.`;
}

/** What was done last before the first command after a start that should oppose rotation; null: there is no such command. */
function beforePlug({ commands }: Trajectory): 'started' | 'switchedOff' | null {
  const first = commands.findIndex(({ do: kind }) => kind === 'startForward' || kind === 'startReverse');
  if (first < 0) return null;
  const start = commands[first]!.do;
  const later = commands.slice(first + 1);
  const opposing = later.findIndex(
    ({ do: kind }) =>
      kind === 'plug' || (kind !== start && (kind === 'startForward' || kind === 'startReverse')),
  );
  if (opposing < 0) return null;
  const last = opposing === 0 ? start : later[opposing - 1]!.do;
  return last === 'coast' || last === 'brake' || last === 'injectDc' ? 'switchedOff' : 'started';
}

function isLong(ranges: Ranges): boolean {
  return (ranges.get('runDownTime')?.predicted ?? 0) > LONGEST_RUN_DOWN;
}

/** What the sheet cannot say, with the reason. */
export function leftOut(
  result: RunResult,
  bench: Bench,
  ranges: Ranges,
  cageIsFitted: boolean,
): readonly string[] {
  const { scenario, usable } = result;
  const steps = STEP_PLANS.map((plan) => whyWithout(plan, result, bench, ranges));
  const notThere = (key: QuantityKey, why: string) => (ranges.has(key) ? [] : [why]);
  return [
    ...new Set(steps.flatMap((why) => why ?? [])),
    ...(scenario.machine.core === undefined
      ? [
          'The circuit has no iron loss (machine.ironLoss), so that the power running light is not predicted: a meter shows copper, friction and iron together.',
        ]
      : []),
    ...notThere(
      'noLoadCurrent',
      'The motor cannot drive this load at any steady speed: running light and run-down are left out.',
    ),
    ...(ranges.has('noLoadCurrent')
      ? notThere(
          'runDownTime',
          'No dry friction brings the set to rest, so that the run-down has no end to be timed.',
        )
      : []),
    ...(isLong(ranges)
      ? ['The run-down to standstill takes longer than an hour: no step for a class, so that it is left out.']
      : []),
    ...(pullsOneWay(shaftOf(bench.scenario)) && ranges.has('runDownTime')
      ? [
          'The load pulls one way, as a weight does, and friction holds it: a run-down gives friction and weight together, so that no friction torque is worked out of it.',
        ]
      : []),
    ...notThere(
      'lockedRotorVoltage',
      'The rated current is above that of the locked rotor at full voltage: the locked-rotor test is left out.',
    ),
    ...notThere('startTime', 'The start does not come up to speed, so that its time and heat are left out.'),
    ...(cageIsFitted
      ? [
          'The circuit was fitted to a nameplate: many circuits fit it as well, so that expect readings farther off than these ranges. `motor` shows what was assumed.',
        ]
      : []),
    ...(usable
      ? []
      : ['The run of the scenario itself does not end well; the pause cannot be worked out from it.']),
  ];
}
