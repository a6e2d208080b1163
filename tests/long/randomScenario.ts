import fc from 'fast-check';
import { defaultRelativeTolerance } from '../../src/scenario/defaults.ts';
import type { Cage, LoadTorque, MachineData, Scenario, StarterData } from '../../src/scenario/scenario.ts';
import { between } from './between.ts';

/**
 * Plausible scenarios: machines of 0.75 to 200 kW drawn in per unit over the ranges of ordinary cage machines (common
 * practice, no source), loads they can drive, contactors with ordinary times, a plug at any time before, while or after
 * the machine runs up.
 */

const scatter = fc.oneof(
  fc.constant([0, 0, 0] as const),
  fc.tuple(between(0, 0.003), between(0, 0.003), between(0, 0.003)),
);

/** In per unit: resistance and leakage reactance of one cage, or of an inner and an outer one. */
const cages = fc.oneof(
  fc.tuple(fc.record({ r: between(0.012, 0.05), x: between(0.06, 0.16) })),
  fc.tuple(
    fc.record({ r: between(0.015, 0.03), x: between(0.1, 0.25) }),
    fc.record({ r: between(0.05, 0.15), x: between(0.03, 0.08) }),
  ),
);

const drive = fc.record({
  power: between(Math.log(750), Math.log(200e3)).map(Math.exp),
  lineVoltage: fc.constantFrom(230, 400, 460, 690),
  frequency: fc.constantFrom(50, 60),
  polePairs: fc.constantFrom(1, 2, 3, 4),
  connection: fc.constantFrom('star' as const, 'delta' as const),
  rs: between(0.01, 0.06),
  xls: between(0.06, 0.14),
  xm: between(1.8, 4),
  cages,
  /** Seconds: kinetic energy at synchronous speed over rated apparent power. */
  rotorInertia: between(0.05, 0.4),
  /** Of the rotor's. */
  loadInertia: between(0, 3),
  /** Of rated torque, at rated speed. */
  friction: between(0, 0.3),
  breakaway: between(1, 1.5),
  viscous: between(0, 0.2),
  fan: between(0, 0.4),
  /** Against forward rotation, or with it. */
  gravity: fc.oneof(fc.constant(0), between(-0.2, 0.2)),
  /** Source impedance, per unit. */
  source: fc.oneof(fc.constant(0), between(0.01, 0.05)),
  angle: between(0, 2 * Math.PI),
});

const contactors = fc.record({
  closingTime: between(0.005, 0.03),
  openingTime: between(0.003, 0.02),
  closingScatter: scatter,
  openingScatter: scatter,
  changeoverDelay: between(0.01, 0.06),
  minimumArcingTime: fc.oneof(fc.constant(0), between(0, 0.004)),
  exchangedPhases: fc.constantFrom('AB' as const, 'BC' as const, 'CA' as const),
  zeroSpeedSwitch: fc.option(
    fc.record({ dropOut: between(0.02, 0.06), hysteresis: between(1.2, 2), delay: between(0, 0.01) }),
    { nil: null, freq: 4 },
  ),
});

/** Power factor times efficiency of a rated machine, to size the per-unit base only. */
const APPARENT = 0.77;

type Drive = typeof drive extends fc.Arbitrary<infer T> ? T : never;
type Contactors = typeof contactors extends fc.Arbitrary<infer T> ? T : never;

function machineOf(d: Drive): MachineData {
  const omega = 2 * Math.PI * d.frequency;
  const apparent = d.power / APPARENT;
  const ohm = d.lineVoltage ** 2 / apparent;
  const henry = ohm / omega;
  const synchronous = omega / d.polePairs;
  return {
    connection: d.connection,
    polePairs: d.polePairs,
    Rs: d.rs * ohm,
    Lls: d.xls * henry,
    Lm: d.xm * henry,
    cages: d.cages.map(({ r, x }): Cage => ({ Rr: r * ohm, Llr: x * henry })),
    inertia: (2 * d.rotorInertia * apparent) / synchronous ** 2,
    rated: {
      current: apparent / (Math.sqrt(3) * d.lineVoltage),
      torque: d.power / synchronous,
      power: null,
      speed: null,
    },
  };
}

function torquesOf(d: Drive, rated: number, speed: number): LoadTorque[] {
  const friction = d.friction * rated;
  return [
    { kind: 'friction', torque: friction, breakaway: friction * d.breakaway },
    { kind: 'viscous', coefficient: (d.viscous * rated) / speed },
    { kind: 'fan', coefficient: (d.fan * rated) / speed ** 2 },
    ...(d.gravity === 0 ? [] : [{ kind: 'gravity' as const, torque: d.gravity * rated }]),
  ];
}

function starterOf(c: Contactors, synchronous: number): StarterData {
  const { zeroSpeedSwitch: given, ...times } = c;
  return {
    ...times,
    changeoverGivenAs: 'delay',
    poles: 'arcing',
    zeroSpeedSwitch: given && {
      dropOutSpeed: given.dropOut * synchronous,
      pickUpSpeed: given.dropOut * given.hysteresis * synchronous,
      delay: given.delay,
    },
  };
}

/** For comparisons: the charge of an arc of half a millisecond shows an error of the instant of 3 ns. */
export const TIGHT = 1e-11;

/**
 * A start from rest and a plug.
 *
 * @param plugAt range of the time of the plug command, s
 * @param after end of the run after that command, s, or the automatic end
 */
export function randomScenario(plugAt: readonly [number, number], after: number | 'auto') {
  return fc.tuple(drive, contactors, between(...plugAt)).map(([d, c, plug]): Scenario => {
    const machine = machineOf(d);
    const synchronous = (2 * Math.PI * d.frequency) / d.polePairs;
    const ohm = (d.lineVoltage ** 2 * APPARENT) / d.power;
    return {
      schemaVersion: 1,
      title: 'random',
      description: '',
      supply: {
        lineVoltage: d.lineVoltage,
        frequency: d.frequency,
        angle: d.angle,
        sourceResistance: 0.2 * d.source * ohm,
        sourceInductance: (d.source * ohm) / (2 * Math.PI * d.frequency),
      },
      machine,
      load: {
        inertia: d.loadInertia * machine.inertia,
        torques: torquesOf(d, machine.rated.torque!, synchronous),
      },
      starter: starterOf(c, synchronous),
      initial: 'rest',
      actions: [
        { at: 0, do: 'startForward' },
        { at: plug, do: 'plug' },
      ],
      solver: {
        relativeTolerance: after === 'auto' ? defaultRelativeTolerance : TIGHT,
        endTime: after === 'auto' ? 'auto' : plug + after,
        maxSteps: 1_000_000,
        frame: 'auto',
      },
    };
  });
}
