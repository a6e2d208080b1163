/** What stands in the circuit besides machine and supply, at one moment. */
export interface Inserted {
  /** Resistors in the lines, between contactors and motor, Ω per phase. */
  readonly lineResistance: number;
  /** At the slip rings, in the first cage's circuit; Ω per phase of the equivalent star as built, referred to the stator. */
  readonly rotorResistance: number;
  /** A delta machine whose windings are connected in star. */
  readonly star: boolean;
}

/** The circuit as built: nothing in the lines, slip rings shorted, windings as the data say. */
export const NOTHING_INSERTED: Inserted = { lineResistance: 0, rotorResistance: 0, star: false };
