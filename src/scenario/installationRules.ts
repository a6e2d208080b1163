import type { RuleContext } from './rule.ts';

/** Star while plugging needs a delta; a pole cannot be welded and dead. */
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

  const seen = new Map<string, string>();
  for (const [index, fault] of (input.starter?.faults ?? []).entries()) {
    if (fault?.kind === undefined) continue;
    const place =
      'pole' in fault
        ? `pole ${fault.pole} of ${fault.contactor}`
        : 'phase' in fault
          ? `phase ${fault.phase}`
          : '';
    if (place === '') continue;
    const before = seen.get(place);
    seen.set(place, fault.kind);
    if (before === undefined) continue;
    const message =
      before === fault.kind
        ? `repeats the fault of ${place}`
        : `contradicts the ${before}: ${place} cannot be both`;
    report(['starter', 'faults', index], 'conflict', message, 'one fault in one place');
  }
}
