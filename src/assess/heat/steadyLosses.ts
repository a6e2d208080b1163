import type { SteadySupply } from '../../machine/steadyState.ts';
import { steadyState } from '../../machine/steadyState.ts';
import { magnitude } from '../../numeric/complex.ts';
import { squared } from '../../numeric/raised.ts';
import type { MachineData } from '../../scenario/scenario.ts';
import { type CageBodies, perBody } from './cageBodies.ts';
import type { HeatPulse } from './heat.ts';

/**
 * Losses of the motor in steady operation, W, as the heat of one second. Resistors outside the motor do not heat it and are
 * left out.
 *
 * @param slip against the supply's sequence
 */
export function steadyLosses(
  machine: MachineData,
  supply: SteadySupply,
  slip: number,
  bodies: CageBodies,
): HeatPulse {
  const { current, rotorCurrents, coreCurrent } = steadyState(machine, supply, slip);
  const speed = Math.abs(((1 - slip) * 2 * Math.PI * supply.frequency) / machine.polePairs);
  const { friction, windage } = machine.mechanicalLoss ?? { friction: 0, windage: 0 };
  const iron = coreCurrent === null ? 0 : 3 * squared(magnitude(coreCurrent)) * (machine.core?.R ?? 0);
  return {
    winding: 3 * squared(current) * machine.Rs,
    ...perBody(
      machine.cages.map(({ Rr }, j) => 3 * squared(magnitude(rotorCurrents[j]!)) * Rr),
      bodies,
    ),
    // A held shaft is not rubbed: with the speed the loss of the bearings is zero.
    frame: iron + (friction + windage * squared(speed)) * speed,
    duration: 1,
  };
}
