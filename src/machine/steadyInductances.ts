import { add, type Complex, divide, magnitude, multiply } from '../numeric/complex.ts';
import { hypotenuse } from '../numeric/hypotenuse.ts';
import { locate } from '../numeric/locate.ts';
import type { Circuit } from './circuit.ts';
import type { LeakageLaw } from './leakageLaw.ts';

/** Inductances of one balanced steady state: flux linkage over current of every branch, H unless said otherwise. */
export interface SteadyInductances {
  /** Stator leakage with everything in series. */
  readonly L: number;
  /** Stator leakage of the machine alone. */
  readonly Lls: number;
  readonly Lm: number;
  /** 1/H, as in the circuit. */
  readonly gr: readonly number[];
}

/**
 * Inductances with which the linear circuit is the steady state of the saturable one. In balanced steady state every
 * vector has a constant magnitude, and a path that saturates alike in all directions acts exactly as a linear inductance
 * λ(i)/i at the crest i.
 *
 * One unknown is left, the crest ψ of the main flux: it gives the cage currents (each from |Rr/s + jω·λ(i)/i|·i = ω·ψ),
 * the main current, and by the stator's equation the supply voltage, which rises with ψ. The root is bracketed, so that
 * there is no iteration to diverge, at any slip and current.
 *
 * @param crest crest of the source's phase voltage, V
 * @param omega rad/s
 * @param slip against the supply's sequence
 */
export function steadyInductances(
  circuit: Circuit,
  crest: number,
  omega: number,
  slip: number,
): SteadyInductances {
  const { saturation } = circuit;
  const linear = { L: circuit.L, Lls: circuit.Lls, Lm: circuit.Lm, gr: circuit.gr };
  if (saturation === null) return linear;

  const cages = (flux: number) =>
    circuit.gr.map((g, j) => {
      const law = saturation.cages[j];
      return law ? cageSecant(law, circuit.Rr[j]!, g, slip * omega, slip * omega * flux) : g;
    });

  function at(flux: number): SteadyInductances & { readonly voltage: number } {
    const gr = cages(flux);
    const Lm = saturation?.main ? flux / saturation.main.current(flux) : circuit.Lm;
    const air = airGapAdmittance(circuit, { Lm, gr }, omega, slip);
    const airGapVoltage: Complex = [0, omega * flux];
    const current = multiply(airGapVoltage, air);
    const i = magnitude(current);
    const law = saturation?.stator;
    const L = law ? law.flux(i) / i : circuit.L;
    const voltage = magnitude(add(airGapVoltage, multiply([circuit.R, omega * L], current)));
    return { L, Lls: L - circuit.seriesL, Lm, gr, voltage };
  }

  const surplus = (flux: number) => at(flux).voltage - crest;
  let high = crest / omega;
  while (surplus(high) < 0) high *= 2;
  const flux = locate(surplus, 0, high, -crest, surplus(high), Number.EPSILON * high);
  const { L, Lls, Lm, gr } = at(flux);
  return { L, Lls: saturation.stator ? Lls : circuit.Lls, Lm, gr };
}

/** Admittance of main branch, cages and core in parallel, 1/Ω, seen from the supply's frequency. */
export function airGapAdmittance(
  circuit: Circuit,
  { Lm, gr }: Pick<SteadyInductances, 'Lm' | 'gr'>,
  omega: number,
  slip: number,
): Complex {
  let air: Complex = [0, -1 / (omega * Lm)];
  for (const [j, g] of gr.entries()) air = add(air, cageAdmittance(circuit.Rr[j]!, g, omega, slip));
  if (circuit.core) air = add(air, coreAdmittance(circuit.core, omega));
  return air;
}

/** 1/(Rr/s + jωLlr) = s/(Rr + jsωLlr), finite at s = 0; `g` = 1/Llr. */
export function cageAdmittance(Rr: number, g: number, omega: number, slip: number): Complex {
  return divide([slip, 0], [Rr, (slip * omega) / g]);
}

/** 1/(R + jωL) of the winding at rest, whatever the slip. */
export function coreAdmittance(core: { readonly R: number; readonly L: number }, omega: number): Complex {
  return divide([1, 0], [core.R, omega * core.L]);
}

/** i/λ(i) of a cage where |Rr + jω_slip·λ(i)/i|·i equals the voltage induced at slip frequency. */
function cageSecant(law: LeakageLaw, Rr: number, g: number, slipOmega: number, induced: number): number {
  const voltage = Math.abs(induced);
  if (voltage === 0) return g;
  const surplus = (i: number) => hypotenuse(Rr * i, slipOmega * law.flux(i)) - voltage;
  const low = voltage / hypotenuse(Rr, slipOmega / g);
  const high = voltage / Rr;
  const atLow = surplus(low);
  // At small slip the two bounds and the root are the same number.
  const i =
    atLow < 0 && surplus(high) > 0
      ? locate(surplus, low, high, atLow, surplus(high), Number.EPSILON * low)
      : low;
  return i / law.flux(i);
}
