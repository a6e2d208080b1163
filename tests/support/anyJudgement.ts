import fc from 'fast-check';
import type {
  AlternativesData,
  ContactorData,
  ContactorsData,
  DutyData,
  JudgementData,
  LimitsData,
  ProtectionData,
  ThermalData,
  TitleBlock,
} from '../../src/scenario/scenario.ts';
import { between, orNull } from './anyScenario.ts';

const line = fc
  .string({ minLength: 1, maxLength: 12, unit: 'grapheme' })
  .filter((text) => !/[\uFFFD-\uFFFF]/.test(text));
const two = (value: number) => String(value).padStart(2, '0');
const day = fc
  .tuple(
    fc.integer({ min: 1900, max: 2199 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 1, max: 28 }),
  )
  .map(([year, month, date]) => `${year}-${two(month)}-${two(date)}`);
const count = between(1, 1e9);

const titleBlock: fc.Arbitrary<TitleBlock> = fc.record({
  plant: orNull(line),
  tag: orNull(line),
  revision: orNull(line),
  prepared: orNull(line),
  checked: orNull(line),
  date: orNull(day),
});

/** Air, cage at rated load and limit of the cage in this order; a hot rotor withstands no more than a cold one. */
const thermal: fc.Arbitrary<ThermalData> = fc
  .tuple(
    fc.record({
      insulationClass: orNull(fc.constantFrom('130' as const, '155' as const, '180' as const)),
      ratedRise: orNull(between(1e-3, 90)),
      ambient: between(-60, 100),
      altitude: between(-500, 9000),
      cageLimit: orNull(between(301, 700)),
      cageRatedTemperature: orNull(between(101, 300)),
      windingHeatCapacity: orNull(between(0.1, 1e8)),
      cageHeatCapacity: orNull(between(0.1, 1e8)),
      frameHeatCapacity: orNull(between(0.1, 1e8)),
      coolingTimeConstant: orNull(between(1, 1e6)),
      standstillCooling: orNull(between(0, 1)),
      outerCageShare: orNull(between(0.01, 0.99)),
      noLoadStartsPerHour: orNull(between(1, 1e5)),
    }),
    fc.tuple(between(1e-3, 600), between(1e-3, 600), fc.boolean(), fc.boolean()),
  )
  .map(([data, [a, b, cold, hot]]) => ({
    ...data,
    lockedRotorTimeCold: cold ? Math.max(a, b) : null,
    lockedRotorTimeHot: hot ? Math.min(a, b) : null,
  }));

const duty: fc.Arbitrary<DutyData> = fc
  .tuple(
    fc.record({
      cycle: fc.constantFrom('startCoast' as const, 'startPlugStop' as const, 'fullReversal' as const),
      operationsPerHour: orNull(between(1, 100)),
      operationsPerDay: orNull(between(1e-3, 24)),
      pluggingShare: between(0, 0.5),
      inchingShare: between(0, 0.5),
      contactsChanged: orNull(day),
      operationsSince: orNull(between(0, 1e9)),
    }),
    fc.oneof(
      fc.record({ runningTime: orNull(between(0, 36)), cyclicDurationFactor: fc.constant(null) }),
      fc.record({ runningTime: fc.constant(null), cyclicDurationFactor: between(1e-6, 1) }),
    ),
  )
  .map(([data, running]) => ({ ...data, ...running }));

/** Different currents in ascending order, each beside a number that falls. */
const falling = (most: number) =>
  fc
    .tuple(
      fc.uniqueArray(between(1e-3, 1e6), { minLength: 2, maxLength: 5 }),
      fc.uniqueArray(between(1, most), { minLength: 5, maxLength: 5 }),
    )
    .map(([currents, seconds]) => {
      const fallen = seconds.toSorted((a, b) => b - a);
      return currents.toSorted((a, b) => a - b).map((current, j) => ({ current, second: fallen[j]! }));
    });

const contactor: fc.Arbitrary<ContactorData> = fc
  .tuple(
    fc.record({
      ratedVoltage: orNull(between(10, 20_000)),
      ratedCurrentAc3: between(1, 1e5),
      lifeAc3: orNull(count),
      lifeTable: orNull(
        falling(1e9).map((points) => points.map(({ current, second }) => ({ current, operations: second }))),
      ),
      mechanicalLife: orNull(count),
      makingCapacity: orNull(between(1e-3, 1e6)),
      breakingCapacity: orNull(between(1e-3, 1e6)),
      bounceTime: orNull(between(0, 0.1)),
      operationsPerHourAc3: orNull(between(1, 1e5)),
      operationsPerHourAc4: orNull(between(1, 1e5)),
    }),
    fc.record({ ratedCurrentAc4: orNull(between(1e-3, 1)), lifeAc4: orNull(count) }),
  )
  .map(([data, { ratedCurrentAc4, lifeAc4 }]) => ({
    ...data,
    ratedCurrentAc4,
    lifeAc4: ratedCurrentAc4 === null ? null : lifeAc4,
  }));

const contactors: fc.Arbitrary<ContactorsData> = fc
  .record({
    forward: contactor,
    reverse: orNull(contactor),
    interlockMechanicalLife: orNull(count),
    switchMechanicalLife: orNull(count),
  })
  .map(({ reverse, ...data }) => ({ ...data, reverse: reverse ?? data.forward }));

const limit = (min: number, max: number) =>
  fc.oneof(between(min, max), fc.constantFrom(null, 'none' as const));

const limits: fc.Arbitrary<LimitsData> = fc.record({
  instantaneousTrip: limit(1e-3, 1e6),
  voltageDip: limit(1e-6, 1),
  couplingTorque: limit(1e-3, 1e8),
  gearboxTorque: limit(1e-3, 1e8),
  keyTorque: limit(1e-3, 1e8),
  brakeTorque: limit(1e-3, 1e8),
  deceleration: limit(1e-3, 1000),
  decelerationRadius: between(1e-3, 100),
  tippingRatio: limit(0.01, 100),
  slidingFriction: limit(0.001, 10),
  reverseCreep: limit(0, 600),
  deadTimeMargin: limit(0, 60),
  stopTime: limit(1e-3, 3600),
  stopAngle: limit(1e-3, 1e6),
  contactLife: limit(1, 1e9),
});

const protection: fc.Arbitrary<ProtectionData> = fc
  .record({
    overload: orNull(
      fc.record({
        setting: between(1e-3, 1e5),
        tripClass: fc.constantFrom('5' as const, '10A' as const, '10' as const, '20' as const, '30' as const),
      }),
    ),
    curves: fc.array(fc.tuple(line, fc.constantFrom('breaker' as const, 'fuse' as const), falling(1e6)), {
      maxLength: 2,
    }),
  })
  .map(({ overload, curves }) => ({
    overload,
    curves: curves.map(([name, kind, points], j) => ({
      name: `${j} ${name}`,
      kind,
      points: points.map(({ current, second }) => ({ current, time: second })),
    })),
  }));

const alternatives: fc.Arbitrary<AlternativesData> = fc.record({
  mechanicalBrake: orNull(fc.record({ torque: between(1e-3, 1e8), delay: between(0, 10) })),
  injectionCurrent: orNull(between(1e-3, 1e5)),
  injectionDelay: orNull(between(0, 60)),
  lineResistance: orNull(between(1e-3, 1e5)),
  deadTime: orNull(between(0, 60)),
});

/** Any sections of the judgement that a file can state for a machine of two stated cages, each there or not. */
export const anyJudgement: fc.Arbitrary<JudgementData> = fc.record(
  { titleBlock, thermal, duty, contactors, limits, protection, alternatives },
  { requiredKeys: [] },
);
