import type { Theme } from '../report/palette.ts';

/** A colour that says what something is about, beside its word: never alone. */
export type PageColour = 'accent' | 'alarm' | 'good' | 'doubtful';

/**
 * Colours of controls and of what is judged, for text on the ground and band of both themes (at least 4.5 : 1; a test
 * computes it). Hues of the Okabe–Ito set, darkened or lightened as in the palette of the figures.
 */
export const PAGE_COLOURS: Readonly<Record<PageColour, Readonly<Record<Theme, string>>>> = {
  accent: { light: '#005A8C', dark: '#6CC1EE' },
  alarm: { light: '#A83C00', dark: '#FF8A4C' },
  good: { light: '#00694D', dark: '#2CC79A' },
  doubtful: { light: '#7A5200', dark: '#E9AE2E' },
};
