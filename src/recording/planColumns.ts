import type { Bounds } from '../scenario/bounds.ts';
import { bounds } from '../scenario/bounds.ts';
import { codeLetters, designLetters } from '../scenario/nameplateInput.ts';
import { PLAN_LOAD_KINDS, STOP_WORDS } from '../survey/plan/planRow.ts';

/** How the cells of a column are read. */
export type CellKind =
  | { readonly is: 'text' }
  | { readonly is: 'quantity'; readonly bounds: Bounds }
  /** A plain number. */
  | {
      readonly is: 'number';
      readonly min: number;
      readonly aboveMin?: true;
      readonly max: number;
      readonly whole?: 'even' | 'any';
    }
  /** A part of a whole: in percent, or a plain number up to 1. */
  | { readonly is: 'share'; readonly aboveMin?: true }
  /** Of a rated value: `2.2 times`, `220 %` or a plain number. */
  | { readonly is: 'multiple' }
  /** Amperes, or a multiple of rated current. */
  | { readonly is: 'lockedRotorCurrent' }
  | { readonly is: 'date' }
  | { readonly is: 'word'; readonly words: readonly string[] };

/** A column of the table of starters. */
export interface PlanColumn {
  readonly kind: CellKind;
  /** A cell that is right. */
  readonly example: string;
}

/** Most operations a life or a counter may state: far above what any contactor is built for. */
const MOST_OPERATIONS = 1e10;
/** Operations per day: one a second all day long is more than any starter does. */
const MOST_PER_DAY = 86_400;
/** m; contacts of the largest contactors are some millimetres thick. */
const THICKNESS: Bounds = { dimension: 'length', min: 0, max: 0.1 };

const text = (example: string): PlanColumn => ({ kind: { is: 'text' }, example });
const quantity = (range: Bounds, example: string): PlanColumn => ({
  kind: { is: 'quantity', bounds: range },
  example,
});
const operations = (example: string): PlanColumn => ({
  kind: { is: 'number', min: 0, aboveMin: true, max: MOST_OPERATIONS },
  example,
});
const counted = (example: string): PlanColumn => ({
  kind: { is: 'number', min: 0, max: MOST_OPERATIONS },
  example,
});
const word = (words: readonly string[], example: string): PlanColumn => ({
  kind: { is: 'word', words },
  example,
});
const date = (example: string): PlanColumn => ({ kind: { is: 'date' }, example });
const share = (example: string): PlanColumn => ({ kind: { is: 'share' }, example });

/** Every column a table of starters may have, in the order in which they are best written. Only `tag` must be there. */
export const PLAN_COLUMNS = {
  tag: text('P-101'),
  description: text('pulper'),
  power: quantity(bounds.ratedPower, '7.5 kW'),
  voltage: quantity(bounds.lineVoltage, '400 V'),
  frequency: quantity(bounds.frequency, '50 Hz'),
  speed: quantity(bounds.speed, '1455 rpm'),
  poles: { kind: { is: 'number', min: 2, max: 48, whole: 'even' }, example: '4' },
  'rated current': quantity(bounds.ratedCurrent, '14.8 A'),
  'power factor': { kind: { is: 'share', aboveMin: true }, example: '0.83' },
  efficiency: { kind: { is: 'share', aboveMin: true }, example: '90.1 %' },
  'locked-rotor current': { kind: { is: 'lockedRotorCurrent' }, example: '6.8 times` or `110 A' },
  'code letter': word(codeLetters, 'H'),
  'locked-rotor torque': { kind: { is: 'multiple' }, example: '2.2 times' },
  'breakdown torque': { kind: { is: 'multiple' }, example: '2.8 times' },
  design: word(designLetters, 'N'),
  'rotor inertia': quantity(bounds.inertia, '0.036 kg m^2'),
  'load inertia': quantity(bounds.inertia, '0.4 kg m^2'),
  'load kind': word(PLAN_LOAD_KINDS, 'friction'),
  'load torque': quantity(bounds.gravityTorque, '20 N m'),
  'contactor current AC-3': quantity(bounds.ratedCurrent, '18 A'),
  'contactor current AC-4': quantity(bounds.ratedCurrent, '9 A'),
  'life AC-3': operations('1200000'),
  'life AC-4': operations('30000'),
  'contactor mechanical life': operations('10000000'),
  'interlock mechanical life': operations('5000000'),
  'switch mechanical life': operations('2000000'),
  'stop by': word(STOP_WORDS, 'plug'),
  'share of plugging': share('80 %'),
  'share of inching': share('5 %'),
  'operations per day': {
    kind: { is: 'number', min: 0, aboveMin: true, max: MOST_PER_DAY },
    example: '120',
  },
  counter: counted('48210'),
  'counter date': date('2026-03-31'),
  'operations since new': counted('160000'),
  'contacts changed': date('2025-06-02'),
  inspected: date('2026-03-31'),
  'contact worn': share('40 %'),
  'contact thickness new': quantity(THICKNESS, '3 mm'),
  'contact thickness now': quantity(THICKNESS, '2.1 mm'),
  'contact thickness limit': quantity(THICKNESS, '1 mm'),
  'over-travel new': quantity(THICKNESS, '2 mm'),
  'over-travel now': quantity(THICKNESS, '1.4 mm'),
  'over-travel limit': quantity(THICKNESS, '0.5 mm'),
  'spare kit': text('contact kit B'),
} as const satisfies Readonly<Record<string, PlanColumn>>;

/** Name of a column. */
export type PlanColumnName = keyof typeof PLAN_COLUMNS;

/** The names in order. */
export const PLAN_COLUMN_NAMES = Object.keys(PLAN_COLUMNS) as readonly PlanColumnName[];
