import { bounds } from './bounds.ts';
import { circuitKeys, ratedInput } from './circuitInput.ts';
import { group, onlyCovered, pureNumber, quantity, word } from './field.ts';
import {
  ironLossInput,
  mechanicalLossInput,
  rotorResistorsInput,
  temperatureInput,
} from './machineElementsInput.ts';
import { nameplateInput } from './nameplateInput.ts';
import { saturationInput } from './saturationInput.ts';
import { testsInput } from './testsInput.ts';

const poles = pureNumber(
  { min: 2, max: 48, even: true },
  { about: 'Number of poles; with a nameplate that states the speed it may be left out', example: '4' },
);
const inertia = quantity(bounds.inertia, { about: 'Rotor inertia', example: '1.662 kg m^2' });

/** Keys that must stand where the machine is given as a circuit. */
export const keysOfCircuit = { poles, ...circuitKeys, inertia, rated: ratedInput };
/** Keys that must stand beside tests, which say nothing of them. */
export const keysBesideTests = { poles, rated: ratedInput };
/** Key that must stand where a nameplate states no speed. */
export const keysBesideNameplate = { poles };

/** Which keys belong together, for editors: zod has no word for it, and the rules between keys say the same. */
const ways = [
  { required: Object.keys(keysOfCircuit) },
  { required: ['nameplate'] },
  { required: ['tests', ...Object.keys(keysBesideTests)] },
];

/** The machine as a person writes it. */
export const machineInput = group(
  'The induction motor: its circuit per phase, or a nameplate, or test readings; and what else is known of it',
  {
    poles: poles.optional(),
    connection: word(['star', 'delta'], {
      about: 'How the stator winding is connected',
      default: 'star',
    }).optional(),
    nameplate: nameplateInput.optional(),
    tests: testsInput.optional(),
    circuitGivenAs: word(['winding', 'equivalentStar'], {
      about:
        'What the circuit values describe: the winding phase as wound (for delta they are divided by three), or already the equivalent star',
      default: 'winding',
    }).optional(),
    ratedFrequency: quantity(bounds.frequency, {
      about: 'Frequency at which the reactances hold; the supply frequency if left out',
      example: '50 Hz',
    }).optional(),
    statorResistance: circuitKeys.statorResistance.optional(),
    statorLeakage: circuitKeys.statorLeakage.optional(),
    magnetising: circuitKeys.magnetising.optional(),
    cages: circuitKeys.cages.optional(),
    inertia: inertia.optional(),
    rated: ratedInput.optional(),
    saturation: saturationInput.optional(),
    ironLoss: ironLossInput.optional(),
    mechanicalLoss: mechanicalLossInput.optional(),
    temperature: temperatureInput.optional(),
    rotorResistors: rotorResistorsInput.optional(),
    powerFactorCapacitors: onlyCovered(
      'none',
      'capacitors at the motor terminals sustain the residual voltage (self-excitation) and make plugging far worse',
    ).optional(),
  },
).meta({ anyOf: ways });
