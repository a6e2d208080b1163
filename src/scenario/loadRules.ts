import { tableCoverage } from './bounds.ts';
import { inertiaRules } from './machineElementRules.ts';
import { knownPoles } from './ratedBase.ts';
import type { RuleContext } from './rule.ts';
import { inRpm, synchronousSpeed } from './synchronousSpeed.ts';

/** Inertia that turns, and tables that reach as far as the drive can go. */
export function loadRules(context: RuleContext): void {
  inertiaRules(context);
  const torque = context.input.load?.torque;
  if (torque === undefined || typeof torque === 'string') return;
  if (isList(torque)) {
    for (const [index, one] of torque.entries())
      if (one?.kind === 'table') tableRules(context, one, ['load', 'torque', index]);
  } else if (torque.kind === 'table') tableRules(context, torque, ['load', 'torque']);
}

interface Table {
  readonly points?: readonly (Point | undefined)[] | undefined;
  readonly direction?: 'opposes motion' | 'as given' | undefined;
}

interface Point {
  readonly speed?: number | undefined;
  readonly torque?: number | undefined;
}

/** Rounding of a speed in rpm, relative. */
const rounding = 1e-9;

function tableRules(context: RuleContext, table: Table, path: readonly (string | number)[]): void {
  const { report, isStated, input } = context;
  const points = table.points ?? [];
  if (isStated(...path, 'direction') && table.direction === undefined) return;
  const mirrored = table.direction !== 'as given';
  for (const [index, point] of points.entries()) {
    const before = index === 0 ? undefined : points[index - 1];
    const here = (key: string) => [...path, 'points', index, key];
    if (point?.speed !== undefined && before?.speed !== undefined && point.speed <= before.speed)
      report(here('speed'), 'conflict', 'is not above the speed of the point before it', 'ascending speeds');
    if (!mirrored) continue;
    if (index === 0 && point?.speed !== undefined && point.speed !== 0) {
      const message = 'is not 0, where a torque that opposes motion begins';
      const expected = 'a first point at 0 rpm with the torque that holds at rest, or `direction: as given`';
      report(here('speed'), 'conflict', message, expected);
    }
    if (point?.torque !== undefined && point.torque < 0) {
      const message = 'is negative and so would drive the motion it opposes';
      report(here('torque'), 'conflict', message, 'a torque of 0 or above, or `direction: as given`');
    }
  }
  const poles = knownPoles(context);
  const frequency = input.supply?.frequency;
  const ratio = isStated('load', 'gear') ? input.load?.gear?.ratio : 1;
  const first = points[0]?.speed;
  const last = points.at(-1)?.speed;
  if (poles === undefined || frequency === undefined || ratio === undefined) return;
  const reach = (tableCoverage * synchronousSpeed(frequency, poles)) / ratio;
  const enough = reach * (1 - rounding);
  const behind = ratio === 1 ? '' : ' over the gear ratio';
  const words = `${tableCoverage} times synchronous speed${behind}, to which a load that overhauls can drive the motor`;
  if (last !== undefined && last < enough) {
    const message = `ends at ${inRpm(last)}, below ${words}`;
    report([...path, 'points'], 'conflict', message, `a last point at ${inRpm(reach)} or above`);
  }
  if (!mirrored && first !== undefined && first > -enough) {
    const message = `begins at ${inRpm(first)}, above minus ${words}`;
    report([...path, 'points'], 'conflict', message, `a first point at ${inRpm(-reach)} or below`);
  }
}

function isList<T>(value: T | readonly (T | undefined)[]): value is readonly (T | undefined)[] {
  return Array.isArray(value);
}
