import { decadeBelow } from '../../numeric/decadeBelow.ts';
import type { QuantityKey } from './quantities.ts';
import type { Range } from './ranges.ts';

/** An instrument and what it must reach. SI. */
export interface Instrument {
  readonly words: string;
  /** What its range has to cover; empty: nothing to choose. */
  readonly reaches: readonly {
    /** The quantity, in words. */
    readonly words: string;
    /** What the range must reach, in the SI unit `unit`. */
    readonly value: number;
    /** SI unit symbol. */
    readonly unit: string;
  }[];
}

/** Reserve above the highest reading, so that a crest is not cut off. Common practice, no source. */
const RESERVE = 1.25;
/** The same for crests: leakage that saturates raises them by some tens of per cent, which is to be seen. Common practice, no source. */
const CREST_RESERVE = 1.6;
/** Steps of usual ranges. They also keep a range from telling what is to be predicted. */
const STEPS = [1, 2, 5, 10];
/** Samples of a crest that a recorder should take in a quarter of a period, and its time before the command, s. Common practice, no source. */
const SAMPLES_PER_QUARTER = 25;
const BEFORE_COMMAND = 0.1;
/** Torque that the clamp must hold, over that of the locked rotor at full voltage. Common practice, no source. */
const HOLDING_RESERVE = 2;

/** What the instruments are chosen by, beside the ranges. */
export interface BenchNumbers {
  /** Line voltage, V; frequency, Hz; rated current, A. */
  readonly lineVoltage: number;
  readonly frequency: number;
  readonly ratedCurrent: number;
  /** Locked rotor at full voltage, N·m. */
  readonly lockedTorque: number;
}

/** The next of 1, 2, 5, 10, … of a decade that is not below a value. */
function usualRange(value: number): number {
  const decade = decadeBelow(value);
  return (STEPS.find((step) => step * decade >= value) ?? 10) * decade;
}

/** The instruments of the procedure, with ranges worked out from the predictions. */
export function instrumentsFor(
  ranges: ReadonlyMap<QuantityKey, Range>,
  { lineVoltage, frequency, ratedCurrent, lockedTorque }: BenchNumbers,
): readonly Instrument[] {
  const high = (...keys: QuantityKey[]) =>
    Math.max(0, ...keys.map((key) => Math.max(ranges.get(key)?.high ?? 0, -(ranges.get(key)?.low ?? 0))));
  const reach = (words: string, value: number, unit: string, reserve = RESERVE) =>
    value > 0 ? [{ words, value: usualRange(reserve * value), unit }] : [];
  const longest = high('reversalTime', 'stopTimeFromTouch', 'startTime');
  return [
    {
      words: 'resistance meter with four leads',
      reaches: reach('range', high('terminalResistance'), 'Ω'),
    },
    {
      words: 'three-phase power meter with voltage and current, true r.m.s.',
      reaches: [
        ...reach('voltage', lineVoltage, 'V'),
        ...reach('current', Math.max(high('noLoadCurrent'), ratedCurrent), 'A'),
        ...reach('power', high('noLoadPower', 'lockedRotorPower'), 'W'),
      ],
    },
    {
      words: 'recorder with three current probes that pass direct current, and a channel for speed',
      reaches: [
        ...reach('current, crest', high('startPeakCurrent', 'plugPeakCurrent'), 'A', CREST_RESERVE),
        {
          words: 'sampling, at least',
          value: 4 * SAMPLES_PER_QUARTER * frequency,
          unit: '1/s',
        },
        ...(longest > 0
          ? [{ words: 'record length, at least', value: longest + BEFORE_COMMAND, unit: 's' }]
          : []),
      ],
    },
    {
      words: 'clamp meter with an inrush function',
      reaches: reach('r.m.s. of one period', high('startWorstCycleCurrent'), 'A'),
    },
    { words: 'tachometer or pulse pick-up', reaches: reach('speed', high('noLoadSpeed'), 'rad/s') },
    {
      words: 'variable-voltage transformer, three-phase, for the locked rotor',
      reaches: [...reach('voltage', high('lockedRotorVoltage'), 'V'), ...reach('current', ratedCurrent, 'A')],
    },
    {
      words: 'mechanical clamp for the shaft',
      reaches: [{ words: 'holds, at least', value: HOLDING_RESERVE * lockedTorque, unit: 'N·m' }],
    },
    { words: 'stopwatch; a mark on the flywheel that shows through the guard', reaches: [] },
  ];
}
