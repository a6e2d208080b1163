import { bounds } from './bounds.ts';
import { assumedCableTemperature, assumedNetworkXOverR, assumedXOverR } from './defaults.ts';
import { eitherQuantity } from './eitherQuantity.ts';
import { packFault } from './fault.ts';
import { group, pureNumber, quantity, word } from './field.ts';
import { ratio } from './ratioField.ts';

/** The transformer as a person writes it. */
export const transformerInput = group(
  'The transformer that feeds the starter, instead of a short-circuit power or a source impedance; its secondary voltage at no load is lineVoltage',
  {
    rating: quantity(bounds.transformerRating, { about: 'Rated apparent power', example: '630 kVA' }),
    impedance: ratio(
      'fraction',
      { min: 0.001, max: 0.5 },
      {
        about: 'Short-circuit impedance (impedance voltage)',
        example: '6 %',
      },
    ),
    xOverR: pureNumber(
      { min: 0, max: 1000 },
      {
        about: 'Reactance over resistance; or give copperLoss',
        example: `${assumedXOverR}`,
        default: `${assumedXOverR}`,
      },
    ).optional(),
    copperLoss: quantity(bounds.copperLoss, {
      about: 'Load loss at rated current, from which the resistance follows; or give xOverR',
      example: '6.5 kW',
    }).optional(),
    networkShortCircuitPower: quantity(bounds.shortCircuitPower, {
      about: 'Short-circuit power of the network above the transformer; infinite if left out',
      example: '250 MVA',
    }).optional(),
    networkXOverR: pureNumber(
      { min: 0, max: 1000 },
      {
        about: 'Reactance over resistance of that network, with networkShortCircuitPower only',
        example: `${assumedNetworkXOverR}`,
        default: `${assumedNetworkXOverR}`,
      },
    ).optional(),
  },
).superRefine((transformer, context) => {
  const { rating, impedance, copperLoss } = transformer;
  const conflict = (path: string, message: string, expected: string) =>
    context.addIssue({ code: 'custom', path: [path], message: packFault('conflict', message, expected) });
  if (copperLoss !== undefined && transformer.xOverR !== undefined)
    conflict('copperLoss', 'stands beside xOverR; each fixes the other', 'one of the two');
  else if (copperLoss !== undefined && copperLoss > impedance * rating) {
    const most = Number(((impedance * rating) / 1000).toPrecision(4));
    conflict(
      'copperLoss',
      'is more than impedance × rating: the resistance alone would exceed the whole impedance',
      `at most ${most} kW`,
    );
  }
  if (transformer.networkXOverR !== undefined && transformer.networkShortCircuitPower === undefined)
    conflict(
      'networkXOverR',
      'has no meaning without networkShortCircuitPower',
      'networkShortCircuitPower beside it, or this key left out',
    );
});

/** The cable as a person writes it. */
export const cableInput = group('The cable between source and motor, per conductor', {
  length: quantity(bounds.cableLength, {
    about: 'Length one way; needed with values per length and with a cross-section',
    example: '80 m',
  }).optional(),
  resistance: eitherQuantity(
    { kind: 'perLength', bounds: bounds.impedancePerLength },
    { kind: 'whole', bounds: bounds.cableImpedance },
    'a resistance per length or of the whole conductor',
    { about: 'Resistance at the temperature in service; or give crossSection', example: '0.524 ohm/km' },
  ).optional(),
  reactance: eitherQuantity(
    { kind: 'perLength', bounds: bounds.impedancePerLength },
    { kind: 'whole', bounds: bounds.cableImpedance },
    'a reactance per length or of the whole conductor',
    {
      about: 'Reactance at the supply frequency; or give inductance',
      example: '0.08 ohm/km',
      default: '0.08 ohm/km',
    },
  ).optional(),
  inductance: quantity(bounds.sourceInductance, {
    about: 'Inductance of the whole conductor, instead of a reactance',
    example: '0.02 mH',
  }).optional(),
  crossSection: quantity(bounds.crossSection, {
    about: 'Cross-section of one conductor, instead of a resistance',
    example: '16 mm^2',
  }).optional(),
  conductor: word(['copper', 'aluminium'], {
    about: 'Conductor metal, with crossSection only',
    default: 'copper',
  }).optional(),
  temperature: quantity(bounds.temperature, {
    about:
      'Temperature of the conductor, with crossSection only; a cold cable lets the highest currents through',
    example: '70 degC',
    default: `${assumedCableTemperature} degC`,
  }).optional(),
}).superRefine((cable, context) => {
  const conflict = (path: string[], message: string, expected: string) =>
    context.addIssue({ code: 'custom', path, message: packFault('conflict', message, expected) });
  if ((cable.resistance === undefined) === (cable.crossSection === undefined))
    conflict(
      [],
      cable.resistance === undefined
        ? 'states neither a resistance nor a cross-section'
        : 'states a resistance and a cross-section as well',
      'one of the two',
    );
  if (cable.reactance !== undefined && cable.inductance !== undefined)
    conflict(['inductance'], 'stands beside reactance, which says the same', 'one of the two');
  const byLength = [cable.resistance?.kind, cable.reactance?.kind].includes('perLength');
  const assumedByLength = cable.reactance === undefined && cable.inductance === undefined;
  if (cable.length === undefined && (byLength || assumedByLength || cable.crossSection !== undefined))
    conflict([], 'states no length', 'a length, or the resistance and inductance of the whole conductor');
  for (const key of ['conductor', 'temperature'] as const)
    if (cable[key] !== undefined && cable.crossSection === undefined)
      conflict([key], 'has no meaning without crossSection', 'crossSection, or this key left out');
});
