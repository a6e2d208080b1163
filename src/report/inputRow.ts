import { formatQuantity, type UnitSystem } from './formatQuantity.ts';

/** One line of the inputs table. */
export interface InputRow {
  readonly label: string;
  readonly value: string;
}

/** The lines of one section of the scenario. */
export interface InputGroup {
  readonly title: string;
  readonly rows: readonly InputRow[];
}

/** How the values of the inputs table are written in one system of units. */
export interface InputFormat {
  /** A quantity in SI with its display unit; null is "not stated". */
  readonly show: (value: number | null, unit: string) => string;
  /** A time in ms. */
  readonly ms: (value: number) => string;
}

/** Formats of one system of units. */
export function inputFormat(units: UnitSystem): InputFormat {
  return {
    show: (value, unit) => (value === null ? 'not stated' : formatQuantity(value, unit, { system: units })),
    ms: (value) => formatQuantity(value, 's', { system: units, milli: true }),
  };
}

/** A line of the inputs table. */
export function inputRow(label: string, value: string): InputRow {
  return { label, value };
}
