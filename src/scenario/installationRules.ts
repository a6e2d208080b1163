import type { RuleContext } from './rule.ts';

/** Star while plugging needs a delta. */
export function installationRules({ input, isStated, report }: RuleContext): void {
  const connection = isStated('machine', 'connection') ? input.machine?.connection : 'star';
  const needsDelta = [
    ['plugConnection', 'the machine is in star as it is'],
    ['windingOrder', 'it tells how the windings of a delta lie'],
  ] as const;
  for (const [key, reason] of needsDelta)
    if (isStated('starter', key) && connection === 'star') {
      const message = `has no meaning without a delta machine: ${reason}`;
      const expected = '`connection: delta` under machine, or this key left out';
      report(['starter', key], 'conflict', message, expected);
    }
}
