import { describe, expect, it } from 'vitest';
import { QUANTITY_COLOURS, SURFACE } from '../../../src/report/palette.ts';

/** Contrast ratio of two colours. Source: WCAG 2.2, definitions of relative luminance and contrast ratio. */
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

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
