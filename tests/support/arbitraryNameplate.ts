import fc from 'fast-check';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { bisect } from '../../src/numeric/bisect.ts';
import type { Nameplate } from '../../src/scenario/nameplate.ts';
import { type TextbookMachine, textbookMachine } from './textbookMachines.ts';

/** A double-cage machine and what its nameplate would say if it were exact. */
export interface ExactNameplate {
  readonly machine: TextbookMachine;
  readonly nameplate: Nameplate;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/**
 * Plausible double-cage machines in multiples of their own size: stator resistance 1–4 %, stator leakage 5–11 %, magnetising
 * 1.8–4, outer cage 2–8 times as resistive and the inner 1.5–6 times as leaky; breakdown at 1.7 to 3.5 times rated torque. Machines that
 * would slip by more than 10 % at rated output are left out: no cage motor beside design D does.
 */
export const exactNameplate: fc.Arbitrary<ExactNameplate> = fc
  .record({
    connection: fc.constantFrom('star' as const, 'delta' as const),
    lineVoltage: fc.constantFrom(230, 400, 690),
    frequency: fc.constantFrom(50, 60),
    poles: fc.constantFrom(2, 4, 6, 8),
    kva: between(2, 400),
    rs: between(0.01, 0.04),
    xls: between(0.05, 0.11),
    xm: between(1.8, 4),
    inner: between(0.012, 0.035),
    outerOverInner: between(2, 8),
    outerLeakage: between(0.04, 0.09),
    innerOverOuter: between(1.5, 6),
    overload: between(1.7, 3.5),
  })
  .map(exactNameplateOf)
  .filter(({ machine, nameplate }) => nameplate.speed! >= 0.9 * machine.synchronousSpeed);

function exactNameplateOf(m: {
  readonly connection: 'star' | 'delta';
  readonly lineVoltage: number;
  readonly frequency: number;
  readonly poles: number;
  readonly kva: number;
  readonly rs: number;
  readonly xls: number;
  readonly xm: number;
  readonly inner: number;
  readonly outerOverInner: number;
  readonly outerLeakage: number;
  readonly innerOverOuter: number;
  readonly overload: number;
}): ExactNameplate {
  const ohm = m.lineVoltage ** 2 / (1000 * m.kva);
  const machine = textbookMachine({
    lineVoltage: m.lineVoltage,
    frequency: m.frequency,
    poles: m.poles,
    rs: m.rs * ohm,
    Xls: m.xls * ohm,
    XM: m.xm * ohm,
    cages: [
      { rr: m.inner * m.outerOverInner * ohm, Xlr: m.outerLeakage * ohm },
      { rr: m.inner * ohm, Xlr: m.outerLeakage * m.innerOverOuter * ohm },
    ],
    J: 0.1,
    power: null,
    rpm: null,
  });
  return { machine, nameplate: nameplateOf(machine, m.connection, m.overload) };
}

/**
 * What an exact nameplate says of a machine without iron and mechanical loss.
 *
 * @param overload breakdown torque over rated torque
 */
export function nameplateOf(
  { machine, supply, synchronousSpeed }: TextbookMachine,
  connection: 'star' | 'delta',
  overload: number,
): Nameplate {
  const top = breakdown(machine, supply);
  const strongest = Math.min(top.slip, 1);
  // Only up to standstill: a nameplate knows no reversed running.
  const most = steadyState(machine, supply, strongest).torque;
  const slip = bisect((s) => steadyState(machine, supply, s).torque - most / overload, 0, strongest);
  const rated = steadyState(machine, supply, slip);
  const locked = steadyState(machine, supply, 1);
  const power = rated.airGapPower * (1 - slip);
  return {
    connection,
    power,
    lineVoltage: supply.lineVoltage,
    frequency: supply.frequency,
    poles: 2 * machine.polePairs,
    speed: synchronousSpeed * (1 - slip),
    current: rated.current,
    powerFactor: rated.powerFactor,
    efficiency: power / rated.inputPower,
    lockedRotorCurrent: { kind: 'amperes', amperes: locked.current },
    lockedRotorTorque: locked.torque / rated.torque,
    breakdownTorque: overload,
    design: null,
    inertia: machine.inertia,
  };
}
