/** The part of unitmath 0.8.8 in use; the package's own types are not wired to its entry points. */
export interface Unit {
  to(unit: string): Unit;
  getValue(): number;
}

export interface UnitDefinition {
  value: string | number;
  quantity?: string;
  prefixes?: 'NONE' | 'SHORT' | 'LONG';
}

/** Arithmetic in place of the library's; it takes all of these or none. */
export interface UnitArithmetic {
  conv(value: string | number): number;
  clone(value: number): number;
  add(a: number, b: number): number;
  sub(a: number, b: number): number;
  mul(a: number, b: number): number;
  div(a: number, b: number): number;
  pow(a: number, b: number): number;
}

export interface UnitFactory {
  (value: number, unit: string): Unit;
  config(options: {
    type: UnitArithmetic;
    prefix: 'never';
    definitions: { baseQuantities?: string[]; units: Record<string, UnitDefinition> };
  }): UnitFactory;
}

declare const factory: UnitFactory;
export default factory;
