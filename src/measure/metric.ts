import type { PhaseName } from '../scenario/scenario.ts';

/** A named number, with what is needed to believe it. SI units. */
export interface Metric {
  /** SI; null when the run does not contain what is measured (then `missing` says why). */
  readonly value: number | null;
  /** SI unit symbol: 'A', 'N·m', 's', 'A²·s', '1' for a ratio, … */
  readonly unit: string;
  /** What is measured, in words, with no symbol left unexplained. */
  readonly definition: string;
  /** Time of occurrence, s. */
  readonly time?: number;
  readonly phase?: PhaseName;
  /** The value as a multiple of a stated base: `value` times what `of` says. */
  readonly multiple?: { readonly value: number; readonly of: string };
  /** Why there is no value, in words; absent where there is one. */
  readonly missing?: string;
}

/** Every metric of a run; those it does not contain have the value null. */
export type Metrics = Readonly<Record<MetricKey, Metric>>;

/** Order is the order of presentation. */
export const METRIC_KEYS = [
  // starting
  'startPeakCurrent',
  'startWorstCycleCurrent',
  'startMaximumTorque',
  'startMinimumTorque',
  'startCouplingTorque',
  'startVoltageDip',
  'startTime',
  'startI2tA',
  'startI2tB',
  'startI2tC',
  'startStatorHeat',
  'startRotorHeat',
  'startRotorHeatMultiple',
  // changing over
  'commandToTouch',
  'partingToTouch',
  'extinctionToTouch',
  'arcMargin',
  'residualVoltage',
  'residualAngle',
  'supplyAngleAtTouch',
  // plugging
  'plugPeakCurrent',
  'plugWorstCycleCurrent',
  'plugMinimumTorque',
  'plugMaximumTorque',
  'plugCouplingTorque',
  'plugVoltageDip',
  'stopTimeFromParting',
  'stopTimeFromTouch',
  'stopRevolutions',
  'plugI2tA',
  'plugI2tB',
  'plugI2tC',
  'plugStatorHeat',
  'plugRotorHeat',
  'plugRotorHeatMultiple',
  'plugToStartHeatRatio',
  'plugLineResistorHeat',
  'plugRotorResistorHeat',
  // after the stop
  'switchOpeningTime',
  'switchOpeningSpeed',
  'creepSpeed',
  'creepRevolutions',
  'reversalTime',
  'reversalRotorHeat',
  'reversalRotorHeatMultiple',
  'reversalToStartHeatRatio',
  // supply and shaft
  'lowestTerminalVoltage',
  'torsionalFrequency',
  // poles of the contactor that ran, then of the contactor that plugged
  'runPoleAPartingCurrent',
  'runPoleBPartingCurrent',
  'runPoleCPartingCurrent',
  'runPoleAClearingTime',
  'runPoleBClearingTime',
  'runPoleCClearingTime',
  'runPoleAArcCharge',
  'runPoleBArcCharge',
  'runPoleCArcCharge',
  'plugPoleAPartingCurrent',
  'plugPoleBPartingCurrent',
  'plugPoleCPartingCurrent',
  'plugPoleAClearingTime',
  'plugPoleBClearingTime',
  'plugPoleCClearingTime',
  'plugPoleAArcCharge',
  'plugPoleBArcCharge',
  'plugPoleCArcCharge',
  // check
  'ledgerResidual',
] as const;

/** Name of a metric. */
export type MetricKey = (typeof METRIC_KEYS)[number];
