import type { Demands } from './demands.ts';
import type { MachineData, MagnetisingPoint } from './scenario.ts';

/** Roundings by which a curve along a straight line may seem to bend the wrong way, relative. */
const rounding = 1e-9;

/** Takes down what is impossible about a machine: its circuit and every element it has. */
export function assertMachine(machine: MachineData, demands: Demands): void {
  const { group, report } = demands;
  group('machine', machine, {
    polePairs: 'positive',
    Rs: 'positive',
    Lls: 'positive',
    Lm: 'positive',
    inertia: 'notNegative',
  });
  const cages = machine?.cages ?? [];
  for (const [j, cage] of cages.entries())
    group(`machine.cages.${j}`, cage, { Rr: 'positive', Llr: 'positive' });
  if (cages.length < 1 || cages.length > 2)
    report('machine.cages', `${cages.length} cages`, 'one cage or two');
  if (machine?.mainSaturation !== undefined) assertCurve(machine.mainSaturation, demands);
  if (machine?.leakageSaturation !== undefined) assertLeakage(machine, demands);
  if (machine?.core !== undefined) group('machine.core', machine.core, { R: 'positive', L: 'positive' });
  if (machine?.mechanicalLoss !== undefined)
    group('machine.mechanicalLoss', machine.mechanicalLoss, {
      friction: 'notNegative',
      windage: 'notNegative',
    });
  if (machine?.rotorResistors !== undefined) assertRotorResistors(machine, demands);
}

function assertCurve(curve: readonly MagnetisingPoint[], { group, report }: Demands): void {
  const path = 'machine.mainSaturation';
  if (curve.length < 2) report(path, `${curve.length} points`, 'two points or more');
  for (const [j, point] of curve.entries()) {
    const here = `${path}.${j}`;
    group(here, point, { current: 'positive', flux: 'positive' });
    const before = curve[j - 1];
    if (before === undefined) continue;
    if (!(point.flux > before.flux && point.current > before.current))
      report(here, `${point.flux} Wb, ${point.current} A`, 'a point above and beyond the one before');
    else if (point.current * before.flux < before.current * point.flux * (1 - rounding))
      report(
        here,
        `${point.flux} Wb, ${point.current} A`,
        'a current that grows at least as fast as the flux',
      );
  }
}

function assertLeakage(machine: MachineData, { group, report }: Demands): void {
  const path = 'machine.leakageSaturation';
  const { stator, cages } = machine.leakageSaturation ?? {};
  const demands = { current: 'positive', remaining: 'fraction' } as const;
  if (stator !== null) group(`${path}.stator`, stator, demands);
  if (cages?.length !== machine.cages?.length)
    report(`${path}.cages`, `${cages?.length} entries`, 'one entry per cage');
  for (const [j, cage] of (cages ?? []).entries())
    if (cage !== null) group(`${path}.cages.${j}`, cage, demands);
}

function assertRotorResistors(machine: MachineData, { group, report }: Demands): void {
  const path = 'machine.rotorResistors';
  const { rotorResistors } = machine;
  group(path, rotorResistors, { plugging: 'notNegative' });
  if (machine.cages?.length === 2)
    report(path, 'two cages', 'one cage, which stands for the winding at the rings');
  for (const [j, step] of (rotorResistors?.starting ?? []).entries())
    group(`${path}.starting.${j}`, step, { resistance: 'notNegative', duration: 'positive' });
}
