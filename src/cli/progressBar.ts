import { SingleBar } from 'cli-progress';
import type { SurveySpeed } from '../pool/runSurvey.ts';
import { timeLeft } from './timeLeft.ts';

/** ms between lines where the stream is no terminal. */
const LINE_EVERY = 5000;
/** Runs a second below which a decimal says more than a whole number. */
const SLOW = 10;

/** Shows how far a survey is. */
export interface ProgressBar {
  readonly update: (done: number, total: number, speed: SurveySpeed | null) => void;
  /** Writes a line above the bar. */
  readonly say: (text: string) => void;
  /** Leaves the bar as it stands. */
  readonly stop: () => void;
}

/**
 * A bar with rate and remaining time on a terminal, a line now and then on another stream, nothing without one.
 *
 * @param err where lines go
 * @param now a clock, ms
 */
export function progressBar(
  stream: NodeJS.WritableStream | undefined,
  err: (text: string) => void,
  now: () => number = () => performance.now(),
): ProgressBar {
  const say = (text: string) => err(`${text}\n`);
  if (stream === undefined) return { update: () => {}, say, stop: () => {} };
  return 'isTTY' in stream && stream.isTTY === true ? drawn(stream, err) : told(say, now);
}

function drawn(stream: NodeJS.WritableStream, err: (text: string) => void): ProgressBar {
  const bar = new SingleBar({
    stream,
    format: '{bar} {percentage} % | {value} of {total} runs{speed}',
    barsize: 24,
    gracefulExit: false,
  });
  let isBegun = false;
  return {
    update: (done, total, speed) => {
      const payload = { speed: speedText(speed, done === total) };
      if (isBegun) {
        bar.setTotal(total);
        bar.update(done, payload);
      } else bar.start(total, done, payload);
      isBegun = true;
    },
    say: (text) => {
      // Over the bar, which is drawn anew below.
      err(`\r\u001B[K${text}\n`);
    },
    stop: () => bar.stop(),
  };
}

function told(say: (text: string) => void, now: () => number): ProgressBar {
  let line = '';
  let done = 0;
  let last: { readonly time: number; readonly done: number } | null = null;
  const tell = () => {
    last = { time: now(), done };
    say(line);
  };
  return {
    update: (runs, total, speed) => {
      done = runs;
      line = `${done} of ${total} runs${speedText(speed, done === total)}`;
      // What was there before is no news.
      last ??= { time: now(), done };
      if (done > last.done && now() - last.time >= LINE_EVERY) tell();
    },
    say,
    stop: () => {
      if (last !== null && done > last.done) tell();
    },
  };
}

function speedText(speed: SurveySpeed | null, isDone: boolean): string {
  if (speed === null) return '';
  const rate = ` | ${speed.rate.toFixed(speed.rate < SLOW ? 1 : 0)} runs/s`;
  return isDone ? rate : `${rate} | ${timeLeft(speed.seconds)} left`;
}
