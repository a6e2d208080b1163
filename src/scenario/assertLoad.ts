import type { Demand, Demands } from './demands.ts';
import type { LoadData, LoadTorque, MachineData } from './scenario.ts';

/** Takes down what is impossible about a load, and about what turns altogether. */
export function assertLoad(load: LoadData, machine: MachineData, demands: Demands): void {
  const { group, report } = demands;
  group('load', load, { inertia: 'notNegative' });
  if (load?.gear !== undefined)
    group('load.gear', load.gear, {
      ratio: 'positive',
      efficiency: 'fraction',
      backwardEfficiency: 'fraction',
    });
  if (load?.coupling !== undefined) {
    group('load.coupling', load.coupling, {
      stiffness: 'positive',
      damping: 'notNegative',
      backlash: 'notNegative',
    });
    if (machine?.inertia === 0) report('machine.inertia', 0, 'some inertia at either end of the coupling');
    if (load.inertia === 0) report('load.inertia', 0, 'some inertia at either end of the coupling');
  } else if (machine?.inertia === 0 && load?.inertia === 0)
    report('machine.inertia', 0, 'some inertia, of the rotor or of the load');
  for (const [j, torque] of (load?.torques ?? []).entries())
    assertTorque(torque, `load.torques.${j}`, demands);
}

type TorqueKind = Exclude<LoadTorque['kind'], 'table'>;

const NUMBERS: Readonly<Record<TorqueKind, Readonly<Record<string, Demand>>>> = {
  friction: { torque: 'notNegative', breakaway: 'notNegative' },
  gravity: { torque: 'finite' },
  viscous: { coefficient: 'notNegative' },
  fan: { coefficient: 'notNegative' },
  constantPower: { power: 'notNegative', baseSpeed: 'positive' },
};

function assertTorque(torque: LoadTorque, path: string, { group, report, word }: Demands): void {
  word(`${path}.kind`, torque?.kind, [...Object.keys(NUMBERS), 'table']);
  if (torque?.kind !== 'table') {
    group(path, torque, NUMBERS[torque?.kind] ?? {});
    return;
  }
  const { points, mirrored } = torque;
  if ((points?.length ?? 0) < 2) report(`${path}.points`, 'too few points', 'two points or more');
  for (const [j, point] of (points ?? []).entries()) {
    const here = `${path}.points.${j}`;
    group(here, point, { speed: 'finite', torque: mirrored ? 'notNegative' : 'finite' });
    if (j > 0 && !(point.speed > points[j - 1]!.speed))
      report(`${here}.speed`, point.speed, 'a speed above that of the point before');
    if (j === 0 && mirrored && point.speed !== 0)
      report(`${here}.speed`, point.speed, '0, where a torque that opposes motion begins');
  }
}
