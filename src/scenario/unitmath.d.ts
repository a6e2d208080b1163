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

export interface UnitFactory {
  (value: number, unit: string): Unit;
  config(options: {
    definitions: { baseQuantities?: string[]; units: Record<string, UnitDefinition> };
  }): UnitFactory;
}

declare const factory: UnitFactory;
export default factory;
