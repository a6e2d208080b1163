/** One pole's opening. */
export interface PoleOpening {
  partedAt: number | null;
  partingCurrent: number;
  clearedAt: number | null;
  /** ∫|i| dt from parting to clearing, A·s. */
  arcCharge: number;
}

export interface Opening {
  readonly contactor: 0 | 1;
  readonly releasedAt: number;
  readonly poles: readonly [PoleOpening, PoleOpening, PoleOpening];
}

export interface Closing {
  readonly contactor: 0 | 1;
  readonly energisedAt: number;
  readonly touchedAt: [number | null, number | null, number | null];
  /** First touch after which current can flow. */
  circuitAt: number | null;
}

export interface LogEntry {
  readonly t: number;
  readonly kind: string;
  readonly contactor?: 'forward' | 'reverse';
  readonly phase?: 'A' | 'B' | 'C';
}
