import type { LoadTorque } from '../scenario/scenario.ts';

/** Torque of one piece of a load: constant + slope · speed + power / speed, N·m. */
export interface TorquePiece {
  /** N·m */
  readonly constant: number;
  /** N·m·s/rad */
  readonly slope: number;
  /** W */
  readonly power: number;
}

/**
 * A load torque that is smooth in pieces of speed (a table, constant power above a base speed). Everything is referred to the
 * motor's speed, gear loss left out.
 */
export interface SpeedPieces {
  /**
   * True: pieces and breaks are those of |ω|, and the torque opposes motion in both directions. False: those of ω, and the
   * torque is positive against forward rotation.
   */
  readonly mirrored: boolean;
  /** Speeds at which one piece ends and the next begins, ascending, rad/s. */
  readonly breaks: readonly number[];
  /** One more than there are breaks. */
  readonly pieces: readonly TorquePiece[];
}

/** Loads that are described by pieces. */
export type PiecewiseLoad = Extract<LoadTorque, { readonly kind: 'constantPower' | 'table' }>;

/**
 * Refers a piecewise load to the motor's speed.
 *
 * @param ratio motor speed over load speed
 */
export function speedPieces(load: PiecewiseLoad, ratio: number): SpeedPieces {
  return load.kind === 'constantPower'
    ? {
        mirrored: true,
        breaks: [load.baseSpeed * ratio],
        pieces: [
          { constant: load.power / load.baseSpeed / ratio, slope: 0, power: 0 },
          { constant: 0, slope: 0, power: load.power },
        ],
      }
    : tablePieces(load, ratio);
}

function tablePieces(load: Extract<LoadTorque, { readonly kind: 'table' }>, ratio: number): SpeedPieces {
  const points = load.points.map(({ speed, torque }) => ({ speed: speed * ratio, torque: torque / ratio }));
  const level = (torque: number): TorquePiece => ({ constant: torque, slope: 0, power: 0 });
  const between = points.slice(1).map((end, i): TorquePiece => {
    const start = points[i]!;
    const slope = (end.torque - start.torque) / (end.speed - start.speed);
    return { constant: start.torque - slope * start.speed, slope, power: 0 };
  });
  const breaks = points.map(({ speed }) => speed);
  const pieces = [level(points[0]!.torque), ...between, level(points.at(-1)!.torque)];
  // A magnitude of speed is never below zero: nothing lies before a first point there.
  return load.mirrored && breaks[0] === 0
    ? { mirrored: true, breaks: breaks.slice(1), pieces: pieces.slice(1) }
    : { mirrored: load.mirrored, breaks, pieces };
}

/**
 * Index of the piece that holds at a speed. On a break itself the present piece stays if it is one of the two that meet there.
 *
 * @param omega rad/s at the motor
 * @param present index of the piece so far, or −1
 */
export function pieceAt(load: SpeedPieces, omega: number, present: number): number {
  const x = load.mirrored ? Math.abs(omega) : omega;
  const { breaks } = load;
  if (present >= 0) {
    const low = breaks[present - 1] ?? Number.NEGATIVE_INFINITY;
    const high = breaks[present] ?? Number.POSITIVE_INFINITY;
    if (x >= low && x <= high) return present;
  }
  return breaks.filter((speed) => speed < x).length;
}

/** Torque of a piecewise load on the verge of motion from rest, N·m: how much it holds if mirrored, its pull if not. */
export function torqueAtRest(load: SpeedPieces): number {
  const piece = load.pieces[pieceAt(load, 0, -1)]!;
  return piece.constant;
}
