import type { RatedPoint } from '../machine/ratedPoint.ts';
import type { Estimation } from '../scenario/nameplate.ts';
import type { MachineData } from '../scenario/scenario.ts';
import type { MotorPoint, MotorSheet } from './motorSheet.ts';

/** Version of the format below. Additions keep it; a change of meaning or a removal raises it. */
const MOTOR_VERSION = 1;

/** What `motor --json` prints. All values are SI. */
export interface MotorFile {
  readonly motorVersion: typeof MOTOR_VERSION;
  /** The program that made it. */
  readonly program: { readonly name: 'countertorque'; readonly version: string };
  readonly title: string;
  /** Line-to-line, V r.m.s., at the motor's terminals. */
  readonly lineVoltage: number;
  /** Hz */
  readonly frequency: number;
  /** The circuit per phase of the equivalent star. */
  readonly machine: MachineData;
  /** Base of multiples. */
  readonly rated: RatedPoint;
  /** The points that have names; those the motor has not are left out. */
  readonly points: readonly MotorPoint[];
  /** Columns of one length, speed rising from minus to plus synchronous speed: rad/s, N·m, A r.m.s. */
  readonly curve: Readonly<Record<'speed' | 'torque' | 'current', readonly number[]>>;
  /** How the circuit was found; null where it was given. */
  readonly estimation: Estimation | null;
}

/** The motor by itself as JSON text, ending in a line break. */
export function renderMotorJson(sheet: MotorSheet, { version }: { readonly version: string }): string {
  const { speed, torque, current } = sheet.curve;
  const file: MotorFile = {
    motorVersion: MOTOR_VERSION,
    program: { name: 'countertorque', version },
    title: sheet.title,
    lineVoltage: sheet.lineVoltage,
    frequency: sheet.frequency,
    machine: sheet.machine,
    rated: sheet.rated,
    points: sheet.points,
    curve: { speed: [...speed], torque: [...torque], current: [...current] },
    estimation: sheet.estimation,
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}
