import { equallyGoodCircuits } from '../estimate/equallyGoodCircuits.ts';
import { circuitEstimator } from '../estimate/estimator.ts';
import type { MetricKey } from '../measure/metric.ts';
import { simulate } from '../measure/simulate.ts';
import type { CircuitPart, Nameplate } from '../scenario/nameplate.ts';
import type { MachineData, Scenario } from '../scenario/scenario.ts';
import { isSuccessful } from '../simulate/status.ts';

/** Between which values a metric lies over the circuits that a nameplate leaves open. */
export interface PlugBand {
  readonly key: MetricKey;
  /** SI, low ≤ high. */
  readonly low: number;
  /** SI */
  readonly high: number;
  /** The circuit that gave the low end, in words: "locked-rotor current 20 % higher". */
  readonly lowFrom: string;
  /** The circuit that gave the high end, in words. */
  readonly highFrom: string;
}

/** What the nameplate leaves open in the figures of a run. */
export interface PlugBands {
  readonly bands: readonly PlugBand[];
  /** How many circuits were run, the estimated one among them. */
  readonly members: number;
  /** What was varied, in a sentence. */
  readonly sentence: string;
}

/** The band of a metric; undefined where none was computed. */
export function bandOf(bands: PlugBands | null | undefined, key: MetricKey): PlugBand | undefined {
  return bands?.bands.find((band) => band.key === key);
}

/** Figures that decide on plugging. */
export const BAND_KEYS = [
  'startPeakCurrent',
  'startTime',
  'startRotorHeat',
  'plugPeakCurrent',
  'plugWorstCycleCurrent',
  'plugMinimumTorque',
  'plugCouplingTorque',
  'switchOpeningTime',
  'stopTimeFromParting',
  'stopTimeFromTouch',
  'stopRevolutions',
  'plugStatorHeat',
  'plugRotorHeat',
  'plugToStartHeatRatio',
  'reversalTime',
  'reversalRotorHeat',
  'reversalToStartHeatRatio',
] as const satisfies readonly MetricKey[];

/** Tolerance of the runs behind a band, relative: the circuits differ by per cents. */
const BAND_TOLERANCE = 1e-6;

/**
 * Runs a scenario whose circuit was estimated over all circuits that fit its nameplate as well, and over the tolerances a
 * nameplate is allowed, and says between which values each figure lies. One closing angle, that of the scenario.
 *
 * @param nameplate that the scenario's circuit was estimated from
 * @throws ScenarioError as `simulate` does
 * @throws RangeError where the data are so far from any machine that a circuit gives no numbers for them
 */
export function plugBands(scenario: Scenario, nameplate: Nameplate): PlugBands {
  const estimated = circuitEstimator.fromNameplate(nameplate);
  const variants = equallyGoodCircuits(nameplate, estimated);
  const members = [
    { label: 'the estimated circuit', machine: scenario.machine },
    ...variants.map(({ label, circuit }) => ({
      label,
      machine: inPlaceOf(scenario.machine, estimated.circuit, circuit),
    })),
  ];
  const ends = new Map<MetricKey, PlugBand>();
  let failed = 0;
  const absent = new Map<MetricKey, number>();
  for (const { label, machine } of members) {
    const relativeTolerance = Math.max(BAND_TOLERANCE, scenario.solver.relativeTolerance);
    const result = simulate({ ...scenario, machine, solver: { ...scenario.solver, relativeTolerance } });
    if (!isSuccessful(result.status)) {
      failed++;
      continue;
    }
    for (const key of BAND_KEYS) {
      const { value } = result.metrics[key];
      if (value === null) {
        absent.set(key, (absent.get(key) ?? 0) + 1);
        continue;
      }
      const band = ends.get(key) ?? { key, low: value, high: value, lowFrom: label, highFrom: label };
      ends.set(key, {
        key,
        ...(value < band.low ? { low: value, lowFrom: label } : { low: band.low, lowFrom: band.lowFrom }),
        ...(value > band.high
          ? { high: value, highFrom: label }
          : { high: band.high, highFrom: band.highFrom }),
      });
    }
  }
  const ill =
    failed === members.length
      ? ' None of these runs ends well, so that there is no range.'
      : failed === 0
        ? ''
        : ` ${failed} of these runs ${failed === 1 ? 'does' : 'do'} not end well and ${failed === 1 ? 'is' : 'are'} left out.`;
  return {
    bands: BAND_KEYS.flatMap((key) => ends.get(key) ?? []),
    members: members.length,
    sentence:
      'The same run over circuits that fit the nameplate as well, and over what a nameplate is allowed: the tolerances of IEC 60034-1 ' +
      '(from memory: locked-rotor current +20 %, locked-rotor torque −15/+25 %, breakdown torque −10 %, slip ±20 %, below 1 kW ±30 %) for what is ' +
      `stated, the spread of its table or assumption for what is not.${ill}${openRanges(absent, ends, members.length)}`,
  };
}

/** Says which ranges are open because some of the circuits do not get there. */
function openRanges(
  absent: ReadonlyMap<MetricKey, number>,
  ends: ReadonlyMap<MetricKey, PlugBand>,
  members: number,
): string {
  const times: readonly MetricKey[] = ['stopTimeFromParting', 'stopTimeFromTouch', 'reversalTime'];
  const open = times.find((key) => ends.has(key) && (absent.get(key) ?? 0) > 0);
  if (open === undefined) return '';
  return ` In ${absent.get(open)} of the ${members} circuits the end of the ${open === 'reversalTime' ? 'reversal' : 'stop'} is not reached: the ranges of its time and heat are open upwards.`;
}

/**
 * A machine with a variant's circuit in place of the estimated one. What the scenario made of the estimate (a temperature) it
 * makes of the variant too; what it states in place of the estimate (inertia, saturation) stays.
 */
function inPlaceOf(machine: MachineData, estimated: CircuitPart, variant: CircuitPart): MachineData {
  const like = (now: number, was: number, value: number) => (now === was ? value : (value * now) / was);
  const own = <K extends 'leakageSaturation' | 'core' | 'mechanicalLoss' | 'mainSaturation'>(key: K) =>
    JSON.stringify(machine[key]) === JSON.stringify(estimated[key]) && variant[key] !== undefined
      ? { [key]: variant[key] }
      : {};
  return {
    ...machine,
    Rs: like(machine.Rs, estimated.Rs, variant.Rs),
    Lls: like(machine.Lls, estimated.Lls, variant.Lls),
    Lm: like(machine.Lm, estimated.Lm, variant.Lm),
    cages: variant.cages.map(({ Rr, Llr }, j) => ({
      Rr: like(machine.cages[j]?.Rr ?? Rr, estimated.cages[j]?.Rr ?? Rr, Rr),
      Llr: like(machine.cages[j]?.Llr ?? Llr, estimated.cages[j]?.Llr ?? Llr, Llr),
    })),
    ...own('leakageSaturation'),
    ...own('core'),
    ...own('mechanicalLoss'),
    ...own('mainSaturation'),
  };
}
