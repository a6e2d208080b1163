import fc from 'fast-check';
import { expect, it } from 'vitest';
import { contactorTimes } from '../../src/scenario/contactorTimes.ts';
import { parseScenario } from '../../src/scenario/parseScenario.ts';
import { renderScenario } from '../../src/scenario/renderScenario.ts';
import type { ActionKind, LoadTorque, Scenario, StarterData } from '../../src/scenario/scenario.ts';
import { ScenarioError } from '../../src/scenario/scenarioError.ts';
import { scenarioToYaml } from '../../src/scenario/scenarioToYaml.ts';

/** Any double of the range, all digits; minus zero is not a quantity. */
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

const cage = fc.record({ Rr: between(1e-6, 1e5), Llr: between(1e-9, 1e3) });

/**
 * Enough for a current and a torque; power, torque and speed never all three, and no more power than voltage and current
 * allow, so that they cannot disagree.
 */
const rated = fc.oneof(
  fc.record({
    power: between(1, 1e8),
    speed: orNull(between(0.1, 10)),
    current: fc.constant(null),
    torque: fc.constant(null),
  }),
  fc.record({
    power: between(1, 100),
    speed: orNull(between(0.1, 10)),
    current: between(10, 1e5),
    torque: fc.constant(null),
  }),
  fc.record({
    power: fc.constant(null),
    speed: orNull(between(0.1, 10)),
    current: between(1e-3, 1e5),
    torque: between(1e-3, 1e8),
  }),
);

const machine = fc.record({
  connection: fc.constantFrom('star' as const, 'delta' as const),
  polePairs: fc.integer({ min: 1, max: 6 }),
  Rs: between(1e-6, 1e5),
  Lls: between(1e-9, 1e3),
  Lm: between(1e-9, 1e3),
  cages: fc.array(cage, { minLength: 1, maxLength: 2 }),
  inertia: between(1e-6, 1e6),
  rated,
});

const loadTorque: fc.Arbitrary<LoadTorque> = fc.oneof(
  fc
    .tuple(between(0, 1e4), between(0, 1e4))
    .map(([a, b]) => ({ kind: 'friction' as const, torque: Math.min(a, b), breakaway: Math.max(a, b) })),
  fc.record({ kind: fc.constant('viscous' as const), coefficient: between(0, 1e6) }),
  fc.record({ kind: fc.constant('fan' as const), coefficient: between(0, 1e6) }),
  fc.record({ kind: fc.constant('gravity' as const), torque: between(-1e6, 1e6) }),
);

const threeTimes = fc.tuple(between(0, 0.1), between(0, 0.1), between(0, 0.1));

/** Times as a file can state them: a delay, a dead time that the contactors can reach, or neither. */
const times = fc
  .tuple(between(0, 0.1), between(0, 0.1), between(0, 1), fc.constantFrom('delay', 'deadTime', 'default'))
  .map(([closingTime, openingTime, time, kind]) => {
    if (kind === 'delay') return contactorTimes({ closingTime, openingTime, changeoverDelay: time });
    if (kind === 'default') return contactorTimes({ closingTime, openingTime });
    return contactorTimes({
      closingTime,
      openingTime,
      deadTime: time + Math.max(0, closingTime - openingTime),
    });
  })
  .filter(({ changeoverDelay }) => changeoverDelay >= 0);

const zeroSpeedSwitch = fc.record({
  dropOutSpeed: between(1e-3, 5),
  pickUpSpeed: between(5.001, 10),
  delay: between(0, 1),
});

const starter: fc.Arbitrary<StarterData> = fc
  .tuple(
    times,
    fc.record({
      closingScatter: threeTimes,
      openingScatter: threeTimes,
      minimumArcingTime: between(0, 0.01),
      exchangedPhases: fc.constantFrom('AB' as const, 'BC' as const, 'CA' as const),
      zeroSpeedSwitch: orNull(zeroSpeedSwitch),
    }),
    fc.constantFrom('arcing' as const, 'ideal' as const),
  )
  .map(([contacts, others, poles]) => ({
    ...contacts,
    ...others,
    poles,
    minimumArcingTime: poles === 'ideal' ? 0 : others.minimumArcingTime,
  }));

/** A start first; a plug only after a start. */
const actions = fc
  .tuple(
    fc.constantFrom<ActionKind>('startForward', 'startReverse'),
    fc.uniqueArray(between(0, 100), { minLength: 1, maxLength: 6 }),
    fc.infiniteStream(fc.constantFrom<ActionKind>('startForward', 'startReverse', 'plug', 'coast')),
  )
  .map(([first, instants, stream]) => {
    const kinds: ActionKind[] = [first];
    for (let i = 1; i < instants.length; i++) {
      const wanted = stream.next().value;
      const connected = kinds[i - 1] === 'startForward' || kinds[i - 1] === 'startReverse';
      kinds.push(wanted === 'plug' && !connected ? 'coast' : wanted);
    }
    return instants.toSorted((a, b) => a - b).map((at, i) => ({ at, do: kinds[i]! }));
  });

const scenario: fc.Arbitrary<Scenario> = fc.record({
  schemaVersion: fc.constant(1 as const),
  title: fc
    .string({ minLength: 1, maxLength: 20, unit: 'grapheme' })
    // What a decoder puts for bytes that are no UTF-8, and what Unicode forbids, is refused as no text.
    .filter((title) => !/[\uFFFD-\uFFFF]/.test(title)),
  description: fc.string({ maxLength: 200 }),
  supply: fc.record({
    lineVoltage: between(10, 20_000),
    frequency: between(10, 400),
    angle: between(-4 * Math.PI, 4 * Math.PI),
    sourceResistance: between(0, 1e3),
    sourceInductance: between(0, 10),
  }),
  machine,
  load: fc.record({ inertia: between(0, 1e6), torques: fc.array(loadTorque, { maxLength: 4 }) }),
  starter,
  initial: fc.constantFrom('rest' as const, 'runningForward' as const, 'runningReverse' as const),
  actions,
  solver: fc.record({
    relativeTolerance: between(1e-12, 1e-3),
    endTime: fc.oneof(fc.constant('auto' as const), between(100.5, 3600)),
    maxSteps: fc.integer({ min: 100, max: 1e8 }),
    frame: fc.constantFrom('auto' as const, 'stationary' as const),
  }),
});

it('every scenario comes back from JSON text the same to the last bit', () => {
  fc.assert(
    fc.property(scenario, (original) => {
      expect(parseScenario(JSON.stringify(renderScenario(original)))).toEqual(original);
    }),
    { numRuns: 200, seed: 1 },
  );
});

it('every scenario comes back from the parsed JSON object the same to the last bit', () => {
  fc.assert(
    fc.property(scenario, (original) => {
      expect(parseScenario(JSON.parse(JSON.stringify(renderScenario(original))))).toEqual(original);
    }),
    { numRuns: 200, seed: 2 },
  );
});

it('every scenario comes back from YAML text the same to the last bit', () => {
  fc.assert(
    fc.property(scenario, (original) => {
      expect(parseScenario(scenarioToYaml(original))).toEqual(original);
    }),
    { numRuns: 200, seed: 3 },
  );
});

it('no text, however odd, does anything but parse or be refused with a list of problems', () => {
  const pieces = fc.constantFrom(
    'title: ',
    'supply:\n  ',
    '- ',
    '[',
    ']',
    '{',
    '}',
    '"',
    ':',
    '\n',
    '&a ',
    '*a',
    '!t ',
    '? ',
  );
  const text = fc.array(fc.oneof(pieces, fc.string({ unit: 'binary', maxLength: 8 })), { maxLength: 40 });
  fc.assert(
    fc.property(text, (parts) => {
      try {
        parseScenario(parts.join(''));
      } catch (error) {
        expect(error).toBeInstanceOf(ScenarioError);
        if (error instanceof ScenarioError)
          expect(error.message.split('\n')).toHaveLength(error.problems.length);
      }
    }),
    { numRuns: 1000, seed: 4 },
  );
});
