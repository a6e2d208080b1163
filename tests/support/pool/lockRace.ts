import { renameSync, unlinkSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { lockFile } from '../../../src/pool/journalLock.ts';

/**
 * A process that takes the lock of a file and lets go of it again and again for some ms, or leaves it behind as a process does that
 * dies with it. Says how often it had the lock, and how often another had it at the same time.
 */
const [file, duration, ending] = process.argv.slice(2) as [string, string, 'lifts' | 'dies'];
const alone = `${file}.alone`;
/** Above any number that a system gives. */
const DEAD = `${JSON.stringify({ process: 2 ** 30, computer: hostname() })}\n`;
const ENDED = Date.now() + Number(duration);
let taken = 0;
let shared = 0;
let odd = '';

while (Date.now() < ENDED) {
  let lift: () => void;
  try {
    lift = lockFile(file);
  } catch (error) {
    const { message } = error as Error;
    if (!message.includes('is at work on it')) odd = message;
    continue;
  }
  taken += 1;
  try {
    writeFileSync(alone, '', { flag: 'wx' });
    for (const until = performance.now() + 0.2 * Math.random(); performance.now() < until; );
    unlinkSync(alone);
  } catch {
    shared += 1;
  }
  if (ending === 'lifts') lift();
  else {
    writeFileSync(`${file}.${process.pid}`, DEAD);
    renameSync(`${file}.${process.pid}`, `${file}.lock`);
  }
}
process.stdout.write(JSON.stringify({ taken, shared, odd }));
