import type { RatedPoint } from '../machine/ratedPoint.ts';
import type { Estimation } from '../scenario/nameplate.ts';
import type { MachineData } from '../scenario/scenario.ts';

/** A point of the steady state that has a name. */
export type MotorPointKind = 'rated' | 'noLoad' | 'breakdown' | 'pullUp' | 'lockedRotor' | 'plugging';

/** The steady state at one speed with the forward phase sequence. SI. */
export interface MotorPoint {
  readonly kind: MotorPointKind;
  /** rad/s */
  readonly speed: number;
  /** 0 at synchronous speed, 1 at rest, 2 at synchronous speed against the field. */
  readonly slip: number;
  /** Air-gap torque, N·m. */
  readonly torque: number;
  /** Line current, A r.m.s. */
  readonly current: number;
  readonly powerFactor: number;
}

/** Curves over speed, all of one length, speed rising. SI. */
export interface MotorCurve {
  /** rad/s, from minus to plus synchronous speed */
  readonly speed: Float64Array;
  /** N·m */
  readonly torque: Float64Array;
  /** A r.m.s. */
  readonly current: Float64Array;
}

/** What is known of a motor by itself, without any run: everything its figure and its table in the terminal need. */
export interface MotorSheet {
  readonly title: string;
  readonly machine: MachineData;
  /** Line-to-line, V r.m.s. */
  readonly lineVoltage: number;
  /** Hz */
  readonly frequency: number;
  /** Base of the multiples. */
  readonly rated: RatedPoint;
  /** Those the motor has, in the order of the table; a motor without a minimum of torque has no pull-up point. */
  readonly points: readonly MotorPoint[];
  readonly curve: MotorCurve;
  /** Load torque over speed as seen by the motor; null: none given. */
  readonly load: Pick<MotorCurve, 'speed' | 'torque'> | null;
  /** How the circuit was found; null where it was given. */
  readonly estimation: Estimation | null;
}

/** Names of the points, as they stand in table and figure. */
export const POINT_NAMES: Readonly<Record<MotorPointKind, string>> = {
  rated: 'rated',
  noLoad: 'no load',
  breakdown: 'breakdown',
  pullUp: 'pull-up',
  lockedRotor: 'locked rotor',
  plugging: 'plugging, full speed',
};
