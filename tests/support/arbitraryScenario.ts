import fc from 'fast-check';
import type { LoadTorque, MagnetisingPoint, Scenario } from '../../src/scenario/scenario.ts';
import { ARCING_STARTER, scenarioOf } from './scenarios.ts';
import { textbookMachine } from './textbookMachines.ts';

/**
 * Options of every property: few runs, each a whole simulation, always the same ones. A failure is reported as it is found:
 * shrinking it would take hundreds of simulations.
 */
export const FEW = { numRuns: 8, seed: 20, endOnFailure: true } as const;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** Plausible machines per unit of their own size: resistances 1–6 %, leakages 5–15 %, magnetising 1.5–4. */
const machine = fc
  .record({
    lineVoltage: fc.constantFrom(230, 400, 690),
    frequency: fc.constantFrom(50, 60),
    poles: fc.constantFrom(2, 4, 6, 8),
    kva: between(2, 300),
    rs: between(0.01, 0.06),
    xls: between(0.05, 0.13),
    xm: between(1.5, 4),
    rr: between(0.015, 0.06),
    xlr: between(0.05, 0.15),
    inner: fc.option(fc.record({ rr: between(0.01, 0.03), xlr: between(0.12, 0.25) }), { nil: undefined }),
    /** s, kinetic energy at synchronous speed over rated power */
    inertiaTime: between(0.08, 0.5),
  })
  .map((m) => {
    const base = m.lineVoltage ** 2 / (1000 * m.kva);
    const synchronous = (4 * Math.PI * m.frequency) / m.poles;
    return textbookMachine({
      lineVoltage: m.lineVoltage,
      frequency: m.frequency,
      poles: m.poles,
      rs: m.rs * base,
      Xls: m.xls * base,
      XM: m.xm * base,
      cages: [
        { rr: m.rr * base, Xlr: m.xlr * base },
        ...(m.inner === undefined ? [] : [{ rr: m.inner.rr * base, Xlr: m.inner.xlr * base }]),
      ],
      J: (2 * m.inertiaTime * 1000 * m.kva) / synchronous ** 2,
      power: 500 * m.kva,
      rpm: null,
    });
  });

/**
 * A plug stop or reversal of a plausible machine, load and starter, from the running state. Poles arc; the delay is long
 * enough for the arcs to end.
 */
export const reversal: fc.Arbitrary<Scenario> = fc
  .record({
    machine,
    angle: between(-3, 3),
    friction: between(0, 0.2),
    viscous: between(0, 0.1),
    fan: between(0, 0.2),
    source: between(0, 0.02),
    delay: between(0.025, 0.06),
    scatter: fc.tuple(between(0, 0.002), between(0, 0.002), between(0, 0.002)),
    exchangedPhases: fc.constantFrom('AB', 'BC', 'CA'),
    minimumArcingTime: fc.constantFrom(0, 0.001),
  })
  .map((r) => {
    const { synchronousSpeed, printed, supply } = r.machine;
    const torque = printed.power! / synchronousSpeed;
    const impedance = supply.lineVoltage ** 2 / (2 * printed.power!);
    const torques: LoadTorque[] = [
      { kind: 'friction', torque: r.friction * torque, breakaway: 1.2 * r.friction * torque },
      { kind: 'viscous', coefficient: (r.viscous * torque) / synchronousSpeed },
      { kind: 'fan', coefficient: (r.fan * torque) / synchronousSpeed ** 2 },
    ];
    return scenarioOf(r.machine, {
      supply: {
        angle: r.angle,
        sourceResistance: 0.2 * r.source * impedance,
        sourceInductance: (r.source * impedance) / (2 * Math.PI * supply.frequency),
      },
      load: { inertia: 0, torques },
      starter: {
        ...ARCING_STARTER,
        changeoverDelay: r.delay,
        closingScatter: r.scatter,
        openingScatter: r.scatter,
        exchangedPhases: r.exchangedPhases,
        minimumArcingTime: r.minimumArcingTime,
      },
      initial: 'runningForward',
      actions: [{ at: 0.004, do: 'startReverse' }],
      solver: { endTime: 0.3, relativeTolerance: 1e-8 },
    });
  });

/** Present in half of the cases. */
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

/** Magnetising curves in per unit of a linear inductance: the first falls below it, the others bend further. */
const knee = fc.tuple(between(0.5, 0.9), between(1.05, 1.6), between(1.1, 2));

const coupling = fc.record({
  /** Hz, torsional natural frequency */
  natural: between(8, 40),
  /** of critical */
  damping: between(0.02, 0.1),
  backlash: fc.constantFrom(0, 0.01),
});

/**
 * The same as `reversal` with any of the elements of machine, supply, shaft and starter in plausible sizes: cable, core,
 * saturation, mechanical loss, gear, coupling, constant power, a table, line resistors and star while plugging.
 */
export const reversalWithElements: fc.Arbitrary<Scenario> = fc
  .record({
    base: reversal,
    cable: maybe(between(0.002, 0.02)),
    core: maybe(between(0.005, 0.02)),
    main: maybe(knee),
    leakage: maybe(fc.record({ current: between(1, 4), remaining: between(0.4, 0.9) })),
    mechanical: maybe(between(0.002, 0.01)),
    gear: maybe(
      fc.record({ ratio: between(0.5, 20), efficiency: between(0.8, 1), backward: between(0.7, 1) }),
    ),
    coupling: maybe(coupling),
    /** Load inertia over that of the rotor, at the motor shaft. */
    inertia: between(0.3, 3),
    constantPower: maybe(between(0.02, 0.2)),
    table: maybe(fc.tuple(between(0.02, 0.1), between(0.02, 0.2), fc.boolean())),
    lineResistors: maybe(between(0.5, 3)),
    star: fc.boolean(),
  })
  .map((r) => {
    const { base } = r;
    const { supply, machine } = base;
    const omega = 2 * Math.PI * supply.frequency;
    const power = machine.rated.power!;
    const synchronous = omega / machine.polePairs;
    const impedance = supply.lineVoltage ** 2 / power;
    const crest = (Math.SQRT2 * power) / (Math.sqrt(3) * supply.lineVoltage);
    const flux = (Math.sqrt(2 / 3) * supply.lineVoltage) / omega;
    const ratio = r.gear?.ratio ?? 1;
    const loadInertia = r.inertia * machine.inertia;
    const natural = 2 * Math.PI * (r.coupling?.natural ?? 1);
    const reduced = (machine.inertia * loadInertia) / (machine.inertia + loadInertia);
    const path = r.leakage && { current: r.leakage.current * crest, remaining: r.leakage.remaining };
    const torque = (power / synchronous) * ratio;
    const torques: LoadTorque[] = [
      ...base.load.torques.map((one) => behindGear(one, ratio)),
      ...(r.constantPower === undefined
        ? []
        : [
            {
              kind: 'constantPower' as const,
              power: r.constantPower * power,
              baseSpeed: (0.4 * synchronous) / ratio,
            },
          ]),
      ...(r.table === undefined ? [] : [tableOf(r.table, torque, (1.3 * synchronous) / ratio)]),
    ];
    return {
      ...base,
      supply: {
        ...supply,
        ...(r.cable && {
          cable: { resistance: r.cable * impedance, inductance: (0.3 * r.cable * impedance) / omega },
        }),
      },
      machine: {
        ...machine,
        connection: r.star ? 'delta' : machine.connection,
        ...(r.core && coreOf(r.core, impedance, omega)),
        ...(r.main && { mainSaturation: curveOf(r.main, flux, machine.Lm) }),
        ...(path && { leakageSaturation: { stator: path, cages: machine.cages.map(() => path) } }),
        ...(r.mechanical && {
          mechanicalLoss: {
            friction: (r.mechanical * power) / synchronous,
            windage: (r.mechanical * power) / synchronous ** 3,
          },
        }),
      },
      load: {
        inertia: loadInertia * ratio ** 2,
        torques,
        ...(r.gear && {
          gear: { ratio, efficiency: r.gear.efficiency, backwardEfficiency: r.gear.backward },
        }),
        ...(r.coupling && {
          coupling: {
            stiffness: reduced * natural ** 2,
            damping: 2 * r.coupling.damping * reduced * natural,
            backlash: r.coupling.backlash,
          },
        }),
      },
      starter: {
        ...base.starter,
        ...(r.lineResistors && {
          lineResistors: {
            resistance: 0.1 * r.lineResistors * impedance,
            closingTime: 0.02,
            openingTime: 0.01,
            bypassAfter: 0.1,
          },
        }),
        ...(r.star && { plugConnection: 'star' as const }),
      },
    };
  });

/** The same load seen from the slower shaft behind a gear. */
function behindGear(torque: LoadTorque, ratio: number): LoadTorque {
  switch (torque.kind) {
    case 'friction':
      return { ...torque, torque: torque.torque * ratio, breakaway: torque.breakaway * ratio };
    case 'viscous':
      return { ...torque, coefficient: torque.coefficient * ratio ** 2 };
    case 'fan':
      return { ...torque, coefficient: torque.coefficient * ratio ** 3 };
    default:
      return torque;
  }
}

function tableOf(
  [rest, more, mirrored]: readonly [number, number, boolean],
  torque: number,
  end: number,
): LoadTorque {
  const points = [
    { speed: mirrored ? 0 : -end, torque: rest * torque },
    { speed: 0.4 * end, torque: more * torque },
    { speed: end, torque: rest * torque },
  ];
  return { kind: 'table', points, mirrored };
}

/** A core that takes the share `loss` of the power behind `impedance`, its reactance a tenth of its resistance. */
function coreOf(loss: number, impedance: number, omega: number) {
  const R = impedance / loss;
  return { core: { R, L: (0.1 * R) / omega } };
}

function curveOf(
  [first, second, third]: readonly [number, number, number],
  flux: number,
  inductance: number,
): MagnetisingPoint[] {
  const ratios = [first, first * second, first * second * third];
  return [0.6, 1, 1.3].map((share, j) => ({
    flux: share * flux,
    current: (ratios[j]! * share * flux) / inductance,
  }));
}
