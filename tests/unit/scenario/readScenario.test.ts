import { expect, it } from 'vitest';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { minimalScenario, parseScenario } from './minimalScenario.ts';

const omega = 2 * Math.PI * 60;

it('fills in every default of the smallest scenario', () => {
  const expected: Scenario = {
    schemaVersion: 1,
    title: 'Smallest',
    description: '',
    supply: { lineVoltage: 460, frequency: 60, angle: 0, sourceResistance: 0, sourceInductance: 0 },
    machine: {
      connection: 'star',
      polePairs: 2,
      Rs: 0.087,
      Lls: 0.302 / omega,
      Lm: 13.08 / omega,
      cages: [{ Rr: 0.228, Llr: 0.302 / omega }],
      inertia: 1.662,
      rated: { current: null, torque: null, power: null, speed: 1705 * (Math.PI / 30) },
    },
    load: { inertia: 0, torques: [] },
    starter: {
      closingTime: 0.02,
      openingTime: 0.01,
      closingScatter: [0, 0, 0],
      openingScatter: [0, 0, 0],
      changeoverDelay: 0.01,
      changeoverGivenAs: 'default',
      poles: 'arcing',
      minimumArcingTime: 0,
      exchangedPhases: 'BC',
      zeroSpeedSwitch: null,
    },
    initial: 'rest',
    actions: [{ at: 0, do: 'startForward' }],
    solver: { relativeTolerance: 1e-8, endTime: 'auto', maxSteps: 200000, frame: 'auto' },
  };
  expect(parseScenario(minimalScenario())).toEqual(expected);
});

it('reads the same scenario from an object, from JSON and from YAML with either line end and a byte order mark', () => {
  const object = minimalScenario();
  const scenario = parseScenario(object);
  expect(parseScenario(JSON.stringify(object))).toEqual(scenario);
  expect(parseScenario(JSON.stringify(object, null, '\t'))).toEqual(scenario);
  const yaml = [
    'title: Smallest',
    'supply: { lineVoltage: 460 V, frequency: 60 Hz }',
    'machine:',
    '  poles: 4',
    '  statorResistance: 0.087 ohm',
    '  statorLeakage:\t0.302 ohm   # a tab between key and value is no indentation',
    '  magnetising: 13.08 ohm',
    '  cages: [{ resistance: 0.228 ohm, leakage: 0.302 ohm }]',
    '  inertia: 1.662 kg m^2',
    '  rated: { speed: 1705 rpm }',
    'load: { inertia: 0 kg m^2, torque: none }',
    'actions:',
    '  - at: 0 s',
    '    do: start forward',
  ];
  expect(parseScenario(yaml.join('\n'))).toEqual(scenario);
  expect(parseScenario(`\uFEFF${yaml.join('\r\n')}`)).toEqual(scenario);
});

it('divides the values of a delta winding by three, leakages and cages too', () => {
  const star = parseScenario(minimalScenario()).machine;
  const delta = parseScenario(minimalScenario({ machine: { connection: 'delta' } })).machine;
  // One division and one by omega in either order: two roundings.
  const near = (a: number, b: number) => expect(Math.abs(a / b - 1)).toBeLessThan(4 * Number.EPSILON);
  near(delta.Rs, star.Rs / 3);
  near(delta.Lls, star.Lls / 3);
  near(delta.Lm, star.Lm / 3);
  near(delta.cages[0]!.Rr, star.cages[0]!.Rr / 3);
  near(delta.cages[0]!.Llr, star.cages[0]!.Llr / 3);
  expect(delta.connection).toBe('delta');
});

it('takes the circuit of a delta machine as it is where it is given as the equivalent star', () => {
  const machine = { connection: 'delta', circuitGivenAs: 'equivalentStar' };
  const { Rs, Lm } = parseScenario(minimalScenario({ machine })).machine;
  expect([Rs, Lm]).toEqual([0.087, 13.08 / omega]);
});

it('takes inductances in henry as they are, and reactances at the rated frequency where one is stated', () => {
  const machine = { statorLeakage: '0.8 mH', ratedFrequency: '50 Hz', rated: { speed: '1450 rpm' } };
  const { Lls, Lm } = parseScenario(minimalScenario({ machine })).machine;
  expect(Lls).toBe(0.0008);
  expect(Lm).toBe(13.08 / (2 * Math.PI * 50));
});

it('splits a short-circuit power into resistance and inductance by X/R', () => {
  const supply = { shortCircuitPower: '5 MVA', xOverR: 3 };
  const { sourceResistance, sourceInductance } = parseScenario(minimalScenario({ supply })).supply;
  // |Z| = V²/S = 460²/5e6 = 42.32 mΩ, by hand; 1e-14 relative for a few roundings.
  expect(Math.hypot(sourceResistance, omega * sourceInductance)).toBeCloseTo(0.04232, 14);
  expect((omega * sourceInductance) / sourceResistance).toBeCloseTo(3, 13);
});

it('assumes X/R = 6 where only the short-circuit power is known', () => {
  const { supply } = parseScenario(minimalScenario({ supply: { shortCircuitPower: '5 MVA' } }));
  expect((omega * supply.sourceInductance) / supply.sourceResistance).toBeCloseTo(6, 13);
});

it('reads a source impedance as it is written', () => {
  const asReactance = parseScenario(
    minimalScenario({ supply: { sourceResistance: '10 mohm', sourceReactance: '30 mohm' } }),
  ).supply;
  expect(asReactance.sourceResistance).toBe(0.01);
  expect(asReactance.sourceInductance).toBe(0.03 / omega);
  const asInductance = parseScenario(minimalScenario({ supply: { sourceInductance: '0.1 mH' } })).supply;
  expect(asInductance.sourceInductance).toBe(0.0001);
});

it('turns load points into coefficients and a missing breakaway into the friction torque', () => {
  const torque = [
    { kind: 'friction', torque: '20 N m' },
    { kind: 'friction', torque: '20 N m', breakaway: '30 N m' },
    { kind: 'viscous', torque: '20 N m', atSpeed: '100 rad/s' },
    { kind: 'viscous', coefficient: '0.1 N m s/rad' },
    { kind: 'fan', torque: '20 N m', atSpeed: '100 rad/s' },
    { kind: 'gravity', torque: '-60 N m' },
  ];
  expect(parseScenario(minimalScenario({ load: { torque } })).load.torques).toEqual([
    { kind: 'friction', torque: 20, breakaway: 20 },
    { kind: 'friction', torque: 20, breakaway: 30 },
    { kind: 'viscous', coefficient: 0.2 },
    { kind: 'viscous', coefficient: 0.1 },
    { kind: 'fan', coefficient: 0.002 },
    { kind: 'gravity', torque: -60 },
  ]);
});

it('accepts one load torque without a list', () => {
  const torque = { kind: 'friction', torque: '20 N m' };
  expect(parseScenario(minimalScenario({ load: { torque } })).load.torques).toEqual([
    { kind: 'friction', torque: 20, breakaway: 20 },
  ]);
});

it('reads a complete starter, initial state, actions and solver', () => {
  const scenario = parseScenario(
    minimalScenario({
      starter: {
        poles: 'arcing',
        closingScatter: ['0 ms', '1 ms', '2 ms'],
        minimumArcingTime: '1 ms',
        exchangedPhases: 'CA',
        zeroSpeedSwitch: { dropOutSpeed: '5 rad/s', pickUpSpeed: '10 rad/s', delay: '4 ms' },
      },
      initial: 'running reverse',
      actions: [
        { at: '10 ms', do: 'plug' },
        { at: '2 s', do: 'start reverse' },
        { at: '3 s', do: 'stop' },
      ],
      solver: { relativeTolerance: 1e-6, endTime: '5 s', maxSteps: 5000, frame: 'stationary' },
    }),
  );
  expect(scenario.starter.closingScatter).toEqual([0, 0.001, 0.002]);
  expect(scenario.starter.exchangedPhases).toBe('CA');
  expect(scenario.starter.minimumArcingTime).toBe(0.001);
  expect(scenario.starter.zeroSpeedSwitch).toEqual({ dropOutSpeed: 5, pickUpSpeed: 10, delay: 0.004 });
  expect(scenario.initial).toBe('runningReverse');
  expect(scenario.actions.map((action) => action.do)).toEqual(['plug', 'startReverse', 'coast']);
  expect(scenario.solver).toEqual({
    relativeTolerance: 1e-6,
    endTime: 5,
    maxSteps: 5000,
    frame: 'stationary',
  });
});
