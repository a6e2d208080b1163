/** A numerical failure during a run. Inside `simulate` it becomes a status; it reaches callers only of the solver. */
export class SimulationError extends Error {
  readonly code: 'nonFiniteValue' | 'stepLimit';
  /** s */
  readonly time: number;

  constructor(code: SimulationError['code'], time: number, message: string) {
    super(message);
    this.name = 'SimulationError';
    this.code = code;
    this.time = time;
  }
}
