import type { MachineData, Supply } from '../scenario/scenario.ts';
import { type Inserted, NOTHING_INSERTED } from './inserted.ts';
import { type Saturation, saturationOf } from './saturation.ts';

/**
 * The machine with everything in series with its stator, as the constants its equations use. Inductances are those of the
 * unsaturated circuit.
 *
 * A series impedance ahead of the stator adds to Rs and Lls and changes nothing else: the air-gap torque does not
 * see it, because Im(i*·i) = 0. Inverse inductances stand here because flux linkages are the states.
 */
export interface Circuit {
  readonly polePairs: number;
  /** Stator resistance and everything in series with it, Ω. */
  readonly R: number;
  /** Stator resistance alone, Ω. */
  readonly Rs: number;
  readonly sourceR: number;
  readonly cableR: number;
  /** Resistors in the lines, Ω. */
  readonly lineR: number;
  /** Between ideal source and motor terminals: source, cable and line resistors, Ω. */
  readonly seriesR: number;
  /** Stator leakage and everything in series with it, H. */
  readonly L: number;
  readonly Lls: number;
  readonly sourceL: number;
  readonly cableL: number;
  /** Between ideal source and motor terminals: source and cable, H. */
  readonly seriesL: number;
  readonly Lm: number;
  /** 1 / L, 1/H */
  readonly gs: number;
  /** 1 / Lm, 1/H */
  readonly gm: number;
  readonly cageCount: number;
  /** Rotor resistances, external resistors included, Ω; one entry per cage. */
  readonly Rr: readonly number[];
  /** Part of the first rotor resistance that is outside the machine, Ω. */
  readonly externalRr: number;
  /** 1 / Llr, 1/H; one entry per cage. */
  readonly gr: readonly number[];
  /** gm + Σ gr (and the core's), 1/H: what the main flux sees with the stator open. */
  readonly gOpen: number;
  /** gs + gOpen, 1/H: what it sees with the stator connected. */
  readonly gAll: number;
  /** Transient inductance L + 1/gOpen seen from the source with the rotor fluxes held, H. */
  readonly Ltransient: number;
  /** Iron loss: short-circuited winding at rest, Ω, 1/H, H; null: none. */
  readonly core: { readonly R: number; readonly g: number; readonly L: number } | null;
  /** Saturable branches; null: all are linear. */
  readonly saturation: Saturation | null;
}

/** The parts of a supply that stand in the circuit. */
export type SeriesSupply = Pick<Supply, 'sourceResistance' | 'sourceInductance' | 'cable'>;

/** Winding impedance in star over that of the equivalent star of the same windings in delta. */
const STAR_OVER_DELTA = 3;

/**
 * Collects the circuit constants of a machine on its supply. An element that is absent adds an exact zero or multiplies by
 * an exact one.
 *
 * @param inserted what stands in the circuit besides; `star` makes every impedance of the machine and its rotor resistors
 * three times that of the equivalent star of the delta
 */
export function circuitOf(
  machine: MachineData,
  supply: SeriesSupply,
  inserted: Inserted = NOTHING_INSERTED,
): Circuit {
  const scale = inserted.star ? STAR_OVER_DELTA : 1;
  const sourceR = supply.sourceResistance;
  const sourceL = supply.sourceInductance;
  const cableR = supply.cable?.resistance ?? 0;
  const cableL = supply.cable?.inductance ?? 0;
  const lineR = inserted.lineResistance;
  const Rs = scale * machine.Rs;
  const Lls = scale * machine.Lls;
  const Lm = scale * machine.Lm;
  const externalRr = scale * inserted.rotorResistance;
  const seriesL = sourceL + cableL;
  const L = Lls + sourceL + cableL;
  const core = machine.core
    ? { R: scale * machine.core.R, g: 1 / (scale * machine.core.L), L: scale * machine.core.L }
    : null;
  const gr = machine.cages.map((cage) => 1 / (scale * cage.Llr));
  const gOpen = 1 / Lm + gr.reduce((sum, g) => sum + g, 0) + (core?.g ?? 0);
  return {
    polePairs: machine.polePairs,
    R: Rs + sourceR + cableR + lineR,
    Rs,
    sourceR,
    cableR,
    lineR,
    seriesR: sourceR + cableR + lineR,
    L,
    Lls,
    sourceL,
    cableL,
    seriesL,
    Lm,
    gs: 1 / L,
    gm: 1 / Lm,
    cageCount: machine.cages.length,
    Rr: machine.cages.map((cage, j) => scale * cage.Rr + (j === 0 ? externalRr : 0)),
    externalRr,
    gr,
    gOpen,
    gAll: 1 / L + gOpen,
    Ltransient: L + 1 / gOpen,
    core,
    saturation: saturationOf(machine, scale, seriesL),
  };
}
