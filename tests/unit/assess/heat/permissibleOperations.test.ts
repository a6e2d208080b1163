import { describe, expect, it } from 'vitest';
import { adiabaticRises } from '../../../../src/assess/heat/adiabaticRises.ts';
import { dutyCycle } from '../../../../src/assess/heat/dutyCycle.ts';
import type { OperationHeat } from '../../../../src/assess/heat/heat.ts';
import { noLoadStartsEstimate } from '../../../../src/assess/heat/noLoadStarts.ts';
import { operationsInSuccession } from '../../../../src/assess/heat/operationsInSuccession.ts';
import { periodicState } from '../../../../src/assess/heat/periodicState.ts';
import { permissibleOperations } from '../../../../src/assess/heat/permissibleOperations.ts';
import { heatPerNode, risesAfter, thermalModes } from '../../../../src/assess/heat/thermalModes.ts';
import type { ThermalModel } from '../../../../src/assess/heat/thermalNetwork.ts';
import { FOUR_BODIES, ONE_BODY, pulse, SOME_HEAT, THREE_BODIES } from '../../../support/thermalModels.ts';
import { expectAllWithin, expectWithin } from '../../../support/tolerance.ts';

const NUMERIC = { relative: 1e-9 };

/** A time that is nothing beside τ = 100 s: 5e-7 of the rise. */
const AN_INSTANT = 1e-4;
/** 20 kJ at once into the cage, nothing else. */
const AT_ONCE: OperationHeat = {
  start: pulse({}),
  running: pulse({ duration: 1 }),
  stop: pulse({ cage: 20_000, duration: AN_INSTANT }),
  stopKind: 'braking',
};
const NO_RUNNING = { kind: 'time', time: 0 } as const;

describe('adiabatic rises', () => {
  it('are heat over heat capacity, part by part', () => {
    const { start, stop, operation, reversal } = adiabaticRises(THREE_BODIES, {
      ...SOME_HEAT,
      braking: pulse({ winding: 6000, cage: 9000, duration: 0.3 }),
      stopKind: 'reversal',
    });
    // 3000, 1500 and 20000 J/K
    expectAllWithin(start, [4000 / 3000, 5000 / 1500, 50 / 20_000], NUMERIC, 'start');
    expectAllWithin(stop, [2, 6, 0], NUMERIC, 'stop');
    expectAllWithin(operation, [10_000 / 3000, 14_000 / 1500, 50 / 20_000], NUMERIC, 'start and stop');
    expectAllWithin(reversal, [3, 14_000 / 1500, 40 / 20_000], NUMERIC, 'reversal');
  });

  it('are those of the model in a time too short to cool', () => {
    const heat = heatPerNode(FOUR_BODIES, SOME_HEAT.stop);
    const after = risesAfter(thermalModes(FOUR_BODIES, 'standstill'), [0, 0, 0, 0], heat, 1e-4);
    // In 0.1 ms next to time constants of tens of seconds; the frame gets as little from the others
    expectAllWithin(after, adiabaticRises(FOUR_BODIES, SOME_HEAT).stop, { absolute: 1e-4 }, 'rises');
  });
});

describe('permissible operations per hour', () => {
  it('of one body are those of the closed form', () => {
    // ΔΘ/(1 − e^(−T/τ)) = 100 K with ΔΘ = 20 K, τ = 100 s: T = −100·ln(0.8) s
    const { perHour, binding, peaks } = permissibleOperations(ONE_BODY, AT_ONCE, 'startPlugStop', NO_RUNNING);
    expectWithin(perHour, 3600 / (-100 * Math.log(0.8)), { relative: 1e-5 }, 'per hour');
    expect(binding).toBe('cage');
    expectAllWithin(peaks, [140], NUMERIC, 'peaks');
  });

  it('lead to the limit and not beyond it, and one in a thousand more leads beyond it', () => {
    const running = { kind: 'time', time: 30 } as const;
    const { perHour, binding, peaks } = permissibleOperations(
      THREE_BODIES,
      SOME_HEAT,
      'startPlugStop',
      running,
    );
    expect(binding).toBe('winding');
    expectWithin(peaks[0], 145, NUMERIC, 'winding');
    expect(peaks[1]).toBeLessThan(300);
    const more = dutyCycle(SOME_HEAT, 'startPlugStop', running, 1.001 * perHour);
    expect(periodicState(THREE_BODIES, more).peaks[0]).toBeGreaterThan(145);
  });

  it('are bound by the cage where the winding can take more', () => {
    const model: ThermalModel = {
      ...THREE_BODIES,
      nodes: THREE_BODIES.nodes.map((node) => (node.name === 'winding' ? { ...node, limit: 900 } : node)),
    };
    const { binding, peaks } = permissibleOperations(model, SOME_HEAT, 'startPlugStop', NO_RUNNING);
    expect(binding).toBe('cage');
    expectWithin(peaks[1], 300, NUMERIC, 'cage');
  });

  it('are bound by time where nothing gets too hot', () => {
    const weak = { ...AT_ONCE, stop: pulse({ cage: 1, duration: 0.5 }) };
    const { perHour, binding } = permissibleOperations(ONE_BODY, weak, 'startPlugStop', {
      kind: 'time',
      time: 9.5,
    });
    expect(binding).toBe('time');
    expectWithin(perHour, 360, NUMERIC, 'per hour');
  });

  it('are the highest rate that passes where long running is too hot too', () => {
    // 40 % of the time 2 kW: rare operations mean hours of running at 40 + 200 °C; on average it is 80 K, and 20 K are left
    const heat: OperationHeat = {
      start: pulse({}),
      running: pulse({ cage: 2000, duration: 1 }),
      stop: pulse({ cage: 200, duration: 0.02 }),
      stopKind: 'braking',
    };
    const running = { kind: 'factor', factor: 0.4 } as const;
    const { perHour, binding } = permissibleOperations(ONE_BODY, heat, 'startPlugStop', running);
    expect(binding).toBe('cage');
    // So often that the rise hardly swings. With z stops per second, 0.02 s each in place of running:
    // (2 kW·(0.4 − 0.02·z) + 200 J·z)/(10 W/K) = 100 K, z = 1.25; running and stop swing it by 0.6 and 0.2 K.
    expectWithin(perHour, 4500, { relative: 0.05 }, 'per hour');
    const rare = periodicState(ONE_BODY, dutyCycle(heat, 'startPlugStop', running, 6)).peaks[0];
    expect(rare).toBeGreaterThan(140);
  });

  describe('are none, with the reason,', () => {
    it('where one operation is too much', () => {
      const found = permissibleOperations(
        ONE_BODY,
        { ...AT_ONCE, stop: pulse({ cage: 150_000 }) },
        'startPlugStop',
        NO_RUNNING,
      );
      expect(found.perHour).toBe(0);
      expect(found.remark).toBe(
        'one operation from cold takes the cage to 190 °C, above its limit of 140 °C',
      );
    });

    it('where running alone is too much', () => {
      const found = permissibleOperations(
        ONE_BODY,
        { ...AT_ONCE, running: pulse({ cage: 1500, duration: 1 }) },
        'fullReversal',
        { kind: 'factor', factor: 1 },
      );
      expect(found.perHour).toBe(0);
      expect(found.remark).toBe(
        'running under this load alone takes the cage to 190 °C, above its limit of 140 °C',
      );
    });

    it('where running for the stated time and stopping is too much', () => {
      // After 1000 s of 0.9 kW at τ = 100 s: 90 K, and 20 K by the stop
      const found = permissibleOperations(
        ONE_BODY,
        { ...AT_ONCE, running: pulse({ cage: 900, duration: 1 }) },
        'startPlugStop',
        { kind: 'time', time: 1000 },
      );
      expect(found.perHour).toBe(0);
      expect(found.remark).toBe(
        'even one operation in fifty hours takes the cage to 150 °C, above its limit of 140 °C',
      );
    });
  });

  it('say which body was not looked at', () => {
    const [winding, ...rest] = THREE_BODIES.nodes;
    const model: ThermalModel = {
      ...THREE_BODIES,
      nodes: [{ ...winding!, limit: null, limitSource: 'the insulation class is missing' }, ...rest],
    };
    expect(permissibleOperations(model, SOME_HEAT, 'startPlugStop', NO_RUNNING).remark).toBe(
      'the winding is not looked at because the insulation class is missing',
    );
  });
});

describe('operations in succession', () => {
  it('without pause are the rise that is left over the rise of one', () => {
    // 100 K left from cold at 20 K each: the fifth ends at the limit; from warm, 80 K, 20 K are left for one.
    const exact = { ...AT_ONCE, stop: pulse({ cage: 19_999 }) };
    expect(operationsInSuccession(ONE_BODY, exact, 'cold', 0)).toBe(5);
    expect(operationsInSuccession(ONE_BODY, exact, 'warm', 0)).toBe(1);
    const more = { ...AT_ONCE, stop: pulse({ cage: 20_001 }) };
    expect(operationsInSuccession(ONE_BODY, more, 'cold', 0)).toBe(4);
    expect(operationsInSuccession(ONE_BODY, more, 'warm', 0)).toBe(0);
  });

  it('with a rest are those counted step by step', () => {
    // Θ_n = 20·(1 − x^n)/(1 − x), x = e^(−0.15): 20, 37.2, 52, 64.8, 75.8, 85.2, 93.4, 100.4 K
    expect(operationsInSuccession(ONE_BODY, AT_ONCE, 'cold', 15)).toBe(7);
  });

  it('never end where the periodic steady state stays below the limit', () => {
    // 20/(1 − e^(−0.3)) = 77.2 K
    expect(operationsInSuccession(ONE_BODY, AT_ONCE, 'cold', 30)).toBe(Number.POSITIVE_INFINITY);
    expect(operationsInSuccession(ONE_BODY, { ...AT_ONCE, stop: pulse({ cage: 19_999 }) }, 'warm', 30)).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  it('from warm may fail at the first one though they could go on for ever', () => {
    const hot = { ...ONE_BODY, nodes: [{ ...ONE_BODY.nodes[0]!, ratedRise: 90 }] };
    expect(operationsInSuccession(hot, AT_ONCE, 'warm', 60)).toBe(0);
    expect(operationsInSuccession(hot, AT_ONCE, 'cold', 60)).toBe(Number.POSITIVE_INFINITY);
  });

  it('of reversals and of starts take their own heat', () => {
    const heat: OperationHeat = { ...AT_ONCE, start: pulse({ cage: 9000 }) };
    // starts: 100/9 K; stop and start: 100/29 K
    expect(operationsInSuccession(ONE_BODY, heat, 'cold', 0, 'startCoast')).toBe(11);
    expect(operationsInSuccession(ONE_BODY, heat, 'cold', 0, 'fullReversal')).toBe(3);
  });
});

describe('operations from the maker’s starts without load', () => {
  const data = { noLoadStartsPerHour: 600, rotorInertia: 0.1, synchronousSpeed: 100, ratedLoss: 500 };
  /** Winding and cage get alike; no loss while running. */
  const heat: OperationHeat = {
    start: pulse({ winding: 2000, cage: 2000, duration: 1 }),
    running: pulse({ duration: 1 }),
    stop: pulse({ winding: 6000, cage: 6000, duration: 1 }),
    stopKind: 'braking',
  };

  // W₀ = ½·0.1·100² = 500 J in the cage and as much in the winding: 600 per hour are 600 kJ per hour.
  it.each([
    ['startCoast', 600 / 4],
    ['startPlugStop', 600 / 16],
    ['fullReversal', 600 / 16],
  ] as const)('%s: %f per hour', (kind, expected) => {
    expectWithin(noLoadStartsEstimate(data, heat, kind, NO_RUNNING), expected, NUMERIC, 'per hour');
  });

  it('are fewer by the share of running in the heat', () => {
    const loaded = { ...heat, running: pulse({ winding: 200, cage: 50, duration: 1 }) };
    // half of the rated loss for 40 % of the time: a fifth
    expectWithin(
      noLoadStartsEstimate(data, loaded, 'startPlugStop', { kind: 'factor', factor: 0.4 }),
      37.5 * 0.8,
      NUMERIC,
      'with a factor',
    );
    // z/37.5 + 0.5·z·48 s/3600 s = 1: z = 30, and 30·48 s are the same 40 %
    expectWithin(
      noLoadStartsEstimate(data, loaded, 'startPlugStop', { kind: 'time', time: 48 }),
      30,
      NUMERIC,
      'with a time',
    );
  });

  it('are none where running uses up all of the heat', () => {
    const overloaded = { ...heat, running: pulse({ winding: 700, duration: 1 }) };
    expect(noLoadStartsEstimate(data, overloaded, 'fullReversal', { kind: 'factor', factor: 1 })).toBe(0);
  });
});
