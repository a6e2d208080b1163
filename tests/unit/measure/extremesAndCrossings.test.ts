import { describe, expect, it } from 'vitest';
import { crossings } from '../../../src/measure/crossing.ts';
import { largest } from '../../../src/measure/extremum.ts';
import { quadratureOf } from '../../../src/measure/quadrature.ts';
import { worstCycle } from '../../../src/measure/worstCycle.ts';
import { syntheticTrajectory } from '../../support/syntheticTrajectory.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';

const OMEGA = 120 * Math.PI;
const PERIOD = 1 / 60;
const cuts = [0, 0.013, 0.0137, 0.05, 0.121];

describe('largest', () => {
  it('finds the crest of a decaying wave at twice the supply frequency between the samples', () => {
    const decay = 25;
    const wave = (t: number) => 80 * Math.exp(-decay * t) * Math.sin(2 * OMEGA * t);
    const quadrature = quadratureOf(syntheticTrajectory({ torque: wave }, cuts));
    const top = Math.atan2(2 * OMEGA, decay) / (2 * OMEGA);
    const found = largest(quadrature, 'torque', 'largest', 0, 0.121);
    // The search stops at 1e-8 s, where a crest is flat to 1e-11.
    expectWithin(found?.value, wave(top), { relative: 1e-11 }, 'crest');
    expectWithin(found?.time, top, { absolute: 1e-7 }, 'its time');
    const low = largest(quadrature, 'torque', 'smallest', 0, 0.121);
    const bottom = top + Math.PI / (2 * OMEGA);
    expectWithin(low?.value, -wave(bottom), { relative: 1e-11 }, 'trough');
  });

  it('finds the crest wherever it falls among the cells', () => {
    for (let k = 0; k < 60; k++) {
      const at = 0.02 + 0.0005 * k + 1e-5;
      const bump = (t: number) => Math.cos(2 * OMEGA * (t - at)) - 20 * (t - at) ** 2 * OMEGA;
      const quadrature = quadratureOf(syntheticTrajectory({ torque: bump }, cuts));
      const found = largest(quadrature, 'torque', 'largest', 0, 0.121);
      expectWithin(found?.value, 1, { absolute: 1e-11 }, `crest at ${at}`);
      expectWithin(found?.time, at, { absolute: 1e-7 }, 'its time');
    }
  });

  it('finds the value at the edge of a window or of a jump', () => {
    const ramp = quadratureOf(syntheticTrajectory({ torque: (t) => 5 * t }, cuts));
    expectWithin(largest(ramp, 'torque', 'largest', 0.02, 0.1)?.value, 0.5, { relative: 1e-9 }, 'right end');
    expectWithin(largest(ramp, 'torque', 'smallest', 0.02, 0.1)?.value, -0.1, { relative: 1e-9 }, 'left end');
    const saw = quadratureOf(
      syntheticTrajectory({ torque: (t) => (t < 0.05 ? t : t - 0.05) }, [0, 0.05, 0.09]),
    );
    expectWithin(
      largest(saw, 'torque', 'largest', 0, 0.09)?.value,
      0.05,
      { relative: 1e-6 },
      'before the jump',
    );
  });

  it('of a magnitude finds the negative crest', () => {
    const wave = quadratureOf(
      syntheticTrajectory({ iAlpha: (t) => -9 * Math.sin(OMEGA * t) * Math.exp(-t) }, cuts),
    );
    const found = largest(wave, 'iA', 'magnitude', 0, 0.121);
    const top = Math.atan2(OMEGA, 1) / OMEGA;
    expectWithin(found?.value, 9 * Math.sin(OMEGA * top) * Math.exp(-top), { relative: 1e-12 }, 'crest');
    expectWithin(found?.time, top, { absolute: 1e-6 }, 'time');
  });

  it('of the terminal voltage leaves out where not all terminals are connected', () => {
    const dip = (t: number) => (t < 0.05 ? 10 : 300);
    const trajectory = syntheticTrajectory({ uAlpha: dip }, [0, 0.05, 0.121], ['two', 'three']);
    const found = largest(quadratureOf(trajectory), 'terminalVoltage', 'smallest', 0, 0.121);
    expectWithin(found?.value, -300 * Math.sqrt(1.5), { relative: 1e-12 }, 'lowest voltage');
  });

  it('is null where nothing is defined', () => {
    const trajectory = syntheticTrajectory({ uAlpha: () => 1 }, [0, 0.05], ['none']);
    expect(largest(quadratureOf(trajectory), 'terminalVoltage', 'largest', 0, 0.05)).toBe(null);
  });
});

describe('crossings', () => {
  const wave = quadratureOf(syntheticTrajectory({ iAlpha: (t) => 3 * Math.cos(OMEGA * t) }, cuts));

  it('finds every passage of a level, in order and to 1e-11 s', () => {
    const at = (k: number) => (Math.PI / 2 + k * Math.PI) / OMEGA;
    const all = crossings(wave, 'iA', 0, 'either', 0, 0.05);
    expectAllWithin(
      all,
      [0, 1, 2, 3, 4, 5].map(at).filter((t) => t < 0.05),
      { absolute: 1e-11 },
      'zeros',
    );
    expectAllWithin(
      crossings(wave, 'iA', 0, 'up', 0, 0.05),
      [at(1), at(3), at(5)].filter((t) => t < 0.05),
      { absolute: 1e-11 },
      'up',
    );
    expectAllWithin(
      crossings(wave, 'iA', 0, 'down', 0, 0.05),
      [at(0), at(2), at(4)],
      { absolute: 1e-11 },
      'down',
    );
  });

  it('finds a level other than zero and keeps to its window', () => {
    const first = Math.acos(0.5) / OMEGA;
    expectAllWithin(
      crossings(wave, 'iA', 1.5, 'down', 0, 0.01),
      [first],
      { absolute: 1e-11 },
      'half the crest',
    );
    expect(crossings(wave, 'iA', 1.5, 'down', first + 1e-6, 0.01)).toEqual([]);
    expect(crossings(wave, 'iA', 4, 'either', 0, 0.121)).toEqual([]);
  });
});

describe('worstCycle', () => {
  it('of a steady alternating current is its effective value', () => {
    const steady = quadratureOf(syntheticTrajectory({ iAlpha: (t) => 20 * Math.cos(OMEGA * t) }, cuts));
    expectWithin(
      worstCycle(steady, 'A', 0, 0.121)?.value,
      20 / Math.SQRT2,
      { relative: 1e-6 },
      'effective value',
    );
  });

  it('of a burst is the period that holds most of it', () => {
    // A symmetrical burst: the worst period is centred on it.
    const middle = 0.0571;
    const burst = (t: number) => 50 * Math.exp(-(((t - middle) / 0.02) ** 2));
    const found = worstCycle(quadratureOf(syntheticTrajectory({ iAlpha: burst }, cuts)), 'A', 0, 0.121);
    expectWithin(found?.time, middle + PERIOD / 2, { absolute: 1e-6 }, 'end of the worst period');
    let sum = 0;
    const count = 2000;
    for (let i = 0; i < count; i++)
      sum += burst(middle - PERIOD / 2 + ((i + 0.5) * PERIOD) / count) ** 2 / count;
    expectWithin(found?.value, Math.sqrt(sum), { relative: 1e-6 }, 'effective value');
  });

  it('of a decaying current begins where the window begins', () => {
    const decaying = quadratureOf(syntheticTrajectory({ iAlpha: (t) => 30 * Math.exp(-t / 0.03) }, cuts));
    const found = worstCycle(decaying, 'A', 0.01, 0.121);
    expectWithin(found?.time, 0.01 + PERIOD, { absolute: 1e-9 }, 'end of the worst period');
    const mean = (30 ** 2 * 0.015 * (Math.exp(-0.01 / 0.015) - Math.exp(-(0.01 + PERIOD) / 0.015))) / PERIOD;
    expectWithin(found?.value, Math.sqrt(mean), { relative: 1e-6 }, 'effective value');
  });

  it('with an offset that decays finds the best of many ripples', () => {
    for (const [offset, rate, angle] of [
      [0.9, 20, 0],
      [0.5, 60, 1],
      [1, 8, 2.2],
      [0.3, 30, 4],
    ] as const) {
      const current = (t: number) =>
        100 *
        (1 - Math.exp(-90 * t)) *
        (Math.cos(OMEGA * t + angle) - offset * Math.cos(angle) * Math.exp(-rate * t));
      const quadrature = quadratureOf(syntheticTrajectory({ iAlpha: current }, cuts));
      // By brute force: cumulative sum on a grid of a microsecond.
      const window = 16_667;
      const h = PERIOD / window;
      const n = Math.floor(0.121 / h);
      const total = new Float64Array(n + 1);
      for (let i = 0; i < n; i++) total[i + 1] = total[i]! + current((i + 0.5) * h) ** 2 * h;
      let best = 0;
      for (let i = window; i <= n; i++)
        best = Math.max(best, (total[i]! - total[i - window]!) / (window * h));
      const found = worstCycle(quadrature, 'A', 0, 0.121);
      expectWithin(found?.value, Math.sqrt(best), { relative: 1e-5 }, `offset ${offset}, rate ${rate}`);
    }
  });

  it('is null when the window is shorter than a period', () => {
    const steady = quadratureOf(syntheticTrajectory({ iAlpha: () => 1 }, cuts));
    expect(worstCycle(steady, 'A', 0.02, 0.02 + 0.9 * PERIOD)).toBe(null);
  });
});
