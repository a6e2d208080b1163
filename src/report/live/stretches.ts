import type { RunResult } from '../../measure/result.ts';
import { findClosings } from '../closings.ts';

/** A part of a run worth a picture of its own. */
export interface Stretch {
  readonly label: string;
  /** s; null: the whole run. */
  readonly span: readonly [number, number] | null;
}

/** What is shown after a touch, s: the offset currents of most machines have died away by then. */
const AFTER = 0.05;
/** What is shown before a parting, s: a quarter of a cycle at 50 Hz of the state before. */
const BEFORE = 0.005;
/** What is shown on both sides of the passage of zero speed, s. */
const ABOUT_ZERO = 0.05;

/**
 * The whole run, the first 50 ms of each closing (with the change-over that led to it, from 5 ms before the parting), and the passage of
 * zero speed after the last plugging; of several of one kind each has its number.
 */
export function stretchesOf({ trajectory }: RunResult): Stretch[] {
  const { tStart, tEnd } = trajectory;
  const closings = findClosings(trajectory);
  const found = closings.map((closing) => {
    const name =
      closing.kind === 'start' ? 'start' : closing.kind === 'plug' ? 'change-over' : 'closing again';
    const from = closing.parting ?? closing.touch;
    return { name, from: from - BEFORE, to: closing.touch + AFTER };
  });
  const lastPlug = closings.findLast((closing) => closing.kind === 'plug');
  const zero = trajectory.events.findLast(
    (event) => event.kind === 'zeroSpeed' && lastPlug !== undefined && event.t > lastPlug.touch,
  );
  if (zero !== undefined)
    found.push({ name: 'zero speed', from: zero.t - ABOUT_ZERO, to: zero.t + ABOUT_ZERO });
  const named = found.map(({ name, from, to }, i): Stretch => {
    const alike = found.filter((other) => other.name === name).length;
    const number = found.slice(0, i + 1).filter((other) => other.name === name).length;
    return {
      label: alike > 1 ? `${name} ${number}` : name,
      span: [Math.max(tStart, from), Math.min(tEnd, to)],
    };
  });
  return [{ label: 'whole run', span: null }, ...named.filter(isLong)];
}

/** A closing in the last instant of a run leaves nothing to be seen. */
function isLong({ span }: Stretch): boolean {
  return span !== null && span[1] - span[0] > BEFORE / 2;
}
