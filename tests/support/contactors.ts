import type { MeanBreaking, MeanDuties, MeanMaking } from '../../src/measure/meanDuties.ts';
import type { ContactorData, ContactorsData, DutyData } from '../../src/scenario/scenario.ts';

/** Nothing is stated but a rated current of 10 A at 400 V. */
export const BARE_CONTACTOR: ContactorData = {
  ratedVoltage: 400,
  ratedCurrentAc3: 10,
  ratedCurrentAc4: null,
  lifeAc3: null,
  lifeAc4: null,
  lifeTable: null,
  mechanicalLife: null,
  makingCapacity: null,
  breakingCapacity: null,
  bounceTime: null,
  operationsPerHourAc3: null,
  operationsPerHourAc4: null,
};

/** 10 A in AC-3 with a million operations, 5 A in AC-4 with 100 000. */
export const STATED_CONTACTOR: ContactorData = {
  ...BARE_CONTACTOR,
  ratedCurrentAc4: 5,
  lifeAc3: 1e6,
  lifeAc4: 1e5,
};

/** The same device twice. */
export function pairOf(device: ContactorData, more: Partial<ContactorsData> = {}): ContactorsData {
  return {
    forward: device,
    reverse: device,
    interlockMechanicalLife: null,
    switchMechanicalLife: null,
    ...more,
  };
}

/** Plug stops alone, nothing stated of their number. */
export const PLUGGING_DUTY: DutyData = {
  cycle: 'startPlugStop',
  operationsPerHour: null,
  operationsPerDay: null,
  runningTime: null,
  cyclicDurationFactor: null,
  pluggingShare: 1,
  inchingShare: 0,
  contactsChanged: null,
  operationsSince: null,
};

const PHASES = ['A', 'B', 'C'] as const;

/** A making of three equal poles. */
export function making(
  contactor: 'forward' | 'reverse',
  worstRms: number,
  bounceCharge: number | null = null,
): MeanMaking {
  const pole = { meanCrest: worstRms, worstCrest: 2 * worstRms, meanRms: worstRms, worstRms };
  return {
    kind: 'making',
    contactor,
    occurrence: 1,
    command: contactor === 'forward' ? 'startForward' : 'plug',
    runs: 1,
    poles: PHASES.map((phase) => ({ phase, ...pole, meanBounceCharge: bounceCharge })),
  };
}

/** A breaking of three equal poles by a plug; current is the equivalent one, A r.m.s. */
export function breaking(
  contactor: 'forward' | 'reverse',
  current: number | null,
  recoveryVoltage: number,
  charges: readonly [number, number, number] = [0.1, 0.1, 0.1],
): MeanBreaking {
  const crest = Math.SQRT2 * (current ?? 0);
  return {
    kind: 'breaking',
    contactor,
    occurrence: 1,
    command: 'plug',
    runs: 1,
    poles: PHASES.map((phase, k) => ({
      phase,
      meanCurrent: crest / 2,
      worstCurrent: crest,
      meanArcCharge: charges[k]!,
      worstArcCharge: charges[k]!,
    })),
    meanArcCharge: charges[0] + charges[1] + charges[2],
    equivalentCurrent: current,
    meanRecoveryVoltage: recoveryVoltage,
  };
}

/** A start and a plug stop: the running current is 10 A against 68 V, the plugging contactor breaks 30 A against 400 V. */
export const START_AND_PLUG: MeanDuties = {
  driving: 'forward',
  makings: [making('forward', 50), making('reverse', 70)],
  breakings: [breaking('forward', 10, 68), breaking('reverse', 30, 400)],
};
