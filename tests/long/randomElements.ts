import fc from 'fast-check';
import type {
  LoadTorque,
  MachineData,
  Scenario,
  StarterData,
  StarterFault,
} from '../../src/scenario/scenario.ts';
import { between } from './between.ts';

/**
 * Elements of a real machine, its lines and its shaft, put onto a random scenario: most of them in every other run, of a size that
 * is ordinary for the machine (common practice, no source).
 */

const sometimes = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null, freq: 2 });
const phase = fc.constantFrom('A' as const, 'B' as const, 'C' as const);

/** Impedances in per unit. */
const electrical = fc.record({
  cable: sometimes(fc.record({ r: between(0.003, 0.03), x: between(0, 0.02) })),
  core: sometimes(fc.record({ r: between(20, 60), timeConstant: between(0.1, 0.3) })),
  knee: sometimes(fc.tuple(between(0.6, 0.95), fc.integer({ min: 2, max: 4 }))),
  stator: sometimes(fc.record({ current: between(2, 6), remaining: between(0.4, 0.95) })),
  cage: sometimes(fc.record({ current: between(2, 6), remaining: between(0.4, 0.95) })),
  slipRings: sometimes(
    fc.record({
      first: between(0.1, 0.4),
      second: between(0.02, 0.1),
      duration: between(0.05, 0.2),
      plugging: between(0.1, 0.5),
    }),
  ),
  line: sometimes(
    fc.record({
      r: between(0.05, 0.3),
      closingTime: between(0.005, 0.03),
      openingTime: between(0.003, 0.02),
      bypassAfter: fc.option(between(0.02, 0.3), { nil: null }),
    }),
  ),
  star: fc.boolean(),
  order: fc.constantFrom('AB' as const, 'AC' as const),
  fault: fc.oneof(
    { weight: 3, arbitrary: fc.constant(null) },
    {
      weight: 1,
      arbitrary: fc.record({ kind: fc.constant('lostPhase' as const), phase, from: between(0, 1.5) }),
    },
    {
      weight: 1,
      arbitrary: fc.record({
        kind: fc.constantFrom('weldedPole' as const, 'deadPole' as const),
        contactor: fc.constantFrom('forward' as const, 'reverse' as const),
        pole: phase,
      }),
    },
  ),
});

/** Torques over rated torque. */
const mechanical = fc.record({
  loss: sometimes(fc.record({ friction: between(0.002, 0.02), windage: between(0, 0.02) })),
  gear: sometimes(
    fc.record({ ratio: between(0.5, 15), efficiency: between(0.7, 0.98), backward: between(0.5, 0.95) }),
  ),
  coupling: sometimes(
    fc.record({
      frequency: between(8, 50),
      damping: between(0.01, 0.1),
      backlash: fc.oneof(fc.constant(0), between(0.002, 0.03)),
    }),
  ),
  constantPower: sometimes(fc.record({ torque: between(0.05, 0.3), base: between(0.2, 0.8) })),
  mirrored: sometimes(fc.tuple(between(0, 0.2), between(0, 0.2), between(0, 0.3))),
  signed: sometimes(fc.tuple(between(-0.2, 0.2), between(-0.2, 0.2), between(-0.2, 0.2))),
});

type Electrical = typeof electrical extends fc.Arbitrary<infer T> ? T : never;
type Mechanical = typeof mechanical extends fc.Arbitrary<infer T> ? T : never;

/** Adds elements to scenarios with rated values. */
export function withElements(scenarios: fc.Arbitrary<Scenario>): fc.Arbitrary<Scenario> {
  return fc.tuple(scenarios, electrical, mechanical).map(([scenario, e, m]) => {
    const { supply, machine } = scenario;
    const ohm = supply.lineVoltage / (Math.sqrt(3) * machine.rated.current!);
    const omega = 2 * Math.PI * supply.frequency;
    return {
      ...scenario,
      supply: {
        ...supply,
        ...(e.cable && {
          cable: { resistance: e.cable.r * ohm, inductance: (e.cable.x * ohm) / omega },
        }),
      },
      machine: machineWith(machine, e, m, ohm, omega, supply.lineVoltage),
      load: loadWith(scenario, m),
      starter: starterWith(scenario.starter, machine, e, ohm),
    };
  });
}

function machineWith(
  machine: MachineData,
  e: Electrical,
  m: Mechanical,
  ohm: number,
  omega: number,
  lineVoltage: number,
): MachineData {
  const crest = Math.SQRT2 * machine.rated.current!;
  const leakage = (law: { current: number; remaining: number } | null) =>
    law && { current: law.current * crest, remaining: law.remaining };
  const synchronous = omega / machine.polePairs;
  const flux = (Math.sqrt(2 / 3) * lineVoltage) / omega;
  return {
    ...machine,
    ...(e.core && { core: { R: e.core.r * ohm, L: (e.core.timeConstant * e.core.r * ohm) / omega } }),
    ...(e.knee && { mainSaturation: curve(e.knee[0] * flux, flux, machine.Lm, e.knee[1]) }),
    ...((e.stator || e.cage) && {
      leakageSaturation: { stator: leakage(e.stator), cages: machine.cages.map(() => leakage(e.cage)) },
    }),
    ...(e.slipRings &&
      machine.cages.length === 1 && {
        rotorResistors: {
          starting: [e.slipRings.first, e.slipRings.second].map((r) => ({
            resistance: r * ohm,
            duration: e.slipRings!.duration,
          })),
          plugging: e.slipRings.plugging * ohm,
        },
      }),
    ...(m.loss && {
      mechanicalLoss: {
        friction: m.loss.friction * machine.rated.torque!,
        windage: (m.loss.windage * machine.rated.torque!) / synchronous ** 2,
      },
    }),
  };
}

/** A straight start up to the knee, then ever flatter. */
function curve(knee: number, flux: number, Lm: number, points: number) {
  const out = [{ current: knee / Lm, flux: knee }];
  let slope = Lm;
  for (let k = 1; k < points; k++) {
    slope /= 2.2;
    const before = out.at(-1)!;
    out.push({ current: before.current + (0.2 * flux) / slope, flux: before.flux + 0.2 * flux });
  }
  return out;
}

function loadWith(scenario: Scenario, m: Mechanical): Scenario['load'] {
  const { machine, supply, load } = scenario;
  const rated = machine.rated.torque!;
  const ratio = m.gear?.ratio ?? 1;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  const ofLoad = synchronous / ratio;
  const table = (values: readonly number[], speeds: readonly number[]) =>
    values.map((value, k) => ({ speed: speeds[k]! * ofLoad, torque: value * rated * ratio }));
  const more: LoadTorque[] = [
    ...(m.constantPower
      ? [
          {
            kind: 'constantPower' as const,
            power: m.constantPower.torque * rated * m.constantPower.base * synchronous,
            baseSpeed: m.constantPower.base * ofLoad,
          },
        ]
      : []),
    ...(m.mirrored
      ? [{ kind: 'table' as const, mirrored: true, points: table(m.mirrored, [0, 0.4, 0.9]) }]
      : []),
    ...(m.signed
      ? [{ kind: 'table' as const, mirrored: false, points: table(m.signed, [-0.6, 0.1, 0.8]) }]
      : []),
  ];
  const inertia = Math.max(load.inertia, m.coupling ? 0.2 * machine.inertia : 0);
  const shared = (machine.inertia * inertia) / (machine.inertia + inertia);
  const swing = 2 * Math.PI * (m.coupling?.frequency ?? 0);
  return {
    inertia: inertia * ratio ** 2,
    ...(m.gear && {
      gear: { ratio, efficiency: m.gear.efficiency, backwardEfficiency: m.gear.backward },
    }),
    ...(m.coupling && {
      coupling: {
        stiffness: shared * swing ** 2,
        damping: 2 * m.coupling.damping * shared * swing,
        backlash: m.coupling.backlash,
      },
    }),
    torques: [...load.torques.map((torque) => geared(torque, ratio)), ...more],
  };
}

/** The torque at the load's own shaft that is the given one at the motor. */
function geared(torque: LoadTorque, ratio: number): LoadTorque {
  switch (torque.kind) {
    case 'friction':
      return { ...torque, torque: torque.torque * ratio, breakaway: torque.breakaway * ratio };
    case 'gravity':
      return { ...torque, torque: torque.torque * ratio };
    case 'viscous':
      return { ...torque, coefficient: torque.coefficient * ratio ** 2 };
    case 'fan':
      return { ...torque, coefficient: torque.coefficient * ratio ** 3 };
    default:
      return torque;
  }
}

function starterWith(starter: StarterData, machine: MachineData, e: Electrical, ohm: number): StarterData {
  const faults: StarterFault[] = e.fault ? [e.fault] : [];
  return {
    ...starter,
    ...(e.line && {
      lineResistors: {
        resistance: e.line.r * ohm,
        closingTime: e.line.closingTime,
        openingTime: e.line.openingTime,
        bypassAfter: e.line.bypassAfter,
      },
    }),
    ...(machine.connection === 'delta' &&
      e.star && { plugConnection: 'star' as const, windingOrder: e.order }),
    ...(faults.length > 0 && { faults }),
  };
}
