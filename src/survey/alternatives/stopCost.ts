import { runningOf } from '../../assess/heat/dutyCycle.ts';
import { NO_HEAT, type OperationHeat } from '../../assess/heat/heat.ts';
import { heatOfRun } from '../../assess/heat/heatOfRun.ts';
import {
  type PermissibleOperations,
  permissibleOperations,
} from '../../assess/heat/permissibleOperations.ts';
import type { ThermalModel } from '../../assess/heat/thermalNetwork.ts';
import { contactWear } from '../../assess/wear/contactWear.ts';
import type { WearEvent } from '../../assess/wear/contactWearTypes.ts';
import type { MeanDuties } from '../../measure/meanDuties.ts';
import type { RunResult } from '../../measure/result.ts';
import type { StopFigures } from '../../measure/stopFigures.ts';
import type { CycleName, Scenario } from '../../scenario/scenario.ts';
import type { ContactorName } from '../../starter/starter.ts';
import { openingInstants } from '../openingInstants.ts';
import type { StopCost } from './alternative.ts';

/** What the cost of every way of stopping is reckoned with. */
export interface CostBasis {
  /** Null: the motor's temperatures are not judged. */
  readonly model: ThermalModel | null;
  /** Of the operation as it stands, whose start every way of stopping shares. */
  readonly heat: OperationHeat | null;
  readonly cageIsFitted: boolean;
  /** What the contactors make and break as the scenario stands; null: not known. */
  readonly means: MeanDuties | null;
  /** Names of the criteria that fail as the scenario stands. */
  readonly failing: readonly string[];
}

/** What kind of operation a way of stopping makes, for heat and for contacts. */
export type StopKindOfCost = 'plugs' | 'reverses' | 'injects' | 'coasts';

const CYCLES: Readonly<Record<StopKindOfCost, CycleName>> = {
  plugs: 'startPlugStop',
  reverses: 'fullReversal',
  injects: 'startPlugStop',
  coasts: 'startCoast',
};

/** Contactors see direct current and a mechanical brake as coasting. */
const EVENTS: Readonly<Record<StopKindOfCost, WearEvent>> = {
  plugs: 'plugStop',
  reverses: 'reversal',
  injects: 'stop',
  coasts: 'stop',
};

/**
 * How often an hour the motor stands an operation that ends with this stop, and how long contacts last.
 *
 * @param known what its contactors make and break over instants of opening; null: to be found
 */
export function stopCost(
  result: RunResult,
  figures: StopFigures,
  kind: StopKindOfCost,
  basis: CostBasis,
  known: MeanDuties | null,
): StopCost {
  const permissible = permissibleOf(result, figures, kind, basis);
  return {
    operationsPerHour: permissible?.perHour ?? null,
    binding: permissible?.binding ?? null,
    ...contactsOf(result.scenario, EVENTS[kind], known),
  };
}

/** Null: not judged. */
function permissibleOf(
  result: RunResult,
  figures: StopFigures,
  kind: StopKindOfCost,
  basis: CostBasis,
): PermissibleOperations | null {
  const { model } = basis;
  const cycle = CYCLES[kind];
  const running = runningOf(result.scenario.duty, cycle);
  if (model === null || typeof running === 'string') return null;
  if (model.nodes.some(({ limit, limitSource }) => limit === null && limitSource !== '')) return null;
  const heat = kind === 'coasts' ? coastingHeat(basis.heat, figures) : heatOfRun(result, basis.cageIsFitted);
  if (heat === null || typeof heat === 'string') return null;
  return permissibleOperations(model, heat, cycle, running);
}

/** The scenario's start with a stop that takes its time and leaves no heat. */
function coastingHeat(heat: OperationHeat | null, { time }: StopFigures): OperationHeat | null {
  if (heat === null || time === null) return null;
  return {
    start: heat.start,
    running: heat.running,
    stop: { ...NO_HEAT, duration: time },
    stopKind: 'coast',
  };
}

/** Operations until the contacts that wear first are worn, each a start and this stop. */
function contactsOf(
  scenario: Scenario,
  event: WearEvent,
  known: MeanDuties | null,
): Pick<StopCost, 'contactLife' | 'wearsFirst'> {
  const none = { contactLife: null, wearsFirst: null };
  if (scenario.contactors === undefined) return none;
  const means = known ?? openingInstants(scenario).means;
  if (means === null) return none;
  const wear = contactWear(means, scenario.contactors, null, scenario);
  const used = (contactor: ContactorName) => wear[contactor].perEvent[event];
  const forward = used('forward');
  const reverse = used('reverse');
  if (forward === null || reverse === null || Math.max(forward, reverse) === 0) return none;
  return {
    contactLife: 1 / Math.max(forward, reverse),
    wearsFirst: reverse > forward ? 'reverse' : 'forward',
  };
}
