/** What is read on the bench or worked out from readings. SI. */
export interface Quantity {
  readonly unit: string;
  /** Accuracy of reading it: a share of the value, and a part that does not depend on it, in the unit. Common practice, no source. */
  readonly share: number;
  readonly absolute: number;
  /** What the accuracy is that of. */
  readonly instrument: string;
}

const CLAMP = { share: 0.02, absolute: 0.02, instrument: 'r.m.s. ammeter or clamp' } as const;
const RECORDER = { share: 0.03, absolute: 0.05, instrument: 'current channel of the recorder' } as const;
const WATTMETER = { share: 0.02, absolute: 1, instrument: 'power meter' } as const;
const STOPWATCH = { share: 0, absolute: 0.3, instrument: 'stopwatch in the hand' } as const;
const TRACE = { share: 0.01, absolute: 0.005, instrument: 'time read from the recorded trace' } as const;
/** Heat from a recorded speed: torque from its slope, times slip speed, added up. */
const FROM_SPEED = 0.06;

/**
 * Quantities and how well they can be read. A current that is set while something else is read enters with its own accuracy: once in a
 * voltage, twice in a power.
 */
export const QUANTITIES = {
  terminalResistance: {
    unit: 'Ω',
    share: 0.01,
    absolute: 0.005,
    instrument: 'resistance meter with four leads',
  },
  noLoadCurrent: { unit: 'A', ...CLAMP },
  noLoadPower: { unit: 'W', ...WATTMETER },
  noLoadSpeed: { unit: 'rad/s', share: 0.001, absolute: 0.1, instrument: 'tachometer' },
  lockedRotorVoltage: { unit: 'V', share: 0.03, absolute: 0.5, instrument: 'voltmeter, and ammeter to set' },
  lockedRotorPower: { unit: 'W', share: 0.06, absolute: 1, instrument: 'power meter, and ammeter to set' },
  runDownTime: { unit: 's', ...STOPWATCH },
  halfSpeedTime: { unit: 's', ...STOPWATCH },
  startTime: { unit: 's', ...TRACE },
  startWorstCycleCurrent: { unit: 'A', ...CLAMP },
  startPeakCurrent: { unit: 'A', ...RECORDER },
  plugPeakCurrent: { unit: 'A', ...RECORDER },
  partingToTouch: { unit: 's', share: 0, absolute: 0.0005, instrument: 'time read from the recorded trace' },
  stopTimeFromTouch: { unit: 's', ...TRACE },
  stopRevolutions: { unit: '1', share: 0, absolute: 0.25, instrument: 'turns counted on the trace' },
  creepAngle: { unit: 'rad', share: 0.02, absolute: 0.17, instrument: 'mark on the flywheel' },
  reversalTime: { unit: 's', ...TRACE },
  // Not read: for the limits of the shaft.
  startShaftTorque: { unit: 'N·m', share: 0, absolute: 0, instrument: 'none' },
  plugShaftTorque: { unit: 'N·m', share: 0, absolute: 0, instrument: 'none' },
  shortCircuitResistance: { unit: 'Ω', share: 0.06, absolute: 0, instrument: 'readings it is made of' },
  shortCircuitReactance: { unit: 'Ω', share: 0.06, absolute: 0, instrument: 'readings it is made of' },
  noLoadReactance: { unit: 'Ω', share: 0.03, absolute: 0, instrument: 'readings it is made of' },
  meanFriction: { unit: 'N·m', share: 0.05, absolute: 0, instrument: 'readings it is made of' },
  stopToStartTime: { unit: '1', share: 0.02, absolute: 0, instrument: 'readings it is made of' },
  reversalToStartTime: { unit: '1', share: 0.02, absolute: 0, instrument: 'readings it is made of' },
  startHeatMultiple: { unit: '1', share: FROM_SPEED, absolute: 0, instrument: 'sum over the recorded speed' },
  plugHeatMultiple: { unit: '1', share: FROM_SPEED, absolute: 0, instrument: 'sum over the recorded speed' },
  reversalHeatMultiple: {
    unit: '1',
    share: FROM_SPEED,
    absolute: 0,
    instrument: 'sum over the recorded speed',
  },
} as const satisfies Readonly<Record<string, Quantity>>;

/** Name of a quantity. */
export type QuantityKey = keyof typeof QUANTITIES;

/** Quantities of one set at one closing instant; one that does not occur is absent. SI. */
export type Quantities = Partial<Readonly<Record<QuantityKey, number>>>;

/** All names in the order of the work. */
export const QUANTITY_KEYS: readonly QuantityKey[] = keysOf(QUANTITIES);

function keysOf<K extends string>(record: Readonly<Record<K, unknown>>): readonly K[] {
  const keys: K[] = [];
  for (const key in record) keys.push(key);
  return keys;
}
