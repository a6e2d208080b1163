import type { MetricKey } from '../measure/metric.ts';

/** How a metric is presented. The definition in words travels with the metric itself. */
export interface MetricLabel {
  readonly key: MetricKey;
  readonly label: string;
  /** Show in milliseconds. */
  readonly milli?: true;
  /** A ratio that is shown in per cent. */
  readonly percent?: true;
  /** Word after the unit: "A crest". */
  readonly suffix?: string;
}

/** Metrics that stand together under one heading. */
export interface MetricGroup {
  readonly title: string;
  readonly rows: readonly MetricLabel[];
}

const PHASES = ['A', 'B', 'C'] as const;

function poleRows(contactor: 'run' | 'plug'): MetricLabel[] {
  return PHASES.flatMap((phase): MetricLabel[] => [
    { key: `${contactor}Pole${phase}PartingCurrent`, label: `Pole ${phase}: current at parting` },
    {
      key: `${contactor}Pole${phase}ClearingTime`,
      label: `Pole ${phase}: parting to extinction`,
      milli: true,
    },
    { key: `${contactor}Pole${phase}ArcCharge`, label: `Pole ${phase}: arc charge` },
  ]);
}

/** All metrics in the order of presentation, in groups; a test checks that none is missing. */
export const METRIC_GROUPS: readonly MetricGroup[] = [
  {
    title: 'Starting',
    rows: [
      { key: 'startPeakCurrent', label: 'Highest phase current', suffix: 'crest' },
      { key: 'startWorstCycleCurrent', label: 'Worst one-cycle current', suffix: 'r.m.s.' },
      { key: 'startMaximumTorque', label: 'Most positive air-gap torque' },
      { key: 'startMinimumTorque', label: 'Most negative air-gap torque' },
      { key: 'startCouplingTorque', label: 'Largest coupling torque' },
      { key: 'startVoltageDip', label: 'Deepest voltage dip at the terminals', percent: true },
      { key: 'startTime', label: 'Run-up time' },
      { key: 'startI2tA', label: 'I²t, phase A' },
      { key: 'startI2tB', label: 'I²t, phase B' },
      { key: 'startI2tC', label: 'I²t, phase C' },
      { key: 'startStatorHeat', label: 'Stator heat' },
      { key: 'startRotorHeat', label: 'Rotor heat' },
      { key: 'startRotorHeatMultiple', label: 'Rotor heat over kinetic energy' },
    ],
  },
  {
    title: 'Changing over',
    rows: [
      { key: 'commandToTouch', label: 'Command to touch', milli: true },
      { key: 'partingToTouch', label: 'Parting to touch', milli: true },
      { key: 'extinctionToTouch', label: 'Last extinction to touch', milli: true },
      { key: 'arcMargin', label: 'Margin against short circuit', milli: true },
      { key: 'residualVoltage', label: 'Residual voltage at touch', suffix: 'pu' },
      { key: 'residualAngle', label: 'Supply ahead of residual EMF' },
      { key: 'supplyAngleAtTouch', label: 'Supply angle at touch' },
    ],
  },
  {
    title: 'Plugging',
    rows: [
      { key: 'plugPeakCurrent', label: 'Highest phase current', suffix: 'crest' },
      { key: 'plugWorstCycleCurrent', label: 'Worst one-cycle current', suffix: 'r.m.s.' },
      { key: 'plugMinimumTorque', label: 'Most negative air-gap torque' },
      { key: 'plugMaximumTorque', label: 'Most positive air-gap torque' },
      { key: 'plugCouplingTorque', label: 'Largest coupling torque' },
      { key: 'plugVoltageDip', label: 'Deepest voltage dip at the terminals', percent: true },
      { key: 'stopTimeFromParting', label: 'Contacts part to zero speed' },
      { key: 'stopTimeFromTouch', label: 'Reverse closing to zero speed' },
      { key: 'stopRevolutions', label: 'Revolutions to stop', suffix: 'rev' },
      { key: 'plugI2tA', label: 'I²t, phase A' },
      { key: 'plugI2tB', label: 'I²t, phase B' },
      { key: 'plugI2tC', label: 'I²t, phase C' },
      { key: 'plugStatorHeat', label: 'Stator heat' },
      { key: 'plugRotorHeat', label: 'Rotor heat' },
      { key: 'plugRotorHeatMultiple', label: 'Rotor heat over kinetic energy' },
      { key: 'plugToStartHeatRatio', label: 'Rotor heat over that of a start' },
      { key: 'plugLineResistorHeat', label: 'Heat in the line resistors' },
      { key: 'plugRotorResistorHeat', label: 'Heat in the slip-ring resistors' },
    ],
  },
  {
    title: 'After the stop',
    rows: [
      { key: 'switchOpeningTime', label: 'Reverse closing to switch opening' },
      { key: 'switchOpeningSpeed', label: 'Speed when the contactor lets go' },
      { key: 'creepSpeed', label: 'Highest reverse speed (creep)' },
      { key: 'creepRevolutions', label: 'Revolutions in reverse (creep)', suffix: 'rev' },
      { key: 'reversalTime', label: 'Full reversal time' },
      { key: 'reversalRotorHeat', label: 'Rotor heat of the reversal' },
      { key: 'reversalRotorHeatMultiple', label: 'Reversal heat over kinetic energy' },
      { key: 'reversalToStartHeatRatio', label: 'Reversal heat over that of a start' },
    ],
  },
  {
    title: 'Supply',
    rows: [{ key: 'lowestTerminalVoltage', label: 'Lowest terminal voltage' }],
  },
  { title: 'Shaft', rows: [{ key: 'torsionalFrequency', label: 'Torsional natural frequency' }] },
  { title: 'Poles of the contactor that ran', rows: poleRows('run') },
  { title: 'Poles of the contactor that plugged', rows: poleRows('plug') },
  { title: 'Check', rows: [{ key: 'ledgerResidual', label: 'Energy ledger residual' }] },
];
