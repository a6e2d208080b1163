/**
 * Isolated star point, symmetrical current of crest Î: after the first pole clears the other two carry (√3/2)·Î and clear 90°
 * later (textbook physics, from memory). Arc charge over random instants of parting: mean (1 + √3)·Î/ω, least √3·Î/ω, most
 * (2 + √3)·Î/ω; first pole 1 − 3√3/(2π) = 0.1730·Î/ω in the
 * mean, each other pole 1.2795·Î/ω (the list of check values, averaged over instants, has 0.1731 and 1.2797).
 * Exact at locked rotor once the switching-on offset has decayed.
 */
import { describe, expect, it } from 'vitest';
import { steadyState } from '../../src/machine/steadyState.ts';
import { openingInstants } from '../../src/survey/openingInstants.ts';
import { run } from '../support/readings.ts';
import { scenarioOf } from '../support/scenarios.ts';
import { textbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

/** A machine whose offsets decay at 37/s or faster. */
const textbook = textbookMachine({
  lineVoltage: 400,
  frequency: 50,
  poles: 4,
  rs: 1,
  Xls: 1,
  XM: 5,
  cages: [{ rr: 1, Xlr: 1 }],
  J: 1e12,
  power: null,
  rpm: 1400,
});
const omega = 100 * Math.PI;
const crest = Math.SQRT2 * steadyState(textbook.machine, textbook.supply, 1).current;
/** s: e^{−37·0.7} is below 1e-11. */
const SETTLED = 0.7;
const PHASES = ['A', 'B', 'C'] as const;
/** Phase angle of the current at t = 0 with φ = 0. */
const lag = (() => {
  const [re, im] = steadyState(textbook.machine, textbook.supply, 1).statorCurrent;
  return Math.atan2(im, re);
})();

/** Opens all poles `alpha` radians before the current zero of phase A; 0 < alpha < 60° makes A the first pole. */
function open(alpha: number) {
  // i_A = Î·cos(ωt + φ + lag) is zero where its argument is 90°.
  const readings = run(
    scenarioOf(textbook, {
      supply: { angle: Math.PI / 2 - alpha - lag - omega * SETTLED },
      starter: { poles: 'arcing' },
      actions: [
        { at: 0, do: 'startForward' },
        { at: SETTLED, do: 'coast' },
      ],
      solver: { endTime: SETTLED + 0.03 },
    }),
  );
  const clearing = PHASES.map(
    (phase) =>
      readings.trajectory.events.find((event) => event.kind === 'poleClears' && event.phase === phase)?.t ??
      Number.NaN,
  );
  const charge = PHASES.map((phase, k) => Math.abs(readings.integral(`i${phase}`, SETTLED, clearing[k]!)));
  return { readings, clearing, charge };
}

/** Times to 1e-9 s at best; currents to 1e-7 of the crest. */
const TIME = { absolute: 2e-8 };

describe('opening at locked rotor', () => {
  it.each([0.1, 0.5, 1])(
    '%d rad before its zero, phase A clears first, the others together 90° later',
    (alpha) => {
      const { readings, clearing, charge } = open(alpha);
      const [a, b, c] = clearing as [number, number, number];
      expectWithin(a - SETTLED, alpha / omega, TIME, 'first pole');
      expectWithin(b - a, Math.PI / 2 / omega, TIME, 'second pole');
      expect(c).toBe(b);
      // In between: (√3/2)·Î·cos, at its crest where A clears, and opposite in the two phases.
      for (const share of [0, 0.3, 0.8]) {
        const point = readings.trajectory.at(a + (share * (Math.PI / 2)) / omega);
        const size = (Math.sqrt(3) / 2) * crest * Math.cos((share * Math.PI) / 2);
        expectWithin(Math.abs(point.iB), size, { absolute: 1e-6 * crest }, 'current of two poles');
        expectWithin(point.iA, 0, { absolute: 1e-12 * crest }, 'current of the open phase');
        expectWithin(point.iB + point.iC, 0, { absolute: 1e-12 * crest }, 'sum of currents');
      }
      const unit = crest / omega;
      expectWithin(
        charge[0],
        unit * (1 - Math.cos(alpha)),
        { absolute: 1e-6 * unit },
        'charge of the first pole',
      );
      // From parting to A's zero along Î·sin of ±120° ± ωt, then a quarter wave of (√3/2)·Î.
      const chargeOf = (shift: number) =>
        Math.abs(Math.cos(shift) - Math.cos(shift - alpha)) + Math.sqrt(3) / 2;
      const expected = [unit * chargeOf((2 * Math.PI) / 3), unit * chargeOf((4 * Math.PI) / 3)].sort(
        (x, y) => x - y,
      );
      const others = [charge[1]!, charge[2]!].sort((x, y) => x - y);
      expectWithin(others[0], expected[0]!, { absolute: 1e-6 * unit }, 'smaller charge');
      expectWithin(others[1], expected[1]!, { absolute: 1e-6 * unit }, 'larger charge');
    },
  );

  it('has the mean arc charge (1 + √3)·Î/ω over the instants of parting', () => {
    // Gauss–Legendre with three points over the 60° in which A is first (degree 5: 1e-6 for these smooth charges).
    const span = Math.PI / 3;
    const nodes = [
      [0.5 - Math.sqrt(0.15), 5 / 18],
      [0.5, 8 / 18],
      [0.5 + Math.sqrt(0.15), 5 / 18],
    ] as const;
    let total = 0;
    let first = 0;
    for (const [x, weight] of nodes) {
      const { charge } = open(x * span);
      total += (weight * (charge[0]! + charge[1]! + charge[2]!) * omega) / crest;
      first += (weight * charge[0]! * omega) / crest;
    }
    expectWithin(total, 1 + Math.sqrt(3), { absolute: 1e-5 }, 'mean total charge');
    expectWithin(total, 2.7321, { absolute: 5e-5 }, 'mean total charge as tabulated');
    expectWithin(
      first,
      1 - (3 * Math.sqrt(3)) / (2 * Math.PI),
      { absolute: 1e-5 },
      'mean charge of the first pole',
    );
    expectWithin(first, 0.1731, { absolute: 3e-4 }, 'mean charge of the first pole as listed');
    expectWithin((total - first) / 2, 1.2797, { absolute: 3e-4 }, 'mean charge of the other poles as listed');
  });

  it('ranges from √3 to 2 + √3 in arc charge', () => {
    for (const [alpha, expected] of [
      [1e-3, Math.sqrt(3)],
      [Math.PI / 3 - 1e-3, 2 + Math.sqrt(3)],
    ] as const) {
      const { charge } = open(alpha);
      const total = ((charge[0]! + charge[1]! + charge[2]!) * omega) / crest;
      // 1e-3 rad before the corner, where the sum changes by at most twice √3 per radian
      expectWithin(total, expected, { absolute: 4e-3 }, 'total charge');
    }
  });
});

describe('openings averaged over supply angles', () => {
  // Spread over half a period, 61 instants lie 60/61 ° apart modulo a sixth of it; the total charge falls by 2·Î/ω where the
  // first pole changes, so that a sum of rectangles is off by 2/61 at most.
  const COUNT = 61;
  const survey = openingInstants(
    scenarioOf(textbook, {
      starter: { poles: 'arcing' },
      actions: [
        { at: 0, do: 'startForward' },
        { at: SETTLED, do: 'coast' },
      ],
      solver: { endTime: SETTLED + 0.03 },
    }),
    COUNT,
  );
  const breaking = survey.means?.breakings[0];

  it('have the mean arc charge 2.7321·Î/ω', () => {
    expectWithin(
      (breaking!.meanArcCharge * omega) / crest,
      2.7321,
      { absolute: 2 / COUNT },
      'mean total charge',
    );
  });

  it('share it evenly among the poles', () => {
    for (const pole of breaking!.poles)
      expectWithin(
        (pole.meanArcCharge * omega) / crest,
        2.7321 / 3,
        { absolute: 2 / COUNT },
        `pole ${pole.phase}`,
      );
  });

  it('have the steady current at rest for their equivalent current', () => {
    expectWithin(
      breaking!.equivalentCurrent,
      crest / Math.SQRT2,
      { relative: 2 / COUNT / 2.7321 },
      'current',
    );
  });
});
