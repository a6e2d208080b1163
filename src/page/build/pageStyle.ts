import type { Plugin } from 'vite';
import { colourProperties, type Theme } from '../../report/palette.ts';
import { PAGE_COLOURS } from '../pageColours.ts';

/** Comment in `base.css` that the colours take the place of. */
const PLACE = '/* colours */';

const properties = (theme: Theme) =>
  [
    `color-scheme:${theme}`,
    colourProperties(theme),
    ...Object.entries(PAGE_COLOURS).map(([name, pair]) => `--${name}:${pair[theme]}`),
  ].join(';');

/** Custom properties of all colours: light, dark where the system is dark, and each where it was chosen. */
export function colourStyle(): string {
  return [
    `:root{${properties('light')}}`,
    `@media (prefers-color-scheme:dark){:root:not([data-theme=light]){${properties('dark')}}}`,
    `:root[data-theme=dark]{${properties('dark')}}`,
    // Paper is white, whatever the screen was: three times :root, to weigh more than any of the above.
    `@media print{:root:root:root{${properties('light')}}}`,
  ].join('\n');
}

/** Puts the colours of the figures into the page's style sheet, so that they are written once. */
export function pageStyle(): Plugin {
  return {
    name: 'page-style',
    enforce: 'pre',
    transform: {
      filter: { id: /\/base\.css(\?|$)/ },
      handler(code) {
        if (!code.includes(PLACE)) return this.error(`base.css has no place for the colours: ${PLACE}`);
        return { code: code.replace(PLACE, colourStyle()), map: null };
      },
    },
  };
}
