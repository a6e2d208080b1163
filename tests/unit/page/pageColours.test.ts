import { describe, expect, it } from 'vitest';
import { colourStyle } from '../../../src/page/build/pageStyle.ts';
import { PAGE_COLOURS, type PageColour } from '../../../src/page/pageColours.ts';
import { QUANTITY_COLOURS, SURFACE } from '../../../src/report/palette.ts';
import { contrast } from '../../support/contrast.ts';

describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
  it.each(Object.keys(PAGE_COLOURS) as PageColour[])(
    'text in %s has at least 4.5 : 1 on ground and band',
    (name) => {
      expect(contrast(PAGE_COLOURS[name][theme], SURFACE.ground[theme])).toBeGreaterThanOrEqual(4.5);
      expect(contrast(PAGE_COLOURS[name][theme], SURFACE.band[theme])).toBeGreaterThanOrEqual(4.5);
    },
  );

  it('every colour of the figures and of the page is a property of the style sheet', () => {
    const style = colourStyle();
    const tables = { ...SURFACE, ...QUANTITY_COLOURS, ...PAGE_COLOURS };
    for (const [name, pair] of Object.entries(tables)) expect(style).toContain(`--${name}:${pair[theme]}`);
  });
});
