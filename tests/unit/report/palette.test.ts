import { describe, expect, it } from 'vitest';
import { QUANTITY_COLOURS, SURFACE } from '../../../src/report/palette.ts';
import { contrast } from '../../support/contrast.ts';

describe('colours', () => {
  it('the contrast formula gives 21 for black on white', () => {
    expect(contrast('#000000', '#FFFFFF')).toBeCloseTo(21, 10);
  });

  for (const theme of ['light', 'dark'] as const) {
    it.each(Object.keys(QUANTITY_COLOURS))(
      `a line of %s has at least 3 : 1 on the ${theme} ground and band`,
      (name) => {
        const colour = QUANTITY_COLOURS[name as keyof typeof QUANTITY_COLOURS][theme];
        expect(contrast(colour, SURFACE.ground[theme])).toBeGreaterThanOrEqual(3);
        expect(contrast(colour, SURFACE.band[theme])).toBeGreaterThanOrEqual(3);
      },
    );

    it.each(['ink', 'muted'] as const)(
      `text in %s has at least 4.5 : 1 on the ${theme} ground and band`,
      (name) => {
        expect(contrast(SURFACE[name][theme], SURFACE.ground[theme])).toBeGreaterThanOrEqual(4.5);
        expect(contrast(SURFACE[name][theme], SURFACE.band[theme])).toBeGreaterThanOrEqual(4.5);
      },
    );

    it(`the zero line has at least 3 : 1 on the ${theme} ground`, () => {
      expect(contrast(SURFACE.zero[theme], SURFACE.ground[theme])).toBeGreaterThanOrEqual(3);
    });
  }
});
