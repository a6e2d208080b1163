/** A body of the thermal model: everything in it has one temperature. */
export type NodeName = 'winding' | 'cage' | 'outerCage' | 'frame';

/** One body of the thermal model. */
export interface ThermalNode {
  readonly name: NodeName;
  /** J/K */
  readonly heatCapacity: number;
  /** Rise over the cooling air in steady operation at rated load, K. */
  readonly ratedRise: number;
  /** Temperature it must not exceed, °C; null: it has none, or none is known. */
  readonly limit: number | null;
  /** Where the limit comes from; without one, what is missing (empty where a body needs none). */
  readonly limitSource: string;
}

/** A path along which heat flows; all values in W/K. */
export interface ThermalLink {
  readonly from: NodeName;
  /** Where the heat goes: another body, or the cooling air. */
  readonly to: NodeName | 'ambient';
  /** While the motor turns at speed. */
  readonly running: number;
  /** At rest and while it speeds up or slows down: the fan on its own shaft does not count then. */
  readonly standstill: number;
}

/** given: stated; derived: computed from what is stated; standard: of a standard; assumed: typical of such motors. */
export type ParameterOrigin = 'given' | 'derived' | 'standard' | 'assumed';

/** A number the thermal model stands on. */
export interface ThermalParameter {
  readonly name: string;
  /** SI; temperatures °C, rises K. */
  readonly value: number;
  /** Symbol of the unit: SI, '°C' for temperatures. */
  readonly unit: string;
  readonly origin: ParameterOrigin;
  /** How it was found, in words. */
  readonly source: string;
}

/** The motor as a few bodies that store heat and exchange it. Linear: rises are proportional to losses. */
export interface ThermalModel {
  /** Winding, cage, outer cage where it is a body of its own, frame; in this order. */
  readonly nodes: readonly ThermalNode[];
  readonly links: readonly ThermalLink[];
  /** Temperature of the cooling air, °C. */
  readonly ambient: number;
  readonly parameters: readonly ThermalParameter[];
}

/** One number per node, in the order of the nodes. */
export type PerNode = readonly number[];

/** Which of a link's two conductances holds. */
export type Cooling = 'running' | 'standstill';
