import { describe, expect, it } from 'vitest';
import type { LoadData, LoadTorque } from '../../../src/scenario/scenario.ts';
import { initialShaft } from '../../../src/shaft/initialShaft.ts';
import { loadCoefficients } from '../../../src/shaft/loadTorque.ts';
import { newShaftObservation, observeShaft } from '../../../src/shaft/observeShaft.ts';
import { type Shaft, shaftSize } from '../../../src/shaft/shaft.ts';
import type { ShaftMode } from '../../../src/shaft/shaftMode.ts';
import { SHAFT_FLOW, SHAFT_FLOW_COUNT, shaftPowers } from '../../../src/shaft/shaftPowers.ts';
import { shaftRates } from '../../../src/shaft/shaftRates.ts';
import { expectWithin } from '../../support/tolerance.ts';
import { shaftWith } from './driveShaft.ts';

const TORQUES = {
  friction: { kind: 'friction', torque: 6, breakaway: 7 },
  viscous: { kind: 'viscous', coefficient: 0.05 },
  fan: { kind: 'fan', coefficient: 0.001 },
  gravity: { kind: 'gravity', torque: 12 },
  'constant power': { kind: 'constantPower', power: 300, baseSpeed: 20 },
  table: {
    kind: 'table',
    mirrored: true,
    points: [
      { speed: 0, torque: 2 },
      { speed: 30, torque: 1 },
      { speed: 80, torque: 5 },
    ],
  },
  'table for one direction': {
    kind: 'table',
    mirrored: false,
    points: [
      { speed: -50, torque: 3 },
      { speed: 60, torque: 4 },
    ],
  },
} as const satisfies Record<string, LoadTorque>;

const PLANTS: readonly (readonly [string, Partial<LoadData>])[] = [
  ['one mass', {}],
  ['a gear without loss', { gear: { ratio: 2, efficiency: 1, backwardEfficiency: 1 } }],
  ['a gear', { gear: { ratio: 2, efficiency: 0.9, backwardEfficiency: 0.8 } }],
  ['a coupling', { coupling: { stiffness: 8000, damping: 3, backlash: 0 } }],
  ['a coupling with play', { coupling: { stiffness: 8000, damping: 3, backlash: 0.01 } }],
  [
    'a gear and a coupling',
    {
      gear: { ratio: 3, efficiency: 0.9, backwardEfficiency: 0.8 },
      coupling: { stiffness: 5000, damping: 2, backlash: 0.02 },
    },
  ],
];

const LOADS: readonly (readonly [string, readonly LoadTorque[]])[] = [
  ['no torque', []],
  ...Object.entries(TORQUES).map(([name, torque]) => [name, [torque]] as const),
  ['every torque', Object.values(TORQUES)],
];

const MOTORS = [undefined, { friction: 0.6, windage: 2e-5 }] as const;

const CASES = PLANTS.flatMap(([plant, load]) =>
  LOADS.flatMap(([name, torques]) =>
    MOTORS.map((loss) => {
      const text = `${plant}, ${name}${loss === undefined ? '' : ', loss of the motor'}`;
      return [text, shaftWith({ inertia: 0.3, ...load, torques }, { ...(loss && { loss }) })] as const;
    }),
  ),
);

/** Modes of a shaft: turning either way, either flow of power, either flank and none, and at rest. */
function modesOf(shaft: Shaft): { readonly mode: ShaftMode; readonly speed: number }[] {
  return [45, 12, -12, -45].flatMap((speed) => {
    const { mode } = initialShaft(shaft, speed);
    const powers = shaft.gear === null ? [mode.power] : ([-1, 1] as const);
    const play = shaft.coupling !== null && shaft.coupling.backlash > 0;
    const flanks = play ? ([-1, 0, 1] as const) : [mode.flank];
    return powers.flatMap((power) => flanks.map((flank) => ({ mode: { ...mode, power, flank }, speed })));
  });
}

/** States at an offset of three, which other states take. */
const AT = 3;

function stateOf(shaft: Shaft, speed: number, flank: number): number[] {
  const electrical = [0.9, -0.2, 0.4];
  if (shaftSize(shaft) === 2) return [...electrical, speed, 1.3];
  return [...electrical, speed, 1.3, speed * 1.02, 0.011 * flank + 0.001];
}

describe.each(CASES)('powers of a shaft: %s', (_name, shaft) => {
  it('are those of the whole observation, and the motor’s power goes where they say', () => {
    for (const { mode, speed } of modesOf(shaft)) {
      const load = loadCoefficients(shaft, mode);
      const read = shaftPowers(shaft, mode, load);
      const y = stateOf(shaft, speed, mode.flank);
      for (const torque of [80, -80]) {
        const out = new Float64Array(SHAFT_FLOW_COUNT + 2).fill(77);
        read(y, AT, torque, out);
        const seen = newShaftObservation();
        observeShaft(shaft, mode, y, AT, torque, seen);
        for (const [name, place] of Object.entries(SHAFT_FLOW))
          expectWithin(
            out[place],
            seen[name as keyof typeof SHAFT_FLOW],
            { relative: 1e-12, absolute: 1e-12 },
            `${name} at ${speed} rad/s, ${JSON.stringify(mode)}`,
          );
        expect([...out.subarray(SHAFT_FLOW_COUNT)]).toEqual([77, 77]);
        // Air-gap power = losses + load + change of kinetic and elastic energy, by the equations of motion.
        const dydt = new Array<number>(y.length).fill(0);
        shaftRates(shaft, mode)(y, AT, torque, dydt);
        const spent = [0, 1, 2, 3, 4].reduce((sum, place) => sum + out[place]!, 0);
        expectWithin(spent + storing(shaft, mode, y, dydt), torque * speed, { relative: 1e-11 }, 'balance');
      }
    }
  });

  it('are zero at rest', () => {
    const { state, mode } = initialShaft(shaft, 0);
    const load = loadCoefficients(shaft, mode);
    const out = new Float64Array(SHAFT_FLOW_COUNT).fill(77);
    shaftPowers(shaft, mode, load)([0.9, -0.2, 0.4, ...state], AT, 0, out);
    for (const place of [0, 1, 2, 3, 4]) expectWithin(out[place], 0, { absolute: 1e-12 }, `power ${place}`);
    const seen = newShaftObservation();
    observeShaft(shaft, mode, state, 0, 0, seen);
    expectWithin(out[SHAFT_FLOW.couplingTorque], seen.couplingTorque, { absolute: 1e-12 }, 'coupling');
  });
});

/** Rate at which the masses' kinetic energy and the coupling's elastic energy grow, W. */
function storing(shaft: Shaft, mode: ShaftMode, y: readonly number[], dydt: readonly number[]): number {
  const { coupling } = shaft;
  if (coupling === null) return shaft.inertia * y[AT]! * dydt[AT]!;
  const kinetic = shaft.motorInertia * y[AT]! * dydt[AT]! + shaft.loadInertia * y[AT + 2]! * dydt[AT + 2]!;
  if (mode.flank === 0) return kinetic;
  const wound = y[AT + 3]! - (mode.flank * coupling.backlash) / 2;
  return kinetic + coupling.stiffness * wound * dydt[AT + 3]!;
}
