import type { CycleName } from '../../scenario/scenario.ts';
import { type CyclePhase, dutyCycle, restFor } from './dutyCycle.ts';
import type { OperationHeat } from './heat.ts';
import { cyclePeaks, modesOf, periodicState, risesAfterCycle } from './periodicState.ts';
import type { PerNode, ThermalModel } from './thermalNetwork.ts';

/** Above the state that repeats for ever by less than this, everything counts as having come down to it, K. */
const NEAR = 0.01;
/** Operations after which they count as unlimited, whatever the rhythm. */
const MOST = 100_000;

/**
 * How many operations can follow one another before a body passes its limit: start, stop, a rest, and again, without running
 * between.
 *
 * @param from cold: everything as cold as the air; warm: as after long running at rated load
 * @param rest between the end of one operation and the next start, s
 * @returns Infinity where it goes on for ever
 */
export function operationsInSuccession(
  model: ThermalModel,
  heat: OperationHeat,
  from: 'cold' | 'warm',
  rest: number,
  kind: CycleName = 'startPlugStop',
): number {
  const modes = modesOf(model);
  const operation = dutyCycle(heat, kind, { kind: 'time', time: 0 }, Number.POSITIVE_INFINITY);
  const cycle: readonly CyclePhase[] = [...operation, restFor(rest)];
  const passes = (rises: PerNode) =>
    model.nodes.every(({ limit }, i) => limit === null || model.ambient + rises[i]! <= limit);
  const forEver = periodicState(model, cycle, modes);
  const goesOn = passes(forEver.peaks.map((peak) => peak - model.ambient));
  let rises: PerNode = model.nodes.map(({ ratedRise }) => (from === 'cold' ? 0 : ratedRise));
  for (let count = 0; count < MOST; count++) {
    if (!passes(cyclePeaks(model, modes, operation, rises).rises)) return count;
    // Heat flows from hot to cold only: a state nowhere above the one that repeats stays below it.
    if (goesOn && rises.every((rise, i) => rise <= forEver.begin[i]! + NEAR)) break;
    rises = risesAfterCycle(model, modes, cycle, rises);
  }
  return Number.POSITIVE_INFINITY;
}
