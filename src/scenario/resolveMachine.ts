import type { CircuitEstimator, CircuitPart, Estimation, Nameplate } from './nameplate.ts';
import type { Note, Origin } from './origin.ts';
import { withTemperature } from './resistanceTemperature.ts';
import { type Referral, ratedOf, referralOf, resolveCircuit } from './resolveCircuit.ts';
import { resolveLosses } from './resolveLosses.ts';
import { resolveNameplate, resolveTests, type SupplyRating } from './resolveNameplate.ts';
import { resolveRotorResistors } from './resolveRotorResistors.ts';
import { resolveSaturation } from './resolveSaturation.ts';
import type { MachineData } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import { stated } from './stated.ts';

/** A machine, and how its circuit was found. */
export interface ResolvedMachine {
  readonly machine: MachineData;
  readonly estimation: Estimation | null;
  readonly nameplate: Nameplate | null;
  /** What the estimator says of its quantities, by paths within the machine section. */
  readonly found: readonly Origin[];
}

/** A circuit with the rating it holds at, before the elements a scenario adds to it. */
export interface RatedCircuit {
  readonly part: CircuitPart;
  readonly poles: number;
  readonly rating: SupplyRating;
}

/**
 * Fills in the machine: its circuit as stated, or found from a nameplate or tests, then what saturation, losses,
 * temperature and slip rings add.
 *
 * @param input machine as stated, in SI
 * @param supply V and Hz; rated values where the machine states none
 * @param note takes down what was not given
 * @param estimator finds a circuit from a nameplate or tests
 * @throws ScenarioError where the values contradict each other once the circuit is known
 */
export function resolveMachine(
  input: ScenarioInput['machine'],
  supply: SupplyRating,
  note: Note,
  estimator: CircuitEstimator,
): ResolvedMachine {
  if (input.connection === undefined) note('connection', 'star', 'default');
  const connection = input.connection ?? 'star';
  const { circuit, referral, estimation, nameplate, found } = findCircuit(input, supply, note, estimator);
  const { part, poles } = circuit;
  const warm = withTemperature(input.temperature, part, note);
  const tempered = { ...circuit, part: warm };
  const { Rs, Lls, Lm, cages, inertia, rated } = warm;
  return {
    machine: {
      connection,
      polePairs: poles / 2,
      Rs,
      Lls,
      Lm,
      cages,
      inertia,
      rated,
      ...resolveSaturation(input.saturation, tempered, note),
      ...resolveLosses(input, tempered, referral, note),
      ...(input.rotorResistors === undefined
        ? {}
        : { rotorResistors: resolveRotorResistors(input.rotorResistors, cages.length, note) }),
    },
    estimation: estimation === null ? null : withRemark(estimation, input),
    nameplate,
    found,
  };
}

/** Elements whose statement changes a circuit after it was fitted. */
const CHANGING = ['temperature', 'saturation', 'ironLoss', 'mechanicalLoss'] as const;

/** The items of an estimation hold for the circuit as it was found; a reader must know where the scenario departs from it. */
function withRemark(estimation: Estimation, input: ScenarioInput['machine']): Estimation {
  const stated = CHANGING.filter((key) => input[key] !== undefined);
  if (stated.length === 0) return estimation;
  const remark = `The scenario states ${stated.join(', ')}, which changes the circuit that was found: the items and errors are those before that change, and the circuit that runs departs from them.`;
  return { ...estimation, changedBy: stated, remarks: [remark, ...estimation.remarks] };
}

interface FoundCircuit extends Omit<ResolvedMachine, 'machine'> {
  readonly circuit: RatedCircuit;
  readonly referral: Referral;
}

function findCircuit(
  input: ScenarioInput['machine'],
  supply: SupplyRating,
  note: Note,
  estimator: CircuitEstimator,
): FoundCircuit {
  // The circuit an estimator gives is the equivalent star's, and so is what else is stated beside it.
  const asStar = { ...input, circuitGivenAs: 'equivalentStar' as const };
  if (input.nameplate !== undefined) {
    const nameplate = resolveNameplate(input, input.nameplate, supply, note);
    const { circuit: part, estimation, notes } = estimator.fromNameplate(nameplate);
    const { lineVoltage, frequency, poles } = nameplate;
    const referral = referralOf(asStar, 2 * Math.PI * frequency, note);
    const circuit = { part, poles, rating: { lineVoltage, frequency } };
    return { circuit, referral, estimation, nameplate, found: notes };
  }
  if (input.tests !== undefined) {
    const readings = resolveTests(input, input.tests, supply, note);
    const { circuit: estimated, estimation, notes } = estimator.fromTests(readings);
    const { lineVoltage, frequency, poles } = readings;
    const referral = referralOf(asStar, 2 * Math.PI * frequency, note);
    // No test says anything of the rated output; what is stated of it stands beside the tests.
    const part = { ...estimated, rated: ratedOf(input) };
    const circuit = { part, poles, rating: { lineVoltage, frequency } };
    return { circuit, referral, estimation, nameplate: null, found: notes };
  }
  if (input.connection === 'delta' && input.circuitGivenAs === undefined)
    note('circuitGivenAs', 'winding', 'default');
  if (input.ratedFrequency === undefined) note('ratedFrequency', `${supply.frequency} Hz`, 'default');
  const frequency = input.ratedFrequency ?? supply.frequency;
  const referral = referralOf(input, 2 * Math.PI * frequency, note);
  // At another frequency the voltage of equal flux: the machine works on this supply as at its rating.
  const rating = { lineVoltage: supply.lineVoltage * (frequency / supply.frequency), frequency };
  const circuit = { part: resolveCircuit(input, referral), poles: stated(input.poles, 'poles'), rating };
  return { circuit, referral, estimation: null, nameplate: null, found: [] };
}
