import { describe, expect, it } from 'vitest';
import { contactCriteria } from '../../../../src/assess/wear/contactCriteria.ts';
import { contactWear } from '../../../../src/assess/wear/contactWear.ts';
import type { MeanDuties } from '../../../../src/measure/meanDuties.ts';
import type { ContactorData, DutyData, LimitsData, Scenario } from '../../../../src/scenario/scenario.ts';
import {
  breaking,
  making,
  PLUGGING_DUTY,
  pairOf,
  START_AND_PLUG,
  STATED_CONTACTOR,
} from '../../../support/contactors.ts';
import { scenarioOf } from '../../../support/scenarios.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const EXACT = { relative: 1e-9 };

interface Case {
  readonly means?: MeanDuties;
  readonly device?: Partial<ContactorData>;
  readonly duty?: Partial<DutyData>;
  readonly contactLife?: LimitsData['contactLife'];
  readonly supply?: Scenario['supply'];
}

function judge({ means = START_AND_PLUG, device = {}, duty = {}, contactLife = null, supply }: Case) {
  const scenario: Scenario = {
    ...scenarioOf(KRAUSE.hp3),
    supply: supply ?? { ...KRAUSE.hp3.supply, lineVoltage: 400 },
    contactors: pairOf({ ...STATED_CONTACTOR, ...device }),
    duty: { ...PLUGGING_DUTY, ...duty },
    limits: { contactLife } as LimitsData,
  };
  const wear = contactWear(means, scenario.contactors!, scenario.duty!, scenario);
  const [makes, breaks, rate, life] = contactCriteria(scenario, means, wear);
  return { makes: makes!, breaks: breaks!, rate: rate!, life: life! };
}

const withMaking = (rms: number): MeanDuties => ({
  ...START_AND_PLUG,
  makings: [making('forward', 50), making('reverse', rms)],
});
const withBreaking = (current: number): MeanDuties => ({
  ...START_AND_PLUG,
  breakings: [breaking('forward', 10, 68), breaking('reverse', current, 400)],
});

describe('making capacity', () => {
  // Power factor 0.45: R/X = 0.45/√(1 − 0.45²) = 0.50391, κ = 1.02 + 0.98·e^(−1.51172) = 1.23610; by hand.
  const KAPPA = 1.2361;
  const crestLimit = (capacity: number) => Math.SQRT2 * KAPPA * capacity;
  // The machine of these tests at 400 V draws 135.6 A against full speed: too much for 100 A. A third of the voltage leaves the crest to decide.
  const low = { supply: { ...KRAUSE.hp3.supply, lineVoltage: 133 } };

  // 10 × 10 A in AC-3 is more than 12 × 5 A in AC-4. The crests of these makings are twice their r.m.s. values.
  it.each([
    [76, 'pass'],
    [87, 'close'],
    [88, 'fail'],
  ] as const)('a crest of 2 × %d A against the crest of the test with 100 A: %s', (rms, outcome) => {
    const { makes } = judge({ means: withMaking(rms), ...low });
    expect(makes.outcome).toBe(outcome);
    expectWithin(makes.value, 2 * rms, EXACT, 'value');
    expectWithin(makes.limit, crestLimit(100), { relative: 1e-4 }, 'limit');
    expect(makes.remark).toContain(`r.m.s. over its first period ${rms} A`);
    expect(makes.required).toBe(true);
  });

  it('is that of AC-4 where it is the larger one, and what is stated before both', () => {
    const limitOf = (device: Partial<ContactorData>) => judge({ device, ...low }).makes;
    expectWithin(limitOf({ ratedCurrentAc4: 9 }).limit, crestLimit(108), { relative: 1e-4 }, 'AC-4');
    const stated = limitOf({ makingCapacity: 75 });
    expectWithin(stated.limit, crestLimit(75), { relative: 1e-4 }, 'stated');
    expect(stated.source).toContain('stated in the scenario');
  });

  it('is tested at a power factor of 0.35 above 100 A', () => {
    // R/X = 0.37363, κ = 1.02 + 0.98·e^(−1.12090) = 1.33947; by hand.
    const { makes } = judge({ device: { ratedCurrentAc3: 101, ratedCurrentAc4: null }, ...low });
    expectWithin(makes.limit, Math.SQRT2 * 1.33947 * 1010, { relative: 1e-4 }, 'limit');
  });

  it('is exceeded by the alternating current alone where that is too large', () => {
    // 3 hp machine at slip 2: 74.573 A at 220 V (textbook circuit), in proportion at 400 V.
    const { makes } = judge({ means: withMaking(50) });
    expectWithin(makes.value, (74.573 * 400) / 220, { relative: 1e-4 }, 'value');
    expectWithin(makes.limit, 100, EXACT, 'limit');
    expect(makes.outcome).toBe('fail');
    expect(makes.remark).toContain('against full speed');
  });

  it('is judged on the contactor that comes nearest to its own', () => {
    const scenario: Scenario = {
      ...scenarioOf(KRAUSE.hp3),
      supply: { ...KRAUSE.hp3.supply, lineVoltage: 100 },
      contactors: { ...pairOf(STATED_CONTACTOR), reverse: { ...STATED_CONTACTOR, ratedCurrentAc3: 20 } },
      duty: PLUGGING_DUTY,
    };
    const wear = contactWear(START_AND_PLUG, scenario.contactors!, PLUGGING_DUTY, scenario);
    // forward 50 of 100 A, reverse 70 of 200 A
    const [makes] = contactCriteria(scenario, START_AND_PLUG, wear);
    expectWithin(makes?.value, 100, EXACT, 'crest of 2 × 50 A');
    expect(makes?.remark).toContain('forward contactor');
  });
});

describe('breaking capacity', () => {
  // 8 × 10 A in AC-3 is more than 10 × 5 A in AC-4.
  it.each([
    [70, 'pass'],
    [79, 'close'],
    [81, 'fail'],
  ] as const)('%d A r.m.s. against 8 times the rated current of 10 A: %s', (current, outcome) => {
    const { breaks } = judge({ means: withBreaking(current) });
    expect(breaks.outcome).toBe(outcome);
    expectWithin(breaks.value, current, EXACT, 'value');
    expectWithin(breaks.limit, 80, EXACT, 'limit');
    expect(breaks.required).toBe(true);
  });

  it('is that of AC-4 where it is the larger one, and what is stated before both', () => {
    expectWithin(judge({ device: { ratedCurrentAc4: 9 } }).breaks.limit, 90, EXACT, 'AC-4');
    expectWithin(judge({ device: { breakingCapacity: 33 } }).breaks.limit, 33, EXACT, 'stated');
  });

  it('counts the current at rest where the duty has inching', () => {
    // 3 hp machine: 65.739 A at 220 V (textbook circuit), in proportion at 400 V
    const { breaks } = judge({ duty: { pluggingShare: 0.9, inchingShare: 0.1 } });
    expectWithin(breaks.value, (65.739 * 400) / 220, { relative: 1e-4 }, 'value');
    expect(breaks.outcome).toBe('fail');
  });
});

describe('operations per hour of the contactors', () => {
  const device = { operationsPerHourAc3: 600, operationsPerHourAc4: 100 };
  it.each([
    [80, 'pass'],
    [95, 'close'],
    [101, 'fail'],
  ] as const)('%d plug stops an hour where AC-4 allows 100: %s', (operationsPerHour, outcome) => {
    const { rate } = judge({ device, duty: { operationsPerHour } });
    expect(rate.outcome).toBe(outcome);
    expectWithin(rate.value, operationsPerHour, EXACT, 'value');
    expect(rate.remark).toContain('reverse contactor');
  });

  it('count closings: a quarter of the stops by plugging are a quarter of the operations', () => {
    const { rate } = judge({ device, duty: { operationsPerHour: 200, pluggingShare: 0.25 } });
    expectWithin(rate.value, 50, EXACT, 'value');
    expectWithin(rate.limit, 100, EXACT, 'limit');
  });

  it('are not judged where something is missing, and say what', () => {
    expect(judge({ device }).rate).toMatchObject({
      outcome: 'notJudged',
      remark: 'not judged because duty.operationsPerHour is missing',
    });
    const lacking = judge({ device: { operationsPerHourAc3: 600 }, duty: { operationsPerHour: 10 } }).rate;
    expect(lacking.outcome).toBe('notJudged');
    expect(lacking.remark).toBe("not judged because the reverse contactor's operationsPerHourAc4 is missing");
  });
});

describe('life of the contacts', () => {
  // The reversing contactor governs with 100 000 operations.
  it.each([
    // Beyond the low end of the range, 50 000, it is no clear pass.
    [49_000, 'pass'],
    [51_000, 'close'],
    [95_000, 'close'],
    [101_000, 'fail'],
  ] as const)('100 000 operations where %d are demanded: %s', (contactLife, outcome) => {
    const { life } = judge({ contactLife });
    expect(life.outcome).toBe(outcome);
    expectWithin(life.value, 1e5, EXACT, 'value');
    expect(life.remark).toContain('expected between 50000 and 200000');
    expect(life.remark).toContain('make erosion is not in it');
    expect(life.required).toBe(true);
  });

  it('says where the range reaches below the limit', () => {
    expect(judge({ contactLife: 80_000 }).life.remark).toContain('reaches below the limit');
    expect(judge({ contactLife: 40_000 }).life.remark).not.toContain('reaches below the limit');
  });

  it('is waived where the scenario says none, and not judged without a limit', () => {
    expect(judge({ contactLife: 'none' }).life).toMatchObject({ outcome: 'pass', required: false });
    expect(judge({}).life).toMatchObject({
      outcome: 'notJudged',
      remark: 'not judged because limits.contactLife is missing',
      required: true,
    });
  });

  it('is not judged where the run does not show what plugging breaks', () => {
    const means = { ...START_AND_PLUG, breakings: [breaking('forward', 10, 68)] };
    const { life } = judge({ means, contactLife: 1000 });
    expect(life.outcome).toBe('notJudged');
    expect(life.remark).toContain('no plug stop of the run ends');
  });
});

describe('without a section contactors', () => {
  it('nothing is judged, and the reason is given', () => {
    const criteria = contactCriteria(scenarioOf(KRAUSE.hp3), START_AND_PLUG, null);
    expect(criteria.map(({ key, outcome, remark }) => [key, outcome, remark])).toEqual(
      ['makingCapacity', 'breakingCapacity', 'contactorOperationsPerHour', 'contactLife'].map((key) => [
        key,
        'notJudged',
        'not judged because the section contactors is missing',
      ]),
    );
  });

  it('or without a run that ended well, likewise', () => {
    const criteria = contactCriteria(
      { ...scenarioOf(KRAUSE.hp3), contactors: pairOf(STATED_CONTACTOR) },
      null,
      null,
    );
    for (const { outcome, remark } of criteria) {
      expect(outcome).toBe('notJudged');
      expect(remark).toContain('no run ended well');
    }
  });
});
