import type { Demands } from './demands.ts';
import type { ProtectionData } from './judgementData.ts';
import { protectionImpossibilities } from './protectionChecks.ts';
import type { StarterData } from './scenario.ts';

const CLASSES = ['5', '10A', '10', '20', '30'];

/** Takes down what is impossible about protective devices. */
export function assertProtection(protection: ProtectionData, starter: StarterData, demands: Demands): void {
  const { group, report, word, conflict } = demands;
  if (typeof protection !== 'object' || protection === null) {
    report('protection', undefined, 'a group of values');
    return;
  }
  const { overload, curves } = protection;
  if (overload !== null) {
    group('protection.overload', overload, { setting: 'positive' });
    word('protection.overload.tripClass', overload?.tripClass, CLASSES);
  }
  if (!Array.isArray(curves)) report('protection.curves', undefined, 'a list of curves');
  for (const [j, { name, kind, points }] of (curves ?? []).entries()) {
    const path = `protection.curves.${j}`;
    if (typeof name !== 'string' || name === '') report(`${path}.name`, name, 'one line of text');
    word(`${path}.kind`, kind, ['breaker', 'fuse']);
    if ((points?.length ?? 0) < 2) report(`${path}.points`, 'too few points', 'two points or more');
    for (const [i, point] of (points ?? []).entries())
      group(`${path}.points.${i}`, point, { current: 'positive', time: 'positive' });
  }
  const controlHasOverload = (starter?.control?.overload ?? null) !== null;
  const view = { hasOverload: overload !== null, curves: curves ?? [] };
  for (const { path, message, expected } of protectionImpossibilities(view, controlHasOverload))
    conflict(path.join('.'), message, expected);
}
