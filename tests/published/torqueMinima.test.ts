/**
 * Sources: NEMA MG 1, 12.38.1 and 12.39.1, designs A and B (3 to 10 and 20 hp at 2 and 4 poles as printed on an engineering
 * reference page, the rest from memory, high confidence); IEC 60034-12, design N (1.6 to 16 kW at 2 and 4 poles as printed on
 * the same page, the rest from memory, medium confidence); ranges of the designs from a handbook page after MG 10, table 2-1.
 */
import { describe, expect, it } from 'vitest';
import { iecTorques } from '../../src/estimate/iecTorques.ts';
import { nemaTorques } from '../../src/estimate/nemaTorques.ts';
import { publishedSource } from '../support/published.ts';

const { compare, listedInGuide } = publishedSource(
  'torqueMinima',
  'NEMA MG 1, 12.38.1 and 12.39.1, and IEC 60034-12: smallest torques of each design. The tables are ' +
    'data of the program, so that this shows that they stand in it as in the source; of 291 numbers ' +
    'compared, all of them equal, a selection is shown.',
  'from memory',
);

const EXACT = { relative: 1e-12 };
const HP = 745.699872;
const POLES = [2, 4, 6, 8] as const;

/** Those of the tables that the guide shows, hp and kW. */
const SHOWN_HP: readonly number[] = [1, 5, 20, 100, 250];
const SHOWN_KW: readonly number[] = [2.2, 11, 55, 315];
/** Printed on the page that was read, at 2 and 4 poles, hp. */
const LOOKED_UP_HP: readonly number[] = [3, 5, 7.5, 10, 20];

/** [hp, locked-rotor at 2, 4, 6, 8 poles, breakdown at 2, 4, 6, 8 poles], per cent; 0: not in the table. */
const DESIGN_AB = [
  [1, [0, 275, 170, 135], [0, 300, 265, 215]],
  [1.5, [175, 250, 165, 130], [250, 280, 250, 210]],
  [2, [170, 235, 160, 130], [240, 270, 240, 210]],
  [3, [160, 215, 155, 130], [230, 250, 230, 205]],
  [5, [150, 185, 150, 130], [215, 225, 215, 205]],
  [7.5, [140, 175, 150, 125], [200, 215, 205, 200]],
  [10, [135, 165, 150, 125], [200, 200, 200, 200]],
  [15, [130, 160, 140, 125], [200, 200, 200, 200]],
  [20, [130, 150, 135, 125], [200, 200, 200, 200]],
  [50, [120, 140, 135, 125], [200, 200, 200, 200]],
  [100, [105, 125, 125, 125], [200, 200, 200, 200]],
  [200, [100, 100, 120, 120], [200, 200, 200, 200]],
  [250, [70, 80, 100, 100], [175, 175, 175, 175]],
] as const;

describe('NEMA torque minima', () => {
  it.each(DESIGN_AB)('of %f hp at 2, 4, 6 and 8 poles', (hp, lockedRotor, breakdown) => {
    for (const [index, poles] of POLES.entries()) {
      const expected =
        lockedRotor[index] === 0
          ? null
          : { lockedRotor: lockedRotor[index]! / 100, breakdown: breakdown[index]! / 100 };
      expect(nemaTorques('B', hp * HP, poles)).toEqual(expected);
      expect(nemaTorques('A', hp * HP, poles)).toEqual(expected);
      if (poles !== 4 || !SHOWN_HP.includes(hp)) continue;
      const found = nemaTorques('B', hp * HP, poles)!;
      const rating = `design B, ${hp} hp, 4 poles, share of rated`;
      const certainty = LOOKED_UP_HP.includes(hp) ? 'looked up' : 'from memory';
      compare(
        100 * found.lockedRotor,
        lockedRotor[index]!,
        EXACT,
        `locked-rotor torque, ${rating}`,
        '%',
        certainty,
      );
      compare(100 * found.breakdown, breakdown[index]!, EXACT, `breakdown torque, ${rating}`, '%', certainty);
    }
  });

  it('of a metric rating are those of its counterpart in hp: 30 kW as 40 hp, 7.5 kW as 10 hp', () => {
    expect(nemaTorques('B', 30e3, 4)).toEqual(nemaTorques('B', 40 * HP, 4));
    expect(nemaTorques('B', 7.5e3, 4)).toEqual(nemaTorques('B', 10 * HP, 4));
  });

  it('of a power between two ratings are those of the next larger one', () => {
    expect(nemaTorques('B', 12 * HP, 4)).toEqual(nemaTorques('B', 15 * HP, 4));
  });

  it('of design C lie in the printed range: locked rotor 200 to 285 %, breakdown 190 to 225 %', () => {
    for (const hp of [1, 2, 3, 5, 7.5, 10, 15, 20, 50, 200])
      for (const poles of [4, 6, 8]) {
        const { lockedRotor, breakdown } = nemaTorques('C', hp * HP, poles)!;
        expect(lockedRotor).toBeGreaterThanOrEqual(2);
        expect(lockedRotor).toBeLessThanOrEqual(2.85);
        expect(breakdown).toBeGreaterThanOrEqual(1.9);
        expect(breakdown).toBeLessThanOrEqual(2.25);
      }
  });

  it('of design D are 275 % at 4, 6 and 8 poles up to 150 hp', () => {
    for (const poles of [4, 6, 8]) expect(nemaTorques('D', 150 * HP, poles)?.lockedRotor).toBe(2.75);
    expect(nemaTorques('D', 20 * HP, 2)).toBe(null);
    expect(nemaTorques('D', 200 * HP, 4)).toBe(null);
  });

  it('end with the tables', () => {
    expect(nemaTorques('B', 600 * HP, 4)).toBe(null);
    expect(nemaTorques('B', 10 * HP, 10)).toBe(null);
  });
});

/** [kW, locked-rotor, pull-up, breakdown at 2 poles, the same at 4 poles] */
const DESIGN_N = [
  [2.2, [1.7, 1.1, 2.0], [1.8, 1.2, 2.0]],
  [3, [1.6, 1.1, 2.0], [1.7, 1.2, 2.0]],
  [5.5, [1.5, 1.0, 2.0], [1.6, 1.1, 2.0]],
  [7.5, [1.5, 1.0, 2.0], [1.6, 1.1, 2.0]],
  [11, [1.4, 1.0, 2.0], [1.5, 1.1, 2.0]],
  [22, [1.3, 0.9, 1.9], [1.4, 1.0, 1.9]],
  [37, [1.2, 0.9, 1.9], [1.3, 1.0, 1.9]],
  [55, [1.1, 0.8, 1.8], [1.2, 0.9, 1.8]],
  [90, [1.0, 0.7, 1.8], [1.1, 0.8, 1.8]],
  [132, [0.9, 0.7, 1.7], [1.0, 0.8, 1.7]],
  [200, [0.8, 0.6, 1.7], [0.9, 0.7, 1.7]],
  [315, [0.75, 0.6, 1.6], [0.75, 0.6, 1.6]],
  [500, [0.65, 0.5, 1.6], [0.65, 0.5, 1.6]],
] as const;

describe('IEC torque minima', () => {
  it.each(DESIGN_N)('of design N, %f kW', (kilowatts, two, four) => {
    for (const [poles, [lockedRotor, pullUp, breakdown]] of [
      [2, two],
      [4, four],
    ] as const) {
      const found = iecTorques('N', kilowatts * 1000, poles)!;
      expect(found).toEqual({ lockedRotor, pullUp, breakdown });
      if (poles !== 4 || !SHOWN_KW.includes(kilowatts)) continue;
      const rating = `design N, ${kilowatts} kW, 4 poles, multiple of rated`;
      const certainty = kilowatts <= 16 ? 'looked up' : 'from memory';
      compare(found.lockedRotor, lockedRotor, EXACT, `locked-rotor torque, ${rating}`, '', certainty);
      compare(found.pullUp, pullUp, EXACT, `pull-up torque, ${rating}`, '', certainty);
      compare(found.breakdown, breakdown, EXACT, `breakdown torque, ${rating}`, '', certainty);
    }
  });

  it('of design H are 1.5 times those of N, at least 2.0, 1.4 and 1.9', () => {
    // 11 kW, 4 poles: 1.5·1.5 = 2.25, 1.5·1.1 = 1.65, breakdown 2.0 as N.
    const H11 = iecTorques('H', 11e3, 4)!;
    const rating = 'design H, 11 kW, 4 poles, multiple of rated';
    // Half a unit of the twelfth decimal.
    compare(H11.lockedRotor, 2.25, { absolute: 5e-13 }, `locked-rotor torque, ${rating}`, '');
    compare(H11.pullUp, 1.65, { absolute: 5e-13 }, `pull-up torque, ${rating}`, '');
    compare(H11.breakdown, 2, { absolute: 0 }, `breakdown torque, ${rating}`, '');
    // 132 kW, 4 poles: 1.5·1.0 and 1.5·0.8 are below the floors, and so is 1.7.
    expect(iecTorques('H', 132e3, 4)).toEqual({ lockedRotor: 2, pullUp: 1.4, breakdown: 1.9 });
    expect(iecTorques('H', 11e3, 2)).toBe(null);
    expect(iecTorques('H', 200e3, 4)).toBe(null);
  });

  it('begin at 0.4 kW and end at 630 kW and 8 poles', () => {
    expect(iecTorques('N', 370, 4)).toBe(null);
    expect(iecTorques('N', 710e3, 4)).toBe(null);
    expect(iecTorques('N', 11e3, 10)).toBe(null);
  });
});

listedInGuide();
