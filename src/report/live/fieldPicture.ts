import { formatNumber } from '../formatQuantity.ts';
import { feedAt } from './feedAt.ts';
import { type FieldArrow, fieldArrow, fieldPoint, RADIUS } from './fieldArrow.ts';
import { FULL_CURRENT, FULL_FLUX, FULL_VOLTAGE } from './fieldScale.ts';
import type { Film, FilmFeed } from './film.ts';
import type { Frame } from './frame.ts';

/** The field in the machine at one instant, drawn for one pair of poles: a turn of the picture is a turn of the field. */
export interface FieldPicture {
  readonly statorFlux: FieldArrow;
  readonly rotorFlux: FieldArrow;
  readonly voltage: FieldArrow;
  readonly current: FieldArrow;
  readonly rotor: RotorMark;
  /** Where the fluxes stand to each other and what torque that is, in words. */
  readonly fluxWords: string;
  /** Slip against the field that the supply makes now, in words. */
  readonly slipWords: string;
}

/** A piece of the rotor's ring that shows how far the rotor has turned. */
export interface RotorMark {
  /** SVG path of the piece. */
  readonly path: string;
  /** From the axis of phase A, against the clock, 0 … 360, electrical. */
  readonly degrees: number;
}

/** A flux smaller than this share of the one at no load is none. */
const NO_FLUX = 0.01;

/** Angle that the rotor's mark takes up, rad: a twelfth of the ring. */
const MARK_WIDTH = Math.PI / 6;

/** Degrees in one radian. */
const DEGREES = 180 / Math.PI;
/** A whole turn, °. */
const TURN = 360;

/** Geometry and words of the field at one instant, in a square of 200 with the axis of phase A to the right. */
export function fieldPicture(film: Pick<Film, 'base' | 'feeds'>, frame: Frame): FieldPicture {
  const { base } = film;
  const turned = base.polePairs * frame.position;
  const beta = (frame.iB - frame.iC) / Math.sqrt(3);
  return {
    statorFlux: fieldArrow(frame.psiAlpha, frame.psiBeta, FULL_FLUX * base.flux),
    rotorFlux: fieldArrow(frame.psiRAlpha, frame.psiRBeta, FULL_FLUX * base.flux),
    voltage: fieldArrow(frame.uAlpha, frame.uBeta, FULL_VOLTAGE * base.voltageCrest),
    current: fieldArrow(frame.iA, beta, FULL_CURRENT * base.currentCrest),
    rotor: { path: ringPiece(turned), degrees: wholeTurn(turned * DEGREES) },
    fluxWords: fluxWords(frame, base.flux),
    slipWords: slipWords(film, frame),
  };
}

/** Path of the piece of the rotor's ring around an angle, rad. */
function ringPiece(angle: number): string {
  const corner = (radius: number, side: 1 | -1) => {
    const { x, y } = fieldPoint(radius, angle + (side * MARK_WIDTH) / 2);
    return `${x.toFixed(2)} ${y.toFixed(2)}`;
  };
  const { rotorOuter: outer, rotorInner: inner } = RADIUS;
  // Against the clock outside (sweep 0: y points down), back with the clock inside.
  return `M${corner(outer, -1)}A${outer} ${outer} 0 0 0 ${corner(outer, 1)}L${corner(inner, 1)}A${inner} ${inner} 0 0 1 ${corner(inner, -1)}Z`;
}

/** The torque is forward while the stator's flux is ahead of the rotor's, counted against the clock. */
function fluxWords({ psiAlpha, psiBeta, psiRAlpha, psiRBeta }: Frame, base: number): string {
  const stator = Math.hypot(psiAlpha, psiBeta);
  const rotor = Math.hypot(psiRAlpha, psiRBeta);
  if (rotor < NO_FLUX * base) return 'no flux in the rotor';
  const trapped = `rotor flux ${formatNumber(rotor / base)} of that at no load`;
  if (stator < NO_FLUX * base) return `${trapped}, none in the stator`;
  const angle = Math.atan2(
    psiRAlpha * psiBeta - psiRBeta * psiAlpha,
    psiRAlpha * psiAlpha + psiRBeta * psiBeta,
  );
  const degrees = Math.round(Math.abs(angle) * DEGREES);
  if (degrees === 0) return `${trapped}, in line with the stator's`;
  return `${trapped}, stator flux ${degrees}° ${angle > 0 ? 'ahead of it: torque forward' : 'behind it: torque in reverse'}`;
}

function slipWords({ base, feeds }: Pick<Film, 'base' | 'feeds'>, { t, speed }: Frame): string {
  const feed = feedAt(feeds, t);
  if (feed.conducting === 0) return 'no phase connected: what flux there is turns with the rotor';
  if (feed.sequence === 0) return 'direct current: the field stands still';
  const words = `slip ${formatNumber(1 - (feed.sequence * speed) / base.synchronousSpeed)} against the ${sequenceWords(feed)} field`;
  return feed.conducting === 2 ? `${words}, two phases: it pulsates` : words;
}

function sequenceWords({ sequence }: FilmFeed): string {
  return sequence === 1 ? 'forward' : 'reversed';
}

function wholeTurn(degrees: number): number {
  return ((degrees % TURN) + TURN) % TURN;
}
