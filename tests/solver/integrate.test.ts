import { describe, expect, it } from 'vitest';
import { cosine } from '../../src/numeric/sineCosine.ts';
import { integrate, type OdeProblem, type SolverOptions } from '../../src/simulate/integrate.ts';
import { SimulationError } from '../../src/simulate/simulationError.ts';
import type { Step } from '../../src/simulate/step.ts';
import { withNudgedMath } from '../support/nudgedMath.ts';
import { numbersOf } from '../support/numbersOf.ts';
import { errorInTolerances, expectAllWithin, expectWithin } from '../support/tolerance.ts';

/** x'' = −x: [cos t, −sin t] from [1, 0]. */
const CIRCLE: OdeProblem = {
  size: 2,
  derivatives: (_t, y, dydt) => {
    dydt[0] = y[1]!;
    dydt[1] = -y[0]!;
  },
};

/** One state at rest, one that decays. */
const HALF_AT_REST: OdeProblem = {
  size: 2,
  derivatives: (_t, y, dydt) => {
    dydt[0] = 0;
    dydt[1] = -y[1]!;
  },
};

/** One state with the slope of a function of time and state. */
function scalar(slope: (t: number, y: number) => number): OdeProblem {
  return {
    size: 1,
    derivatives: (t, y, dydt) => {
      dydt[0] = slope(t, y[0]!);
    },
  };
}

/**
 * y' = −1000·y with a slope that is no number below −1e-3, where the solution never goes. A wide tolerance asks for steps that
 * are too long and lead there.
 */
function cliff(onTrial = () => {}): OdeProblem {
  return scalar((_t, y) => {
    if (y >= -1e-3) return -1000 * y;
    onTrial();
    return Number.NaN;
  });
}

function optionsOf(relativeTolerance: number, more: Partial<SolverOptions> = {}, size = 2) {
  return {
    relativeTolerance,
    absoluteTolerance: new Array<number>(size).fill(relativeTolerance),
    stats: { evaluations: 0, steps: 0 },
    maxSteps: 10_000,
    ...more,
  };
}

/** The same problem, with the number of its evaluations and the latest instant of any. */
function counted(problem: OdeProblem) {
  const count = { calls: 0, latest: Number.NEGATIVE_INFINITY };
  const derivatives: OdeProblem['derivatives'] = (t, y, dydt) => {
    count.calls++;
    count.latest = Math.max(count.latest, t);
    problem.derivatives(t, y, dydt);
  };
  return { count, problem: { size: problem.size, derivatives } };
}

function failureOf(work: () => unknown): SimulationError {
  try {
    work();
  } catch (error) {
    if (error instanceof SimulationError) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}

describe('the accuracy of an integration', () => {
  it('is that of its tolerance, with work that grows slowly as the tolerance tightens', () => {
    for (const [tolerance, mostEvaluations] of [
      [1e-6, 400],
      [1e-9, 800],
      [1e-11, 1300],
    ] as const) {
      const options = optionsOf(tolerance);
      let last = 0;
      for (const step of integrate(CIRCLE, 0, [1, 0], 20, options)) last = step.value(0, step.t1);
      // Errors of some tens of steps add up.
      expectWithin(last, Math.cos(20), { absolute: 30 * tolerance }, 'cos 20');
      expect(options.stats.evaluations).toBeLessThan(mostEvaluations);
    }
  });

  it('holds inside the steps too, of which interpolants stay exact after later steps', () => {
    const steps = [...integrate(CIRCLE, 0, [1, 0], 60, optionsOf(1e-9))];
    // More than one block of memory holds.
    expect(steps.length).toBeGreaterThan(40);
    for (const step of steps)
      for (const share of [0, 0.21, 0.5, 0.83, 1]) {
        const t = step.t0 + share * (step.t1 - step.t0);
        expectWithin(step.value(0, t), Math.cos(t), { absolute: 1e-7 }, `x at ${t}`);
        expectWithin(step.value(1, t), -Math.sin(t), { absolute: 1e-7 }, `x' at ${t}`);
      }
  });

  it('weighs each state by its own absolute tolerance', () => {
    // A state of size 1e-6: with an absolute tolerance of its size it is resolved, without it is not.
    const small: OdeProblem = {
      size: 2,
      derivatives: (_t, y, dydt) => {
        dydt[0] = 40 * y[1]!;
        dydt[1] = -40 * y[0]!;
      },
    };
    const errorWith = (absolute: number) => {
      const options = optionsOf(1e-12, { absoluteTolerance: [absolute, absolute] });
      let last = 0;
      for (const step of integrate(small, 0, [1e-6, 0], 2, options)) last = step.value(0, step.t1);
      return errorInTolerances(last, 1e-6 * Math.cos(80), { absolute: 1e-13 });
    };
    expect(errorWith(1e-15)).toBeLessThan(1);
    expect(errorWith(1e-7)).toBeGreaterThan(10);
  });

  it('outlives a sudden change of slope: steps shorten there and grow again', () => {
    const bent = scalar((t) => (t < 1 / 3 ? 1 : -2));
    const steps = [...integrate(bent, 0, [0], 1, optionsOf(1e-8, {}, 1))];
    expectWithin(steps.at(-1)!.value(0, 1), -1, { absolute: 1e-6 }, 'end');
    const lengths = steps.map(({ t0, t1 }) => t1 - t0);
    expect(Math.min(...lengths)).toBeLessThan(1e-6);
    expect(lengths.at(-1)).toBeGreaterThan(1e-2);
  });

  it('does not depend on where time begins', () => {
    const [a, b] = [0, 1024].map((t0) => {
      let end: number[] = [];
      for (const step of integrate(CIRCLE, t0, [1, 0], t0 + 8, optionsOf(1e-10)))
        end = [0, 1].map((i) => step.value(i, step.t1));
      return end;
    });
    expectAllWithin(b!, a!, { absolute: 1e-11 }, 'state');
  });
});

describe('the steps', () => {
  it.each([
    [0, 0.7],
    [0.1, 0.3],
    [1.2345678, 1.2345679],
    [5, 5 + 1e-9],
    [-1, 0.5],
    [-1, 0],
    [-3, -2.1],
    [1e6, 1e6 + 0.3],
  ])('join without gap from %d and end at %d to the last bit', (t0, tEnd) => {
    let at = t0;
    let state = [1, 0];
    for (const step of integrate(CIRCLE, t0, state, tEnd, optionsOf(1e-8))) {
      expect(step.t0).toBe(at);
      expect(step.t1).toBeGreaterThan(step.t0);
      expectAllWithin(
        [0, 1].map((i) => step.value(i, step.t0)),
        state,
        { absolute: 1e-10 },
        'state at a joint',
      );
      at = step.t1;
      state = [0, 1].map((i) => step.value(i, at));
      if (at > tEnd) break;
    }
    expect(at).toBe(tEnd);
    const exact = [Math.cos(tEnd - t0), -Math.sin(tEnd - t0)];
    // At 1e6 an instant itself is known to 1e-10.
    expectAllWithin(state, exact, { absolute: 1e-7 }, 'end');
  });

  it('end to the last bit wherever the last one begins', () => {
    // The sum of an instant and what is left to the end is not always the end.
    let missed = 0;
    for (const tEnd of numbersOf(300, (share) => 0.05 + share)) {
      const last = [...integrate(CIRCLE, -0.7, [1, 0], tEnd, optionsOf(1e-4))].at(-1)!;
      expect(last.t1).toBe(tEnd);
      if (last.t0 + (tEnd - last.t0) !== tEnd) missed++;
    }
    expect(missed).toBeGreaterThan(0);
  });

  it('are no longer than the longest allowed, but for a hundredth of the last', () => {
    const longest = 0.13;
    for (const tEnd of numbersOf(40, (share) => 2 + 2 * longest * share)) {
      const options = optionsOf(1e-6, { longestStep: longest }, 1);
      const lengths = [
        ...integrate(
          scalar(() => 1),
          0,
          [0],
          tEnd,
          options,
        ),
      ].map(({ t0, t1 }) => t1 - t0);
      expect(Math.max(...lengths.slice(0, -1))).toBeLessThanOrEqual(longest * (1 + 1e-12));
      expect(lengths.at(-1)).toBeLessThanOrEqual(1.01 * longest * (1 + 1e-12));
      expect(lengths.length).toBeGreaterThanOrEqual(15);
    }
    const free = [
      ...integrate(
        scalar(() => 1),
        0,
        [0],
        2,
        optionsOf(1e-6, {}, 1),
      ),
    ];
    expect(free.length).toBeLessThan(10);
  });

  it('may be cut: a step until an earlier instant is the same curve with another end', () => {
    const [step] = integrate(CIRCLE, 0, [1, 0], 20, optionsOf(1e-9));
    const { t0, t1 } = step!;
    const t = t0 + 0.3 * (t1 - t0);
    const cut = step!.until(t);
    expect([cut.t0, cut.t1]).toEqual([t0, t]);
    for (const share of [0, 0.4, 1]) {
      const at = t0 + share * (t - t0);
      expect(cut.value(1, at)).toBe(step!.value(1, at));
      const [read, wanted] = [new Float64Array(2), new Float64Array(2)];
      cut.read(at, 0, 2, read);
      step!.read(at, 0, 2, wanted);
      expect(read).toEqual(wanted);
      expect(read[1]).toBe(cut.value(1, at));
    }
    expect(cut.until(t1).value(0, t1)).toBe(step!.value(0, t1));
    expect(step!.t1).toBe(t1);
  });

  it.each([
    ['a state of zero', CIRCLE, [0, 0], [0, 0]],
    ['a state that does not change', scalar(() => 0), [3], [3]],
    ['a slope that is zero at first', scalar((t) => t), [0], [50]],
    ['one state at rest beside one that moves', HALF_AT_REST, [0, 1], [0, Math.exp(-10)]],
  ] as [string, OdeProblem, number[], number[]][])('lead on from %s', (_name, problem, y0, end) => {
    const options = optionsOf(1e-9, {}, problem.size);
    const last = [...integrate(problem, 0, y0, 10, options)].at(-1)!;
    expectAllWithin(
      y0.map((_, i) => last.value(i, 10)),
      end,
      { absolute: 1e-8 },
      'end',
    );
    expect(options.stats.steps).toBeLessThan(60);
  });

  it('let the caller stop by breaking out, and two integrations run side by side', () => {
    const a = integrate(CIRCLE, 0, [1, 0], 20, optionsOf(1e-9));
    const b = integrate(CIRCLE, 0, [0, 1], 20, optionsOf(1e-9));
    let reached = 0;
    for (const step of a) {
      const other = b.next();
      if (other.done === true || step.t1 > 10) break;
      reached = step.t1;
      expectWithin(step.value(0, step.t1), Math.cos(step.t1), { absolute: 1e-7 }, 'first');
      const t = other.value.t1;
      expectWithin(other.value.value(0, t), Math.sin(t), { absolute: 1e-7 }, 'second');
    }
    expect(reached).toBeGreaterThan(8);
    expect(a.next().done).toBe(true);
  });

  it('leave the initial state they were given as it was', () => {
    const y0 = [1, 0];
    for (const _step of integrate(CIRCLE, 0, y0, 3, optionsOf(1e-6)));
    expect(y0).toEqual([1, 0]);
  });

  it('have the same bits on every engine', () => {
    const driven: OdeProblem = {
      size: 2,
      derivatives: (t, y, dydt) => {
        dydt[0] = y[1]!;
        dydt[1] = (1 - y[0]! * y[0]!) * y[1]! * 5 - y[0]! + cosine(3 * t);
      },
    };
    const digits = () =>
      [...integrate(driven, 0, [2, 0], 8, optionsOf(1e-7))].map((step) => [
        step.t1,
        step.value(0, step.t1),
        step.value(1, step.t0 + 0.4 * (step.t1 - step.t0)),
      ]);
    expect(withNudgedMath(digits)).toEqual(digits());
  });
});

describe('the count of work', () => {
  it.each([
    ['smooth', CIRCLE, [1, 0], 20],
    ['with refused steps', scalar((t) => (t < 1 / 3 ? 1 : -2)), [0], 1],
    ['with trial steps that are no numbers', cliff(), [1], 0.1],
  ] as [string, OdeProblem, number[], number][])('is true: %s', (_name, problem, y0, tEnd) => {
    const { count, problem: watched } = counted(problem);
    const options = optionsOf(1e-2, {}, problem.size);
    const steps = [...integrate(watched, 0, y0, tEnd, options)];
    expect(options.stats).toEqual({ evaluations: count.calls, steps: steps.length });
  });

  it('goes on over several integrations and ends at the limit with the time reached', () => {
    const options = optionsOf(1e-9, { maxSteps: 20 });
    const first = [...integrate(CIRCLE, 0, [1, 0], 5, options)];
    expect(first.length).toBeLessThan(20);
    const { count, problem } = counted(CIRCLE);
    const before = options.stats.evaluations;
    const failure = failureOf(() => [...integrate(problem, 0, [1, 0], 1000, options)]);
    expect(failure.code).toBe('stepLimit');
    expect(failure.message).toBe('20 integration steps were not enough');
    expect(failure.time).toBeGreaterThan(0);
    expect(failure.time).toBeLessThan(1000);
    expect(options.stats.steps).toBe(21);
    expect(options.stats.evaluations - before).toBe(count.calls);
  });

  it('is just enough at the limit itself', () => {
    const free = optionsOf(1e-9);
    const { length } = [...integrate(CIRCLE, 0, [1, 0], 5, free)];
    expect([...integrate(CIRCLE, 0, [1, 0], 5, optionsOf(1e-9, { maxSteps: length }))]).toHaveLength(length);
  });
});

describe('a derivative that is not a number', () => {
  it.each([
    ['NaN', () => Number.NaN],
    ['Infinity', (y: number) => 1 / (y - y)],
    ['-Infinity', () => Number.NEGATIVE_INFINITY],
  ])('ends the run where it begins, with its time and state: %s', (word, bad) => {
    const problem: OdeProblem = {
      size: 2,
      derivatives: (_t, y, dydt) => {
        dydt[0] = y[1]!;
        dydt[1] = bad(y[0]!);
      },
    };
    const { count, problem: watched } = counted(problem);
    const failure = failureOf(() => [...integrate(watched, 0.25, [0, 1], 1, optionsOf(1e-6))]);
    expect(failure.code).toBe('nonFiniteValue');
    expect(failure.time).toBe(0.25);
    expect(failure.message).toBe(`state 1 of 2 has the derivative ${word}`);
    expect(count.calls).toBeLessThan(30);
  });

  it('that cannot be passed ends the run in front of it, after little work', () => {
    for (const wall of [0.5, 1e-3, 2 ** 20]) {
      const { count, problem } = counted(scalar((t) => (t > wall ? Number.NaN : 1)));
      const steps: Step[] = [];
      const failure = failureOf(() => {
        for (const step of integrate(problem, 0, [0], 2 * wall, optionsOf(1e-6, {}, 1))) steps.push(step);
      });
      expect(failure.code).toBe('nonFiniteValue');
      expectWithin(failure.time, wall, { relative: 1e-9, absolute: 1e-12 }, 'time');
      expect(failure.time).toBeLessThanOrEqual(wall);
      expect(count.calls).toBeLessThan(3000);
      // What has been integrated stays readable.
      for (const step of steps) expectWithin(step.value(0, step.t1), step.t1, { relative: 1e-9 }, 'state');
    }
  });

  it('at a pole of the solution ends the run at the pole', () => {
    // y' = y² from 1: y = 1/(1 − t).
    const failure = failureOf(() => [
      ...integrate(
        scalar((_t, y) => y * y),
        0,
        [1],
        2,
        optionsOf(1e-8, {}, 1),
      ),
    ]);
    expect(failure.code).toBe('nonFiniteValue');
    expectWithin(failure.time, 1, { absolute: 1e-6 }, 'pole');
  });

  it('at a trial point alone is no failure: a shorter step is taken', () => {
    let trials = 0;
    const problem = cliff(() => {
      trials++;
    });
    const last = [...integrate(problem, 0, [1], 0.1, optionsOf(1e-2, {}, 1))].at(-1)!;
    expect(trials).toBeGreaterThan(0);
    expectWithin(last.value(0, 0.1), 0, { absolute: 2e-2 }, 'end');
  });

  it('in a single evaluation, whichever it is, never reaches a step that is given out', () => {
    // The n-th evaluation fails and the same again does not, so that every stage of a step and of its interpolant is met.
    const free = optionsOf(1e-8);
    const { length } = [...integrate(CIRCLE, 0, [1, 0], 1, free)];
    expect(length).toBeGreaterThan(1);
    for (let failing = 2; failing <= free.stats.evaluations; failing++) {
      let calls = 0;
      const problem: OdeProblem = {
        size: 2,
        derivatives: (t, y, dydt) => {
          CIRCLE.derivatives(t, y, dydt);
          if (++calls === failing) dydt[1] = Number.NaN;
        },
      };
      const steps: Step[] = [];
      try {
        for (const step of integrate(problem, 0, [1, 0], 1, optionsOf(1e-8))) steps.push(step);
      } catch (error) {
        expect(error).toBeInstanceOf(SimulationError);
      }
      for (const step of steps)
        for (const share of [0.25, 1]) {
          const t = step.t0 + share * (step.t1 - step.t0);
          expectWithin(step.value(0, t), Math.cos(t), { absolute: 1e-6 }, `evaluation ${failing}, x at ${t}`);
        }
    }
  });
});
