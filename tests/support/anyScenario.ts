import fc from 'fast-check';
import { contactorTimes } from '../../src/scenario/contactorTimes.ts';
import type {
  ActionKind,
  LoadData,
  LoadTorque,
  MachineData,
  Scenario,
  StarterData,
  StarterFault,
} from '../../src/scenario/scenario.ts';
import { withControl } from './anyControl.ts';

/** Any double of the range, all digits; minus zero is not a quantity. */
export const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => value + 0);
/** A value, or null. */
export const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

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

/** An element that is there in half of the cases; where it is not, its key is absent. */
const maybe = <K extends string, T>(key: K, arbitrary: fc.Arbitrary<T>) =>
  fc.record({ [key]: arbitrary } as Record<K, fc.Arbitrary<T>>, { requiredKeys: [] });

/** Points of a curve along which current over flux grows by a fair step, so that rounding cannot turn it. */
const mainSaturation = fc
  .tuple(
    between(0.01, 1),
    between(0.01, 10),
    fc.array(fc.tuple(between(1.01, 1.5), between(1.01, 2)), { minLength: 1, maxLength: 8 }),
  )
  .map(([flux, ratio, steps]) => {
    const points = [{ flux, current: flux * ratio }];
    for (const [up, bend] of steps) {
      const last = points.at(-1)!;
      const higher = last.flux * up;
      points.push({ flux: higher, current: (last.current / last.flux) * bend * higher });
    }
    return points;
  });

const leakagePath = orNull(fc.record({ current: between(1e-3, 1e5), remaining: between(1e-6, 1) }));

const rotorResistors = fc.record({
  starting: fc.array(fc.record({ resistance: between(0, 1e3), duration: between(1e-6, 100) }), {
    maxLength: 5,
  }),
  plugging: between(0, 1e3),
});

const machine: fc.Arbitrary<MachineData> = fc
  .tuple(
    fc.record({
      connection: fc.constantFrom('star' as const, 'delta' as const),
      polePairs: fc.integer({ min: 1, max: 6 }),
      Rs: between(1e-6, 1e5),
      Lls: between(1e-9, 1e3),
      Lm: between(1e-9, 1e3),
      cages: fc.array(cage, { minLength: 1, maxLength: 2 }),
      inertia: between(1e-6, 1e6),
      rated,
    }),
    maybe('mainSaturation', mainSaturation),
    maybe('core', fc.record({ R: between(1e-6, 1e5), L: between(1e-9, 1e3) })),
    maybe('mechanicalLoss', fc.record({ friction: between(0, 1e3), windage: between(0, 1e3) })),
    fc.option(fc.tuple(leakagePath, leakagePath, leakagePath), { nil: undefined }),
    maybe('rotorResistors', rotorResistors),
  )
  .map(([base, main, core, loss, paths, rings]) => ({
    ...base,
    ...main,
    ...core,
    ...loss,
    ...(paths === undefined
      ? {}
      : { leakageSaturation: { stator: paths[0], cages: paths.slice(1, 1 + base.cages.length) } }),
    ...(base.cages.length === 1 ? rings : {}),
  }));

const loadTorque: fc.Arbitrary<LoadTorque> = fc.oneof(
  fc
    .tuple(between(0, 1e4), between(0, 1e4))
    .map(([a, b]) => ({ kind: 'friction' as const, torque: Math.min(a, b), breakaway: Math.max(a, b) })),
  fc.record({ kind: fc.constant('viscous' as const), coefficient: between(0, 1e6) }),
  fc.record({ kind: fc.constant('fan' as const), coefficient: between(0, 1e6) }),
  fc.record({ kind: fc.constant('gravity' as const), torque: between(-1e6, 1e6) }),
  fc.record({
    kind: fc.constant('constantPower' as const),
    power: between(0, 1e8),
    baseSpeed: between(1e-3, 1e4),
  }),
  // Tables that reach far beyond any synchronous speed; a gear divides it further.
  fc
    .tuple(
      fc.uniqueArray(fc.tuple(between(1e-3, 20_000), between(0, 1e5)), {
        maxLength: 5,
        selector: ([speed]) => speed,
      }),
      fc.tuple(between(0, 1e5), between(0, 1e5)),
      fc.boolean(),
    )
    .map(([inner, [first, last], mirrored]) => ({
      kind: 'table' as const,
      points: [
        [mirrored ? 0 : -30_000, first] as const,
        ...inner.toSorted(([a], [b]) => a - b),
        [30_000, last] as const,
      ].map(([speed, torque]) => ({ speed, torque })),
      mirrored,
    })),
);

const load: fc.Arbitrary<LoadData> = fc
  .tuple(
    fc.record({ inertia: between(1e-3, 1e6), torques: fc.array(loadTorque, { maxLength: 4 }) }),
    maybe(
      'gear',
      fc.record({
        ratio: between(1, 1e3),
        efficiency: between(1e-3, 1),
        backwardEfficiency: between(1e-3, 1),
      }),
    ),
    maybe(
      'coupling',
      fc.record({ stiffness: between(1, 1e9), damping: between(0, 1e6), backlash: between(0, 3) }),
    ),
  )
  .map(([base, gear, coupling]) => ({ ...base, ...gear, ...coupling }));

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

const phases = fc.constantFrom('A' as const, 'B' as const, 'C' as const);
const poleFault = fc.record({
  kind: fc.constantFrom('weldedPole' as const, 'deadPole' as const),
  contactor: fc.constantFrom('forward' as const, 'reverse' as const),
  pole: phases,
});

/** At most one fault in one place. */
const faults: fc.Arbitrary<StarterFault[]> = fc
  .tuple(
    fc.uniqueArray(
      fc.record({ kind: fc.constant('lostPhase' as const), phase: phases, from: between(0, 100) }),
      {
        maxLength: 2,
        selector: ({ phase }) => phase,
      },
    ),
    fc.uniqueArray(poleFault, { maxLength: 3, selector: ({ contactor, pole }) => contactor + pole }),
  )
  .map(([lost, poles]) => [...lost, ...poles]);

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
    maybe(
      'lineResistors',
      fc.record({
        resistance: between(0, 1e3),
        closingTime: between(0, 1),
        openingTime: between(0, 1),
        bypassAfter: orNull(between(0, 60)),
      }),
    ),
    maybe('faults', faults),
  )
  .map(([contacts, others, poles, lineResistors, wrong]) => ({
    ...contacts,
    ...others,
    ...lineResistors,
    ...wrong,
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

const parts: fc.Arbitrary<Scenario> = fc.record({
  schemaVersion: fc.constant(1 as const),
  title: fc
    .string({ minLength: 1, maxLength: 20, unit: 'grapheme' })
    // What a decoder puts for bytes that are no UTF-8, and what Unicode forbids, is refused as no text.
    .filter((title) => !/[\uFFFD-\uFFFF]/.test(title)),
  description: fc.string({ maxLength: 200 }),
  supply: fc.record(
    {
      lineVoltage: between(10, 20_000),
      frequency: between(10, 400),
      angle: between(-4 * Math.PI, 4 * Math.PI),
      sourceResistance: between(0, 1e3),
      sourceInductance: between(0, 10),
      cable: fc.record({ resistance: between(0, 1e3), inductance: between(0, 10) }),
    },
    { requiredKeys: ['lineVoltage', 'frequency', 'angle', 'sourceResistance', 'sourceInductance'] },
  ),
  machine,
  load,
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

/** Star plugging and a winding order belong to delta machines only. */
const commanded: fc.Arbitrary<Scenario> = fc
  .tuple(
    parts,
    maybe('plugConnection', fc.constant('star' as const)),
    maybe('windingOrder', fc.constantFrom('AB' as const, 'AC' as const)),
  )
  .map(([whole, plug, order]) =>
    whole.machine.connection === 'star'
      ? whole
      : { ...whole, starter: { ...whole.starter, ...plug, ...order } },
  );

/** Any scenario that a file can state, however odd as a drive: every element there or not, every number with all digits. */
export const anyScenario: fc.Arbitrary<Scenario> = withControl(commanded);
