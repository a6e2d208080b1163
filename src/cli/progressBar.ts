import { SingleBar } from 'cli-progress';

/** ms between lines where the stream is no terminal. */
const LINE_EVERY = 2000;

/** Shows how far a survey is. */
export interface ProgressBar {
  readonly update: (done: number, total: number) => void;
  /** Writes a line above the bar. */
  readonly say: (text: string) => void;
  /** Leaves the bar as it stands. */
  readonly stop: () => void;
}

/**
 * A bar with rate and remaining time on a terminal, a line now and then on another stream, nothing without one.
 *
 * @param err where lines go
 */
export function progressBar(
  stream: NodeJS.WritableStream | undefined,
  err: (text: string) => void,
): ProgressBar {
  const say = (text: string) => err(`${text}\n`);
  if (stream === undefined) return { update: () => {}, say, stop: () => {} };
  const bar = new SingleBar({
    stream,
    format: '{bar} {percentage} % | {value} of {total} runs | {rate} runs/s | {eta_formatted} left',
    barsize: 24,
    noTTYOutput: true,
    notTTYSchedule: LINE_EVERY,
    gracefulExit: false,
  });
  let began: { readonly time: number; readonly done: number } | null = null;
  return {
    update: (done, total) => {
      if (began === null) {
        began = { time: performance.now(), done };
        bar.start(total, done, { rate: '–' });
        return;
      }
      const seconds = (performance.now() - began.time) / 1000;
      const rate = seconds > 0 ? (done - began.done) / seconds : 0;
      bar.setTotal(total);
      bar.update(done, { rate: rate < 10 ? rate.toFixed(1) : rate.toFixed(0) });
    },
    say: (text) => {
      // Over the bar, which is drawn anew below.
      if ('isTTY' in stream && stream.isTTY === true) err('\r\u001B[K');
      say(text);
    },
    stop: () => bar.stop(),
  };
}
