import type { LeakageSaturation, MachineData, RotorResistorData } from '../scenario/scenario.ts';
import { formatPercent } from './formatQuantity.ts';
import { type InputFormat, type InputRow, inputRow as row } from './inputRow.ts';

/** The machine's part of the inputs table. */
export function machineRows(machine: MachineData, format: InputFormat): InputRow[] {
  const { show } = format;
  return [
    row('Winding connection', machine.connection),
    row('Poles', String(2 * machine.polePairs)),
    row('Stator resistance', show(machine.Rs, 'Ω')),
    row('Stator leakage inductance', show(machine.Lls, 'H')),
    row('Magnetising inductance', show(machine.Lm, 'H')),
    ...machine.cages.flatMap((cage, i) => [
      row(`${rotorName(machine, i)} resistance`, show(cage.Rr, 'Ω')),
      row(`${rotorName(machine, i)} leakage inductance`, show(cage.Llr, 'H')),
    ]),
    ...saturationRows(machine, format),
    ...lossRows(machine, format),
    ...(machine.rotorResistors === undefined ? [] : resistorRows(machine.rotorResistors, format)),
    row('Rotor inertia', show(machine.inertia, 'kg·m²')),
    row('Rated power', show(machine.rated.power, 'W')),
    row('Rated speed', show(machine.rated.speed, 'rad/s')),
    row('Rated current, r.m.s.', show(machine.rated.current, 'A')),
    row('Rated torque', show(machine.rated.torque, 'N·m')),
  ];
}

/** "Rotor", or "Cage 2" of a double cage. */
export function rotorName({ cages }: Pick<MachineData, 'cages'>, index: number): string {
  return cages.length === 1 ? 'Rotor' : `Cage ${index + 1}`;
}

function saturationRows(machine: MachineData, { show }: InputFormat): InputRow[] {
  const { mainSaturation, leakageSaturation } = machine;
  const rows: InputRow[] = [];
  if (mainSaturation !== undefined) {
    const points = mainSaturation.map((point) => `${show(point.current, 'A')}: ${show(point.flux, 'Wb')}`);
    rows.push(row('Magnetising curve, crest current: crest flux', points.join('; ')));
  }
  if (leakageSaturation === undefined) return rows;
  const path = (name: string, law: LeakageSaturation | null) =>
    law === null
      ? row(name, 'linear')
      : row(
          name,
          `around ${show(law.current, 'A')} crest, down to ${formatPercent(law.remaining)} of the inductance`,
        );
  return [
    ...rows,
    path('Stator leakage saturates', leakageSaturation.stator),
    ...leakageSaturation.cages.map((law, i) => path(`${rotorName(machine, i)} leakage saturates`, law)),
  ];
}

function lossRows({ core, mechanicalLoss }: MachineData, { show }: InputFormat): InputRow[] {
  return [
    ...(core === undefined
      ? []
      : [
          row('Iron loss: resistance of the core branch', show(core.R, 'Ω')),
          row('Iron loss: inductance of the core branch', show(core.L, 'H')),
        ]),
    ...(mechanicalLoss === undefined
      ? []
      : [
          row('Bearing friction of the motor, dry', show(mechanicalLoss.friction, 'N·m')),
          row('Windage of the motor, per speed squared', show(mechanicalLoss.windage, 'N·m·s²/rad²')),
        ]),
  ];
}

function resistorRows({ starting, plugging }: RotorResistorData, { show }: InputFormat): InputRow[] {
  const steps = starting.map((step) => `${show(step.resistance, 'Ω')} for ${show(step.duration, 's')}`);
  return [
    row(
      'Slip-ring resistors per phase while starting',
      steps.length === 0 ? 'none' : `${steps.join(', ')}, then none`,
    ),
    row('Slip-ring resistors per phase while plugging', plugging === 0 ? 'none' : show(plugging, 'Ω')),
  ];
}
