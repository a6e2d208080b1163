import type { StatedInductance } from './machineInput.ts';
import { derivedValue, type Note } from './origin.ts';
import type { MachineData } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/**
 * Fills in the machine: reactances become inductances at rated frequency, a delta winding becomes its equivalent star
 * (every impedance divided by three).
 *
 * @param input machine as stated, in SI
 * @param supplyFrequency Hz; at which reactances hold where no rated frequency is stated
 * @param note takes down what was not given
 */
export function resolveMachine(
  input: ScenarioInput['machine'],
  supplyFrequency: number,
  note: Note,
): MachineData {
  if (input.connection === undefined) note('connection', 'star', 'default');
  const connection = input.connection ?? 'star';
  const dividesByThree = connection === 'delta' && input.circuitGivenAs !== 'equivalentStar';
  if (connection === 'delta' && input.circuitGivenAs === undefined)
    note('circuitGivenAs', 'winding', 'default');
  if (input.ratedFrequency === undefined) note('ratedFrequency', `${supplyFrequency} Hz`, 'default');
  const omega = 2 * Math.PI * (input.ratedFrequency ?? supplyFrequency);

  const ohms = (path: string, value: number): number => {
    if (!dividesByThree) return value;
    note(`equivalentStar.${path}`, derivedValue(value / 3, 'ohm'), 'derived');
    return value / 3;
  };
  const henrys = (path: string, stated: StatedInductance): number => {
    const henry = stated.kind === 'inductance' ? stated.henry : stated.ohm / omega;
    const star = dividesByThree ? henry / 3 : henry;
    const where = dividesByThree ? `equivalentStar.${path}` : path;
    if (dividesByThree || stated.kind === 'reactance') note(where, derivedValue(star * 1e3, 'mH'), 'derived');
    return star;
  };
  const { power, speed, current, torque } = input.rated;
  return {
    connection,
    polePairs: input.poles / 2,
    Rs: ohms('statorResistance', input.statorResistance),
    Lls: henrys('statorLeakage', input.statorLeakage),
    Lm: henrys('magnetising', input.magnetising),
    cages: input.cages.map((cage, index) => ({
      Rr: ohms(`cages.${index}.resistance`, cage.resistance),
      Llr: henrys(`cages.${index}.leakage`, cage.leakage),
    })),
    inertia: input.inertia,
    rated: {
      current: current ?? null,
      torque: torque ?? null,
      power: power ?? null,
      speed: speed ?? null,
    },
  };
}
