import { describe, expect, it } from 'vitest';
import { equivalentBreakingCurrent, meanArcCharge } from '../../../src/measure/equivalentBreakingCurrent.ts';
import { type DutiesOfRun, meanDuties } from '../../../src/measure/meanDuties.ts';
import type { BreakingDuty, MakingDuty, PoleDuty } from '../../../src/measure/poleDuty.ts';
import { expectWithin } from '../../support/tolerance.ts';

const breaks = (more: Partial<BreakingDuty>): BreakingDuty => ({
  kind: 'breaking',
  contactor: 'forward',
  phase: 'A',
  t: 1,
  clears: 1.005,
  current: 10,
  arcCharge: 0.01,
  recoveryVoltage: 40,
  ...more,
});
const makes = (more: Partial<MakingDuty>): MakingDuty => ({
  kind: 'making',
  contactor: 'forward',
  phase: 'A',
  t: 0.1,
  crest: 100,
  rms: 60,
  bounceCharge: 0.2,
  ...more,
});
const runOf = (...duties: PoleDuty[]): DutiesOfRun => ({
  duties,
  commands: [
    { at: 0, do: 'startForward' },
    { at: 0.9, do: 'plug' },
  ],
  angle: 0,
});
const EXACT = { relative: 1e-12 };

describe('duties averaged over runs', () => {
  it('count every run for the share of opening phases that it stands for', () => {
    // At 50 Hz the order of the poles repeats every 10/3 ms: partings at 0, 1/10 and 2/10 of that, the third run's supply angle
    // moving its parting on by 3/10 more. Gaps 0.1, 0.4 and 0.5: weights 0.3, 0.25, 0.45.
    const sixth = 0.02 / 6;
    const at = (part: number, arcCharge: number) => breaks({ t: 1 + part * sixth, arcCharge });
    const turned = { ...runOf(at(0.2, 0.04)), angle: (0.3 / 6) * 2 * Math.PI };
    // 1 s is a whole number of sixths of a period.
    const [breaking] = meanDuties([runOf(at(0, 0.02)), runOf(at(0.1, 0.01)), turned], 50)?.breakings ?? [];
    // At 0: half of 0.5 and of 0.1; at 0.1: half of 0.1 and of 0.4; at 0.5: half of 0.4 and of 0.5.
    expectWithin(breaking?.meanArcCharge, 0.3 * 0.02 + 0.25 * 0.01 + 0.45 * 0.04, { relative: 1e-9 }, 'mean');
  });

  it('are means and worst values by pole, and the arc charge of all poles together', () => {
    const means = meanDuties(
      [
        runOf(breaks({ arcCharge: 0.01, current: 10 }), breaks({ phase: 'B', arcCharge: 0.05 })),
        runOf(
          breaks({ arcCharge: 0.03, current: 20, recoveryVoltage: 60 }),
          breaks({ phase: 'B', arcCharge: 0.01, recoveryVoltage: 60 }),
        ),
      ],
      50,
    );
    const [breaking] = means?.breakings ?? [];
    expect(breaking).toMatchObject({ contactor: 'forward', occurrence: 1, command: 'plug', runs: 2 });
    const [a, b] = breaking?.poles ?? [];
    expectWithin(a?.meanArcCharge, 0.02, EXACT, 'mean charge of A');
    expectWithin(a?.worstArcCharge, 0.03, EXACT, 'worst charge of A');
    expectWithin(a?.meanCurrent, 15, EXACT, 'mean current of A');
    expectWithin(a?.worstCurrent, 20, EXACT, 'worst current of A');
    expectWithin(b?.meanArcCharge, 0.03, EXACT, 'mean charge of B');
    expectWithin(breaking?.meanArcCharge, 0.05, EXACT, 'charge of all poles');
    expectWithin(breaking?.meanRecoveryVoltage, 50, EXACT, 'recovery voltage');
  });

  it('keep makings apart from breakings, the first from the second, and one contactor from the other', () => {
    const means = meanDuties(
      [
        runOf(
          makes({}),
          breaks({}),
          makes({ contactor: 'reverse', t: 1.1, crest: 200, rms: 120 }),
          makes({ t: 2, crest: 90, rms: 50 }),
        ),
      ],
      50,
    );
    expect(
      means?.makings.map(({ contactor, occurrence, command, poles }) => [
        contactor,
        occurrence,
        command,
        poles[0]?.worstCrest,
        poles[0]?.meanRms,
      ]),
    ).toEqual([
      ['forward', 1, 'startForward', 100, 60],
      ['reverse', 1, 'plug', 200, 120],
      ['forward', 2, 'plug', 90, 50],
    ]);
    expect(means?.breakings).toHaveLength(1);
    expect(means?.driving).toBe('forward');
  });

  it('know in how many runs an occasion occurs, and average over these', () => {
    const means = meanDuties([runOf(breaks({ arcCharge: 0.02 })), runOf(makes({}))], 50);
    expect(means?.breakings[0]?.runs).toBe(1);
    expectWithin(means?.breakings[0]?.meanArcCharge, 0.02, EXACT, 'charge');
  });

  it('have no bounce charge where one run lacks it, never a zero', () => {
    const means = meanDuties([runOf(makes({})), runOf(makes({ bounceCharge: null }))], 50);
    expect(means?.makings[0]?.poles[0]?.meanBounceCharge).toBeNull();
  });

  it('have no equivalent current where the poles burn no arc', () => {
    const means = meanDuties([runOf(breaks({ clears: 1, arcCharge: 0 }))], 50);
    expect(means?.breakings[0]?.equivalentCurrent).toBeNull();
  });

  it('are none where nothing is made and broken', () => {
    expect(meanDuties([runOf(), runOf()], 50)).toBeNull();
  });
});

describe('the equivalent breaking current', () => {
  it('is that of the symmetrical current with the same mean arc charge, (1 + √3)·√2·I/ω', () => {
    // 2.7320508·√2·100/314.15927 = 386.37033/314.15927 = 1.229855 C by hand
    expectWithin(meanArcCharge(100, 50), 1.229855, { relative: 1e-6 }, 'charge');
    expectWithin(equivalentBreakingCurrent(1.229855, 50), 100, { relative: 1e-6 }, 'current');
    expectWithin(equivalentBreakingCurrent(1.229855, 60), 120, { relative: 1e-6 }, 'current at 60 Hz');
  });
});
