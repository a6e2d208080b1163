import { defaultMaxSteps, defaultRelativeTolerance } from './defaults.ts';
import { INITIAL_STATES } from './initialStates.ts';
import type { CircuitEstimator, Estimation, Nameplate } from './nameplate.ts';
import { givenOrigins, type Note, type Origin } from './origin.ts';
import { resolveActions } from './resolveActions.ts';
import { resolveJudgement } from './resolveJudgement.ts';
import { resolveLoad } from './resolveLoad.ts';
import { type ResolvedMachine, resolveMachine } from './resolveMachine.ts';
import { resolveStarter } from './resolveStarter.ts';
import { resolveSupply } from './resolveSupply.ts';
import type { Scenario, SolverData } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/** A scenario, and where each of its inputs comes from. */
export interface ScenarioWithOrigins {
  readonly scenario: Scenario;
  /** Every input with its value as text and where it comes from, for the inputs table of a report. */
  readonly origins: readonly Origin[];
  /** How the circuit was found; null where it was given. */
  readonly estimation: Estimation | null;
  /** The nameplate as stated, in SI; null where there is none. */
  readonly nameplate: Nameplate | null;
}

/**
 * Turns valid input into a scenario: defaults filled in once, everything SI.
 *
 * @param input valid by definition and rules
 * @param raw the same as it was written, for the wording of given values
 * @param estimator finds a circuit where a nameplate or tests stand in place of one
 * @throws ScenarioError where the values contradict each other once the circuit is known
 */
export function resolveScenario(
  input: ScenarioInput,
  raw: unknown,
  estimator: CircuitEstimator,
): ScenarioWithOrigins {
  const notes: Origin[] = [];
  const noteIn =
    (section: string): Note =>
    (path, value, origin, source) => {
      const own = { path: section === '' ? path : `${section}.${path}`, value, origin };
      notes.push(source === undefined ? own : { ...own, source });
    };
  const { scenario, estimation, nameplate, found } = resolveValues(input, noteIn, (machine, rating) =>
    resolveMachine(machine, rating, noteIn('machine'), estimator),
  );
  const own = [...givenOrigins(raw), ...notes];
  const listed = new Set(own.map(({ path }) => path));
  // What the estimator says of values that were given is known already, in the words of the file.
  const estimated = found
    .map((origin) => ({ ...origin, path: `machine.${origin.path}` }))
    .filter(({ path }) => !listed.has(path));
  const origins = bySection([...own, ...estimated], Object.keys(scenario));
  return { scenario, origins, estimation, nameplate };
}

/**
 * The values alone.
 *
 * @param input valid by definition and rules
 * @param noteIn takes down what was not given, section by section
 * @param machineOf fills in the machine, from the machine as stated and the supply's rating
 * @throws ScenarioError as `resolveScenario` does
 */
export function resolveValues(
  input: ScenarioInput,
  noteIn: (section: string) => Note,
  machineOf: (machine: ScenarioInput['machine'], supply: ScenarioInput['supply']) => ResolvedMachine,
): Omit<ResolvedMachine, 'machine'> & { readonly scenario: Scenario } {
  const supply = resolveSupply(input.supply, noteIn('supply'));
  const { machine, estimation, nameplate, found } = machineOf(input.machine, input.supply);
  const load = resolveLoad(input.load, noteIn('load'));
  const starter = resolveStarter(input.starter ?? {}, machine.rated.current, noteIn('starter'));
  if (input.initial === undefined) noteIn('')('initial', 'rest', 'default');
  const scenario: Scenario = {
    schemaVersion: 1,
    title: input.title,
    description: input.description ?? '',
    supply,
    machine,
    load,
    starter,
    initial: INITIAL_STATES[input.initial ?? 'rest'],
    actions: resolveActions(input.actions),
    solver: resolveSolver(input.solver ?? {}, noteIn('solver')),
    ...resolveJudgement(input, machine.rated.current, noteIn),
  };
  return { scenario, estimation, nameplate, found };
}

function resolveSolver(input: NonNullable<ScenarioInput['solver']>, note: Note): SolverData {
  const filled: SolverData = {
    relativeTolerance: input.relativeTolerance ?? defaultRelativeTolerance,
    endTime: input.endTime ?? 'auto',
    maxSteps: input.maxSteps ?? defaultMaxSteps,
    frame: input.frame ?? 'auto',
  };
  for (const key of ['relativeTolerance', 'endTime', 'maxSteps', 'frame'] as const) {
    if (input[key] === undefined) note(key, String(filled[key]), 'default');
  }
  return filled;
}

/** Section by section; within a section as written, then what was filled in. */
function bySection(origins: readonly Origin[], sections: readonly string[]): Origin[] {
  const rank = ({ path }: Origin) => sections.indexOf(path.split('.')[0] ?? '');
  return origins.toSorted((a, b) => rank(a) - rank(b));
}
