import { describe, expect, it } from 'vitest';
import { WITH_EVERY_KEY } from './everyKey.ts';
import { type Group, minimalScenario, parseScenario } from './minimalScenario.ts';

const RPM = Math.PI / 30;
const loadOf = (load: Group) => parseScenario(minimalScenario({ load })).load;
const starterOf = (starter: Group, machine: Group = {}) =>
  parseScenario(minimalScenario({ starter, machine })).starter;

it.each(WITH_EVERY_KEY)('reads %s', (_, scenario) => {
  expect(parseScenario(scenario).title).toBe('Smallest');
});

it('a scenario without elements has none, so that nothing is switched on by a default', () => {
  expect(Object.keys(loadOf({}))).toEqual(['inertia', 'torques']);
  const starter = starterOf({});
  for (const key of ['lineResistors', 'plugConnection', 'windingOrder', 'faults'])
    expect(key in starter).toBe(false);
});

describe('the load', () => {
  it('has a gear whose backward efficiency is the forward one where nothing is said', () => {
    expect(loadOf({ gear: { ratio: 12.5, efficiency: '94 %' } }).gear).toEqual({
      ratio: 12.5,
      efficiency: 0.94,
      backwardEfficiency: 0.94,
    });
    const worm = { ratio: 30, efficiency: '45 %', backwardEfficiency: '5 %' };
    expect(loadOf({ gear: worm }).gear?.backwardEfficiency).toBe(0.05);
  });

  it('has a coupling, its backlash in radians', () => {
    const coupling = { stiffness: '20 kN m/rad', damping: '10 N m s/rad', backlash: '0.5 deg' };
    const data = loadOf({ coupling, inertia: '1 kg m^2' }).coupling;
    expect(data).toMatchObject({ stiffness: 20_000, damping: 10 });
    expect(data?.backlash).toBeCloseTo((0.5 * Math.PI) / 180, 16);
  });

  it('may have a coupling without damping only where that is said', () => {
    const coupling = { stiffness: '20 kN m/rad', damping: '0 N m s/rad' };
    expect(loadOf({ coupling, inertia: '1 kg m^2' }).coupling).toEqual({
      stiffness: 20_000,
      damping: 0,
      backlash: 0,
    });
  });

  it('has constant power and tables, against the motion unless said otherwise', () => {
    const points = [
      { speed: '0 rpm', torque: '8 N m' },
      { speed: '2160 rpm', torque: '42 N m' },
    ];
    const given = [{ speed: '-2160 rpm', torque: '8 N m' }, points[1]];
    const torque = [
      { kind: 'constantPower', power: '5 kW', baseSpeed: '600 rpm' },
      { kind: 'table', points },
      { kind: 'table', points: given, direction: 'as given' },
    ];
    expect(loadOf({ torque }).torques).toEqual([
      { kind: 'constantPower', power: 5000, baseSpeed: 600 * RPM },
      {
        kind: 'table',
        points: [
          { speed: 0, torque: 8 },
          { speed: 2160 * RPM, torque: 42 },
        ],
        mirrored: true,
      },
      {
        kind: 'table',
        points: [
          { speed: -2160 * RPM, torque: 8 },
          { speed: 2160 * RPM, torque: 42 },
        ],
        mirrored: false,
      },
    ]);
  });

  it('may end its table at 1.2 times synchronous speed over the gear ratio', () => {
    const points = [
      { speed: '0 rpm', torque: '8 N m' },
      { speed: '216 rpm', torque: '42 N m' },
    ];
    const gear = { ratio: 10, efficiency: '95 %' };
    expect(loadOf({ gear, torque: { kind: 'table', points } }).torques).toHaveLength(1);
  });
});

describe('the starter', () => {
  it('has line resistors whose contactor works as the others where nothing is said', () => {
    const lineResistors = { resistance: '0.8 ohm' };
    expect(starterOf({ lineResistors, closingTime: '30 ms' }).lineResistors).toEqual({
      resistance: 0.8,
      closingTime: 0.03,
      openingTime: 0.01,
      bypassAfter: null,
    });
    const bypass = { ...lineResistors, closingTime: '15 ms', openingTime: '8 ms', bypassAfter: '0.5 s' };
    expect(starterOf({ lineResistors: bypass }).lineResistors).toEqual({
      resistance: 0.8,
      closingTime: 0.015,
      openingTime: 0.008,
      bypassAfter: 0.5,
    });
  });

  it('connects a delta machine in star for plugging', () => {
    const delta = { connection: 'delta' };
    const { plugConnection, windingOrder } = starterOf({ plugConnection: 'star' }, delta);
    expect([plugConnection, windingOrder]).toEqual(['star', undefined]);
    expect(starterOf({ plugConnection: 'star', windingOrder: 'AC' }, delta).windingOrder).toBe('AC');
  });

  it('has faults', () => {
    const faults = [
      { kind: 'lost phase', phase: 'B', at: '1.2 s' },
      { kind: 'welded pole', contactor: 'forward', pole: 'A' },
      { kind: 'dead pole', contactor: 'reverse', pole: 'C' },
    ];
    expect(starterOf({ faults }).faults).toEqual([
      { kind: 'lostPhase', phase: 'B', from: 1.2 },
      { kind: 'weldedPole', contactor: 'forward', pole: 'A' },
      { kind: 'deadPole', contactor: 'reverse', pole: 'C' },
    ]);
  });
});
