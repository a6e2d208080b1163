import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  advanced,
  advancedTo,
  nextEvent,
  type Playhead,
  previousEvent,
  SLOWNESSES,
  slownessWords,
  stepped,
} from '../../../../src/report/live/playhead.ts';
import { SCRUB_STEPS, scrubMarks, scrubPosition, scrubTime } from '../../../../src/report/live/scrub.ts';
import { fakeFilm } from './fakeFilm.ts';

const PLAYING: Playhead = { t: 0.2, playing: true, slowness: 1 / 100 };

describe('a playhead', () => {
  it('moves a hundredth of the time at the clock at 1/100 of real time', () => {
    expect(advanced(PLAYING, 500, 1).t).toBeCloseTo(0.205, 12);
    expect(advanced({ ...PLAYING, slowness: 1 }, 500, 1).t).toBeCloseTo(0.7, 12);
  });

  it('stops at the end of the run', () => {
    expect(advanced(PLAYING, 10_000, 0.25)).toEqual({ ...PLAYING, t: 0.25, playing: false });
  });

  it('that rests stays where it is', () => {
    const resting = { ...PLAYING, playing: false };
    expect(advanced(resting, 500, 1)).toBe(resting);
    expect(advancedTo(resting, 0, 500, 1)).toBe(resting);
  });

  it('counts time from its first picture on', () => {
    expect(advancedTo(PLAYING, null, 123_456, 1).t).toBe(0.2);
    expect(advancedTo(PLAYING, 1000, 1016, 1).t).toBeCloseTo(0.20016, 12);
  });

  it('does not leap when a page comes back after a minute, nor go back when stamps do', () => {
    expect(advancedTo(PLAYING, 0, 60_000, 1).t).toBeCloseTo(0.201, 12);
    expect(advancedTo(PLAYING, 1000, 999, 1).t).toBe(0.2);
  });

  it('plays the same however the time at the clock is cut into pictures', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 100 }), { maxLength: 40 }), (cuts) => {
        let playhead = PLAYING;
        let stamp = 0;
        for (const cut of cuts) {
          playhead = advancedTo(playhead, stamp, stamp + cut, 10);
          stamp += cut;
        }
        expect(playhead.t).toBeCloseTo(0.2 + stamp / 100_000, 10);
      }),
      { seed: 3, numRuns: 50 },
    );
  });

  it('steps by what a sixtieth of a second shows, and rests there', () => {
    const on = stepped(PLAYING, 1, 1);
    expect(on.t).toBeCloseTo(0.2 + 1 / 6000, 12);
    expect(on.playing).toBe(false);
    expect(stepped(on, -1, 1).t).toBeCloseTo(0.2, 12);
    expect(stepped({ ...PLAYING, t: 0 }, -1, 1).t).toBe(0);
    expect(stepped({ ...PLAYING, t: 1 }, 1, 1).t).toBe(1);
  });

  it('says its speed in words', () => {
    expect(SLOWNESSES.map(slownessWords)).toEqual([
      'real time',
      ...[2, 5, 10, 20, 50, 100, 200, 500].map((n) => `1/${n} of real time`),
    ]);
  });
});

const film = fakeFilm({}, 2, {
  events: [0.5, 0.5, 0.7, 1.5].map((t) => ({ t, text: `at ${t}` })),
});

describe('the way from event to event', () => {
  it('never stays where it is, and ends', () => {
    expect(nextEvent(film, 0)).toBe(0.5);
    expect(nextEvent(film, 0.5)).toBe(0.7);
    expect(nextEvent(film, 1.5)).toBeNull();
    expect(previousEvent(film, 1.5)).toBe(0.7);
    expect(previousEvent(film, 0.7)).toBe(0.5);
    expect(previousEvent(film, 0.5)).toBeNull();
  });
});

describe('the slider over a run', () => {
  it('comes back to its position', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: SCRUB_STEPS }),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (position, tEnd) => {
          expect(scrubPosition({ tStart: 0, tEnd }, scrubTime({ tStart: 0, tEnd }, position))).toBe(position);
        },
      ),
      { seed: 5, numRuns: 200 },
    );
  });

  it('stands at an end for what is outside, and at the start of a run without duration', () => {
    expect(scrubPosition(film, -1)).toBe(0);
    expect(scrubPosition(film, 3)).toBe(SCRUB_STEPS);
    expect(scrubPosition({ tStart: 0, tEnd: 0 }, 0)).toBe(0);
    expect(scrubTime(film, SCRUB_STEPS / 4)).toBe(0.5);
  });

  it('marks every place of an event once', () => {
    expect(scrubMarks(film)).toEqual([SCRUB_STEPS / 4, 0.35 * SCRUB_STEPS, 0.75 * SCRUB_STEPS]);
  });
});
