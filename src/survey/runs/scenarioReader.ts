import { circuitEstimator } from '../../estimate/estimator.ts';
import { brokenRules, findProblems } from '../../scenario/findProblems.ts';
import type { CircuitEstimator } from '../../scenario/nameplate.ts';
import type { Note } from '../../scenario/origin.ts';
import { readScenario } from '../../scenario/readScenario.ts';
import { readYaml } from '../../scenario/readYaml.ts';
import { type ResolvedMachine, resolveMachine } from '../../scenario/resolveMachine.ts';
import { resolveValues } from '../../scenario/resolveScenario.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { ScenarioError } from '../../scenario/scenarioError.ts';
import type { ScenarioInput } from '../../scenario/scenarioInput.ts';
import { rememberingEstimator } from '../spec/rememberingEstimator.ts';
import type { Survey } from '../spec/survey.ts';
import { fitTogether, sharedSections } from './fitTogether.ts';
import { type InputPlace, inputPlaces } from './inputPlaces.ts';
import { changesOf, withValues } from './withValues.ts';

/** The scenario of a run, and whether its circuit was fitted to a nameplate. */
export interface ReadScenario {
  readonly scenario: Scenario;
  readonly cageIsFitted: boolean;
}

/**
 * Makes the scenario of one run after another: the same, to the last bit, as `parseScenario` makes of the text that `scenarioOfRun` gives.
 *
 * Reading a whole file takes as long as simulating it. Where a field's value arrives in the valid input as one number and nothing else
 * changes with it, the number is put there, and only what the values may break together is checked again; otherwise everything is read anew.
 *
 * @throws ScenarioError when the base scenario cannot be used; the reader throws it when the values of a run cannot
 */
export function scenarioReader(survey: Survey): (values: readonly number[]) => ReadScenario {
  const { fields, base } = survey;
  const data = readYaml(base.text).data?.value;
  const places = inputPlaces(data, fields);
  const options = { fileName: base.fileName };
  const estimator = rememberingEstimator(circuitEstimator);
  const whole = (values: readonly number[]): ReadScenario => {
    const changed = withValues(data, changesOf(fields, values));
    const { scenario, estimation } = readScenario(changed, options, estimator);
    return { scenario, cageIsFitted: estimation !== null };
  };
  // Says what is wrong with the base scenario itself.
  readScenario(base.text, options, estimator);
  if (places === null) return whole;

  const machineOf = rememberedMachine(estimator);
  const shared = sharedSections(fields);
  let before: { readonly data: unknown; readonly input: ScenarioInput } | null = null;
  return (values) => {
    // The first run reads everything: what is stated is the same in all.
    before ??= firstReading(withValues(data, changesOf(fields, values)));
    if (before === null) return whole(values);
    const input = places.reduce<ScenarioInput>(
      (changed, place, i) => put(changed, place, values[i]!),
      before.input,
    );
    const isValid =
      places.every(({ allowed }, i) => allowed(values[i]!)) &&
      brokenRules(input, before.data).length === 0 &&
      (shared.length === 0 || fitTogether(shared, withValues(data, changesOf(fields, values))));
    if (!isValid) return whole(values);
    try {
      const { scenario, estimation } = resolveValues(input, () => noNote, machineOf);
      return { scenario, cageIsFitted: estimation !== null };
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      // Says the same with the name of the file.
      return whole(values);
    }
  };
}

/** Input that later runs are made from; null where it is not valid. */
function firstReading(data: unknown): { readonly data: unknown; readonly input: ScenarioInput } | null {
  const found = findProblems(data);
  return 'input' in found ? { data, input: found.input } : null;
}

const noNote: Note = () => {};

/** Fills in a machine, and gives the same object again as long as nothing about machine and supply changes. */
function rememberedMachine(
  estimator: CircuitEstimator,
): (machine: ScenarioInput['machine'], supply: ScenarioInput['supply']) => ResolvedMachine {
  let known: {
    readonly machine: ScenarioInput['machine'];
    readonly supply: ScenarioInput['supply'];
    readonly resolved: ResolvedMachine;
  } | null = null;
  return (machine, supply) => {
    const isKnown =
      known?.machine === machine &&
      known.supply.lineVoltage === supply.lineVoltage &&
      known.supply.frequency === supply.frequency;
    if (!isKnown) known = { machine, supply, resolved: resolveMachine(machine, supply, noNote, estimator) };
    return known!.resolved;
  };
}

/** Immutable: what the path does not touch is shared. */
function put<T>(node: T, { steps, read }: InputPlace, value: number): T {
  const go = (at: unknown, depth: number): unknown => {
    if (depth === steps.length) return read(value);
    const step = steps[depth]!;
    if (Array.isArray(at)) return at.with(Number(step), go(at[Number(step)], depth + 1));
    return { ...(at as object), [step]: go((at as Record<string, unknown>)[step], depth + 1) };
  };
  return go(node, 0) as T;
}
