/** How long it takes from a hand's input to the curves of the run that it asked for, measured for whoever looks at the browser's timeline. */
export interface Latency<Run> {
  /** A hand has asked for a change. */
  input(): void;
  /** What has been asked for so far is being run now. */
  sent(): void;
  /** The run that was sent last is about to be shown. */
  shown(run: Run): void;
  /** Its curves are on the screen. */
  painted(run: Run): void;
}

/** Name of the measures, for the benchmark. */
export const INPUT_TO_PAINT = 'input-to-paint';

/** Keeps the instants of inputs until the run that answers them is painted. */
export function latency<Run>(): Latency<Run> {
  let asked: number[] = [];
  let underWay: number[] = [];
  let waiting: { run: Run; stamps: readonly number[] } | null = null;
  return {
    input() {
      asked.push(performance.now());
    },
    sent() {
      underWay = [...underWay, ...asked];
      asked = [];
    },
    shown(run) {
      waiting = { run, stamps: [...(waiting?.stamps ?? []), ...underWay] };
      underWay = [];
    },
    painted(run) {
      if (waiting?.run !== run) return;
      for (const start of waiting.stamps) performance.measure(INPUT_TO_PAINT, { start });
      waiting = null;
    },
  };
}
