import type { MachineData, Supply } from '../scenario/scenario.ts';

/**
 * The machine with the source impedance in series, as the constants its equations use.
 *
 * A series impedance ahead of the stator adds to Rs and Lls and changes nothing else: the air-gap torque does not
 * see it, because Im(i*·i) = 0. Inverse inductances stand here because flux linkages are the states.
 */
export interface Circuit {
  readonly polePairs: number;
  /** Stator plus source resistance, Ω. */
  readonly R: number;
  /** Stator resistance alone, Ω. */
  readonly Rs: number;
  readonly sourceR: number;
  /** Stator leakage plus source inductance, H. */
  readonly L: number;
  readonly Lls: number;
  readonly sourceL: number;
  readonly Lm: number;
  /** 1 / L, 1/H */
  readonly gs: number;
  /** 1 / Lm, 1/H */
  readonly gm: number;
  readonly cageCount: number;
  /** Rotor resistances, Ω; one entry per cage. */
  readonly Rr: readonly number[];
  /** 1 / Llr, 1/H; one entry per cage. */
  readonly gr: readonly number[];
  /** gm + Σ gr, 1/H: what the main flux sees with the stator open. */
  readonly gOpen: number;
  /** gs + gm + Σ gr, 1/H: what it sees with the stator connected. */
  readonly gAll: number;
  /** Transient inductance L + 1/gOpen seen from the source with the rotor fluxes held, H. */
  readonly Ltransient: number;
}

/** Collects the circuit constants of a machine on its supply. */
export function circuitOf(
  machine: MachineData,
  supply: Pick<Supply, 'sourceResistance' | 'sourceInductance'>,
): Circuit {
  const L = machine.Lls + supply.sourceInductance;
  const gr = machine.cages.map((cage) => 1 / cage.Llr);
  const gOpen = 1 / machine.Lm + gr.reduce((sum, g) => sum + g, 0);
  return {
    polePairs: machine.polePairs,
    R: machine.Rs + supply.sourceResistance,
    Rs: machine.Rs,
    sourceR: supply.sourceResistance,
    L,
    Lls: machine.Lls,
    sourceL: supply.sourceInductance,
    Lm: machine.Lm,
    gs: 1 / L,
    gm: 1 / machine.Lm,
    cageCount: machine.cages.length,
    Rr: machine.cages.map((cage) => cage.Rr),
    gr,
    gOpen,
    gAll: 1 / L + gOpen,
    Ltransient: L + 1 / gOpen,
  };
}
