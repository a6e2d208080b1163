import type { LoadShape } from './scenarioShape.ts';

/** All load torques added up, at the load's own shaft; by what they do when the motion turns round. */
export interface LoadSum {
  /** Against motion in either direction, N·m, at a magnitude of speed (rad/s): dry friction, constant power, mirrored tables. */
  opposing(speed: number): number;
  /** Torque up to which those hold the shaft at rest, N·m. */
  readonly hold: number;
  /** Everything else at a signed speed, N·m, positive against forward rotation. */
  steady(omega: number): number;
  /** Signed speeds at which some torque has a corner. */
  readonly corners: readonly number[];
}

interface Part {
  readonly opposing: (speed: number) => number;
  readonly hold: number;
  readonly steady: (omega: number) => number;
}

const nothing = () => 0;

/** Adds up the load torques of a scenario. */
export function loadSum(torques: readonly LoadShape[]): LoadSum {
  const parts = torques.map(partOf);
  const opposingParts = parts.map((part) => part.opposing).filter((f) => f !== nothing);
  const steadyParts = parts.map((part) => part.steady).filter((f) => f !== nothing);
  const at = (functions: readonly ((x: number) => number)[], x: number) => {
    let sum = 0;
    for (const f of functions) sum += f(x);
    return sum;
  };
  const opposing = (speed: number) => at(opposingParts, speed);
  let hold = 0;
  for (const part of parts) hold += part.hold;
  return {
    opposing,
    // A shaft at rest cannot be set in motion by less than the friction it would meet in motion.
    hold: Math.max(hold, opposing(0)),
    steady: (omega) => at(steadyParts, omega),
    corners: torques.flatMap(cornersOf),
  };
}

function cornersOf(load: LoadShape): number[] {
  if (load.kind === 'constantPower') return [load.baseSpeed, -load.baseSpeed];
  if (load.kind !== 'table') return [];
  const speeds = load.points.map((point) => point.speed);
  return load.mirrored ? speeds.flatMap((speed) => (speed === 0 ? [] : [speed, -speed])) : speeds;
}

function partOf(load: LoadShape): Part {
  switch (load.kind) {
    case 'friction':
      return { opposing: () => load.torque, hold: load.breakaway, steady: nothing };
    case 'viscous':
      return { opposing: nothing, hold: 0, steady: (omega) => load.coefficient * omega };
    case 'fan':
      return { opposing: nothing, hold: 0, steady: (omega) => load.coefficient * omega * Math.abs(omega) };
    case 'gravity':
      return { opposing: nothing, hold: 0, steady: () => load.torque };
    case 'constantPower':
      return {
        opposing: (speed) => load.power / Math.max(speed, load.baseSpeed),
        hold: load.power / load.baseSpeed,
        steady: nothing,
      };
    case 'table': {
      const read = (x: number) => between(load.points, x);
      return load.mirrored
        ? { opposing: read, hold: read(0), steady: nothing }
        : { opposing: nothing, hold: 0, steady: read };
    }
  }
}

/** Straight lines through points; beyond the ends the last value holds. */
function between(points: readonly { readonly speed: number; readonly torque: number }[], x: number): number {
  let before = points[0]!;
  if (x <= before.speed) return before.torque;
  for (const point of points) {
    if (x < point.speed) {
      const share = (x - before.speed) / (point.speed - before.speed);
      return before.torque + share * (point.torque - before.torque);
    }
    before = point;
  }
  return before.torque;
}
