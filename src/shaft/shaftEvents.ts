import { couplingTorque, flankPosition } from './coupling.ts';
import { type HoldLimits, holdLimits } from './holdLimits.ts';
import { meshTorque } from './meshTorque.ts';
import type { Shaft } from './shaft.ts';
import { dependsOnDirection, loadMass, type ShaftMode, speedOffset, TWIST } from './shaftMode.ts';

/** What the crossing of an event function of the shaft means. */
export type ShaftEventKind =
  /** A turning mass comes to zero speed. */
  | 'zeroSpeed'
  /** A held mass is overpowered. */
  | 'breakaway'
  /** The direction of power in the gear changes. */
  | 'powerTurns'
  /** Flanks of the coupling touch or part. */
  | 'flank'
  /** The speed passes from one piece of a load torque to the next. */
  | 'corner';

/** An event function of the shaft: it fires on a strict sign change in its direction. */
export interface ShaftEventFunction {
  readonly kind: ShaftEventKind;
  /** Index of the mass, where the event is one of a mass. */
  readonly mass?: 0 | 1;
  readonly crossing: 'rising' | 'falling' | 'either';
  /** electrical: swings as fast as torque or faster. */
  readonly probing: 'electrical' | 'speed';
  /** The shaft's state, counted from its first, that `g` moves as fast as and no faster; left out: there is none such. */
  readonly follows?: number;
  /** Of the whole state vector; the shaft's states lie from index `at`. */
  readonly g: (y: ArrayLike<number>, at: number, airGapTorque: number) => number;
}

/**
 * The smallest number there is, added where an event function may be zero at the start of a segment: it gives the zero the
 * sign of the side the state comes from, so that a motion straight to the other side is seen; any other value swallows it.
 */
const THIS_SIDE = Number.MIN_VALUE;

/** The event functions of one mode. */
export function shaftEventFunctions(shaft: Shaft, mode: ShaftMode): readonly ShaftEventFunction[] {
  const masses = mode.masses.flatMap(({ held }, index) => {
    const mass = index === 0 ? 0 : 1;
    return held ? [breakaway(shaft, mode, mass)] : zeroSpeed(shaft, mode, mass);
  });
  return [...masses, ...powerTurns(shaft, mode), ...flanks(shaft, mode), ...corners(shaft, mode)];
}

/** The torque that drives a mass in, less the pull of its load, N·m; compare with the limits of standstill. */
export function driveOf(
  shaft: Shaft,
  mode: Pick<ShaftMode, 'flank'>,
  mass: number,
  limits: HoldLimits,
): ShaftEventFunction['g'] {
  const { center } = limits;
  const { flank } = mode;
  if (shaft.coupling === null) return (_y, _at, torque) => torque - center;
  return mass === 0
    ? (y, at, torque) => torque - couplingTorque(shaft, flank, y, at)
    : (y, at) => couplingTorque(shaft, flank, y, at) - center;
}

/** The speed of a torsional oscillation swings as fast as the coupling lets it. */
function probingOf(shaft: Shaft): 'electrical' | 'speed' {
  return shaft.coupling === null ? 'speed' : 'electrical';
}

function breakaway(shaft: Shaft, mode: ShaftMode, mass: 0 | 1): ShaftEventFunction {
  const limits = holdLimits(shaft, mass);
  const drive = driveOf(shaft, mode, mass, limits);
  const { forward, backward } = limits;
  return {
    kind: 'breakaway',
    mass,
    crossing: 'rising',
    probing: 'electrical',
    g: (y, at, torque) => {
      const value = drive(y, at, torque);
      return Math.max(value - forward, -value - backward) - THIS_SIDE;
    },
  };
}

function zeroSpeed(shaft: Shaft, mode: ShaftMode, mass: 0 | 1): ShaftEventFunction[] {
  const offset = speedOffset(mass);
  const { direction } = mode.masses[mass]!;
  const base = { kind: 'zeroSpeed', mass, probing: probingOf(shaft), follows: offset } as const;
  if (dependsOnDirection(shaft, mass))
    return [{ ...base, crossing: 'falling', g: (y, at) => direction * y[at + offset]! + THIS_SIDE }];
  // The torques of a load without such parts are smooth through zero, save for a fan's second derivative.
  if (mass === 1 && shaft.fan === 0) return [];
  return [{ ...base, crossing: 'either', g: (y, at) => y[at + offset]! }];
}

function powerTurns(shaft: Shaft, mode: ShaftMode): ShaftEventFunction[] {
  const { direction, held } = mode.masses[loadMass(shaft)]!;
  if (shaft.gear === null || held || (shaft.coupling !== null && mode.flank === 0)) return [];
  const torque = meshTorque(shaft, mode);
  const sign = mode.power * direction;
  const band = shaft.negligibleTorque;
  return [
    {
      kind: 'powerTurns',
      crossing: 'falling',
      probing: 'electrical',
      // The band keeps a torque that has died away from turning the mode over and over.
      g: (y, at, airGapTorque) => sign * torque(y, at, airGapTorque) + band,
    },
  ];
}

function flanks(shaft: Shaft, mode: ShaftMode): ShaftEventFunction[] {
  const { coupling } = shaft;
  if (coupling === null || coupling.backlash === 0) return [];
  const base = { kind: 'flank', crossing: 'falling', probing: 'electrical', follows: TWIST } as const;
  const { flank } = mode;
  if (flank !== 0) {
    const edge = flankPosition(coupling, flank);
    return [{ ...base, g: (y, at) => flank * (y[at + TWIST]! - edge) + THIS_SIDE }];
  }
  const edge = flankPosition(coupling, 1);
  return [
    { ...base, g: (y, at) => edge - y[at + TWIST]! + THIS_SIDE },
    { ...base, g: (y, at) => edge + y[at + TWIST]! + THIS_SIDE },
  ];
}

function corners(shaft: Shaft, mode: ShaftMode): ShaftEventFunction[] {
  const mass = loadMass(shaft);
  const { direction, held } = mode.masses[mass]!;
  if (held) return [];
  const offset = speedOffset(mass);
  const base = {
    kind: 'corner',
    mass,
    crossing: 'falling',
    probing: probingOf(shaft),
    follows: offset,
  } as const;
  return shaft.pieces.flatMap((load, i): ShaftEventFunction[] => {
    const sign = load.mirrored ? direction : 1;
    const low = load.breaks[mode.pieces[i]! - 1];
    const high = load.breaks[mode.pieces[i]!];
    return [
      ...(low === undefined
        ? []
        : [{ ...base, g: (y: ArrayLike<number>, at: number) => sign * y[at + offset]! - low + THIS_SIDE }]),
      ...(high === undefined
        ? []
        : [{ ...base, g: (y: ArrayLike<number>, at: number) => high - sign * y[at + offset]! + THIS_SIDE }]),
    ];
  });
}
