import type { CircuitPart } from './nameplate.ts';
import { derivedValue, type Note } from './origin.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/** Metals of windings and cages. */
export type Conductor = 'copper' | 'aluminium';

/** °C below zero at which the resistance would vanish along its straight line. Source: IEC 60034-1. */
const zeroResistance: Readonly<Record<Conductor, number>> = { copper: 235, aluminium: 225 };

/**
 * Resistance at one temperature over that at another: (k + θ₂)/(k + θ₁).
 *
 * @param conductor its metal
 * @param from θ₁, °C
 * @param to θ₂, °C
 * @remarks Source: IEC 60034-1.
 */
export function resistanceRatio(conductor: Conductor, from: number, to: number): number {
  const k = zeroResistance[conductor];
  return (k + to) / (k + from);
}

/**
 * Converts the resistances of a circuit to the temperatures of this run.
 *
 * @param temperature as stated, °C; undefined: the resistances stay as they are
 * @param part the circuit as found
 * @param note takes down what was not given
 */
export function withTemperature(
  temperature: ScenarioInput['machine']['temperature'],
  part: CircuitPart,
  note: Note,
): CircuitPart {
  if (temperature === undefined) return part;
  const { resistancesAt, winding } = temperature;
  const here = (key: string, value: string, kind: 'assumed' | 'derived') =>
    note(`temperature.${key}`, value, kind);
  if (temperature.rotor === undefined) here('rotor', `${derivedValue(winding, 'degC')}`, 'assumed');
  if (temperature.statorConductor === undefined) here('statorConductor', 'copper', 'assumed');
  if (temperature.rotorConductor === undefined) here('rotorConductor', 'aluminium', 'assumed');
  const stator = resistanceRatio(temperature.statorConductor ?? 'copper', resistancesAt, winding);
  const rotor = resistanceRatio(
    temperature.rotorConductor ?? 'aluminium',
    resistancesAt,
    temperature.rotor ?? winding,
  );
  const Rs = part.Rs * stator;
  const cages = part.cages.map((cage) => ({ ...cage, Rr: cage.Rr * rotor }));
  here('statorResistance', derivedValue(Rs, 'ohm'), 'derived');
  for (const [index, { Rr }] of cages.entries())
    here(`cages.${index}.resistance`, derivedValue(Rr, 'ohm'), 'derived');
  return { ...part, Rs, cages };
}
