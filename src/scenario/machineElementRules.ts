import { squared } from '../numeric/raised.ts';
import { minTotalInertia } from './bounds.ts';
import type { RuleContext } from './rule.ts';

/** Saturation, losses and slip-ring resistors against the machine they belong to. */
export function machineElementRules(context: RuleContext): void {
  curveRules(context);
  leakageRules(context);
  lossRules(context);
  resistorRules(context);
}

/** The magnetising curve ascends and bends one way: the inductance falls as the current grows. */
function curveRules({ input, report }: RuleContext): void {
  const main = input.machine?.saturation?.main;
  if (main === undefined || typeof main === 'string') return;
  const here = (index: number) => ['machine', 'saturation', 'main', index] as const;
  for (let index = 1; index < main.length; index++) {
    const before = main[index - 1];
    const point = main[index];
    if (before === undefined || point === undefined) continue;
    if ((before.voltage === undefined) !== (point.voltage === undefined)) {
      const message = 'is written otherwise than the point before it';
      report(here(index), 'conflict', message, 'all points by voltage and current, or all by flux');
      continue;
    }
    const up = point.voltage ?? point.flux;
    const upBefore = before.voltage ?? before.flux;
    const along = point.current ?? point.magnetisingCurrent;
    const alongBefore = before.current ?? before.magnetisingCurrent;
    if (up === undefined || upBefore === undefined || along === undefined || alongBefore === undefined)
      continue;
    if (up <= upBefore || along <= alongBefore) {
      const message = 'does not lie above and beyond the point before it';
      report(here(index), 'conflict', message, 'points that ascend in both values');
    } else if (along * upBefore < alongBefore * up) {
      const message = 'takes less current for its flux, in proportion, than the point before it';
      const expected = 'a curve that saturates: current grows at least as fast as flux';
      report(here(index), 'conflict', message, expected);
    }
  }
}

function leakageRules({ input, isStated, report }: RuleContext): void {
  const { machine } = input;
  const leakage = machine?.saturation?.leakage;
  if (leakage === undefined || leakage === 'off') return;
  if (leakage === 'typical') {
    // A nameplate without a current gets one from the estimation.
    if (isStated('machine', 'nameplate') || isStated('machine', 'rated', 'current')) return;
    const message = 'is counted from the rated current, which is not stated';
    const expected = '`current` under rated, or the currents of the paths one by one';
    report(['machine', 'saturation', 'leakage'], 'conflict', message, expected);
    return;
  }
  const cages = machine?.cages?.length;
  if (leakage.cages === undefined || cages === undefined || leakage.cages.length === cages) return;
  const message = `has ${leakage.cages.length} ${leakage.cages.length === 1 ? 'entry' : 'entries'} for ${cages} ${cages === 1 ? 'cage' : 'cages'}`;
  report(['machine', 'saturation', 'leakage', 'cages'], 'conflict', message, 'one entry per cage');
}

/** A loss as large as the output is a slip of the unit. */
function lossRules({ input, report }: RuleContext): void {
  const { machine } = input;
  const power = machine?.nameplate?.power ?? machine?.rated?.power;
  if (power === undefined) return;
  for (const key of ['ironLoss', 'mechanicalLoss'] as const) {
    const loss = machine?.[key];
    if (typeof loss !== 'number' || loss < power) continue;
    const message = `of ${loss} W is not below the rated power of ${Number(power.toPrecision(4))} W`;
    report(['machine', key], 'conflict', message, 'a loss of a few per cent of the rated power (W or kW?)');
  }
}

function resistorRules({ input, isStated, report }: RuleContext): void {
  const { machine } = input;
  if (!isStated('machine', 'rotorResistors') || machine?.cages?.length !== 2) return;
  const message = 'stands beside two cages, and only a wound rotor has slip rings';
  report(['machine', 'rotorResistors'], 'conflict', message, 'one cage, which stands for the rotor winding');
}

/** Rotor and load together, at the motor shaft. */
export function inertiaRules({ input, isStated, report }: RuleContext): void {
  const { machine, load } = input;
  const rotor = machine?.inertia ?? machine?.nameplate?.inertia;
  if (rotor === undefined || load?.inertia === undefined) return;
  const ratio = isStated('load', 'gear') ? load.gear?.ratio : 1;
  const path = machine?.inertia === undefined ? ['nameplate', 'inertia'] : ['inertia'];
  if (ratio !== undefined && rotor + load.inertia / squared(ratio) < minTotalInertia) {
    const message = 'leaves rotor and load together without inertia';
    report(['machine', ...path], 'conflict', message, 'an inertia above 0 here or under load');
    return;
  }
  if (!isStated('load', 'coupling')) return;
  const reason = 'is 0, and a coupling needs something that turns at either end';
  if (rotor === 0) report(['machine', ...path], 'conflict', reason, 'an inertia above 0');
  if (load.inertia === 0)
    report(['load', 'inertia'], 'conflict', reason, 'an inertia above 0, or no coupling');
}
