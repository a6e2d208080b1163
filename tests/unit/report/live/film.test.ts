import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { type RunResult, simulate } from '../../../../src/index.ts';
import { poleIntervals, switchIntervals } from '../../../../src/report/contactIntervals.ts';
import type { FilmEnergy } from '../../../../src/report/live/film.ts';
import { filmOf } from '../../../../src/report/live/filmOf.ts';
import { frameAt } from '../../../../src/report/live/frameAt.ts';
import { exactFrame } from '../../../../src/report/live/frameOfPoint.ts';
import { sampleBelow } from '../../../../src/report/live/sampleBelow.ts';
import { stationAt } from '../../../../src/report/live/stationAt.ts';
import { everyElement } from '../../../support/everyElement.ts';
import { exampleText } from '../../../support/examples.ts';
import { ARCING_STARTER, IDEAL_STARTER, scenarioOf } from '../../../support/scenarios.ts';
import { shortRun } from '../../../support/shortRun.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const belt = simulate(parseScenario(shortRun()));

/** Pound-force foot in N·m, from its definition: 0.3048 m, 0.45359237 kg, 9.80665 m/s². */
const LBF_FT = 0.3048 * 0.45359237 * 9.80665;

describe('the film of a run', () => {
  it('shows at every sample what the trajectory says there, in r/min', () => {
    const film = filmOf(belt, 'SI');
    for (const k of [0, 1, 777, film.columns.t.length - 1]) {
      const t = film.columns.t[k]!;
      const point = belt.trajectory.at(t);
      expect(film.columns.iB[k]).toBe(point.iB);
      expect(film.columns.psiRBeta[k]).toBe(point.psiRBeta);
      expectWithin(film.columns.speed[k], (point.speed * 30) / Math.PI, { relative: 1e-14 }, 'speed');
      const lineRms = Math.sqrt(1.5 * (point.uAlpha ** 2 + point.uBeta ** 2));
      expectWithin(film.columns.voltage[k], lineRms, { relative: 1e-12, absolute: 1e-9 }, 'voltage');
    }
  });

  it('has eighty samples a cycle, evenly spaced from end to end', () => {
    const { columns, tStart, tEnd } = filmOf(belt, 'SI');
    const cycles = (tEnd - tStart) * 50;
    expect(columns.t.length).toBe(Math.ceil(80 * cycles) + 1);
    expect(columns.t[0]).toBe(tStart);
    expect(columns.t.at(-1)).toBe(tEnd);
  });

  it('shows torque in lbf·ft and energy in Btu in US units, and nothing else differently', () => {
    const si = filmOf(belt, 'SI');
    const us = filmOf(belt, 'us');
    const k = 1234;
    expectWithin(us.columns.torque[k], si.columns.torque[k]! / LBF_FT, { relative: 1e-12 }, 'torque');
    expectWithin(us.base.torque, si.base.torque / LBF_FT, { relative: 1e-12 }, 'base');
    expect(us.columns.speed[k]).toBe(si.columns.speed[k]);
    expect(us.columns.iA[k]).toBe(si.columns.iA[k]);
    const [btu, kJ] = [us, si].map((film) => film.energies.rows[0]!.values.at(-1)!);
    expectWithin(btu, (kJ! * 1000) / 1055.05585262, { relative: 1e-12 }, 'energy in');
  });

  it('names the sequence at the motor: forward, nothing in the dead time, reversed, nothing after', () => {
    const film = filmOf(belt, 'SI');
    const full = film.feeds.filter(({ conducting }) => conducting !== 2);
    expect(full.map(({ sequence, conducting }) => [sequence, conducting])).toEqual([
      [0, 0],
      [1, 3],
      [0, 0],
      [-1, 3],
      [0, 0],
    ]);
    expect(film.feeds.filter(({ conducting }) => conducting === 2).map(({ sequence }) => sequence)).toEqual([
      1, -1,
    ]);
  });
});

describe('a frame between samples', () => {
  it('at a sample is that sample, in between on the straight line, outside the run its end', () => {
    const film = filmOf(belt, 'SI');
    const { t, torque } = film.columns;
    expect(frameAt(film, t[500]!).torque).toBe(torque[500]);
    const middle = (t[500]! + t[501]!) / 2;
    expectWithin(
      frameAt(film, middle).torque,
      (torque[500]! + torque[501]!) / 2,
      { relative: 1e-9 },
      'middle',
    );
    expect(frameAt(film, -1).torque).toBe(torque[0]);
    expect(frameAt(film, film.tEnd + 1).torque).toBe(torque.at(-1));
  });

  it('is as near to the exact one as a chord is to an arc of 4.5°', () => {
    const film = filmOf(belt, 'SI');
    // Steady running before the plug at 0.35 s; a chord's sagitta is 1 − cos(2.25°) of the amplitude.
    const near = 1 - Math.cos(Math.PI / 80);
    for (let i = 0; i < 50; i++) {
      const t = 0.3 + i * 0.000913;
      const exact = exactFrame(belt.trajectory, 'SI', t);
      const size = Math.hypot(exact.psiAlpha, exact.psiBeta);
      expectWithin(frameAt(film, t).psiAlpha, exact.psiAlpha, { absolute: 1.05 * near * size }, 'flux');
    }
  });

  it('not interpolated has the same units', () => {
    const film = filmOf(belt, 'us');
    const k = 900;
    const exact = exactFrame(belt.trajectory, 'us', film.columns.t[k]!);
    const frame = frameAt(film, film.columns.t[k]!);
    expect(Object.keys(frame).sort()).toEqual(Object.keys(exact).sort());
    for (const [name, value] of Object.entries(frame))
      expectWithin(value, exact[name as keyof typeof exact], { relative: 1e-12, absolute: 1e-12 }, name);
  });

  it('finds the place among uneven instants', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 30 }),
        fc.double({ min: -10, max: 1010, noNaN: true }),
        (numbers, t) => {
          const instants = numbers.toSorted((a, b) => a - b);
          const { index, share } = sampleBelow(instants, t);
          const from = instants[index]!;
          const at = share === 0 ? from : from + share * (instants[index + 1]! - from);
          const clamped = Math.min(Math.max(t, instants[0]!), instants.at(-1)!);
          expect(Math.abs(at - clamped)).toBeLessThan(1e-9);
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThan(1);
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });
});

describe('evenly spaced samples of a trajectory', () => {
  it('are bit for bit the single readings, over every switching and however they are spaced', () => {
    const { trajectory } = belt;
    for (const [t0, t1, count] of [
      [trajectory.tStart, trajectory.tEnd, 997],
      [0.35, 0.42, 311],
      [trajectory.events[5]!.t, trajectory.events.at(-3)!.t, 50],
      [-0.1, trajectory.tEnd + 0.1, 101],
      // From the start of every step on: there the step before must not be read any more.
      ...trajectory.segments.flatMap(({ steps }) => steps.map(({ t0, t1 }) => [t0, t1, 3] as const)),
    ] as const) {
      const columns = trajectory.sample(t0, t1, count);
      for (let i = 0; i < count; i++) {
        const point = trajectory.at(i === count - 1 ? t1 : t0 + (i * (t1 - t0)) / (count - 1));
        for (const [name, value] of Object.entries(point))
          expect(Object.is(columns[name as keyof typeof point][i], value)).toBe(true);
      }
    }
  });
});

/** Value of a row in J; a row that is not there is zero. */
function at(rows: readonly FilmEnergy[], key: FilmEnergy['key'], k: number): number {
  return 1000 * (rows.find((row) => row.key === key)?.values.at(k) ?? 0);
}

/** Machines with every destination of energy, and ideal poles that chop currents. */
const RUNS: readonly (readonly [string, () => RunResult])[] = (
  [
    ['the belt', () => belt],
    ['every element', () => simulate(everyElement())],
    [
      'slip rings with resistors',
      () => simulate(parseScenario(exampleText('how-hard-does-plugging-twist-the-shaft.yaml'))),
    ],
    [
      'ideal poles that chop the current of a coasting machine',
      () =>
        simulate(
          scenarioOf(KRAUSE.hp3, {
            starter: IDEAL_STARTER,
            actions: [
              { at: 0, do: 'startForward' },
              { at: 0.0312, do: 'coast' },
              { at: 0.06, do: 'startReverse' },
            ],
            solver: { endTime: 0.1 },
          }),
        ),
    ],
  ] as const
).map(([name, run]) => {
  let made: RunResult | null = null;
  return [
    name,
    () => {
      made ??= run();
      return made;
    },
  ];
});

describe('the energies of a film', () => {
  it.each(RUNS)('of %s are at the end the terms of the ledger', (_, run) => {
    const result = run();
    const { ledger } = result;
    const { rows } = filmOf(result, 'SI').energies;
    const expected: Record<FilmEnergy['key'], number> = {
      in: ledger.electricalIn,
      source: ledger.sourceLoss,
      lines: ledger.cableLoss + ledger.lineResistorLoss + ledger.interruptionLoss,
      stator: ledger.statorLoss,
      cage: ledger.rotorLoss.reduce((sum, loss) => sum + loss, 0),
      rotorResistors: ledger.rotorResistorLoss,
      iron: ledger.ironLoss,
      magnetic: ledger.magneticChange,
      shaft: ledger.kineticChange + ledger.twistChange,
      load:
        ledger.frictionLoss + ledger.windageLoss + ledger.loadWork + ledger.gearLoss + ledger.couplingLoss,
    };
    const tolerance = { absolute: 1e-9 * ledger.throughput };
    for (const [key, value] of Object.entries(expected))
      expectWithin(at(rows, key as FilmEnergy['key'], -1), value, tolerance, key);
  });

  it.each(RUNS)('of %s balance at every instant', (_, run) => {
    const result = run();
    const { t, rows } = filmOf(result, 'SI').energies;
    const others = rows.filter(({ key }) => key !== 'in').map(({ key }) => key);
    for (let k = 0; k < t.length; k++) {
      const sum = others.reduce((total, key) => total + at(rows, key, k), 0);
      expectWithin(sum, at(rows, 'in', k), { absolute: 1e-6 * result.ledger.throughput }, `at ${t[k]} s`);
    }
  });

  it('have each destination in one of these runs, and a chopped current', () => {
    const keys = new Set(RUNS.flatMap(([, run]) => filmOf(run(), 'SI').energies.rows.map(({ key }) => key)));
    expect([...keys].sort()).toEqual(
      [
        'in',
        'source',
        'lines',
        'stator',
        'cage',
        'rotorResistors',
        'iron',
        'magnetic',
        'shaft',
        'load',
      ].sort(),
    );
    expect(RUNS[3]![1]().trajectory.interruptionLoss).toBeGreaterThan(0);
  });

  it('leave out what is zero throughout', () => {
    const keys = filmOf(belt, 'SI').energies.rows.map(({ key }) => key);
    expect(keys).toEqual(['in', 'stator', 'cage', 'magnetic', 'shaft', 'load']);
  });
});

describe('the starter at random instants of a real run', () => {
  const runs: readonly (readonly [string, RunResult])[] = [
    ['commands to the coils', belt],
    ['a control circuit', simulate(parseScenario(exampleText('what-happens-after-the-stop-button.yaml')))],
    [
      'a machine that runs at first',
      simulate(
        scenarioOf(KRAUSE.hp3, {
          starter: ARCING_STARTER,
          initial: 'runningForward',
          actions: [{ at: 0.02, do: 'startReverse' }],
          solver: { endTime: 0.12 },
        }),
      ),
    ],
  ];

  it.each(runs)(
    'with %s has the poles and the switch that the events tell of',
    (_, { trajectory, scenario, ...rest }) => {
      const film = filmOf({ trajectory, scenario, ...rest }, 'SI');
      // Every change of a pole is an instant that must be on the right side, so instants crowd around events.
      const instants = trajectory.events.flatMap(({ t }) => [t - 1e-7, t + 1e-7]);
      for (let i = 0; i < 300; i++) instants.push((film.tEnd * ((i * 0.618034) % 1)) as number);
      const states = (intervals: ReturnType<typeof poleIntervals>, t: number) =>
        intervals.find(({ x0, x1 }) => t >= x0 && t < x1)?.state ?? 'open';
      const poles = (['forward', 'reverse'] as const).flatMap((contactor) =>
        (['A', 'B', 'C'] as const).map(
          (phase) => [contactor, phase, poleIntervals(trajectory, contactor, phase)] as const,
        ),
      );
      const closed = switchIntervals(trajectory);
      for (const t of instants.filter((one) => one > 0 && one < film.tEnd)) {
        const station = stationAt(film, scenario, t);
        for (const [contactor, phase, intervals] of poles)
          expect([t, contactor, phase, station.contactors[contactor].poles[phase]]).toEqual([
            t,
            contactor,
            phase,
            states(intervals, t),
          ]);
        if (station.zeroSpeedSwitch !== null)
          expect(station.zeroSpeedSwitch.forward || station.zeroSpeedSwitch.reverse).toBe(
            states(closed, t) === 'closed',
          );
      }
    },
  );
});
