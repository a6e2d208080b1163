import type { LoadData, MachineData, Scenario, StarterData, Supply } from '../../src/scenario/scenario.ts';
import { ARCING_STARTER, scenarioOf } from './scenarios.ts';
import { DOUBLE_CAGE, KRAUSE, type TextbookMachine } from './textbookMachines.ts';

/** Saturation, iron loss, bearings and windage for a textbook machine; invented, of ordinary size. */
export function realMachine({ machine, supply }: TextbookMachine): MachineData {
  const flux = (supply.lineVoltage * Math.sqrt(2 / 3)) / (2 * Math.PI * supply.frequency);
  const current = flux / machine.Lm;
  const rated = 4 * current;
  return {
    ...machine,
    mainSaturation: [
      { flux: 0.5 * flux, current: 0.42 * current },
      { flux: 0.8 * flux, current: 0.73 * current },
      { flux, current },
      { flux: 1.2 * flux, current: 1.7 * current },
      { flux: 1.35 * flux, current: 2.9 * current },
    ],
    leakageSaturation: {
      stator: { current: 2 * rated, remaining: 0.6 },
      cages: machine.cages.map(() => ({ current: 2.5 * rated, remaining: 0.55 })),
    },
    core: { R: 40 * 2 * Math.PI * supply.frequency * machine.Lm, L: 4 * machine.Lm },
    mechanicalLoss: { friction: 0.6, windage: 2e-5 },
  };
}

/** Cable, source, gear, elastic coupling with play, and every kind of load. */
const PLANT: { readonly supply: Partial<Supply>; readonly load: LoadData } = {
  supply: {
    sourceResistance: 0.02,
    sourceInductance: 0.2e-3,
    cable: { resistance: 0.03, inductance: 0.05e-3 },
    angle: 0.5,
  },
  load: {
    inertia: 1.2,
    gear: { ratio: 2, efficiency: 0.9, backwardEfficiency: 0.85 },
    coupling: { stiffness: 8000, damping: 3, backlash: 0.01 },
    torques: [
      { kind: 'friction', torque: 6, breakaway: 7 },
      { kind: 'viscous', coefficient: 0.05 },
      { kind: 'fan', coefficient: 0.001 },
      { kind: 'gravity', torque: 12 },
      { kind: 'constantPower', power: 300, baseSpeed: 20 },
      {
        kind: 'table',
        mirrored: true,
        points: [
          { speed: 0, torque: 2 },
          { speed: 30, torque: 1 },
          { speed: 80, torque: 5 },
        ],
      },
    ],
  },
};

const STARTER: Partial<StarterData> = {
  ...ARCING_STARTER,
  closingScatter: [0, 0.001, 0.002],
  zeroSpeedSwitch: { dropOutSpeed: 4, pickUpSpeed: 8, delay: 0.002 },
  lineResistors: { resistance: 0.5, closingTime: 0.02, openingTime: 0.01, bypassAfter: null },
};

/** Start, plug and stop of a double-cage delta machine with every element that can stand together. */
export function everyElement(): Scenario {
  const delta: TextbookMachine = { ...DOUBLE_CAGE, machine: { ...DOUBLE_CAGE.machine, connection: 'delta' } };
  const scenario = scenarioOf(delta, {
    ...PLANT,
    starter: { ...STARTER, plugConnection: 'star' },
    actions: [
      { at: 0.02, do: 'startForward' },
      { at: 0.6, do: 'plug' },
    ],
    solver: { relativeTolerance: 1e-8 },
  });
  return { ...scenario, machine: realMachine(delta) };
}

/** The same for a slip-ring machine, which has one rotor winding, with resistors at the rings and a phase lost in the end. */
export function everySlipRingElement(): Scenario {
  const scenario = scenarioOf(KRAUSE.hp3, {
    ...PLANT,
    load: {
      ...PLANT.load,
      inertia: 0.2,
      torques: [
        { kind: 'friction', torque: 2, breakaway: 3 },
        { kind: 'gravity', torque: 3 },
      ],
    },
    starter: { ...STARTER, faults: [{ kind: 'lostPhase', phase: 'C', from: 0.72 }] },
    actions: [
      { at: 0.02, do: 'startForward' },
      { at: 0.6, do: 'plug' },
    ],
    solver: { relativeTolerance: 1e-8, endTime: 0.9 },
  });
  const rotorResistors = {
    starting: [
      { resistance: 1.5, duration: 0.15 },
      { resistance: 0.5, duration: 0.1 },
    ],
    plugging: 2,
  };
  return { ...scenario, machine: { ...realMachine(KRAUSE.hp3), rotorResistors } };
}
