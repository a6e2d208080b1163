import type { Criterion } from '../../assess/criterion.ts';
import type { RunResult } from '../../measure/result.ts';
import { decadeBelow } from '../../numeric/decadeBelow.ts';
import { squared } from '../../numeric/raised.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { synchronousSpeed } from '../../scenario/synchronousSpeed.ts';
import { type CommandedRun, commandedRun, stoppedBy } from '../alternatives/commandedRun.ts';
import { type Boundary, type BoundaryQuestion, boundary, onset, type Trial } from './boundary.ts';
import { EXTREME_NAMES, type Extreme, type ExtremeName } from './extreme.ts';

/** Judges a scenario that has been changed, or a run whose duty has been changed. */
export interface Judge {
  /** Criteria and run of a scenario, simulated anew. */
  readonly scenario: (scenario: Scenario) => Judged;
  /** Criteria of a run whose scenario differs in its duty alone. */
  readonly run: (result: RunResult) => Judged;
}

/** What a judge says. */
export interface Judged {
  readonly result: RunResult;
  readonly criteria: readonly Criterion[];
  /** What speaks against plugging beside the criteria: how the run ended. */
  readonly against: readonly string[];
}

/** How fine the boundaries are found: 1 %, finer than what is known of any load. */
const WIDTH = 0.01;
const FINE_WIDTH = 1e-4;
/** Reverse rotation below this is none, revolutions. */
const NO_CREEP = 1e-3;
/** A larger inertia gets so much more time to start than its share, because friction takes its part. */
const TIME_TO_START = 1.3;

/** How far each quantity may be changed, everything else as it is, until a criterion fails. */
export function extremes(result: RunResult, judge: Judge): readonly Extreme[] {
  return EXTREME_NAMES.map((name) => extreme(name, result, judge));
}

/** The smallest line resistor with which plugging passes, Ω; null: none does, or none is needed. */
export function smallestResistor(result: RunResult, judge: Judge): number | null {
  const found = extreme('smallestResistor', result, judge).boundary;
  if (found === null || found.value === null) return null;
  // Rounded up to what is printed, so that the printed value passes too.
  const digit = decadeBelow(found.value) / 100;
  return Number((Math.ceil(found.value / digit) * digit).toPrecision(3));
}

/** One inverse question. */
export function extreme(name: ExtremeName, result: RunResult, judge: Judge): Extreme {
  const run = commandedRun(result);
  const done = run === null ? undefined : result.trajectory.commands.find(({ at }) => at === run.command)?.do;
  if (run === null || done === undefined || !(done === 'plug' || done.startsWith('start')))
    return lacking(name, null, 'no plug or reversal takes place in this run');
  const { scenario } = result;
  switch (name) {
    case 'largestInertia': {
      const present = scenario.load.inertia;
      const unit = present > 0 ? present : scenario.machine.inertia;
      const trial = (inertia: number) => trialOf(judge.scenario(withInertia(run, done, inertia)));
      return answer(name, present, ask({ from: unit / 8, to: unit * 128, steps: 10 }, trial));
    }
    case 'mostOperations': {
      const { duty } = scenario;
      if (duty === undefined) return lacking(name, null, 'the duty is missing');
      const trial = (operationsPerHour: number) =>
        trialOf(judge.run({ ...result, scenario: { ...scenario, duty: { ...duty, operationsPerHour } } }));
      // No run is made for it, so that it can be found as finely as it is shown.
      const question = { from: 0.1, to: 3600, steps: 15, width: FINE_WIDTH };
      return answer(name, duty.operationsPerHour, boundary(question, trial));
    }
    case 'smallestResistor': {
      const { lineResistors, closingTime, openingTime } = run.scenario.starter;
      const present = lineResistors?.resistance ?? 0;
      const trial = (resistance: number) =>
        trialOf(
          judge.scenario(
            stoppedBy(run, done, {
              lineResistors: {
                ...(lineResistors ?? { closingTime, openingTime, bypassAfter: null }),
                resistance,
              },
            }),
          ),
        );
      if (trial(0).passes) return lacking(name, present, 'none is needed: plugging passes without');
      const impedance = scenario.supply.lineVoltage / Math.sqrt(3) / result.rated.current;
      return answer(
        name,
        present,
        onset({ from: impedance / 256, to: impedance, steps: 8, width: WIDTH }, trial),
      );
    }
    case 'shortestDeadTime':
    case 'longestDeadTime': {
      const { closingTime, openingTime, changeoverDelay, poles } = run.scenario.starter;
      const offset = closingTime - openingTime;
      const present = changeoverDelay + offset;
      // The change-over delay cannot be negative: the contactors make no shorter dead time than this.
      const least = Math.max(offset, LEAST_DEAD_TIME);
      const trial = (deadTime: number) =>
        trialOf(
          judge.scenario(stoppedBy(run, done, { changeoverDelay: Math.max(0, deadTime - offset), poles })),
        );
      const from = Math.max(present, least);
      if (name === 'longestDeadTime')
        return answer(name, present, ask({ from, to: LONGEST_DEAD_TIME, steps: 10 }, trial));
      if (from <= least) return lacking(name, present, 'the contactors make no shorter one');
      return answer(name, present, ask({ from, to: least, steps: 10 }, trial));
    }
    case 'dropOutForLeastCreep': {
      const { zeroSpeedSwitch } = scenario.starter;
      if (zeroSpeedSwitch === null) return lacking(name, null, 'the starter has no zero-speed switch');
      const { reverse: _, ...both } = zeroSpeedSwitch;
      const synchronous = synchronousSpeed(scenario.supply.frequency, 2 * scenario.machine.polePairs);
      const trial = (dropOutSpeed: number): Trial => {
        const pickUpSpeed = Math.max(both.pickUpSpeed, dropOutSpeed * PICK_UP_OVER_DROP_OUT);
        const judged = judge.scenario({
          ...scenario,
          starter: { ...scenario.starter, zeroSpeedSwitch: { ...both, dropOutSpeed, pickUpSpeed } },
        });
        const creeps = (judged.result.metrics.creepRevolutions.value ?? 0) > NO_CREEP;
        const { passes, failing } = trialOf(judged);
        return creeps ? { passes: false, failing: ['reverse creep', ...failing] } : { passes, failing };
      };
      return answer(
        name,
        both.dropOutSpeed,
        ask({ from: HIGHEST_DROP_OUT * synchronous, to: LOWEST_DROP_OUT * synchronous, steps: 10 }, trial),
      );
    }
  }
}

/** s; shorter ones are no dead time. */
const LEAST_DEAD_TIME = 1e-4;
/** s; longer ones are a stop and a start. */
const LONGEST_DEAD_TIME = 5;
/** Shares of synchronous speed between which a drop-out speed is looked for; zero-speed switches are adjusted within them. Common practice, no source. */
const HIGHEST_DROP_OUT = 0.4;
const LOWEST_DROP_OUT = 0.003;
/** The pick-up speed follows a drop-out speed that comes too near, by this ratio. Assumed. */
const PICK_UP_OVER_DROP_OUT = 1.5;

function ask(question: Omit<BoundaryQuestion, 'width'>, trial: (value: number) => Trial): Boundary {
  return boundary({ ...question, width: WIDTH }, trial);
}

/** Passing is: nothing fails. What is not judged does not bind. */
function trialOf({ criteria, against }: Judged): Trial {
  const failed = criteria
    .filter(({ outcome }) => outcome === 'fail')
    .toSorted((a, b) => (a.margin ?? 0) - (b.margin ?? 0))
    .map(({ name }) => name);
  const failing = [...against, ...failed];
  return { passes: failing.length === 0, failing };
}

/** The run with another load inertia, and more time to start where it is larger. */
function withInertia(run: CommandedRun, kind: Parameters<typeof stoppedBy>[1], inertia: number): Scenario {
  const { load, machine } = run.scenario;
  const ratio = load.gear?.ratio ?? 1;
  const total = (value: number) => machine.inertia + value / squared(ratio);
  const begin = run.scenario.actions.at(-1)?.at ?? 0;
  const share = Math.max(1, (TIME_TO_START * total(inertia)) / total(load.inertia));
  // Whole periods later, so that the contacts find the same supply angle.
  const { frequency } = run.scenario.supply;
  const more = Math.ceil((share - 1) * (run.command - begin) * frequency) / frequency;
  const later = { ...run, command: run.command + more };
  const scenario = stoppedBy(later, kind);
  return { ...scenario, load: { ...load, inertia } };
}

const UNITS: Readonly<Record<ExtremeName, string>> = {
  largestInertia: 'kg·m²',
  mostOperations: '1/h',
  smallestResistor: 'Ω',
  shortestDeadTime: 's',
  longestDeadTime: 's',
  dropOutForLeastCreep: 'rad/s',
};

/** What the question takes as given. */
const REMARKS: Readonly<Partial<Record<ExtremeName, string>>> = {
  largestInertia: 'the load torque stays; the start gets the time it needs',
  shortestDeadTime: 'operating times of the contactors stay; the delay between the coils changes',
  longestDeadTime: 'operating times of the contactors stay; the delay between the coils changes',
  dropOutForLeastCreep: 'the lowest drop-out speed after which the shaft does not turn back',
};

function answer(name: ExtremeName, present: number | null, found: Boundary): Extreme {
  return { name, unit: UNITS[name], present, boundary: found, missing: null, remark: REMARKS[name] ?? '' };
}

function lacking(name: ExtremeName, present: number | null, missing: string): Extreme {
  return { name, unit: UNITS[name], present, boundary: null, missing, remark: '' };
}
