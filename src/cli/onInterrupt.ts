import { EXIT } from './io.ts';

/** ms; npm passes on the signal that the terminal has sent already: two that come together are one. */
const ONE_SIGNAL = 500;

/** What of a process is used here. */
export type Interruptible = Pick<NodeJS.Process, 'on' | 'off' | 'exit'>;

/**
 * Calls a listener at the first Ctrl-C, or when the system asks the process to end; at the second the process quits at once.
 *
 * @returns what ends the listening
 */
export function onInterrupt(process: Interruptible, listener: () => void): () => void {
  let first: number | null = null;
  const heard = () => {
    const now = performance.now();
    if (first === null) {
      first = now;
      listener();
    } else if (now - first > ONE_SIGNAL) process.exit(EXIT.interrupted);
  };
  process.on('SIGINT', heard);
  process.on('SIGTERM', heard);
  return () => {
    process.off('SIGINT', heard);
    process.off('SIGTERM', heard);
  };
}
