import { describe, expect, it } from 'vitest';
import { CLAMP_WINDOW, clampReading } from '../../../src/measure/clampReading.ts';
import { quadratureOf } from '../../../src/measure/quadrature.ts';
import { syntheticTrajectory } from '../../support/syntheticTrajectory.ts';
import { expectWithin } from '../../support/tolerance.ts';

const OMEGA = 120 * Math.PI;
const PERIOD = 1 / 60;
/** Half a second in steps of uneven length. */
const cuts = [0, 0.013, 0.0137, 0.05, 0.121, 0.26, 0.31, 0.5];
/** What the search for the largest window may miss, with the integrals' own 1e-6. */
const FOUND = { relative: 2e-5 };

/** A sine with a decaying offset, as after switching, on line A; lines B and C carry less. */
function offsetSine(crest: number, phi: number, offset: number, tau: number) {
  const decay = 1 / tau;
  const charge = (t: number) =>
    (crest / OMEGA) * Math.sin(OMEGA * t + phi) - offset * tau * Math.exp(-decay * t);
  const mixed = (t: number) =>
    (Math.exp(-decay * t) * (OMEGA * Math.sin(OMEGA * t + phi) - decay * Math.cos(OMEGA * t + phi))) /
    (decay ** 2 + OMEGA ** 2);
  const squared = (t: number) =>
    (crest ** 2 / 2) * (t + Math.sin(2 * (OMEGA * t + phi)) / (2 * OMEGA)) +
    2 * crest * offset * mixed(t) -
    ((offset ** 2 * tau) / 2) * Math.exp(-2 * decay * t);
  return {
    current: (t: number) => crest * Math.cos(OMEGA * t + phi) + offset * Math.exp(-decay * t),
    /** Readings of the window that ends at t, in closed form. */
    hall: (t: number, window: number) => Math.sqrt((squared(t) - squared(t - window)) / window),
    transformer: (t: number, window: number) =>
      Math.sqrt(
        (squared(t) - squared(t - window)) / window - ((charge(t) - charge(t - window)) / window) ** 2,
      ),
  };
}

/** Largest value on a grid of 10 µs. */
function largestOnGrid(f: (t: number) => number, from: number, to: number): number {
  let best = Number.NEGATIVE_INFINITY;
  const count = Math.round((to - from) / 1e-5);
  for (let k = 0; k <= count; k++) best = Math.max(best, f(from + (k * (to - from)) / count));
  return best;
}

describe('a clamp meter', () => {
  it('reads crest/√2 of a sine over whole periods, by transformer and by Hall element', () => {
    const quadrature = quadratureOf(
      syntheticTrajectory({ iAlpha: (t) => 30 * Math.cos(OMEGA * t + 0.4) }, cuts),
    );
    const reading = clampReading(quadrature, 0, 0.5, 6 * PERIOD);
    for (const kind of ['transformer', 'hall'] as const) {
      expectWithin(reading?.[kind].value, 30 / Math.SQRT2, { relative: 1e-6 }, kind);
      // Lines B and C carry half as much.
      expect(reading?.[kind].phase).toBe('A');
    }
  });

  it('reads 100 ms where nothing else is said', () => {
    const quadrature = quadratureOf(
      syntheticTrajectory({ iAlpha: (t) => 30 * Math.cos(OMEGA * t + 0.4) }, cuts),
    );
    expect(CLAMP_WINDOW).toBe(0.1);
    const { from, to } = clampReading(quadrature, 0, 0.5)!.hall;
    expectWithin(to - from, 0.1, { absolute: 1e-12 }, 'window');
  });

  it('takes the line with the largest reading', () => {
    // Line B is (−iα + √3·iβ)/2: iβ alone makes B and C alike and leaves A without current.
    const slanted = quadratureOf(
      syntheticTrajectory(
        { iAlpha: (t) => -10 * Math.cos(OMEGA * t), iBeta: (t) => 20 * Math.cos(OMEGA * t) },
        cuts,
      ),
    );
    const reading = clampReading(slanted, 0, 0.5, 6 * PERIOD)!;
    expect(reading.hall.phase).toBe('B');
    expectWithin(reading.hall.value, (5 + 10 * Math.sqrt(3)) / Math.SQRT2, { relative: 1e-6 }, 'line B');
  });

  it.each([
    [0, -40, 0.06],
    [1.1, -25, 0.02],
    [2.5, 60, 0.2],
    [0.3, 40, 0.005],
  ])(
    'reads a sine with a decaying offset as its closed form does (angle %f, offset %f A, decay in %f s)',
    (phi, offset, tau) => {
      const law = offsetSine(50, phi, offset, tau);
      const quadrature = quadratureOf(syntheticTrajectory({ iAlpha: law.current }, cuts));
      for (const window of [0.1, 0.037, 0.003])
        for (const [from, to] of [
          [0, 0.5],
          [0.0123, 0.31],
        ] as const) {
          const reading = clampReading(quadrature, from, to, window)!;
          for (const kind of ['transformer', 'hall'] as const) {
            const expected = largestOnGrid((t) => law[kind](t, window), from + window, to);
            expectWithin(reading[kind].value, expected, FOUND, `${kind}, window ${window} from ${from}`);
            expect(reading[kind].from).toBeGreaterThanOrEqual(from - 1e-12);
            expect(reading[kind].to).toBeLessThanOrEqual(to + 1e-12);
          }
        }
    },
  );

  it('with a transformer passes nothing of a direct current, with a Hall element all of it', () => {
    const quadrature = quadratureOf(syntheticTrajectory({ iAlpha: () => 12 }, cuts));
    const reading = clampReading(quadrature, 0, 0.5)!;
    expectWithin(reading.hall.value, 12, { relative: 1e-12 }, 'Hall');
    expectWithin(reading.transformer.value, 0, { absolute: 1e-5 }, 'transformer');
  });

  it('finds the strongest window of a surge wherever it falls', () => {
    for (let k = 0; k < 12; k++) {
      const middle = 0.12 + 0.0217 * k;
      // Windows of whole periods centred on the surge are the largest: 30 A crest under a bell.
      const bell = (t: number) => Math.exp(-(((t - middle) / 0.08) ** 2));
      const quadrature = quadratureOf(
        syntheticTrajectory(
          {
            iAlpha: (t) => 30 * bell(t) * Math.cos(OMEGA * t),
            iBeta: (t) => 30 * bell(t) * Math.sin(OMEGA * t),
          },
          cuts,
        ),
      );
      const reading = clampReading(quadrature, 0, 0.5, 6 * PERIOD)!;
      const wave = (t: number, angle: number) => (30 * bell(t) * Math.cos(OMEGA * t - angle)) ** 2;
      const lines = [0, (2 * Math.PI) / 3, (4 * Math.PI) / 3];
      const expected = Math.max(...lines.map((angle) => bestWindow((t) => wave(t, angle), 6 * PERIOD, 0.5)));
      expectWithin(reading.hall.value, expected, { relative: 1e-4 }, `surge at ${middle} s`);
    }
  });

  it('reads an operation shorter than the window over one window that begins with it', () => {
    const law = offsetSine(50, 0.7, 30, 0.05);
    const quadrature = quadratureOf(syntheticTrajectory({ iAlpha: law.current }, cuts));
    const reading = clampReading(quadrature, 0.2, 0.23)!;
    expectWithin(reading.hall.from, 0.2, { absolute: 1e-12 }, 'its beginning');
    expectWithin(reading.hall.value, law.hall(0.3, 0.1), { relative: 1e-6 }, 'Hall');
    expectWithin(reading.transformer.value, law.transformer(0.3, 0.1), { relative: 1e-6 }, 'transformer');
  });

  it('reads nothing where the run ends before one window is over', () => {
    const quadrature = quadratureOf(syntheticTrajectory({ iAlpha: () => 12 }, cuts));
    expect(clampReading(quadrature, 0.4001, 0.5)).toBe(null);
    expect(clampReading(quadrature, 0.4, 0.5)).not.toBe(null);
  });
});

/** Largest r.m.s. value over any window, by a running sum over steps of 0.1 ms with the mid-point rule. */
function bestWindow(square: (t: number) => number, window: number, end: number): number {
  const step = 1e-4;
  const sums = [0];
  for (let t = step / 2; t < end; t += step) sums.push(sums.at(-1)! + square(t) * step);
  const wide = Math.round(window / step);
  let best = 0;
  for (let k = wide; k < sums.length; k++) best = Math.max(best, sums[k]! - sums[k - wide]!);
  return Math.sqrt(best / (wide * step));
}
