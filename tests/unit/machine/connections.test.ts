import { describe, expect, it } from 'vitest';
import { circuitOf } from '../../../src/machine/circuit.ts';
import { connectedModel } from '../../../src/machine/connectedModel.ts';
import { newObservation } from '../../../src/machine/electricalModel.ts';
import { NOTHING_INSERTED } from '../../../src/machine/inserted.ts';
import { reconnectFlux } from '../../../src/machine/reconnectFlux.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { add, type Complex, divide, magnitude } from '../../../src/numeric/complex.ts';
import type { MachineData } from '../../../src/scenario/scenario.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';
import {
  LINEAR,
  OMEGA,
  oneCage,
  SUPPLY,
  WITH_ALL,
  WITH_CORE,
  WITH_LEAKAGE,
  WITH_MAIN,
} from './saturableMachine.ts';

const STAR = { ...NOTHING_INSERTED, star: true };
const MACHINES = [
  ['linear', LINEAR],
  ['main saturation', WITH_MAIN],
  ['leakage saturation', WITH_LEAKAGE],
  ['core', WITH_CORE],
  ['everything', WITH_ALL],
  ['everything, one cage', oneCage(WITH_ALL)],
] as const;
const delta = (machine: MachineData): MachineData => ({ ...machine, connection: 'delta' });

/** Projections of a vector on the axes of phases A, B, C. */
const phases = (alpha: number, beta: number) =>
  [0, 1, 2].map((k) => {
    const axis = (k * 2 * Math.PI) / 3;
    return alpha * Math.cos(axis) + beta * Math.sin(axis);
  });
/** What each winding of a delta sees: its first terminal less its second. */
const windings = (x: readonly number[], order: 'AB' | 'AC') =>
  x.map((value, k) => value - x[(k + (order === 'AB' ? 1 : 2)) % 3]!);

describe('star connection of a delta machine', () => {
  it.each([
    ['linear', LINEAR],
    ['core', WITH_CORE],
  ] as const)(
    'takes exactly one third of the line current and gives one third of the torque, locked: %s',
    (_name, machine) => {
      const asBuilt = steadyState(delta(machine), SUPPLY, 1);
      const inStar = steadyState(delta(machine), SUPPLY, 1, STAR);
      expectWithin(inStar.current, asBuilt.current / 3, { relative: 1e-14 }, 'line current');
      expectWithin(inStar.torque, asBuilt.torque / 3, { relative: 1e-13 }, 'torque');
      expectWithin(inStar.powerFactor, asBuilt.powerFactor, { relative: 1e-14 }, 'power factor');
    },
  );

  it.each(MACHINES)(
    'at √3 times the voltage has its windings as they are in delta, saturated too: %s',
    (_name, machine) => {
      const higher = { ...SUPPLY, lineVoltage: Math.sqrt(3) * SUPPLY.lineVoltage };
      for (const slip of [1, 1.95, 0.02, 0]) {
        const asBuilt = steadyState(delta(machine), SUPPLY, slip);
        const inStar = steadyState(delta(machine), higher, slip, STAR);
        // A winding of the delta carries 1/√3 of the line current.
        expectWithin(inStar.current, asBuilt.current / Math.sqrt(3), { relative: 1e-12 }, 'winding current');
        expectWithin(inStar.torque, asBuilt.torque, { relative: 1e-12 }, 'torque');
      }
    },
  );

  it('takes less than a third where leakage saturates, since the windings saturate less at the lower current', () => {
    const ratio = (machine: MachineData) =>
      steadyState(delta(machine), SUPPLY, 1).current / steadyState(delta(machine), SUPPLY, 1, STAR).current;
    expectWithin(ratio(LINEAR), 3, { relative: 1e-13 }, 'linear');
    expect(ratio(WITH_LEAKAGE)).toBeGreaterThan(3.05);
  });

  it('triples rotor resistors too, and leaves what is outside the machine alone', () => {
    const source = {
      sourceResistance: 0.1,
      sourceInductance: 1e-4,
      cable: { resistance: 0.2, inductance: 2e-4 },
    };
    const circuit = circuitOf(delta(LINEAR), source, {
      lineResistance: 0.4,
      rotorResistance: 0.5,
      star: true,
    });
    expectWithin(circuit.R, 3 * LINEAR.Rs + 0.1 + 0.2 + 0.4, { relative: 1e-15 }, 'R');
    expectWithin(circuit.L, 3 * LINEAR.Lls + 3e-4, { relative: 1e-15 }, 'L');
    expectWithin(circuit.Rr[0]!, 3 * (LINEAR.cages[0]!.Rr + 0.5), { relative: 1e-15 }, 'first cage');
    expectWithin(circuit.Rr[1]!, 3 * LINEAR.cages[1]!.Rr, { relative: 1e-15 }, 'second cage');
    expectWithin(circuit.externalRr, 1.5, { relative: 1e-15 }, 'outside the machine');
  });
});

describe.each(['AB', 'AC'] as const)('reconnectFlux, winding order %s', (order) => {
  it('keeps the flux of every winding, and there and back again is where it was', () => {
    const flux = [0.9, -0.2, 0.85, 0.1, 0.8, -0.15, 0.7, 0.3];
    const inStar = reconnectFlux(flux, true, order);
    for (let pair = 0; pair < flux.length; pair += 2)
      expectAllWithin(
        phases(inStar[pair]!, inStar[pair + 1]!),
        windings(phases(flux[pair]!, flux[pair + 1]!), order),
        { absolute: 1e-15 },
        'winding flux',
      );
    expectAllWithin(reconnectFlux(inStar, false, order), flux, { absolute: 4e-16 }, 'back in delta');
  });

  it.each(MACHINES)(
    'keeps the residual voltage of every winding, the stored energy and the decay: %s',
    (_name, machine) => {
      const poles = { kind: 'none', connection: [-1, -1, -1] } as const;
      const modelOf = (star: boolean) =>
        connectedModel(circuitOf(delta(machine), SUPPLY, star ? STAR : NOTHING_INSERTED), SUPPLY, poles);
      const omegaM = 90;
      const seen = (star: boolean, flux: readonly number[]) => {
        const out = newObservation();
        const model = modelOf(star);
        model.observe(0.01, model.fromStationary(0.01, flux), omegaM, 0, out);
        return out;
      };
      const start = [0, 0, 1.1, -0.2, 1.05, -0.25, 0.9, 0.1];
      const flux = modelOf(false).toStationary(
        0,
        modelOf(false).fromStationary(
          0,
          start.slice(0, 2 + 2 * machine.cages.length + (machine.core ? 2 : 0)),
        ),
        0,
      );
      const inDelta = seen(false, flux);
      const inStar = seen(true, reconnectFlux(flux, true, order));
      expect(Math.hypot(inDelta.uAlpha, inDelta.uBeta)).toBeGreaterThan(100);
      const volts = { relative: 1e-11, absolute: 1e-9 };
      expectAllWithin(
        phases(inStar.uAlpha, inStar.uBeta),
        windings(phases(inDelta.uAlpha, inDelta.uBeta), order),
        volts,
        'winding voltage',
      );
      expectWithin(inStar.magneticEnergy, inDelta.magneticEnergy, { relative: 1e-12 }, 'stored energy');
      // Losses keep too: currents fall by √3 where resistances are threefold.
      expectWithin(3 * inStar.irSquared1, inDelta.irSquared1, { relative: 1e-10 }, 'cage current');
      expectWithin(3 * inStar.coreSquared, inDelta.coreSquared, { relative: 1e-10 }, 'core current');
      expectWithin(inStar.torque, inDelta.torque, { relative: 1e-10, absolute: 1e-10 }, 'torque');
    },
  );
});

describe('in series with the machine', () => {
  const locked = (extra: Complex): number => {
    let air: Complex = [0, -1 / (OMEGA * LINEAR.Lm)];
    for (const { Rr, Llr } of LINEAR.cages) air = add(air, divide([1, 0], [Rr, OMEGA * Llr]));
    const motor = add([LINEAR.Rs, OMEGA * LINEAR.Lls], divide([1, 0], air));
    return SUPPLY.lineVoltage / Math.sqrt(3) / magnitude(add(motor, extra));
  };

  it('a cable adds its impedance to the locked-rotor circuit', () => {
    const cable = { resistance: 0.12, inductance: 0.3e-3 };
    const state = steadyState(LINEAR, { ...SUPPLY, cable }, 1);
    expectWithin(state.current, locked([0.12, OMEGA * 0.3e-3]), { relative: 1e-13 }, 'current');
    // Behind a source it adds up.
    const behind = { ...SUPPLY, cable, sourceResistance: 0.05, sourceInductance: 0.1e-3 };
    expectWithin(
      steadyState(LINEAR, behind, 1).current,
      locked([0.17, OMEGA * 0.4e-3]),
      { relative: 1e-13 },
      'both',
    );
  });

  it('line resistors lower current and torque by the ratio of the impedances, plugging', () => {
    const inserted = { ...NOTHING_INSERTED, lineResistance: 0.7 };
    const state = steadyState(LINEAR, SUPPLY, 1, inserted);
    expectWithin(state.current, locked([0.7, 0]), { relative: 1e-13 }, 'current');
    const plain = steadyState(LINEAR, SUPPLY, 1.95);
    const limited = steadyState(LINEAR, SUPPLY, 1.95, inserted);
    const ratio = (limited.current / plain.current) ** 2;
    expectWithin(limited.torque, plain.torque * ratio, { relative: 1e-12 }, 'torque ∝ current squared');
    expectWithin(
      limited.inputPower - 3 * 0.7 * limited.current ** 2,
      plain.inputPower * ratio,
      { relative: 1e-12 },
      'what the machine takes',
    );
  });

  it('a rotor resistor moves the curve: the same torque at a slip larger by the ratio of the resistances', () => {
    const machine = oneCage(LINEAR);
    const { Rr } = machine.cages[0]!;
    const inserted = { ...NOTHING_INSERTED, rotorResistance: 2 * Rr };
    for (const slip of [0.05, 0.3, 0.65]) {
      const short = steadyState(machine, SUPPLY, slip);
      const shifted = steadyState(machine, SUPPLY, 3 * slip, inserted);
      expectWithin(shifted.torque, short.torque, { relative: 1e-13 }, 'torque');
      expectWithin(shifted.current, short.current, { relative: 1e-13 }, 'current');
    }
  });

  it.each([
    ['plain', LINEAR],
    ['general', WITH_ALL],
  ] as const)(
    'all of it stands between source and terminals: v − R·i − L·di/dt is the steady drop, %s',
    (_name, machine) => {
      const supply = {
        ...SUPPLY,
        sourceResistance: 0.05,
        sourceInductance: 0.1e-3,
        cable: { resistance: 0.12, inductance: 0.3e-3 },
      };
      const inserted = { ...NOTHING_INSERTED, lineResistance: 0.7 };
      const state = steadyState(machine, supply, 1, inserted);
      const [re, im] = state.statorCurrent;
      const phase = supply.lineVoltage / Math.sqrt(3);
      const [R, X] = [0.05 + 0.12 + 0.7, OMEGA * 0.4e-3];
      const terminal = Math.sqrt(3) * Math.hypot(phase - R * re + X * im, -R * im - X * re);
      expectWithin(state.terminalVoltage, terminal, { relative: 1e-12 }, 'terminal voltage');
    },
  );
});
