import { describe, expect, it } from 'vitest';
import { type BounceTimes, poleDuties } from '../../../src/measure/poleDuties.ts';
import { quadratureOf } from '../../../src/measure/quadrature.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { runTrajectory } from '../../../src/simulate/run.ts';
import type { Segment } from '../../../src/simulate/segment.ts';
import type { RunEvent } from '../../../src/simulate/trajectory.ts';
import { ARCING_STARTER, scenarioOf } from '../../support/scenarios.ts';
import { syntheticTrajectory } from '../../support/syntheticTrajectory.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** Nothing is known about bouncing. */
const NO_BOUNCE_TIMES: BounceTimes = { forward: null, reverse: null };

const PERIOD = 1 / 60;
const OMEGA = 120 * Math.PI;
const CREST = 80;
/** Residual voltage along α, V. */
const RESIDUAL = 50;
/** Integrals of five Gauss points on quarter periods: 1e-7 and better. */
const INTEGRAL = { relative: 1e-6 };

type Move = readonly [t: number, kind: RunEvent['kind'], contactor: 'forward' | 'reverse', phase: 'A' | 'B'];

/** Phase A carries CREST·cos ωt until `opens`, when the poles are open; `moves` are what is said to have happened. */
function dutiesOf(
  moves: readonly Move[],
  kindAfter: Segment['kind'],
  starter: Partial<Scenario['starter']> = {},
  bounceTimes = NO_BOUNCE_TIMES,
) {
  const opens = 5 * PERIOD;
  const run = syntheticTrajectory(
    { iAlpha: (t) => CREST * Math.cos(OMEGA * t), uAlpha: () => RESIDUAL },
    [0, opens, 7 * PERIOD],
    ['three', kindAfter],
  );
  const scenario = { ...run.scenario, starter: { ...run.scenario.starter, ...starter } };
  const events = moves.map(
    ([t, kind, contactor, phase]): RunEvent => ({ t, kind, contactor, phase, speed: 0, text: '' }),
  );
  return poleDuties(quadratureOf({ ...run, scenario, events }), bounceTimes);
}

describe('a making', () => {
  it('has crest and r.m.s. value of the first period after the touch', () => {
    const [duty] = dutiesOf([[PERIOD, 'poleTouches', 'forward', 'A']], 'none');
    if (duty?.kind !== 'making') throw new Error('no making');
    expectWithin(duty.crest, CREST, { relative: 1e-9 }, 'crest');
    expectWithin(duty.rms, CREST / Math.SQRT2, INTEGRAL, 'r.m.s.');
    expect(duty.bounceCharge).toBeNull();
  });

  it('that the pole ends by parting after a quarter period is read over that quarter', () => {
    // From ωt = 90° on: |cos| rises from 0 to its crest in the quarter.
    const touch = 1.25 * PERIOD;
    const [duty] = dutiesOf(
      [
        [touch, 'poleTouches', 'forward', 'A'],
        [touch + PERIOD / 12, 'poleParts', 'forward', 'A'],
      ],
      'none',
    );
    if (duty?.kind !== 'making') throw new Error('no making');
    // Until 30° after the zero: crest is half of CREST; mean of sin² over 0…30° is (π/6 − sin 60°/2)/2 / (π/6).
    expectWithin(duty.crest, CREST / 2, { relative: 1e-6 }, 'crest');
    const meanSquare = (Math.PI / 6 - Math.sin(Math.PI / 3) / 2) / 2 / (Math.PI / 6);
    expectWithin(duty.rms, CREST * Math.sqrt(meanSquare), INTEGRAL, 'r.m.s.');
  });

  it('has the charge of the bounce time, each half wave counted without its sign', () => {
    const [duty] = dutiesOf(
      [[PERIOD, 'poleTouches', 'forward', 'A']],
      'none',
      {},
      { forward: PERIOD / 2, reverse: null },
    );
    // Half a period of |cos|: 2·Î/ω.
    if (duty?.kind !== 'making') throw new Error('no making');
    expectWithin(duty.bounceCharge, (2 * CREST) / OMEGA, INTEGRAL, 'charge');
  });
});

describe('a breaking', () => {
  const opening = (contactor: 'forward' | 'reverse'): Move[] => [
    [5 * PERIOD - PERIOD / 3, 'poleParts', contactor, 'A'],
    [5 * PERIOD, 'poleClears', contactor, 'A'],
  ];

  it('has the current at parting and the charge of the arc over its zeros', () => {
    const [duty] = dutiesOf(opening('forward'), 'none');
    if (duty?.kind !== 'breaking') throw new Error('no breaking');
    // Parting at −120°: |cos| = ½; ∫|cos| over −120°…0 is (1 − √3/2) + 1.
    expectWithin(duty.current, CREST / 2, { relative: 1e-9 }, 'current');
    expectWithin(duty.arcCharge, ((2 - Math.sqrt(3) / 2) * CREST) / OMEGA, INTEGRAL, 'charge');
    expectWithin(duty.clears - duty.t, PERIOD / 3, { absolute: 1e-12 }, 'arc time');
  });

  it('finds the source in the order of its own contactor behind the open poles', () => {
    // Source 220 V line to line; at a whole period the forward vector lies on α, and with A and B exchanged 120° ahead of it.
    const crest = 220 * Math.sqrt(2 / 3);
    const [forward] = dutiesOf(opening('forward'), 'none', { exchangedPhases: 'AB' });
    const [reverse] = dutiesOf(opening('reverse'), 'none', { exchangedPhases: 'AB' });
    if (forward?.kind !== 'breaking' || reverse?.kind !== 'breaking') throw new Error('no breaking');
    const acrossForward = Math.sqrt(1.5) * (crest - RESIDUAL);
    const acrossReverse = Math.sqrt(1.5) * Math.hypot(crest / 2 + RESIDUAL, (crest * Math.sqrt(3)) / 2);
    expectWithin(forward.recoveryVoltage, acrossForward, { relative: 1e-9 }, 'forward');
    expectWithin(reverse.recoveryVoltage, acrossReverse, { relative: 1e-9 }, 'reverse');
  });

  it('is read for every pole when the last of the opening has cleared', () => {
    const duties = dutiesOf(
      [
        [4.5 * PERIOD, 'poleParts', 'forward', 'A'],
        [4.6 * PERIOD, 'poleParts', 'forward', 'B'],
        [4.75 * PERIOD, 'poleClears', 'forward', 'A'],
        [5 * PERIOD, 'poleClears', 'forward', 'B'],
      ],
      'none',
    );
    const expected = Math.sqrt(1.5) * (220 * Math.sqrt(2 / 3) - RESIDUAL);
    expect(duties).toHaveLength(2);
    for (const duty of duties)
      if (duty.kind === 'breaking')
        expectWithin(duty.recoveryVoltage, expected, { relative: 1e-9 }, `pole ${duty.phase}`);
  });

  it('stands against the line voltage where the other contactor feeds the motor meanwhile', () => {
    const [duty] = dutiesOf(opening('forward'), 'three');
    if (duty?.kind !== 'breaking') throw new Error('no breaking');
    expect(duty.recoveryVoltage).toBe(220);
  });

  it('is none yet while the arc burns at the end of the run', () => {
    expect(dutiesOf([[4 * PERIOD, 'poleParts', 'forward', 'A']], 'three')).toEqual([]);
  });

  it('that ends by touching again interrupts nothing', () => {
    const duties = dutiesOf(
      [
        [4 * PERIOD, 'poleParts', 'forward', 'A'],
        [4.25 * PERIOD, 'poleTouches', 'forward', 'A'],
      ],
      'three',
    );
    const [first] = duties;
    expect(duties.map(({ kind }) => kind)).toEqual(['breaking', 'making']);
    if (first?.kind !== 'breaking') throw new Error('no breaking');
    expect(first.recoveryVoltage).toBe(0);
    expectWithin(first.arcCharge, CREST / OMEGA, INTEGRAL, 'charge of a quarter wave');
  });
});

describe('the duties of a plug stop', () => {
  const scenario = scenarioOf(KRAUSE.hp3, {
    starter: {
      ...ARCING_STARTER,
      zeroSpeedSwitch: { dropOutSpeed: 6, pickUpSpeed: 12, delay: 0.005 },
    },
    actions: [
      { at: 0, do: 'startForward' },
      { at: 0.6, do: 'plug' },
    ],
    solver: { relativeTolerance: 1e-6 },
  });
  const duties = poleDuties(quadratureOf(runTrajectory(scenario)), NO_BOUNCE_TIMES);
  const voltages = (contactor: 'forward' | 'reverse') =>
    duties.flatMap((duty) =>
      duty.kind === 'breaking' && duty.contactor === contactor ? [duty.recoveryVoltage] : [],
    );

  it('are a making and a breaking of every pole of both contactors, in order of time', () => {
    expect(duties).toHaveLength(12);
    expect(duties.map(({ t }) => t)).toEqual(duties.map(({ t }) => t).toSorted((a, b) => a - b));
  });

  it('leave little voltage across the forward contactor and nearly all across the reversing one', () => {
    // Trapped flux holds more than 0.9 of the voltage at the motor's terminals (textbook, 3 hp: 0.945), a few degrees behind.
    for (const voltage of voltages('forward')) expect(voltage).toBeLessThan(0.3 * 220);
    for (const voltage of voltages('reverse')) {
      expect(voltage).toBeGreaterThan(0.85 * 220);
      expect(voltage).toBeLessThan(1.15 * 220);
    }
    expect(voltages('forward')).toHaveLength(3);
    expect(voltages('reverse')).toHaveLength(3);
  });
});
