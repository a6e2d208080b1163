import type { MachineData, Supply } from '../../src/scenario/scenario.ts';
import { initialShaft } from '../../src/shaft/initialShaft.ts';
import { type Shaft, shaftOf } from '../../src/shaft/shaft.ts';
import type { ShaftMode } from '../../src/shaft/shaftMode.ts';

/**
 * One mass that turns, with a constant load torque and nothing else.
 *
 * @param inertia rotor and load together, kg·m²
 * @param gravity N·m
 */
export function plainShaft(
  textbook: { readonly machine: MachineData; readonly supply: Supply },
  inertia: number,
  gravity = 0,
): Shaft {
  const { supply } = textbook;
  const machine = { ...textbook.machine, inertia };
  return shaftOf({ machine, supply, load: { inertia: 0, torques: [{ kind: 'gravity', torque: gravity }] } });
}

/** Mode of a plain shaft that turns forward, or is held at rest. */
export function plainMode(shaft: Shaft, held = false): ShaftMode {
  const { mode } = initialShaft(shaft, 1);
  return held ? { ...mode, masses: [{ direction: 0, held: true }] } : mode;
}
