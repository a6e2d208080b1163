import { steadyState } from '../../machine/steadyState.ts';
import { meanArcCharge } from '../../measure/equivalentBreakingCurrent.ts';
import type { MeanBreaking, MeanDuties } from '../../measure/meanDuties.ts';
import type { ContactorData, PhaseName, Scenario } from '../../scenario/scenario.ts';
import { opposite } from '../../starter/starter.ts';
import { breakingCategory } from './breakingCategory.ts';
import { lifeAtBreaking } from './contactLife.ts';
import type { BreakingOccasion, BreakingWear } from './contactWearTypes.ts';

/** What of a scenario the wear of its contactors depends on beside their currents. */
export type WearPlant = Pick<Scenario, 'machine' | 'supply' | 'initial'>;

/** Where a figure is missing: why. */
export interface WearNotKnown {
  readonly missing: string;
}

/**
 * What a device that breaks on a given occasion loses. The running current and that near rest are simulated; the current of the
 * motor at rest is that of its circuit, against full recovery voltage.
 */
export function breakingWear(
  occasion: BreakingOccasion,
  means: MeanDuties,
  device: ContactorData,
  plant: WearPlant,
): BreakingWear | WearNotKnown {
  const { supply } = plant;
  if (occasion === 'inching') {
    const { current } = steadyState(plant.machine, supply, 1);
    const charge = meanArcCharge(current, supply.frequency) / 3;
    const origin = 'estimated: steady current of the motor at rest from its circuit, full recovery voltage';
    const arcCharges = { A: charge, B: charge, C: charge };
    return wearOf(
      { occasion, current, recoveryVoltage: supply.lineVoltage, origin, arcCharges },
      device,
      plant,
    );
  }
  const simulated = simulatedBreaking(occasion, means);
  if (simulated === undefined)
    return {
      missing:
        occasion === 'running'
          ? 'the run breaks no running current'
          : 'no plug stop of the run ends with the opening of the plugging contactor',
    };
  if (simulated.equivalentCurrent === null)
    return { missing: 'the poles of this scenario are ideal and burn no arc (`starter.poles: ideal`)' };
  const chargeOf = (phase: PhaseName) =>
    simulated.poles.find((pole) => pole.phase === phase)?.meanArcCharge ?? 0;
  return wearOf(
    {
      occasion,
      current: simulated.equivalentCurrent,
      recoveryVoltage: simulated.meanRecoveryVoltage,
      origin: `simulated: symmetrical current of the same mean arc charge over ${simulated.runs} instants of opening`,
      arcCharges: { A: chargeOf('A'), B: chargeOf('B'), C: chargeOf('C') },
    },
    device,
    plant,
  );
}

function wearOf(
  parts: Omit<BreakingWear, 'category' | 'life'>,
  device: ContactorData,
  { supply }: WearPlant,
): BreakingWear {
  const { current, recoveryVoltage } = parts;
  const rating = { current: device.ratedCurrentAc3, voltage: device.ratedVoltage ?? supply.lineVoltage };
  return {
    ...parts,
    category: breakingCategory(current, recoveryVoltage, rating),
    life: lifeAtBreaking(device, current, recoveryVoltage, supply.lineVoltage),
  };
}

function simulatedBreaking(
  occasion: 'running' | 'plugging',
  { breakings, driving }: MeanDuties,
): MeanBreaking | undefined {
  if (occasion === 'running')
    return breakings.find(({ contactor, occurrence }) => contactor === driving && occurrence === 1);
  return breakings.find(({ contactor, command }) => contactor === opposite(driving) && command === 'plug');
}
