/** ms of work that a chunk should be: long beside what handing it over takes, short beside what a person waits for. */
const CHUNK_TIME = 75;
/** Runs in the longest chunk: what is lost at most when a process is killed. */
const LARGEST_CHUNK = 250;
/** Weight of the newest chunk in the mean. */
const NEWEST = 0.3;

/** How many runs make a chunk. */
export class Pace {
  readonly #threads: number;
  /** ms a run, lately; null before the first chunk. */
  #recent: number | null = null;

  /**
   * @param threads that work at once
   */
  constructor(threads: number) {
    this.#threads = threads;
  }

  /** Takes in a finished chunk: its runs and the ms they took. */
  add(runs: number, elapsed: number): void {
    if (runs === 0) return;
    const each = elapsed / runs;
    this.#recent = this.#recent === null ? each : this.#recent + NEWEST * (each - this.#recent);
  }

  /** Runs in the next chunk: one before anything is known, and no more than leaves work for every thread at the end. */
  chunk(left: number): number {
    if (this.#recent === null) return 1;
    const share = Math.ceil(left / (2 * this.#threads));
    const wanted = Math.floor(CHUNK_TIME / Math.max(this.#recent, CHUNK_TIME / LARGEST_CHUNK));
    return Math.max(1, Math.min(wanted, share, LARGEST_CHUNK));
  }
}
