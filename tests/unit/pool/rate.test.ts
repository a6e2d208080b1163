import { expect, it } from 'vitest';
import { Rate } from '../../../src/pool/rate.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** Chunks of one run each, `each` ms apart on every thread, from `from` to `to`; a part of the time is theirs. */
function make(rate: Rate, threads: number, each: number, from: number, to: number, part = 1): void {
  for (let time = from + each; time <= to; time += each)
    for (let thread = 0; thread < threads; thread += 1) rate.add(1, time, part * threads * time);
}

it('a rate is told only when the threads are up to speed, and does not count how slowly they began', () => {
  const rate = new Rate(2);
  make(rate, 2, 400, 0, 3900);
  expect(rate.perSecond).toBeNull();
  make(rate, 2, 20, 4000, 5400);
  expect(rate.perSecond).toBeNull();
  make(rate, 2, 20, 5400, 6000);
  // 2 threads at 20 ms a run: 100 runs a second. The first four seconds made some twenty at 400 ms.
  expectWithin(rate.perSecond!, 100, { relative: 0.01 }, 'runs a second');
});

it('a rate waits the longer, the less of the processor the threads are given', () => {
  const rate = new Rate(2);
  make(rate, 2, 50, 0, 16_000, 0.2);
  expect(rate.perSecond).toBeNull();
  make(rate, 2, 50, 16_000, 22_000, 0.2);
  expectWithin(rate.perSecond!, 40, { relative: 0.02 }, 'runs a second');
});

it('a rate needs two chunks of every thread beyond the first, however long they take', () => {
  const rate = new Rate(2);
  make(rate, 2, 30_000, 0, 60_000);
  expect(rate.perSecond).toBeNull();
  make(rate, 2, 10_000, 60_000, 70_000);
  // 4 runs in the 40 s after the first two.
  expectWithin(rate.perSecond!, 4 / 40, { relative: 1e-9 }, 'runs a second');
});

it('a rate is that of the last seconds', () => {
  const rate = new Rate(1);
  make(rate, 1, 10, 0, 60_000);
  expectWithin(rate.perSecond!, 100, { relative: 1e-9 }, 'runs a second');
  make(rate, 1, 100, 60_000, 70_000);
  expectWithin(rate.perSecond!, 10, { relative: 1e-9 }, 'runs a second');
});
