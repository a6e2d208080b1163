import { simulate } from '../../measure/simulate.ts';
import { type Bench, plugStopOf } from './bench.ts';

/** How far a set turns backwards when its zero-speed switch opens later. SI. */
export interface LateSwitch {
  /** Later than as set, s. */
  readonly later: number;
  /** Largest speed backwards, rad/s. */
  readonly speed: number;
  /** Turned backwards until rest, rad. */
  readonly angle: number;
}

/** Delays that are looked at beside the one as set, s. A relay with an adjustable delay gives them. */
const LATER: readonly number[] = [0, 0.02, 0.05, 0.1];

/** The same stop with the switch as set and later; a delay whose run does not end well is left out. */
export function lateSwitchOf({ scenario, direction, plugs }: Bench): readonly LateSwitch[] {
  const { zeroSpeedSwitch } = scenario.starter;
  if (zeroSpeedSwitch === null || !plugs) return [];
  return LATER.flatMap((later) => {
    const starter = {
      ...scenario.starter,
      zeroSpeedSwitch: { ...zeroSpeedSwitch, delay: zeroSpeedSwitch.delay + later },
    };
    const { usable, metrics } = simulate(plugStopOf({ ...scenario, starter }, direction));
    const { creepSpeed, creepRevolutions } = metrics;
    if (!usable || creepRevolutions.value === null) return [];
    return [
      {
        later,
        speed: Math.abs(creepSpeed.value ?? 0),
        angle: 2 * Math.PI * Math.abs(creepRevolutions.value),
      },
    ];
  });
}
