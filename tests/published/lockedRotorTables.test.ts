/**
 * Sources: NEMA MG 1, 12.35.1, highest locked-rotor current of designs B, C and D at 230 V, 60 Hz, as printed on a page of a
 * repairers' handbook; the kVA/hp beside it computed from the table, with the letters of 10.37.2. IEC 60034-12, highest
 * locked-rotor apparent power of designs N and H: from memory, medium confidence.
 */
import { describe, expect, it } from 'vitest';
import { iecLockedRotorCurrent } from '../../src/estimate/iecLockedRotorPower.ts';
import { nemaLockedRotorCurrent } from '../../src/estimate/nemaLockedRotorCurrent.ts';
import { codeLetterOf, kvaPerHorsepower } from '../../src/scenario/codeLetter.ts';
import { publishedSource } from '../support/published.ts';
import { expectWithin } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'lockedRotorTables',
  'NEMA MG 1, 12.35.1, highest locked-rotor current of designs B, C and D at 230 V, 60 Hz, as printed on a page of a repairers’ ' +
    'handbook, and kVA per horsepower computed from it; IEC 60034-12, highest locked-rotor apparent power of designs N and H. The ' +
    'program holds both tables itself: their rows show a faithful copy. Of 47 comparisons the 24 that are not here are further ' +
    'currents and powers of the two tables, which agree as exactly.',
  'looked up',
);
/** Ratings of the table that the guide shows. */
const LISTED = [0.5, 5, 10, 15, 50, 100, 500];

/** Held against the printed current; a selection is listed. */
function expectAmperes(current: number, amperes: number, hp: number): void {
  const quantity = `highest locked-rotor current, NEMA, ${hp} hp at 230 V`;
  if (LISTED.includes(hp)) compare(current, amperes, { relative: 1e-9 }, quantity, 'A');
  else expectWithin(current, amperes, { relative: 1e-9 }, quantity);
}

const HP = 745.699872;
/** [hp, A at 230 V, kVA/hp, letter] */
const PRINTED = [
  [0.5, 20, 15.935, 'R'],
  [0.75, 25, 13.279, 'P'],
  [1, 30, 11.951, 'N'],
  [1.5, 40, 10.623, 'M'],
  [2, 50, 9.959, 'L'],
  [3, 64, 8.499, 'K'],
  [5, 92, 7.33, 'J'],
  [7.5, 127, 6.746, 'H'],
  [10, 162, 6.454, 'H'],
  [15, 232, 6.161, 'G'],
] as const;

describe('NEMA locked-rotor currents', () => {
  it.each(PRINTED)('%f hp take at most %f A at 230 V: %f kVA/hp, letter %s', (hp, amperes, kva, letter) => {
    const current = nemaLockedRotorCurrent(hp * HP, 230)!;
    expectAmperes(current, amperes, hp);
    const perHp = kvaPerHorsepower(230, current, hp * HP);
    // Half a unit of the last digit.
    const quantity = `locked-rotor apparent power per horsepower, NEMA, ${hp} hp`;
    compare(perHp, kva, { absolute: 5.01e-4 }, quantity, 'kVA/hp', 'computed independently');
    expect(codeLetterOf(perHp)).toBe(letter);
  });

  it.each([
    [20, 290],
    [25, 365],
    [30, 435],
    [40, 580],
    [50, 725],
    [60, 870],
    [75, 1085],
    [100, 1450],
    [125, 1815],
    [150, 2170],
    [200, 2900],
    [250, 3650],
    [300, 4400],
    [350, 5100],
    [400, 5800],
    [450, 6500],
    [500, 7250],
  ])('%f hp take at most %f A at 230 V: letter G', (hp, amperes) => {
    const current = nemaLockedRotorCurrent(hp * HP, 230)!;
    expectAmperes(current, amperes, hp);
    const perHp = kvaPerHorsepower(230, current, hp * HP);
    // Range of the table from 20 hp on, computed: 5.754 to 5.843; 350 hp lie at 5.805.
    expect(perHp).toBeGreaterThan(5.75);
    expect(perHp).toBeLessThan(5.85);
    expect(codeLetterOf(perHp)).toBe('G');
  });

  it('are inversely proportional to the voltage', () => {
    const at = (voltage: number) => nemaLockedRotorCurrent(50 * HP, voltage);
    const quantity = 'highest locked-rotor current, NEMA, 50 hp at';
    compare(at(460), 362.5, { relative: 1e-9 }, `${quantity} 460 V, half the table’s`, 'A', 'exact');
    compare(at(575), 290, { relative: 1e-9 }, `${quantity} 575 V, 0.4 times the table’s`, 'A', 'exact');
  });

  it('lie on a straight line between two ratings, and nowhere outside the table', () => {
    expectWithin(nemaLockedRotorCurrent(17.5 * HP, 230), 261, { relative: 1e-9 }, 'middle of 15 and 20 hp');
    expect(nemaLockedRotorCurrent(0.4 * HP, 230)).toBe(null);
    expect(nemaLockedRotorCurrent(501 * HP, 230)).toBe(null);
  });
});

describe('IEC locked-rotor apparent power', () => {
  it.each([
    [5.5, 13],
    [6.3, 13],
    [7.5, 12],
    [25, 12],
    [30, 11],
    [100, 11],
    [110, 10],
    [1600, 10],
  ])('%f kW take at most %f kVA/kW', (kilowatts, ratio) => {
    const current = iecLockedRotorCurrent(kilowatts * 1000, 400)!;
    const perKilowatt = (Math.sqrt(3) * 400 * current) / 1000 / kilowatts;
    const quantity = `highest locked-rotor apparent power per rated power, IEC, up to ${kilowatts} kW`;
    // The upper ends of the four ranges are listed.
    if (![6.3, 25, 100, 1600].includes(kilowatts))
      expectWithin(perKilowatt, ratio, { relative: 1e-12 }, quantity);
    else compare(perKilowatt, ratio, { relative: 1e-12 }, quantity, 'kVA/kW', 'from memory');
  });

  it('ends at 1600 kW', () => {
    expect(iecLockedRotorCurrent(1.7e6, 400)).toBe(null);
  });
});

listedInGuide();
