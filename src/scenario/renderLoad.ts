import type { LoadData, LoadTorque } from './scenario.ts';
import { writeQuantity as write } from './writeQuantity.ts';

/** The load section of a file, in SI units with all digits. */
export function renderLoad(load: LoadData): Readonly<Record<string, unknown>> {
  const { gear, coupling } = load;
  return {
    ...(gear === undefined
      ? {}
      : {
          gear: {
            ratio: gear.ratio,
            efficiency: gear.efficiency,
            backwardEfficiency: gear.backwardEfficiency,
          },
        }),
    ...(coupling === undefined
      ? {}
      : {
          coupling: {
            stiffness: write(coupling.stiffness, 'N m/rad'),
            damping: write(coupling.damping, 'N m s/rad'),
            backlash: write(coupling.backlash, 'rad'),
          },
        }),
    inertia: write(load.inertia, 'kg m^2'),
    torque: load.torques.length === 0 ? 'none' : load.torques.map(renderTorque),
  };
}

function renderTorque(load: LoadTorque): Readonly<Record<string, unknown>> {
  switch (load.kind) {
    case 'friction':
      return { kind: load.kind, torque: write(load.torque, 'N m'), breakaway: write(load.breakaway, 'N m') };
    case 'viscous':
      return { kind: load.kind, coefficient: write(load.coefficient, 'N m s/rad') };
    case 'fan':
      return { kind: load.kind, coefficient: write(load.coefficient, 'N m s^2/rad^2') };
    case 'gravity':
      return { kind: load.kind, torque: write(load.torque, 'N m') };
    case 'constantPower':
      return {
        kind: load.kind,
        power: write(load.power, 'W'),
        baseSpeed: write(load.baseSpeed, 'rad/s'),
      };
    case 'table':
      return {
        kind: load.kind,
        points: load.points.map(({ speed, torque }) => ({
          speed: write(speed, 'rad/s'),
          torque: write(torque, 'N m'),
        })),
        direction: load.mirrored ? 'opposes motion' : 'as given',
      };
    default:
      return load satisfies never;
  }
}
