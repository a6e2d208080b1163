/** What a colour stands for. The same quantity has the same colour in every figure. */
export type Quantity =
  | 'currentA'
  | 'currentB'
  | 'currentC'
  | 'torque'
  | 'steadyTorque'
  | 'loadTorque'
  | 'couplingTorque'
  | 'speed'
  | 'voltage'
  | 'contacts'
  | 'electrical'
  | 'heat'
  | 'stored'
  | 'work';

/** Colour scheme of a page or drawing. */
export type Theme = 'light' | 'dark';

interface Pair {
  readonly light: string;
  readonly dark: string;
}

/**
 * The colours of the Okabe–Ito set (M. Okabe and K. Ito, "Color Universal Design", 2008), which stay apart with every
 * common kind of colour blindness. Sky blue, yellow, orange and reddish purple are too pale on a light ground and are
 * darkened there in the same hue until a line has a contrast of at least 3 : 1; a test computes it.
 */
export const QUANTITY_COLOURS: Readonly<Record<Quantity, Pair>> = {
  currentA: { light: '#0072B2', dark: '#56B4E9' },
  currentB: { light: '#D55E00', dark: '#D55E00' },
  currentC: { light: '#008A65', dark: '#00B585' },
  torque: { light: '#000000', dark: '#FFFFFF' },
  steadyTorque: { light: '#2680B8', dark: '#56B4E9' },
  loadTorque: { light: '#A66F00', dark: '#E69F00' },
  couplingTorque: { light: '#008A65', dark: '#00B585' },
  speed: { light: '#A8508A', dark: '#CC79A7' },
  voltage: { light: '#7D7300', dark: '#F0E442' },
  contacts: { light: '#30363C', dark: '#D5D9DD' },
  electrical: { light: '#0072B2', dark: '#56B4E9' },
  heat: { light: '#C25500', dark: '#E69F00' },
  stored: { light: '#A8508A', dark: '#CC79A7' },
  work: { light: '#008A65', dark: '#00B585' },
};

/** Grounds, text and rules of both themes. Text keeps at least 4.5 : 1 on the ground; a test computes it. */
export const SURFACE = {
  ground: { light: '#FFFFFF', dark: '#14181D' },
  panel: { light: '#FFFFFF', dark: '#14181D' },
  ink: { light: '#14181D', dark: '#EEF1F4' },
  muted: { light: '#545B63', dark: '#A9B1BA' },
  rule: { light: '#D3D8DD', dark: '#39414A' },
  zero: { light: '#6B727A', dark: '#8A939C' },
  band: { light: '#ECEFF2', dark: '#222930' },
} as const satisfies Record<string, Pair>;

/** Name of a colour that belongs to no quantity: paper, ink, lines. */
export type SurfaceColour = keyof typeof SURFACE;

/** Colour of a quantity in a theme; theme 'css' gives the custom property the report's style sheet defines. */
export function quantityColour(quantity: Quantity, theme: Theme | 'css'): string {
  return theme === 'css' ? `var(--${quantity})` : QUANTITY_COLOURS[quantity][theme];
}

/** Colour of a ground, text or rule, as `quantityColour`. */
export function surfaceColour(name: SurfaceColour, theme: Theme | 'css'): string {
  return theme === 'css' ? `var(--${name})` : SURFACE[name][theme];
}

/** The custom properties of one theme, for a style sheet. */
export function colourProperties(theme: Theme): string {
  const quantities = Object.entries(QUANTITY_COLOURS).map(([name, pair]) => `--${name}:${pair[theme]}`);
  const surfaces = Object.entries(SURFACE).map(([name, pair]) => `--${name}:${pair[theme]}`);
  return [...surfaces, ...quantities].join(';');
}
