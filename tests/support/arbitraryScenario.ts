import fc from 'fast-check';
import type { LoadTorque, Scenario } from '../../src/scenario/scenario.ts';
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
