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
import { publishedSource } from '../support/published.ts';
import { run } from '../support/readings.ts';
import { scenarioOf } from '../support/scenarios.ts';
import { textbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';
import { otherComparisons } from '../support/worstOf.ts';

const { compare, listedInGuide } = publishedSource(
  'firstPoleToClear',
  'Three poles that open a symmetrical current of crest Î and angular frequency ω with the star point isolated: one clears at its ' +
    'zero, the others carry (√3/2)·Î and clear together a quarter of a period later (textbook physics, from memory); from that follow ' +
    'times and charges of the arcs. Rows marked as computed are means over a grid of instants, good to three digits; a mean over 61 ' +
    'angles of the supply is one over a charge that jumps, good to 0.033 Î/ω. Of 36 comparisons the 13 that are not here, at other ' +
    'instants of parting, are represented by their worst time, current and charge.',
  'exact',
);
const COMPUTED = 'computed independently';
/** Charges of arcs, in the guide. */
const UNIT = 'Î/ω';

/** The guide shows only the worst of these. */
const others = otherComparisons();
const expectOther = others.demand;

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
const MILLISECONDS = { absolute: 2e-5 };

describe('opening at locked rotor', () => {
  it.each([0.1, 0.5, 1])(
    '%d rad before its zero, phase A clears first, the others together 90° later',
    (alpha) => {
      const { readings, clearing, charge } = open(alpha);
      const [a, b, c] = clearing as [number, number, number];
      const demand = alpha === 0.5 ? compare : expectOther;
      const parted = `parted ${alpha} rad before the zero of phase A`;
      const pole = `parting to clearing of the first pole, ${parted}`;
      const rest = `clearing of the first pole to that of the others, ${parted}`;
      demand(1000 * (a - SETTLED), (1000 * alpha) / omega, MILLISECONDS, pole, 'ms');
      demand(1000 * (b - a), (1000 * (Math.PI / 2)) / omega, MILLISECONDS, rest, 'ms');
      expect(c).toBe(b);
      // In between: (√3/2)·Î·cos, at its crest where A clears, and opposite in the two phases.
      for (const share of [0, 0.3, 0.8]) {
        const point = readings.trajectory.at(a + (share * (Math.PI / 2)) / omega);
        const size = (Math.sqrt(3) / 2) * Math.cos((share * Math.PI) / 2);
        const quantity = `current of the last two poles, ${100 * share} % of the way to their zero, ${parted}`;
        demand(Math.abs(point.iB) / crest, size, { absolute: 1e-6 }, quantity, 'Î');
        expectWithin(point.iA, 0, { absolute: 1e-12 * crest }, 'current of the open phase');
        expectWithin(point.iB + point.iC, 0, { absolute: 1e-12 * crest }, 'sum of currents');
      }
      const unit = crest / omega;
      const last = { absolute: 1e-6 };
      const arc = `charge of the arc, ${parted}`;
      demand(charge[0]! / unit, 1 - Math.cos(alpha), last, `${arc}: first pole`, UNIT);
      // From parting to A's zero along Î·sin of ±120° ± ωt, then a quarter wave of (√3/2)·Î.
      const chargeOf = (shift: number) =>
        Math.abs(Math.cos(shift) - Math.cos(shift - alpha)) + Math.sqrt(3) / 2;
      const expected = [chargeOf((2 * Math.PI) / 3), chargeOf((4 * Math.PI) / 3)].sort((x, y) => x - y);
      const later = [charge[1]!, charge[2]!].sort((x, y) => x - y);
      demand(later[0]! / unit, expected[0]!, last, `${arc}: the smaller of the others`, UNIT);
      demand(later[1]! / unit, expected[1]!, last, `${arc}: the larger of the others`, UNIT);
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
    const mean = 'mean charge of the arcs over the instants of parting';
    const one = 1 - (3 * Math.sqrt(3)) / (2 * Math.PI);
    compare(total, 1 + Math.sqrt(3), { absolute: 1e-5 }, `${mean}: all three`, UNIT);
    compare(total, 2.7321, { absolute: 5e-5 }, `${mean}: all three`, UNIT, COMPUTED);
    compare(first, one, { absolute: 1e-5 }, `${mean}: first pole`, UNIT);
    compare(first, 0.1731, { absolute: 3e-4 }, `${mean}: first pole`, UNIT, COMPUTED);
    compare((total - first) / 2, 1.2797, { absolute: 3e-4 }, `${mean}: each other pole`, UNIT, COMPUTED);
  });

  it('ranges from √3 to 2 + √3 in arc charge', () => {
    for (const [alpha, expected, which] of [
      [1e-3, Math.sqrt(3), 'least'],
      [Math.PI / 3 - 1e-3, 2 + Math.sqrt(3), 'greatest'],
    ] as const) {
      const { charge } = open(alpha);
      const total = ((charge[0]! + charge[1]! + charge[2]!) * omega) / crest;
      // 1e-3 rad before the corner, where the sum changes by at most twice √3 per radian
      const quantity = `${which} charge of the three arcs (ours 0.001 rad from the instant where it jumps)`;
      compare(total, expected, { absolute: 4e-3 }, quantity, UNIT);
    }
  });
});

describe('openings averaged over supply angles', () => {
  // Spread over half a period, 61 instants lie 60/61 ° apart modulo a sixth of it; the total charge falls by 2·Î/ω where the
  // first pole changes, so that a sum of rectangles is off by 2/61 at most.
  const COUNT = 61;
  const AVERAGED = 'mean over 61 angles of the supply';
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
    const charge = (breaking!.meanArcCharge * omega) / crest;
    compare(charge, 2.7321, { absolute: 2 / COUNT }, `charge of the three arcs, ${AVERAGED}`, UNIT);
  });

  it('share it evenly among the poles', () => {
    for (const pole of breaking!.poles)
      compare(
        (pole.meanArcCharge * omega) / crest,
        2.7321 / 3,
        { absolute: 2 / COUNT },
        `charge of the arc of pole ${pole.phase}, ${AVERAGED}`,
        UNIT,
      );
  });

  it('have the steady current at rest for their equivalent current', () => {
    const current = (breaking!.equivalentCurrent ?? Number.NaN) / crest;
    const allowed = { relative: 2 / COUNT / 2.7321 };
    compare(current, 1 / Math.SQRT2, allowed, `current that wears as much, r.m.s., ${AVERAGED}`, 'Î');
  });
});

it('of all others the worst stand in the guide', () => {
  // The number that is told in the guide.
  expect(others.listWorst(compare)).toBe(16);
});

listedInGuide();
