/**
 * Mixed-duty endurance of contactors by the share of AC-4 operations (rated current in both categories the same), and life against
 * the rated current chosen, from a manufacturer's catalogue (the list of check values, section "Contact wear"). Linear damage gives
 * the sintered row to the digits printed and the copper row to 20 % (its table is coarser).
 */
import { describe, expect, it } from 'vitest';
import { LIFE_EXPONENT, lifeAtBreaking } from '../../src/assess/wear/contactLife.ts';
import { mixedLife } from '../../src/assess/wear/mixedLife.ts';
import { BARE_CONTACTOR } from '../support/contactors.ts';
import { publishedSource } from '../support/published.ts';
import { expectWithin, type Tolerance } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'contactLife',
  'A manufacturer’s catalogue of contactors: life of contacts when a share of the operations is inching or plugging (category AC-4) ' +
    'and the rest breaks the rated current (AC-3), and life against the current in use. The mixtures are computed by linear damage ' +
    'from the lives at 0 % and 100 % (the catalogue’s own and so no rows); the catalogue prints them to one or two digits, and for ' +
    'copper ours are lower in every row. Life against current is a fit with one exponent, 1.4, to the very rows shown; ours are ' +
    'up to 6 % higher at up to three times the rated current, lower beyond. The generic curve takes its two ends from this catalogue: those rows show a faithful copy.',
  'looked up',
);

/** Share of AC-4; millions of operations as printed, with the digits after the point that are printed. */
const SINTERED = [
  [0, 1.2, 1],
  [0.05, 0.4, 1],
  [0.1, 0.25, 2],
  [0.2, 0.14, 2],
  [0.4, 0.07, 2],
  [0.6, 0.05, 2],
  [0.8, 0.04, 2],
  [1, 0.03, 2],
] as const;
const COPPER = [
  [0, 1],
  [0.05, 0.2],
  [0.1, 0.1],
  [0.2, 0.05],
  [0.4, 0.03],
  [0.6, 0.02],
  [0.8, 0.015],
  [1, 0.01],
] as const;
const mixed = (share: number, ac3: number, ac4: number) =>
  mixedLife([
    { share: 1 - share, life: ac3 },
    { share, life: ac4 },
  ]) ?? Number.NaN;

/** A life in millions of operations; the pure duties are what the others are computed from: no rows of the guide. */
function expectLife(
  ours: number,
  printed: number,
  tolerance: Tolerance,
  share: number,
  contacts: string,
): void {
  const quantity = `life of ${contacts} contacts with ${Number((100 * share).toPrecision(3))} % of AC-4`;
  if (share === 0 || share === 1) expectWithin(ours, printed, tolerance, quantity);
  else compare(ours, printed, tolerance, quantity, 'million operations');
}

describe('the table of mixed duty', () => {
  it.each(SINTERED)(
    'sintered contacts, share %f: %f million operations after rounding',
    (share, printed, digits) => {
      // 0.2449 is printed as 0.25: half a unit of its last digit, and the rounding of the two ends that it is computed from
      const half = 0.5 * 10 ** -digits;
      const life = mixed(share, 1.2, 0.03);
      expectLife(life, printed, { absolute: half + 1e-3 }, share, 'sintered');
    },
  );

  it.each(COPPER)('copper contacts, share %f: %f million operations within a fifth', (share, printed) => {
    expectLife(mixed(share, 1, 0.01), printed, { relative: 0.2 }, share, 'copper');
  });

  it('is not met by averaging lives: damage adds up, not life', () => {
    const averaged = 0.9 * 1.2 + 0.1 * 0.03;
    expect(averaged).toBeGreaterThan(4 * mixed(0.1, 1.2, 0.03));
  });
});

/** Rated current over the current in use, and the multiple of life printed. */
const MULTIPLES = [
  [1, 1],
  [1.5, 1.7],
  [2, 2.5],
  [2.5, 3.5],
  [3, 4.5],
  [4, 7],
  [5, 10],
] as const;

describe('life against current within a category', () => {
  it.each(MULTIPLES)('%f times more rated current than is used: %f times the life', (ratio, printed) => {
    // One exponent through all of them is a fit: 6 % at worst
    const life = (current: number) => lifeAtBreaking(BARE_CONTACTOR, current, 68, 400).operations;
    const multiple = life(10 / ratio) / life(10);
    const quantity = `life at 1/${ratio} of the rated current over life at the rated current`;
    if (ratio === 1) expectWithin(multiple, printed, { relative: 1e-12 }, quantity);
    else compare(multiple, printed, { relative: 0.06 }, quantity, '');
  });

  it('has the exponent that fits the logarithms best, to the digits stated', () => {
    // Every curve goes through the rated current, where the multiple is 1: no constant is free
    const sum = (of: (ratio: number, life: number) => number) =>
      MULTIPLES.reduce((all, [ratio, life]) => all + of(Math.log(ratio), Math.log(life)), 0);
    const fitted = sum((ratio, life) => ratio * life) / sum((ratio) => ratio * ratio);
    expectWithin(LIFE_EXPONENT, fitted, { absolute: 0.005 }, 'exponent');
  });
});

describe('the generic curve', () => {
  it('has the lives of sintered contacts in both categories', () => {
    // AC-3: rated current against 0.17 of the voltage; AC-4: six times it against all of it
    const ac3 = lifeAtBreaking(BARE_CONTACTOR, 10, 0.17 * 400, 400);
    const ac4 = lifeAtBreaking(BARE_CONTACTOR, 60, 400, 400);
    const curve = 'life on the generic curve';
    const unit = 'million operations';
    compare(ac3.operations / 1e6, 1.2, { relative: 1e-9 }, `${curve} at the rated current in AC-3`, unit);
    compare(
      ac4.operations / 1e6,
      0.03,
      { relative: 1e-9 },
      `${curve} at six times the rated current in AC-4`,
      unit,
    );
    expectWithin(ac3.operations / ac4.operations, 40, { relative: 1e-9 }, 'ratio');
    expect(ac3.generic).toBe(true);
    expect(ac3.origin).toContain('generic');
  });
});

listedInGuide();
