/**
 * ms of processor time of each thread in which what it makes says nothing: its first runs take many times as long as later ones, until
 * the engine has made machine code of what they run. Not by the clock: beside other work that takes several times as long. Measured: the
 * plug stops of the examples are at full speed after 3 to 5 s.
 */
const WARM_UP = 4000;
/** ms that a rate is measured over at least: twenty chunks of one thread. */
const MEASURED = 1500;
/** ms that a rate looks back: short enough to follow a computer that gets other work, long enough to stand still. */
const WINDOW = 5000;
/** Chunks of each thread that a rate is measured over at least. */
const CHUNKS_A_THREAD = 2;

interface Mark {
  /** ms */
  readonly time: number;
  readonly runs: number;
  readonly chunks: number;
}

/** How many runs a second come out of all threads, over the last seconds. */
export class Rate {
  readonly #threads: number;
  #runs = 0;
  #chunks = 0;
  /** After the warm-up, the oldest first. */
  readonly #marks: Mark[] = [];

  /**
   * @param threads that work at once
   */
  constructor(threads: number) {
    this.#threads = threads;
  }

  /**
   * Takes in a finished chunk.
   *
   * @param now when it was finished, ms
   * @param worked processor time of all threads together since they began, ms
   */
  add(runs: number, now: number, worked: number): void {
    this.#runs += runs;
    this.#chunks += 1;
    if (worked < WARM_UP * this.#threads || this.#chunks < this.#threads) return;
    const mark = { time: now, runs: this.#runs, chunks: this.#chunks };
    this.#marks.push(mark);
    // The one after the oldest will do where it lies far enough back.
    for (;;) {
      const second = this.#marks[1];
      if (second === undefined || !this.#spans(second, mark, WINDOW)) return;
      this.#marks.shift();
    }
  }

  /** Runs a second; null until enough were made to tell. */
  get perSecond(): number | null {
    const [first, last] = [this.#marks[0], this.#marks.at(-1)];
    if (first === undefined || last === undefined || !this.#spans(first, last, MEASURED)) return null;
    return (1000 * (last.runs - first.runs)) / (last.time - first.time);
  }

  #spans(from: Mark, to: Mark, time: number): boolean {
    return to.time - from.time >= time && to.chunks - from.chunks >= CHUNKS_A_THREAD * this.#threads;
  }
}
