import type { StatedInductance } from './circuitInput.ts';
import { derivedValue, type Note } from './origin.ts';
import type { MachineData } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import { stated } from './stated.ts';

/** Turns stated impedances of a machine into those of the equivalent star. */
export interface Referral {
  /** Ω as stated → Ω of the equivalent star. */
  readonly ohms: (path: string, value: number) => number;
  /** As stated → H of the equivalent star. */
  readonly henrys: (path: string, value: StatedInductance) => number;
}

/**
 * Says how the impedances of a machine are meant: reactances become inductances at rated frequency, a delta winding
 * becomes its equivalent star (every impedance divided by three).
 *
 * @param input machine as stated, in SI
 * @param omega rad/s, at which reactances hold
 * @param note takes down what was derived
 */
export function referralOf(input: ScenarioInput['machine'], omega: number, note: Note): Referral {
  const dividesByThree = input.connection === 'delta' && input.circuitGivenAs !== 'equivalentStar';
  return {
    ohms: (path, value) => {
      if (!dividesByThree) return value;
      note(`equivalentStar.${path}`, derivedValue(value / 3, 'ohm'), 'derived');
      return value / 3;
    },
    henrys: (path, { kind, value }) => {
      const henry = kind === 'inductance' ? value : value / omega;
      const star = dividesByThree ? henry / 3 : henry;
      if (dividesByThree || kind === 'reactance')
        note(`equivalentStar.${path}`, derivedValue(star * 1e3, 'mH'), 'derived');
      return star;
    },
  };
}

/** The circuit of a machine that is given by one. */
export type StatedCircuit = Pick<MachineData, 'Rs' | 'Lls' | 'Lm' | 'cages' | 'inertia' | 'rated'>;

/**
 * Fills in a circuit that is given as one.
 *
 * @param input machine as stated, in SI
 * @param referral from `referralOf`
 */
export function resolveCircuit(input: ScenarioInput['machine'], { ohms, henrys }: Referral): StatedCircuit {
  return {
    Rs: ohms('statorResistance', stated(input.statorResistance, 'statorResistance')),
    Lls: henrys('statorLeakage', stated(input.statorLeakage, 'statorLeakage')),
    Lm: henrys('magnetising', stated(input.magnetising, 'magnetising')),
    cages: stated(input.cages, 'cages').map((cage, index) => ({
      Rr: ohms(`cages.${index}.resistance`, cage.resistance),
      Llr: henrys(`cages.${index}.leakage`, cage.leakage),
    })),
    inertia: stated(input.inertia, 'inertia'),
    rated: ratedOf(input),
  };
}

/** Rated output as stated; null for what is not. */
export function ratedOf(input: ScenarioInput['machine']): MachineData['rated'] {
  const { power, speed, current, torque } = input.rated ?? {};
  return { current: current ?? null, torque: torque ?? null, power: power ?? null, speed: speed ?? null };
}
