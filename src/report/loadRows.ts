import type { LoadData, LoadTorque } from '../scenario/scenario.ts';
import { formatNumber, formatPercent } from './formatQuantity.ts';
import { type InputFormat, type InputRow, inputRow as row } from './inputRow.ts';

/** The load's part of the inputs table, with gear and coupling where there are any. */
export function loadRows(load: LoadData, format: InputFormat): InputRow[] {
  const { show } = format;
  const { gear, coupling } = load;
  return [
    row('Load inertia', show(load.inertia, 'kg·m²')),
    ...(gear === undefined
      ? []
      : [
          row('The same, seen from the motor', show(load.inertia / gear.ratio ** 2, 'kg·m²')),
          row('Gear ratio, motor speed over load speed', formatNumber(gear.ratio)),
          row('Gear efficiency while the motor drives', formatPercent(gear.efficiency)),
          row('Gear efficiency while the load drives', formatPercent(gear.backwardEfficiency)),
        ]),
    ...(coupling === undefined
      ? []
      : [
          row('Coupling stiffness, at the motor shaft', show(coupling.stiffness, 'N·m/rad')),
          row('Coupling damping', show(coupling.damping, 'N·m·s/rad')),
          row('Free play of the coupling, flank to flank', show(coupling.backlash, 'rad')),
        ]),
    ...(load.torques.length === 0
      ? [row('Load torque', 'none')]
      : load.torques.map((torque) => torqueRow(torque, format))),
  ];
}

function torqueRow(torque: LoadTorque, { show }: InputFormat): InputRow {
  switch (torque.kind) {
    case 'friction':
      return row(
        'Dry friction',
        `${show(torque.torque, 'N·m')}; holds at rest up to ${show(torque.breakaway, 'N·m')}`,
      );
    case 'viscous':
      return row('Viscous, per speed', show(torque.coefficient, 'N·m·s/rad'));
    case 'fan':
      return row('Fan, per speed squared', show(torque.coefficient, 'N·m·s²/rad²'));
    case 'gravity':
      return row('Gravity, against forward rotation', show(torque.torque, 'N·m'));
    case 'constantPower': {
      const most = show(torque.power / torque.baseSpeed, 'N·m');
      return row(
        'Constant power, against motion',
        `${show(torque.power, 'W')} above ${show(torque.baseSpeed, 'rad/s')}; below that speed ${most}`,
      );
    }
    case 'table': {
      const points = torque.points.map(
        (point) => `${show(point.speed, 'rad/s')}: ${show(point.torque, 'N·m')}`,
      );
      const sense = torque.mirrored ? 'against motion in both directions' : 'against forward rotation';
      return row(`Table of torque, ${sense}`, points.join('; '));
    }
    default:
      return torque satisfies never;
  }
}
