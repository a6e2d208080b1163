import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlannedPart, PlannedStarter } from '../../../src/survey/plan/plan.ts';
import type { PlanRow } from '../../../src/survey/plan/planRow.ts';
import { planStarters } from '../../../src/survey/plan/planStarters.ts';
import type { StarterWear, WearOfStarter } from '../../../src/survey/plan/starterWear.ts';
import { day, planRow, type RowParts } from '../../support/planRows.ts';
import { expectWithin } from '../../support/tolerance.ts';

const FROM = day('2026-01-01');
/** Sums of a few terms: rounding only. */
const ROUNDING = { relative: 1e-12, absolute: 1e-6 };

/** Contacts that last 10 000 plug stops, a million normal stops, a thousand inchings. */
const WEAR: StarterWear = {
  forward: { normal: 1e-6, plug: 1e-6, inch: 1e-3, lifeFactor: { low: 0.5, high: 2 } },
  reverse: { normal: 0, plug: 1e-4, inch: 0, lifeFactor: { low: 0.5, high: 2 } },
  origin: 'stated by hand',
  remarks: [],
};

function planned(parts: RowParts, wear: WearOfStarter = () => WEAR, asOf = FROM): PlannedStarter {
  const plan = planStarters([planRow(parts)], asOf, wear);
  const [starter] = plan.starters;
  if (starter === undefined) throw new Error(JSON.stringify(plan.lacking));
  return starter;
}

const daysTo = (starter: PlannedStarter) => starter.expected - FROM;

describe('the expected day', () => {
  it('is the last change of contacts and the days of as many operations as they last', () => {
    const starter = planned({});
    // 10 000 operations at ten a day; 1000 days from 2026-01-01 are 2028-09-27.
    expectWithin(daysTo(starter), 1000, ROUNDING, 'days');
    expect(Math.round(starter.expected)).toBe(day('2028-09-27'));
    expect(starter.parts[0].words).toBe('contacts of the reversing contactor');
    expectWithin(starter.parts[0].life, 10_000, ROUNDING, 'life');
  });

  it('adds the kinds of operation up by linear damage, contactor by contactor', () => {
    const half = planned({ duty: { stopBy: null, pluggingShare: 0.5 } });
    expectWithin(half.parts[0].life, 20_000, ROUNDING, 'reversing contactor, every second stop');
    const inching = planned({ duty: { stopBy: null, pluggingShare: 0.5, inchingShare: 0.1 } });
    // Forward: 0.4 normal and 0.5 plugged at 1e-6, 0.1 inched at 1e-3; reversing: 0.5 at 1e-4.
    expectWithin(inching.parts[0].life, 1 / (0.9e-6 + 1e-4), ROUNDING, 'forward contactor that inches');
    expect(inching.parts[0].words).toBe('contacts of the forward contactor');
  });

  it('of a starter that coasts hangs on the forward contactor', () => {
    const starter = planned({ duty: { stopBy: 'coast' } });
    expectWithin(daysTo(starter), 100_000, ROUNDING, 'days');
    expect(starter.pluggingShare).toBe(0);
    expect(starter.parts[0].effects.map(({ key }) => key)).toEqual(['life', 'operationsPerDay']);
  });

  it('counts with a counter: what it shows is used up, and its rhythm goes on', () => {
    const counted = planned({ duty: { operationsPerDay: null, counter: 2000, counterDay: FROM + 100 } });
    // 20 a day: 8000 are left on day 100.
    expectWithin(daysTo(counted), 500, ROUNDING, 'days by the rhythm of the counter');
    expect(counted.operationsPerDay).toBe(20);
    const stated = planned({ duty: { operationsPerDay: 10, counter: 2000, counterDay: FROM + 100 } });
    expectWithin(daysTo(stated), 900, ROUNDING, 'days where another rhythm is stated for the future');
  });

  it('does not need the last change of contacts where a counter or an inspection stands for it', () => {
    const duty = { contactsChanged: null };
    const counter = planned({ duty: { ...duty, counter: 4000, counterDay: FROM } });
    expectWithin(daysTo(counter), 600, ROUNDING, 'days from the counter');
    const inspection = { day: FROM + 500, worn: 0.4, reading: 'seen' };
    const inspected = planned({ duty, inspection });
    expectWithin(daysTo(inspected), 500 + 600, ROUNDING, 'days from the inspection');
    expect(inspected.inspection).toContain('no count of operations before it');
  });

  it('tells what is used up on the day of the plan', () => {
    expectWithin(planned({}, () => WEAR, FROM + 250).parts[0].used, 0.25, ROUNDING, 'share');
  });
});

describe('a counter beside stated operations a day', () => {
  const doubtsAt = (duty: Partial<PlanRow['duty']>) => planned({ duty }).doubts;

  it('is doubted from a factor of 1.5 either way, not where they agree', () => {
    // Ten a day are stated: over 100 days 1500 are 1.5 times as many, 667 are 1.5 times as few.
    const at = (counter: number) => doubtsAt({ counter, counterDay: FROM + 100 }).length;
    expect([0, 666, 667, 1000, 1500, 1501].map(at)).toEqual([1, 1, 0, 0, 0, 1]);
  });

  it('that counts more may count since new, and is told where that belongs', () => {
    const [doubt] = doubtsAt({
      operationsPerDay: 120,
      counter: 80_000,
      contactsChanged: day('2025-02-28'),
      counterDay: day('2026-01-10'),
    });
    expect(doubt).toBe(
      'The counter gives 253 operations a day since the contacts were changed, stated are 120: counter is the number since that change; the number since new belongs under operations since new.',
    );
  });

  it('that counts less is to be checked', () => {
    expect(doubtsAt({ counter: 200, counterDay: FROM + 100 })).toEqual([
      'The counter gives 2 operations a day since the contacts were changed, stated are 10: one of them needs checking.',
    ]);
  });

  it('is not doubted where either is missing, or no day has passed', () => {
    expect(doubtsAt({ operationsPerDay: null, counter: 9000, counterDay: FROM + 100 })).toEqual([]);
    expect(doubtsAt({ contactsChanged: null, counter: 9000, counterDay: FROM + 100 })).toEqual([]);
    expect(doubtsAt({ counter: 9000, counterDay: FROM })).toEqual([]);
    expect(doubtsAt({})).toEqual([]);
  });
});

describe('an inspection', () => {
  const inspection = (worn: number) => ({ day: FROM + 500, worn, reading: 'over-travel 1.4 mm' });

  it('takes the place of the computed wear and scales its rate: the straight line through change and reading', () => {
    // Computed: 0.5 on day 500. A quarter is measured: three quarters go in 1500 days more.
    const starter = planned({ inspection: inspection(0.25) });
    expectWithin(daysTo(starter), 2000, ROUNDING, 'days');
    expect(starter.inspection).toMatch(
      /^over-travel 1\.4 mm: 25 % worn; it takes the place .* scales its rate/u,
    );
    // More worn than computed: 0.8 in 500 days leaves 125.
    expectWithin(daysTo(planned({ inspection: inspection(0.8) })), 625, ROUNDING, 'days');
  });

  it('makes the computed life, and its range, unimportant: the reading itself is what is left', () => {
    const starter = planned({ inspection: inspection(0.25) });
    expect(starter.parts[0].effects.map(({ key }) => key)).toEqual(['reading']);
    // 0.20 and 0.30 in 500 days.
    expectWithin(starter.parts[0].effects[0]?.latest, FROM + 2500, ROUNDING, 'a reading that was too high');
    expectWithin(
      starter.parts[0].effects[0]?.earliest,
      FROM + 500 / 0.3,
      ROUNDING,
      'a reading that was too low',
    );
    const twice: StarterWear = { ...WEAR, reverse: { ...WEAR.reverse, plug: 2e-4 } };
    expectWithin(daysTo(planned({ inspection: inspection(0.25) }, () => twice)), 2000, ROUNDING, 'days');
  });

  it('of hardly worn contacts does not scale the rate', () => {
    const starter = planned({ inspection: inspection(0.05) });
    expectWithin(daysTo(starter), 500 + 950, ROUNDING, 'days');
    expect(starter.inspection).toContain('does not scale the rate');
    expectWithin(daysTo(planned({ inspection: inspection(0) })), 1500, ROUNDING, 'days of contacts as new');
  });

  it('of contacts at their limit makes them due on its day', () => {
    expect(daysTo(planned({ inspection: inspection(1) }))).toBe(500);
    expect(daysTo(planned({ inspection: inspection(1.3) }))).toBe(500);
    const none: StarterWear = { ...WEAR, reverse: WEAR.reverse, forward: { ...WEAR.forward, normal: 0 } };
    expect(daysTo(planned({ duty: { stopBy: 'coast' }, inspection: inspection(1) }, () => none))).toBe(500);
  });

  it('uses a counter between the change and the reading', () => {
    // 4000 by day 200: 20 a day, 2000 on day 100, computed 0.2; measured 0.4: twice the wear.
    const starter = planned({
      duty: { counter: 4000, counterDay: FROM + 200 },
      inspection: { day: FROM + 100, worn: 0.4, reading: 'seen' },
    });
    expectWithin(starter.parts[0].life, 5000, ROUNDING, 'life');
    expectWithin(daysTo(starter), 100 + (0.6 * 5000) / 10, ROUNDING, 'days');
  });
});

describe('mechanical lives', () => {
  it.each([
    ['the contactor, once in an operation', { mechanicalLife: 8000 }, {}, 'contactor', 800],
    ['the interlock, with both contactors', { interlockMechanicalLife: 12_000 }, {}, 'interlock', 600],
    [
      'the switch, not while inching',
      { switchMechanicalLife: 4000 },
      { inchingShare: 0.5, pluggingShare: 0.01 },
      'zeroSpeedSwitch',
      800,
    ],
  ] as const)('%s', (_name, contactor, duty, part, days) => {
    const noInch: StarterWear = { ...WEAR, forward: { ...WEAR.forward, inch: 0 } };
    const starter = planned({ contactor, duty }, () => noInch);
    expect(starter.parts[0].part).toBe(part);
    expectWithin(daysTo(starter), days, ROUNDING, 'days');
  });

  it('longer than that of the contacts do not govern', () => {
    expect(planned({ contactor: { mechanicalLife: 1e7 } }).parts[0].part).toBe('contacts');
  });

  it('count from new where that is known, and say so where it is not', () => {
    const contactor = { mechanicalLife: 8000 };
    const known = planned({ contactor, duty: { operationsSinceNew: 6000 } });
    expectWithin(daysTo(known), 200, ROUNDING, 'days');
    expect(known.remarks.join()).not.toContain('since new');
    expect(planned({ contactor }).remarks.join()).toContain('counted from the last change of contacts');
  });

  it('that nobody stated are named as not counted', () => {
    expect(planned({}).remarks).toContain(
      'Not counted, because not stated: mechanical life of contactor, interlock, zero-speed switch.',
    );
    expect(planned({ duty: { stopBy: 'coast' } }).remarks).toContain(
      'Not counted, because not stated: mechanical life of contactor.',
    );
  });
});

describe('the range', () => {
  it('has every assumption at its bad end at once, and at its good end', () => {
    const starter = planned({});
    // Bad: half the life, a fifth more operations. Good: twice the life, a fifth fewer operations, a fifth of the stops coasting.
    expectWithin(starter.earliest - FROM, 5000 / 12, ROUNDING, 'earliest');
    expectWithin(starter.latest - FROM, 20_000 / 0.8 / 8, ROUNDING, 'latest');
    expect(starter.parts[0].effects.map(({ key }) => key)).toEqual([
      'life',
      'operationsPerDay',
      'pluggingShare',
    ]);
  });

  it('names the life where that moves the date most', () => {
    const [first] = planned({}).parts[0].effects;
    expect(first?.words).toBe('life of the contacts (stated by hand), × 0.5 to × 2');
    expectWithin(first!.earliest - FROM, 500, ROUNDING, 'earliest by the life alone');
    expectWithin(first!.latest - FROM, 2000, ROUNDING, 'latest by the life alone');
  });

  const sure = { low: 0.95, high: 1.05 };
  const WELL_KNOWN: StarterWear = {
    ...WEAR,
    forward: { ...WEAR.forward, lifeFactor: sure },
    reverse: { ...WEAR.reverse, lifeFactor: sure },
  };

  it('names the operations per day where the life is well known', () => {
    const [first] = planned({}, () => WELL_KNOWN).parts[0].effects;
    expect(first?.key).toBe('operationsPerDay');
    expectWithin(first!.latest - FROM, 1250, ROUNDING, 'at eight a day');
    // A counter is better than a guess: within a tenth, which is still more than a twentieth.
    const duty = { operationsPerDay: null, counter: 1000, counterDay: FROM + 100 };
    const counted = planned({ duty }, () => WELL_KNOWN);
    const rate = counted.parts[0].effects.find(({ key }) => key === 'operationsPerDay');
    expectWithin(rate!.latest - FROM, 100 + 9000 / 9, ROUNDING, 'at nine a day after the reading');
  });

  it('names the share of plugging where that moves the date most', () => {
    const duty = {
      stopBy: null,
      pluggingShare: 0.5,
      operationsPerDay: null,
      counter: 1,
      counterDay: FROM + 1,
    };
    const [first] = planned({ duty }, () => WELL_KNOWN).parts[0].effects;
    expect(first?.key).toBe('pluggingShare');
    expect(first?.words).toContain('40 % to 60 %');
  });

  it('names the load inertia where that moves the date most, wider where it is assumed', () => {
    const asked: number[] = [];
    const inertial: WearOfStarter = (_row, factor) => {
      asked.push(factor);
      return { ...WELL_KNOWN, reverse: { ...WELL_KNOWN.reverse, plug: 1e-4 * factor } };
    };
    const stated = planned({}, inertial).parts[0].effects.find(({ key }) => key === 'loadInertia');
    expectWithin(stated!.earliest - FROM, 1000 / 1.25, ROUNDING, 'a quarter more inertia');
    const assumed = planned({ load: { inertia: null } }, inertial).parts[0].effects[0];
    expect(assumed?.key).toBe('loadInertia');
    expectWithin(assumed!.latest - FROM, 5000, ROUNDING, 'a fifth of the inertia');
    expect(asked).toEqual([1, 0.8, 1.25, 1, 0.2, 1.2]);
  });
});

describe('the range of a starter of which another part than the contacts governs', () => {
  // Contacts: 20 000 operations, of which half are plugged: 2000 days. Contactor: 15 000 movements: 1500 days.
  const duty = { stopBy: null, pluggingShare: 0.5 };
  const contactor = { mechanicalLife: 15_000 };

  it('begins with the bad end of every part, each with its own', () => {
    const starter = planned({ duty, contactor });
    expect(starter.parts[0].part).toBe('contactor');
    // Contacts: half the life, a fifth more operations, of which a fifth more are plugged. Contactor: a fifth more operations.
    expectWithin(starter.earliest - FROM, 10_000 / 1.2 / 12, ROUNDING, 'contacts at their worst');
    // At its best the contactor still ends before the contacts at theirs.
    expectWithin(starter.latest - FROM, 15_000 / 8, ROUNDING, 'contactor at its best');
  });

  it('is never put off by a part that wears besides', () => {
    // Lives that compete: between a thousand and a hundred thousand operations.
    const count = fc.integer({ min: 0, max: 1000 }).map((k) => 10 ** (3 + k / 500));
    const life = fc.option(count, { nil: null });
    const share = fc.integer({ min: 0, max: 100 }).map((k) => k / 100);
    const wearing = count.map((operations) => 1 / operations);
    fc.assert(
      fc.property(
        fc.record({
          lives: fc.tuple(life, life, life),
          added: count,
          which: fc.constantFrom('mechanicalLife', 'interlockMechanicalLife', 'switchMechanicalLife'),
          plugged: share,
          inched: share,
          wear: fc.tuple(wearing, wearing, wearing, wearing),
          worn: fc.option(share, { nil: null }),
        }),
        ({ lives: [mechanicalLife, interlockMechanicalLife, switchMechanicalLife], ...drawn }) => {
          const { which, added, plugged, inched, worn } = drawn;
          const [normal, plug, inch, reverse] = drawn.wear;
          const wear: StarterWear = {
            ...WEAR,
            forward: { normal, plug, inch, lifeFactor: { low: 0.5, high: 2 } },
            reverse: { normal: 0, plug: reverse, inch: 0, lifeFactor: { low: 0.3, high: 3 } },
          };
          const inertial: WearOfStarter = (_row, factor) => ({
            ...wear,
            reverse: { ...wear.reverse, plug: reverse * factor },
          });
          const lives = { mechanicalLife, interlockMechanicalLife, switchMechanicalLife, [which]: null };
          const parts: RowParts = {
            duty: { stopBy: null, pluggingShare: plugged * (1 - inched), inchingShare: inched },
            inspection: worn === null ? null : { day: FROM + 50, worn, reading: 'seen' },
          };
          const without = planned({ ...parts, contactor: lives }, inertial);
          const with_ = planned({ ...parts, contactor: { ...lives, [which]: added } }, inertial);
          for (const end of ['earliest', 'expected', 'latest'] as const)
            expect(with_[end], end).toBeLessThanOrEqual(without[end]);
          expect(with_.earliest).toBeLessThanOrEqual(with_.expected);
          expect(with_.latest).toBeGreaterThanOrEqual(with_.expected);
        },
      ),
      { seed: 20_260_101, numRuns: 300 },
    );
  });
});

describe('the parts of a starter', () => {
  // Contacts of WEAR: 1000 days. Switch: 5000 movements, 500 days. Interlock: moves twice in an operation, 1500 days.
  const starter = planned({ contactor: { switchMechanicalLife: 5000, interlockMechanicalLife: 30_000 } });

  it('each have dates of their own, the first one governs', () => {
    expect(starter.parts.map(({ part }) => part)).toEqual(['zeroSpeedSwitch', 'contacts', 'interlock']);
    const [first, contacts, interlock] = starter.parts;
    expect([starter.parts[0].part, starter.expected]).toEqual([first!.part, first!.expected]);
    const days = (part: PlannedPart) => [part.earliest, part.expected, part.latest].map((end) => end - FROM);
    for (const [part, dates] of [
      [first!, [5000 / 12, 500, 5000 / 8]],
      [contacts!, [5000 / 12, 1000, 20_000 / 0.8 / 8]],
      // Every stop plugged is the bad end already; at the good one a fifth coasts and the interlock moves 1.8 times.
      [interlock!, [30_000 / 2 / 12, 1500, 30_000 / 1.8 / 8]],
    ] as const)
      for (const [k, value] of days(part).entries()) expectWithin(value, dates[k]!, ROUNDING, part.words);
  });

  it('each name the assumptions that move them, and no other', () => {
    const keys = starter.parts.map(({ effects }) => effects.map(({ key }) => key));
    expect(keys).toEqual([
      ['operationsPerDay'],
      ['life', 'operationsPerDay', 'pluggingShare'],
      ['operationsPerDay', 'pluggingShare'],
    ]);
  });

  it('each need a spare in the quarter of their own day', () => {
    const parts = { contactor: { switchMechanicalLife: 5000 } };
    const { kits } = planStarters([planRow(parts)], FROM, () => WEAR);
    // Both at their earliest after 416.7 days, 2027-02-21; the switch is due on 2027-05-16, the contacts on 2028-09-27.
    expect(kits).toEqual([
      { year: 2027, quarter: 1, kit: 'kit 18', expected: [], earliest: ['P1'] },
      { year: 2027, quarter: 1, kit: 'zero-speed switch', expected: [], earliest: ['P1'] },
      { year: 2027, quarter: 2, kit: 'zero-speed switch', expected: ['P1'], earliest: [] },
      { year: 2028, quarter: 3, kit: 'kit 18', expected: ['P1'], earliest: [] },
    ]);
  });
});

describe('the plan', () => {
  const rows = (...parts: RowParts[]): PlanRow[] => parts.map(planRow);

  it('is sorted by expected day, then by tag; what never wears stands last', () => {
    const wear: WearOfStarter = (row) =>
      row.duty.stopBy === 'coast' ? { ...WEAR, forward: { ...WEAR.forward, normal: 0 } } : WEAR;
    const { starters } = planStarters(
      rows(
        { tag: 'never B', duty: { stopBy: 'coast' } },
        { tag: 'never A', duty: { stopBy: 'coast' } },
        { tag: 'late', duty: { operationsPerDay: 5 } },
        { tag: 'Y' },
        { tag: 'X' },
      ),
      FROM,
      wear,
    );
    expect(starters.map(({ tag }) => tag)).toEqual(['X', 'Y', 'late', 'never A', 'never B']);
    expect(starters.at(-1)?.expected).toBe(Number.POSITIVE_INFINITY);
  });

  it('lists rows that lack data with what is missing, and plans the rest', () => {
    const { starters, lacking } = planStarters(
      rows(
        { tag: 'no power', motor: { power: null } },
        { tag: 'no voltage', motor: { lineVoltage: null } },
        { tag: 'no frequency', motor: { frequency: null } },
        { tag: 'no speed', motor: { speed: null } },
        { tag: 'no contactor', contactor: { ratedCurrentAc3: null } },
        { tag: 'no stop', duty: { stopBy: null } },
        { tag: 'no rate', duty: { operationsPerDay: null } },
        { tag: 'no change', duty: { contactsChanged: null } },
        { tag: 'no counter day', duty: { counter: 5 } },
        { tag: 'no load kind', load: { kind: null } },
        { tag: 'no load torque', load: { torque: null } },
        { tag: 'complete' },
      ),
      FROM,
      () => WEAR,
    );
    expect(starters.map(({ tag }) => tag)).toEqual(['complete']);
    expect(lacking.map(({ tag, missing }) => `${tag}: ${missing.join()}`)).toEqual([
      'no power: rated power (power)',
      'no voltage: rated voltage (voltage)',
      'no frequency: frequency (frequency)',
      'no speed: rated speed or number of poles (speed, poles)',
      'no contactor: rated current of the contactor (contactor current AC-3)',
      'no stop: how it is stopped (stop by, or share of plugging)',
      'no rate: how often it works (operations per day; or counter, counter date and contacts changed)',
      'no change: how far the contacts are worn (contacts changed, or a counter, or an inspection)',
      'no counter day: day of the counter reading (counter date)',
      'no load kind: kind of the load torque (load kind)',
      'no load torque: load torque (load torque)',
    ]);
  });

  it('lists a row whose wear cannot be found with the reason', () => {
    const { lacking } = planStarters(rows({ tag: 'odd' }), FROM, () => ({ missing: ['a stop that ends'] }));
    expect(lacking).toEqual([{ tag: 'odd', missing: ['a stop that ends'] }]);
  });

  it('lists a row that contradicts itself apart from those that lack data', () => {
    const { starters, lacking, impossible } = planStarters(rows({ tag: 'odd' }), FROM, () => ({
      reasons: ['the motor cannot drive this load'],
    }));
    expect({ starters, lacking }).toEqual({ starters: [], lacking: [] });
    expect(impossible).toEqual([{ tag: 'odd', reasons: ['the motor cannot drive this load'] }]);
  });

  it('computes the wear of rows alike once', () => {
    let asked = 0;
    const wear: WearOfStarter = () => {
      asked++;
      return WEAR;
    };
    const alike = rows(
      { tag: 'A' },
      { tag: 'B', duty: { operationsPerDay: 3 } },
      { tag: 'C', spareKit: null },
    );
    expect(planStarters(alike, FROM, wear).computed).toBe(3);
    // The load inertia as stated, and at its two ends.
    expect(asked).toBe(3);
    planStarters([...alike, ...rows({ tag: 'D', load: { inertia: 0.2 } })], FROM, wear);
    expect(asked).toBe(3 + 6);
  });

  it('counts spares by the quarter of the expected and of the earliest day; what is overdue in the present one', () => {
    // Expected 2028-09-27; earliest 2026-01-01 and 416.7 days: 2027-02-21.
    const { kits } = planStarters(
      rows(
        { tag: 'A' },
        { tag: 'B' },
        { tag: 'C', spareKit: null, contactor: { mechanicalLife: 1000 } },
        { tag: 'old', duty: { contactsChanged: day('2022-01-01') } },
      ),
      day('2026-05-02'),
      () => WEAR,
    );
    expect(kits).toEqual([
      // 1000 movements end on 2026-04-11, and with a fifth more on 2026-03-25: both are over.
      { year: 2026, quarter: 2, kit: 'contactor', expected: ['C'], earliest: ['C'] },
      { year: 2026, quarter: 2, kit: 'kit 18', expected: ['old'], earliest: ['old'] },
      { year: 2027, quarter: 1, kit: 'contacts, no kit named', expected: [], earliest: ['C'] },
      { year: 2027, quarter: 1, kit: 'kit 18', expected: [], earliest: ['A', 'B'] },
      { year: 2028, quarter: 3, kit: 'contacts, no kit named', expected: ['C'], earliest: [] },
      { year: 2028, quarter: 3, kit: 'kit 18', expected: ['A', 'B'], earliest: [] },
    ]);
  });

  it('counts no spares for what lies beyond the horizon', () => {
    const { kits } = planStarters(rows({ duty: { operationsPerDay: 0.01 } }), FROM, () => WEAR);
    expect(kits).toEqual([]);
  });
});
