import type { LeakageSaturation, MachineData } from './scenario.ts';
import { writeQuantity as write } from './writeQuantity.ts';

/** The machine section of a file: the circuit of the equivalent star, in SI units with all digits. */
export function renderMachine(machine: MachineData): Readonly<Record<string, unknown>> {
  return {
    poles: 2 * machine.polePairs,
    connection: machine.connection,
    circuitGivenAs: 'equivalentStar',
    statorResistance: write(machine.Rs, 'ohm'),
    statorLeakage: write(machine.Lls, 'H'),
    magnetising: write(machine.Lm, 'H'),
    cages: machine.cages.map(({ Rr, Llr }) => ({ resistance: write(Rr, 'ohm'), leakage: write(Llr, 'H') })),
    inertia: write(machine.inertia, 'kg m^2'),
    rated: Object.fromEntries(
      (
        [
          ['power', machine.rated.power, 'W'],
          ['speed', machine.rated.speed, 'rad/s'],
          ['current', machine.rated.current, 'A'],
          ['torque', machine.rated.torque, 'N m'],
        ] as const
      ).flatMap(([key, value, unit]) => (value === null ? [] : [[key, write(value, unit)]])),
    ),
    ...renderSaturation(machine),
    ...renderLosses(machine),
  };
}

function renderSaturation(machine: MachineData): Readonly<Record<string, unknown>> {
  const { mainSaturation: main, leakageSaturation: leakage } = machine;
  if (main === undefined && leakage === undefined) return {};
  return {
    saturation: {
      ...(main === undefined
        ? {}
        : {
            main: main.map(({ flux, current }) => ({
              flux: write(flux, 'Wb'),
              magnetisingCurrent: write(current, 'A'),
            })),
          }),
      ...(leakage === undefined
        ? {}
        : { leakage: { stator: renderPath(leakage.stator), cages: leakage.cages.map(renderPath) } }),
    },
  };
}

function renderPath(path: LeakageSaturation | null): Readonly<Record<string, unknown>> | 'off' {
  return path === null ? 'off' : { current: write(path.current, 'A'), remaining: path.remaining };
}

function renderLosses(machine: MachineData): Readonly<Record<string, unknown>> {
  const { core, mechanicalLoss, rotorResistors } = machine;
  return {
    ...(core === undefined
      ? {}
      : { ironLoss: { resistance: write(core.R, 'ohm'), inductance: write(core.L, 'H') } }),
    ...(mechanicalLoss === undefined
      ? {}
      : {
          mechanicalLoss: {
            friction: write(mechanicalLoss.friction, 'N m'),
            windage: write(mechanicalLoss.windage, 'N m s^2/rad^2'),
          },
        }),
    ...(rotorResistors === undefined
      ? {}
      : {
          rotorResistors: {
            starting: rotorResistors.starting.map(({ resistance, duration }) => ({
              resistance: write(resistance, 'ohm'),
              duration: write(duration, 's'),
            })),
            plugging: write(rotorResistors.plugging, 'ohm'),
          },
        }),
  };
}
