import { bounds } from './bounds.ts';
import { assumedXOverR } from './defaults.ts';
import { cableInput, transformerInput } from './feederInput.ts';
import { group, onlyCovered, pureNumber, quantity } from './field.ts';

/** The supply as a person writes it. */
export const supplyInput = group('The three-phase supply', {
  kind: onlyCovered(
    'mains',
    'an electronic starter or converter between supply and motor behaves quite differently while plugging',
  ).optional(),
  lineVoltage: quantity(bounds.lineVoltage, { about: 'Line-to-line voltage, r.m.s.', example: '400 V' }),
  frequency: quantity(bounds.frequency, { about: 'Supply frequency', example: '50 Hz' }),
  angle: quantity(bounds.angle, {
    about: 'Supply angle on phase A at t = 0, counted from the crest',
    example: '0 deg',
    default: '0 deg',
  }).optional(),
  shortCircuitPower: quantity(bounds.shortCircuitPower, {
    about: 'Three-phase short-circuit power at the starter; instead of a source resistance and reactance',
    example: '5 MVA',
  }).optional(),
  xOverR: pureNumber(
    { min: 0, max: 1000 },
    {
      about: 'Reactance over resistance of the source, with shortCircuitPower only',
      example: `${assumedXOverR}`,
      default: `${assumedXOverR}`,
    },
  ).optional(),
  sourceResistance: quantity(bounds.sourceImpedance, {
    about: 'Source resistance per phase',
    example: '10 mohm',
    default: '0 ohm',
  }).optional(),
  sourceReactance: quantity(bounds.sourceImpedance, {
    about: 'Source reactance per phase at the supply frequency; or give sourceInductance',
    example: '30 mohm',
  }).optional(),
  sourceInductance: quantity(bounds.sourceInductance, {
    about: 'Source inductance per phase; or give sourceReactance',
    example: '0.1 mH',
    default: '0 H',
  }).optional(),
  transformer: transformerInput.optional(),
  cable: cableInput.optional(),
});
