import type { RuleContext } from './rule.ts';

/** The source is described in one way only. */
export function supplyRules({ isStated, report }: RuleContext): void {
  const power = isStated('supply', 'shortCircuitPower');
  if (isStated('supply', 'transformer'))
    for (const key of ['shortCircuitPower', 'sourceResistance', 'sourceReactance', 'sourceInductance']) {
      if (!isStated('supply', key)) continue;
      const message = 'stands beside transformer, which describes the same source';
      const network =
        key === 'shortCircuitPower'
          ? ' (the network above it: `networkShortCircuitPower` under transformer)'
          : '';
      report(['supply', key], 'conflict', message, `one of the two${network}`);
    }
  for (const key of ['sourceResistance', 'sourceReactance', 'sourceInductance']) {
    if (!power || !isStated('supply', key)) continue;
    const message = 'stands beside shortCircuitPower, which describes the same source';
    report(['supply', key], 'conflict', message, 'either shortCircuitPower or a source impedance');
  }
  if (isStated('supply', 'sourceReactance') && isStated('supply', 'sourceInductance')) {
    const message = 'stands beside sourceReactance, which says the same';
    report(['supply', 'sourceInductance'], 'conflict', message, 'one of the two');
  }
  if (isStated('supply', 'xOverR') && !power) {
    const message = 'has no meaning without shortCircuitPower';
    report(['supply', 'xOverR'], 'conflict', message, 'shortCircuitPower beside it, or this key left out');
  }
}
