import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Settled } from '../../../src/page/worker/protocol.ts';
import { settling } from '../../../src/page/worker/settling.ts';

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

const NOTHING: Settled = { serial: 1, verdict: null, pictures: null };

it('asks once when the hand has come to rest, however often it moved', async () => {
  const ask = vi.fn(async () => NOTHING);
  const tell = vi.fn();
  const moved = settling({ ask, tell });
  for (let i = 0; i < 20; i++) {
    moved();
    vi.advanceTimersByTime(16);
  }
  expect(ask).toHaveBeenCalledTimes(0);
  await vi.advanceTimersByTimeAsync(100);
  expect(ask).toHaveBeenCalledTimes(1);
  expect(tell).toHaveBeenCalledWith(NOTHING);
});

it('asks all the same while the hand moves on and on', () => {
  const ask = vi.fn(async () => NOTHING);
  const moved = settling({ ask, tell: vi.fn() });
  for (let i = 0; i < 300; i++) {
    moved();
    vi.advanceTimersByTime(16);
  }
  // 4.8 s of moving with a patience of 3 s.
  expect(ask).toHaveBeenCalledTimes(1);
});
