import type { MachineData } from '../scenario/scenario.ts';
import { formatNumber, formatPercent, formatQuantity } from './formatQuantity.ts';
import { type InputRow, inputRow as row } from './inputRow.ts';
import { rotorName } from './machineRows.ts';

/**
 * The equivalent circuit per phase (equivalent star, rotor referred to the stator) as resistances and reactances at one
 * frequency, as machine people write it. Ohms are the same in every system of units.
 *
 * @param frequency Hz, at which the reactances hold
 */
export function circuitRows(machine: MachineData, frequency: number): InputRow[] {
  const ohm = (value: number) => formatQuantity(value, 'Ω', { system: 'SI' });
  const reactance = (inductance: number) => ohm(2 * Math.PI * frequency * inductance);
  const { core, leakageSaturation, mainSaturation } = machine;
  const saturates = (name: string, law: { current: number; remaining: number } | null | undefined) =>
    law == null
      ? []
      : [
          row(
            `${name} leakage saturates`,
            `around ${formatNumber(law.current)} A crest, down to ${formatPercent(law.remaining)}`,
          ),
        ];
  return [
    row('Stator resistance', ohm(machine.Rs)),
    row('Stator leakage reactance', reactance(machine.Lls)),
    row('Magnetising reactance', reactance(machine.Lm)),
    ...machine.cages.flatMap((cage, i) => [
      row(`${rotorName(machine, i)} resistance`, ohm(cage.Rr)),
      row(`${rotorName(machine, i)} leakage reactance`, reactance(cage.Llr)),
    ]),
    ...(core === undefined
      ? []
      : [row('Core resistance (iron loss)', ohm(core.R)), row('Core reactance', reactance(core.L))]),
    ...saturates('Stator', leakageSaturation?.stator),
    ...machine.cages.flatMap((_, i) => saturates(rotorName(machine, i), leakageSaturation?.cages[i])),
    ...(mainSaturation === undefined
      ? []
      : [row('Main flux', `saturates: curve of ${mainSaturation.length} points`)]),
  ];
}
