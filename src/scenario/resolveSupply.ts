import { hypotenuse } from '../numeric/hypotenuse.ts';
import { squared } from '../numeric/raised.ts';
import { assumedXOverR } from './defaults.ts';
import { derivedValue, type Note, within } from './origin.ts';
import { resolveCable, transformerImpedance } from './resolveFeeder.ts';
import type { Supply } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/**
 * Fills in the supply. A transformer and the network above it add up to the source impedance. A short-circuit power S gives |Z| = V²/S, split by X/R.
 *
 * @param input supply as stated, in SI
 * @param note takes down what was not given
 */
export function resolveSupply(input: ScenarioInput['supply'], note: Note): Supply {
  const { lineVoltage, frequency } = input;
  if (input.angle === undefined) note('angle', '0 deg', 'default');
  const { cable, transformer } = input;
  const source = {
    lineVoltage,
    frequency,
    angle: input.angle ?? 0,
    ...(cable === undefined ? {} : { cable: resolveCable(cable, frequency, within('cable', note)) }),
  };
  const omega = 2 * Math.PI * frequency;
  if (transformer !== undefined) {
    const sum = transformerImpedance(transformer, lineVoltage, within('transformer', note));
    const sourceInductance = sum.reactance / omega;
    note('sourceResistance', derivedValue(sum.resistance, 'ohm'), 'derived');
    note('sourceInductance', derivedValue(sourceInductance * 1e3, 'mH'), 'derived');
    return { ...source, sourceResistance: sum.resistance, sourceInductance };
  }
  if (input.shortCircuitPower !== undefined) {
    if (input.xOverR === undefined) note('xOverR', String(assumedXOverR), 'assumed');
    const ratio = input.xOverR ?? assumedXOverR;
    const impedance = squared(lineVoltage) / input.shortCircuitPower;
    const sourceResistance = impedance / hypotenuse(1, ratio);
    const sourceInductance = (sourceResistance * ratio) / omega;
    note('sourceResistance', derivedValue(sourceResistance, 'ohm'), 'derived');
    note('sourceInductance', derivedValue(sourceInductance * 1e3, 'mH'), 'derived');
    return { ...source, sourceResistance, sourceInductance };
  }
  if (input.sourceResistance === undefined) note('sourceResistance', '0 ohm', 'default');
  const sourceResistance = input.sourceResistance ?? 0;
  if (input.sourceReactance !== undefined) {
    const sourceInductance = input.sourceReactance / omega;
    note('sourceInductance', derivedValue(sourceInductance * 1e3, 'mH'), 'derived');
    return { ...source, sourceResistance, sourceInductance };
  }
  if (input.sourceInductance === undefined) note('sourceInductance', '0 H', 'default');
  return { ...source, sourceResistance, sourceInductance: input.sourceInductance ?? 0 };
}
