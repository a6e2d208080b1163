import { hypotenuse } from '../../numeric/hypotenuse.ts';
import { squared } from '../../numeric/raised.ts';
import { resolveSupply } from '../resolveSupply.ts';
import type { Draft } from './draft.ts';
import { isSame, writeRounded } from './writeRounded.ts';

/** VA; from here on a short-circuit power is written in MVA. */
const MEGAVOLTAMPERE = 1e6;

/** Largest ratio that a file may state. */
const MOST_X_OVER_R = 1000;

/** What else describes the source. */
const OTHER_WAYS = ['sourceResistance', 'sourceReactance', 'sourceInductance', 'transformer'] as const;

/**
 * Gives the source another short-circuit power; what described its impedance before makes way, and its ratio of reactance to
 * resistance stays as far as it was stated. A cable stays in any case, and the power that the source has changes nothing.
 *
 * @param power VA; null: an infinitely strong source
 */
export function adjustSource(draft: Draft, power: number | null): string | null {
  if (isStanding(draft, power)) return null;
  const ratio = statedRatio(draft);
  for (const key of OTHER_WAYS) draft.remove('supply', key);
  if (power === null) {
    draft.remove('supply', 'shortCircuitPower');
    draft.remove('supply', 'xOverR');
    return null;
  }
  const unit = power < MEGAVOLTAMPERE ? 'kVA' : 'MVA';
  const before = draft.at('supply', 'shortCircuitPower');
  draft.set(['supply', 'shortCircuitPower'], writeRounded(power, 'apparentPower', before, unit));
  if (ratio !== null && draft.at('supply', 'xOverR') === undefined) draft.set(['supply', 'xOverR'], ratio);
  return null;
}

function isStanding({ input }: Draft, power: number | null): boolean {
  const { lineVoltage, frequency, sourceResistance, sourceInductance } = resolveSupply(
    input.supply,
    () => {},
  );
  const impedance = hypotenuse(sourceResistance, 2 * Math.PI * frequency * sourceInductance);
  if (power === null || impedance === 0) return power === null && impedance === 0;
  return isSame(squared(lineVoltage) / impedance, power);
}

/** Reactance over resistance, to three digits; null where the text does not say both. */
function statedRatio({ input }: Draft): number | null {
  const { supply } = input;
  if (supply.transformer?.xOverR !== undefined) return supply.transformer.xOverR;
  const reactance =
    supply.sourceReactance ??
    (supply.sourceInductance === undefined
      ? undefined
      : 2 * Math.PI * supply.frequency * supply.sourceInductance);
  if (reactance === undefined || supply.sourceResistance === undefined) return null;
  if (reactance === 0 && supply.sourceResistance === 0) return null;
  return Number(Math.min(MOST_X_OVER_R, reactance / supply.sourceResistance).toPrecision(3));
}
