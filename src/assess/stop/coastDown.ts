import { GAUSS_POINTS } from '../../numeric/gaussPoints.ts';
import { motorSideFactor } from '../../shaft/gear.ts';
import { loadTorqueAt, windageTorque } from '../../shaft/loadTorque.ts';
import type { Shaft } from '../../shaft/shaft.ts';

/**
 * How a turning shaft without air-gap torque goes on.
 *
 * - rest: it comes to rest.
 * - slows: nothing but torques that vanish with the speed slows it: rest is approached, and time and angle are those to
 *   `SLOW_SHARE` of the speed at the beginning.
 * - driven: the load keeps it turning, or drives it faster.
 * - goesOn: no torque is given that would slow it.
 */
export interface CoastDown {
  /** How it goes on; each is explained above. */
  readonly outcome: 'rest' | 'slows' | 'driven' | 'goesOn';
  /** Magnitude of the speed at the beginning, rad/s. */
  readonly from: number;
  /** To which speed time and angle are counted, rad/s. */
  readonly to: number;
  /** s; null where that speed is never reached. */
  readonly time: number | null;
  /** rad; null where that speed is never reached. */
  readonly angle: number | null;
}

/** Share of the first speed at which a shaft that only approaches rest counts as slow. Assumed. */
export const SLOW_SHARE = 0.01;
/** Ratio of the speeds at the ends of a cell: torques that are powers of speed are then smooth in it. */
const CELL_RATIO = 0.8;
/** Below this share of the first speed one cell goes down to rest. */
const LAST_SHARE = 1e-9;
/** Share of the shaft's negligible torque that is left of tables by rounding. */
const ROUNDING = 1e-6;

/**
 * Time and angle in which a shaft coasts to rest, t = ∫ dω/a, θ = ∫ ω·dω/a with the deceleration a of load, friction, windage and
 * gear. Motor and load count as joined rigidly.
 *
 * @param omega rad/s at the motor, in the direction of rotation
 */
export function coastDown(shaft: Shaft, omega: number): CoastDown {
  const from = Math.abs(omega);
  const direction = omega < 0 ? -1 : 1;
  if (from === 0) return { outcome: 'rest', from, to: 0, time: 0, angle: 0 };
  const deceleration = (speed: number) => decelerationAt(shaft, direction, speed);
  const nothing = (ROUNDING * shaft.negligibleTorque) / shaft.inertia;
  const stops = deceleration(0) > nothing;
  const to = stops ? 0 : SLOW_SHARE * from;
  const edges = cellEdges(shaft, direction, from, to);
  let time = 0;
  let angle = 0;
  for (let i = 1; i < edges.length; i++) {
    const low = edges[i]!;
    const span = edges[i - 1]! - low;
    for (const { x, w } of GAUSS_POINTS) {
      const speed = low + x * span;
      const a = deceleration(speed);
      if (a <= nothing)
        return { outcome: a < -nothing ? 'driven' : 'goesOn', from, to, time: null, angle: null };
      time += (w * span) / a;
      angle += (w * span * speed) / a;
    }
  }
  // A pull at rest without friction that holds reverses the shaft after it has come to rest: it has stopped all the same.
  if (!stops && deceleration(0) < -nothing) return { outcome: 'driven', from, to, time: null, angle: null };
  return { outcome: stops ? 'rest' : 'slows', from, to, time, angle };
}

/** Deceleration of a shaft that turns without air-gap torque, rad/s², with the gear loss of the direction in which power flows. */
function decelerationAt(shaft: Shaft, direction: -1 | 1, speed: number): number {
  const omega = direction * speed;
  const load = loadTorqueAt(shaft, omega, direction);
  const own = windageTorque(shaft, omega) + shaft.motor.friction * direction;
  const mesh = shaft.motorInertia * load - shaft.loadInertia * own;
  const factor = motorSideFactor(shaft, direction * mesh >= 0 ? 1 : -1);
  return (direction * (own + factor * load)) / (shaft.motorInertia + factor * shaft.loadInertia);
}

/** Speeds at which cells end, descending: a geometric row, and every speed at which a piece of a load ends, rad/s. */
function cellEdges(shaft: Shaft, direction: -1 | 1, from: number, to: number): number[] {
  const least = to > 0 ? to : LAST_SHARE * from;
  const edges: number[] = [to, least];
  for (let speed = from; speed > least; speed *= CELL_RATIO) edges.push(speed);
  for (const load of shaft.pieces)
    for (const speed of load.breaks) {
      const at = load.mirrored ? speed : direction * speed;
      if (at > to && at < from) edges.push(at);
    }
  return [...new Set(edges)].sort((a, b) => b - a);
}
