import { quadratureOf } from '../../measure/quadrature.ts';
import type { RunResult } from '../../measure/result.ts';
import type { CycleName } from '../../scenario/scenario.ts';
import { type RelayJudgement, relayJudgement } from '../protection/relayJudgement.ts';
import { type WithstandUse, withstandUse } from '../protection/withstandUse.ts';
import { type AdiabaticRises, adiabaticRises } from './adiabaticRises.ts';
import { CAGE_RULE, cageBodies } from './cageBodies.ts';
import { cyclicDurationFactor, type DutyCycle, dutyCycle, mostPerHour, runningOf } from './dutyCycle.ts';
import { type DutyType, dutyType } from './dutyType.ts';
import { type OperationHeat, totalHeat } from './heat.ts';
import { heatOfWindows } from './heatOfRun.ts';
import { NO_LOAD_STARTS_RULE, noLoadStartsEstimate } from './noLoadStarts.ts';
import { operationsInSuccession } from './operationsInSuccession.ts';
import { operationWindows } from './operationWindows.ts';
import { type PeriodicState, periodicState } from './periodicState.ts';
import { type PermissibleOperations, permissibleOperations } from './permissibleOperations.ts';
import { steadyLosses } from './steadyLosses.ts';
import { thermalModel } from './thermalModel.ts';
import type { ThermalModel } from './thermalNetwork.ts';

/** Everything about heat that a report or a criterion says of a run. Words stand where something is missing. */
export interface Heating {
  /** The duty's cycle; without a duty the one that the run shows. */
  readonly kind: CycleName;
  readonly heat: OperationHeat;
  /** How the heat of a double cage is divided. */
  readonly cageRule: string;
  readonly model: ThermalModel;
  readonly rises: AdiabaticRises;
  readonly dutyType: DutyType;
  /** How often an hour each cycle may be repeated; words where that cannot be said. */
  readonly permissible: Readonly<Record<CycleName, PermissibleOperations | string>>;
  /** From the maker's number of starts without load; null: it is not stated. */
  readonly fromNoLoadStarts: NoLoadStarts | string | null;
  /** The periodic steady state at the duty's number of operations per hour. */
  readonly atDuty: PeriodicState | string;
  /**
   * Number of operations one right after the other until a body passes its limit, from `cold` and from the `warm` motor;
   * Infinity: it never does.
   */
  readonly inSuccession: { readonly cold: number; readonly warm: number } | string;
  readonly withstand: WithstandUse;
  /** What an overload relay does meanwhile; words where that cannot be said. */
  readonly relay: RelayJudgement | string;
}

/** Permissible operations by the maker's number of starts without load. */
export interface NoLoadStarts {
  /** 1/h, of the duty's cycle. */
  readonly perHour: number;
  /** How the number is found, in words. */
  readonly rule: string;
  /** It is smaller than what the thermal model permits, so it counts. */
  readonly governs: boolean;
}

/**
 * Heating and duty of a run.
 *
 * @param cageIsFitted the double cage was fitted to a nameplate
 * @returns words where the run or the scenario lacks what all of it needs
 */
export function heating(result: RunResult, cageIsFitted = false): Heating | string {
  const { scenario, rated } = result;
  const { duty, thermal, machine, supply } = scenario;
  const quadrature = quadratureOf(result.trajectory);
  const windows = operationWindows(result, quadrature);
  if (typeof windows === 'string') return windows;
  const heat = heatOfWindows(scenario, quadrature, windows, cageIsFitted);
  if (typeof heat === 'string') return heat;
  const model = thermalModel(scenario, rated, cageIsFitted);
  if (typeof model === 'string') return model;
  const kind = duty?.cycle ?? KIND_OF_STOP[windows.stopKind];
  const running = runningOf(duty, kind);
  const cycle = cycleAtDuty(result, heat, kind);
  const permissibleOf = (of: CycleName): PermissibleOperations | string => {
    const missing = notShown(heat, of);
    if (missing !== null) return missing;
    const time = runningOf(duty, of);
    if (typeof time === 'string') return time;
    const found = permissibleOperations(model, heat, of, time);
    const remark = of === 'startCoast' && heat.coastTime === undefined ? RUN_DOWN_UNKNOWN : '';
    return { ...found, remark: [found.remark, remark].filter(Boolean).join('; ') };
  };
  const permissible = {
    startCoast: permissibleOf('startCoast'),
    startPlugStop: permissibleOf('startPlugStop'),
    fullReversal: permissibleOf('fullReversal'),
  };
  const z0 = thermal?.noLoadStartsPerHour ?? null;
  const fromNoLoadStarts = (): NoLoadStarts | string | null => {
    if (z0 === null) return null;
    const missing = notShown(heat, kind);
    if (missing !== null) return missing;
    if (typeof running === 'string') return running;
    const bodies = cageBodies(machine, thermal, cageIsFitted);
    const data = {
      noLoadStartsPerHour: z0,
      rotorInertia: machine.inertia,
      synchronousSpeed: (2 * Math.PI * supply.frequency) / machine.polePairs,
      // The model exists, so the rated slip is known.
      ratedLoss: totalHeat(steadyLosses(machine, supply, rated.slip ?? 0, bodies)),
    };
    const perHour = noLoadStartsEstimate(data, heat, kind, running);
    const byModel = permissible[kind];
    return {
      perHour,
      rule: NO_LOAD_STARTS_RULE,
      governs: typeof byModel === 'string' || perHour < byModel.perHour,
    };
  };
  const known = typeof cycle !== 'string';
  return {
    kind,
    heat,
    cageRule: CAGE_RULE,
    model,
    rises: adiabaticRises(model, heat),
    dutyType: dutyType(
      scenario,
      kind,
      known ? cyclicDurationFactor(cycle, kind) : (duty?.cyclicDurationFactor ?? null),
    ),
    permissible,
    fromNoLoadStarts: fromNoLoadStarts(),
    atDuty: known ? periodicState(model, cycle) : cycle,
    inSuccession: notShown(heat, kind) ?? {
      cold: operationsInSuccession(model, heat, 'cold', 0, kind),
      warm: operationsInSuccession(model, heat, 'warm', 0, kind),
    },
    withstand: withstandUse(scenario, quadrature, windows),
    relay: relayJudgement(scenario, quadrature, windows, kind, known ? cycle : null),
  };
}

const RUN_DOWN_UNKNOWN = 'friction does not bring the load to rest, so the time to coast is not counted';

const KIND_OF_STOP = {
  coast: 'startCoast',
  braking: 'startPlugStop',
  reversal: 'fullReversal',
} as const satisfies Record<string, CycleName>;

/** A run that coasts shows no braking; null: the run shows the cycle. */
function notShown(heat: OperationHeat, kind: CycleName): string | null {
  return heat.stopKind === 'coast' && kind !== 'startCoast' ? 'the run shows no braking' : null;
}

/** The cycle of the duty; words where something is missing, or where there is no time for it. */
function cycleAtDuty(
  { scenario: { duty } }: RunResult,
  heat: OperationHeat,
  kind: CycleName,
): DutyCycle | string {
  const missing = notShown(heat, kind);
  if (missing !== null) return missing;
  const perHour = duty?.operationsPerHour ?? null;
  if (perHour === null) return 'the number of operations per hour is missing';
  const running = runningOf(duty, kind);
  if (typeof running === 'string') return running;
  const most = mostPerHour(heat, kind, running);
  if (perHour > most)
    return `an hour has no room for ${perHour} operations, at most for ${most.toPrecision(3)}`;
  return dutyCycle(heat, kind, running, perHour);
}
