import type { DesignLetter, Nameplate } from '../scenario/nameplate.ts';
import type { Origin } from '../scenario/origin.ts';
import { checkNameplate } from './checkNameplate.ts';
import { completeRating, type Rating } from './completeRating.ts';
import { completeStarting, type Starting } from './completeStarting.ts';
import { assumed, given, type Known } from './known.ts';
import { typicalRotorInertia } from './typicalMotor.ts';

/** A nameplate on which nothing is missing any more. */
export interface CompleteNameplate extends Rating, Starting {
  readonly connection: 'star' | 'delta';
  /** Rated shaft power, W. */
  readonly power: number;
  /** Line-to-line, V r.m.s. */
  readonly lineVoltage: number;
  /** Hz */
  readonly frequency: number;
  readonly poles: number;
  /** rad/s */
  readonly synchronousSpeed: number;
  readonly design: { readonly letter: DesignLetter; readonly origin: 'given' | 'assumed' };
  /** Rotor inertia, kg·m². */
  readonly inertia: Known;
}

/** Frequency from which an unmarked motor is taken for one after NEMA, Hz. */
const NEMA_FROM = 55;
/** Catalogue inertias against the formula: common practice, no source. */
const INERTIA_SPREAD = [0.6, 1.6] as const;

/**
 * Fills in everything a nameplate does not say: from the tables of its standard, from typical values or by computation, and
 * says for each where it comes from.
 *
 * @throws ScenarioError when the nameplate contradicts itself
 */
export function completeNameplate(nameplate: Nameplate): CompleteNameplate {
  checkNameplate(nameplate);
  const { connection, power, lineVoltage, frequency, poles } = nameplate;
  const letter = nameplate.design ?? (frequency >= NEMA_FROM ? 'B' : 'N');
  const rating = completeRating(nameplate, letter === 'D');
  return {
    connection,
    power,
    lineVoltage,
    frequency,
    poles,
    synchronousSpeed: (4 * Math.PI * frequency) / poles,
    design: { letter, origin: nameplate.design === null ? 'assumed' : 'given' },
    ...rating,
    ...completeStarting(nameplate, letter, rating.current.value),
    inertia:
      nameplate.inertia === null
        ? assumed(
            typicalRotorInertia(power, frequency, poles),
            'typical rotor of this power and number of poles',
            INERTIA_SPREAD,
          )
        : given(nameplate.inertia, [0.9, 1.1]),
  };
}

/** What stands before a value that the machine keeps and need not reach. */
const LIMIT_WORDS = { value: '', least: 'at least ', most: 'at most ' } as const;

/** Takes down every quantity that did not stand on the nameplate, by its path within the machine section. */
export function notesOf(complete: CompleteNameplate): readonly Origin[] {
  const { design, synchronousSpeed, slip } = complete;
  const rpm = ((1 - slip.value) * synchronousSpeed * 30) / Math.PI;
  const entries: readonly (readonly [string, Known, string, number])[] = [
    ['speed', slip, 'rpm', rpm],
    ['current', complete.current, 'A', complete.current.value],
    ['powerFactor', complete.powerFactor, '', complete.powerFactor.value],
    ['efficiency', complete.efficiency, '', complete.efficiency.value],
    ['lockedRotorCurrent', complete.lockedRotorCurrent, 'A', complete.lockedRotorCurrent.value],
    ['lockedRotorTorque', complete.lockedRotorTorque, 'times rated torque', complete.lockedRotorTorque.value],
    ['breakdownTorque', complete.breakdownTorque, 'times rated torque', complete.breakdownTorque.value],
  ];
  const notes: Origin[] = entries
    .filter(([, known]) => known.origin !== 'given')
    .map(([key, known, unit, value]) => ({
      path: `nameplate.${key}`,
      value: `${LIMIT_WORDS[known.kind]}${Number(value.toPrecision(4))} ${unit}`.trim(),
      origin: known.origin,
      source: known.source.replace(/: at (least|most)$/, ''),
    }));
  if (design.origin === 'assumed')
    notes.unshift({
      path: 'nameplate.design',
      value: design.letter,
      origin: 'assumed',
      source: 'assumed: the usual design at this frequency',
    });
  if (complete.inertia.origin !== 'given')
    notes.push({
      path: 'inertia',
      value: `${Number(complete.inertia.value.toPrecision(4))} kg m^2`,
      origin: complete.inertia.origin,
      source: complete.inertia.source,
    });
  return notes;
}
