import { displayUnit, formatNumber } from '../formatQuantity.ts';
import type { Film } from './film.ts';
import type { Frame } from './frame.ts';

/** Slower than this a shaft is said to be at rest, r/min: half of the smallest speed that is shown. */
const AT_REST = 0.5;

/** Less than this share of the rated torque is no torque worth a word. */
const LITTLE_TORQUE = 0.01;

/** What a machine does at one instant, in words. */
export interface MotionWords {
  readonly direction: 'forward' | 'reverse' | 'rest';
  /** "1456 r/min forward" */
  readonly speed: string;
  /** "drives forward with 48.1 N·m", "brakes with 96.2 N·m", "no torque" */
  readonly torque: string;
  /** "takes 14.2 N·m", "drives with 14.2 N·m", "no torque" */
  readonly load: string;
}

/** How the shaft turns and what motor and load do to it, with units. */
export function motionWords(film: Pick<Film, 'units' | 'base'>, frame: Frame): MotionWords {
  const direction = directionOf(frame.speed);
  const { speed, torque, loadTorque } = frame;
  const withUnit = (value: number) =>
    `${formatNumber(Math.abs(value))} ${displayUnit('N·m', { system: film.units }).label}`;
  const isLittle = (value: number) => Math.abs(value) < LITTLE_TORQUE * film.base.torque;
  const sense = torque > 0 ? 'forward' : 'in reverse';
  const drives = direction === 'rest' || torque * speed > 0;
  // At rest, friction only holds; whatever pulls is told by its sign alone.
  const takes = loadTorque * speed > 0 || direction === 'rest';
  return {
    direction,
    speed:
      direction === 'rest'
        ? 'at rest'
        : `${Math.round(Math.abs(speed))} ${displayUnit('rad/s', { system: film.units }).label} ${direction}`,
    torque: isLittle(torque)
      ? 'no torque'
      : `${drives ? `drives ${sense} with` : 'brakes with'} ${withUnit(torque)}`,
    load: isLittle(loadTorque) ? 'no torque' : `${takes ? 'takes' : 'drives with'} ${withUnit(loadTorque)}`,
  };
}

function directionOf(speed: number): MotionWords['direction'] {
  if (Math.abs(speed) < AT_REST) return 'rest';
  return speed > 0 ? 'forward' : 'reverse';
}
