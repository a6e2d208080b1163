import type { DesignLetter, Nameplate } from '../scenario/nameplate.ts';
import { codeLetterCurrent } from './codeLetters.ts';
import { E_VARIANT_FACTOR, iecLockedRotorCurrent } from './iecLockedRotorPower.ts';
import { iecTorques } from './iecTorques.ts';
import { assumed, derived, given, type Known, limit } from './known.ts';
import { nameplateError, short } from './nameplateError.ts';
import { nemaLockedRotorCurrent } from './nemaLockedRotorCurrent.ts';
import { nemaTorques } from './nemaTorques.ts';
import { TOLERANCE } from './tolerances.ts';

/** What the motor does at standstill and at its strongest. */
export interface Starting {
  /** A r.m.s. */
  readonly lockedRotorCurrent: Known;
  /** Multiples of rated torque. */
  readonly lockedRotorTorque: Known;
  readonly breakdownTorque: Known;
}

/** Multiples of rated current between which a locked-rotor current is believed. */
const CURRENT_RANGE = { least: 1.5, most: 15 } as const;
/** Where no table has the motor: common practice, no source. */
const TYPICAL = { currentMultiple: 6, lockedRotorTorque: 1.8, breakdownTorque: 2.5 } as const;
/** Design A has no highest locked-rotor current; assumed against that of design B: common practice, no source. */
const DESIGN_A_FACTOR = 1.2;
const SPREAD = [0.8, 1.25] as const;
/**
 * What catalogues usually state against the limits: NEMA motors nearly use up their current, IEC motors less; torques of
 * designs C and D lie near their minima, others well above. Common practice, no source.
 */
const USUAL = {
  nemaCurrent: 0.95,
  iecCurrent: 0.8,
  iecCurrentSmall: 0.67,
  eVariantCurrent: 0.73,
  torque: 1.35,
  torqueC: 1.1,
  torqueD: 1,
} as const;
/** W; up to this power IEC motors stay further below their limit. */
const IEC_SMALL = 6300;

/**
 * Completes locked-rotor current and torque and breakdown torque.
 *
 * @param nameplate checked
 * @param letter design, given or assumed
 * @param ratedCurrent A
 * @throws ScenarioError when the locked-rotor current is not that of a motor of this size
 */
export function completeStarting(nameplate: Nameplate, letter: DesignLetter, ratedCurrent: number): Starting {
  const lockedRotorCurrent = currentOf(nameplate, letter, ratedCurrent);
  const multiple = lockedRotorCurrent.value / ratedCurrent;
  if (!(multiple >= CURRENT_RANGE.least && multiple <= CURRENT_RANGE.most))
    throw nameplateError(
      'lockedRotorCurrent',
      `${short(lockedRotorCurrent.value)} A`,
      `is ${short(multiple)} times the rated current of ${short(ratedCurrent)} A`,
      `${CURRENT_RANGE.least} to ${CURRENT_RANGE.most} times; a code letter counts kVA per hp of rated power`,
    );
  return { lockedRotorCurrent, ...torquesOf(nameplate, letter) };
}

function currentOf(nameplate: Nameplate, letter: DesignLetter, ratedCurrent: number): Known {
  const { power, lineVoltage, lockedRotorCurrent: stated } = nameplate;
  if (stated?.kind === 'amperes') return given(stated.amperes, TOLERANCE.lockedRotorCurrent);
  if (stated?.kind === 'multiple') return given(stated.ofRated * ratedCurrent, TOLERANCE.lockedRotorCurrent);
  if (stated?.kind === 'codeLetter') {
    const { middle, range, source } = codeLetterCurrent(stated.letter, power, lineVoltage);
    return derived(middle, source, range);
  }
  if (letter === 'A' || letter === 'B' || letter === 'C' || letter === 'D') {
    const most = nemaLockedRotorCurrent(power, lineVoltage);
    if (most !== null && letter === 'A')
      return assumed(
        most * DESIGN_A_FACTOR,
        'design A has no highest current; 1.2 times that of design B',
        SPREAD,
      );
    if (most !== null) return limit('most', most, `NEMA MG 1, 12.35, design ${letter}`, USUAL.nemaCurrent);
  } else {
    const most = iecLockedRotorCurrent(power, lineVoltage);
    if (most !== null && letter.includes('E'))
      return {
        ...limit('most', most * E_VARIANT_FACTOR, '', USUAL.eVariantCurrent),
        origin: 'assumed',
        source: `assumed: at most ${E_VARIANT_FACTOR} times what IEC 60034-12 allows design ${letter[0]}`,
      };
    const usual = power <= IEC_SMALL ? USUAL.iecCurrentSmall : USUAL.iecCurrent;
    if (most !== null) return limit('most', most, `IEC 60034-12, design ${letter}`, usual);
  }
  return assumed(TYPICAL.currentMultiple * ratedCurrent, 'typical multiple of the rated current', SPREAD);
}

function torquesOf(nameplate: Nameplate, letter: DesignLetter): Omit<Starting, 'lockedRotorCurrent'> {
  const { power, poles } = nameplate;
  const nema = letter === 'A' || letter === 'B' || letter === 'C' || letter === 'D';
  const minima = nema ? nemaTorques(letter, power, poles) : iecTorques(letter[0] as 'N' | 'H', power, poles);
  const table = nema ? `NEMA MG 1, 12.38 and 12.39, design ${letter}` : `IEC 60034-12, design ${letter}`;
  const usual = letter === 'C' ? USUAL.torqueC : letter === 'D' ? USUAL.torqueD : USUAL.torque;
  const fill = (kind: 'lockedRotor' | 'breakdown', typical: number): Known =>
    minima === null
      ? assumed(typical, `typical; no table for this design, power and number of poles`, SPREAD)
      : limit('least', minima[kind], table, usual);
  const lockedRotorTorque =
    nameplate.lockedRotorTorque === null
      ? atMost(fill('lockedRotor', TYPICAL.lockedRotorTorque), nameplate.breakdownTorque)
      : given(nameplate.lockedRotorTorque, TOLERANCE.lockedRotorTorque);
  const breakdownTorque =
    nameplate.breakdownTorque === null
      ? atLeast(fill('breakdown', TYPICAL.breakdownTorque), lockedRotorTorque.value)
      : nameplate.breakdownTorque < lockedRotorTorque.value
        ? derived(
            lockedRotorTorque.value,
            'the largest torque is that of the locked rotor',
            TOLERANCE.lockedRotorTorque,
          )
        : given(nameplate.breakdownTorque, TOLERANCE.breakdownTorque);
  return { lockedRotorTorque, breakdownTorque };
}

function atMost(filled: Known, breakdown: number | null): Known {
  return breakdown === null || filled.value <= breakdown
    ? filled
    : assumed(breakdown, 'not above the stated breakdown torque', SPREAD);
}

function atLeast(filled: Known, lockedRotor: number): Known {
  return filled.value >= lockedRotor
    ? filled
    : assumed(lockedRotor, 'not below the locked-rotor torque', SPREAD);
}
