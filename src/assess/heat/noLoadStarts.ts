import { squared } from '../../numeric/raised.ts';
import type { CycleName } from '../../scenario/scenario.ts';
import type { Running } from './dutyCycle.ts';
import { brakingHeat, type OperationHeat, reversalHeat, sumOfPulses, totalHeat } from './heat.ts';

/** Permissible operations from the maker's number of starts without load, in words for the report. */
export const NO_LOAD_STARTS_RULE =
  'The maker’s permissible starts per hour without load and load inertia, z₀, stand for a heat per hour, z₀·W₀; W₀ is the heat of ' +
  'one such start in winding and cage: the kinetic energy of the bare rotor at synchronous speed in the cage, and in the ' +
  'winding as much for it as in the start that was simulated. Operations and running share it: z·W/(z₀·W₀) + P·t/(P_rated·3600 s) ' +
  '= 1, with W the heat of one operation, P the losses under this load and t the running time per hour (common practice, no source).';

/** What the estimate needs. */
export interface NoLoadStartsData {
  /** z₀, 1/h */
  readonly noLoadStartsPerHour: number;
  /** Of the rotor alone, kg·m². */
  readonly rotorInertia: number;
  /** rad/s, mechanical */
  readonly synchronousSpeed: number;
  /** All losses at rated load, W. */
  readonly ratedLoss: number;
}

const SECONDS_PER_HOUR = 3600;

/** Permissible operations per hour by `NO_LOAD_STARTS_RULE`; 0 where running alone uses up all of the heat. */
export function noLoadStartsEstimate(
  data: NoLoadStartsData,
  heat: OperationHeat,
  kind: CycleName,
  running: Running,
): number {
  const inMotor = (pulse: OperationHeat['start']) => pulse.winding + pulse.cage + pulse.outerCage;
  const rotor = (pulse: OperationHeat['start']) => pulse.cage + pulse.outerCage;
  const rotorHeat = 0.5 * data.rotorInertia * squared(data.synchronousSpeed);
  const oneStart = rotorHeat * (inMotor(heat.start) / rotor(heat.start));
  const operation = {
    startCoast: heat.start,
    startPlugStop: sumOfPulses(heat.start, brakingHeat(heat)),
    fullReversal: reversalHeat(heat),
  }[kind];
  const share = inMotor(operation) / (data.noLoadStartsPerHour * oneStart);
  const runningShare = totalHeat(heat.running) / data.ratedLoss;
  if (running.kind === 'factor') return Math.max(0, (1 - runningShare * running.factor) / share);
  return 1 / (share + (runningShare * running.time) / SECONDS_PER_HOUR);
}
