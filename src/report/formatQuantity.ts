/** SI, or the units customary in the United States where they differ. Speeds are in r/min in both. */
export type UnitSystem = 'SI' | 'us';

/** How a quantity is shown: displayed value = SI value × `perSi`. */
export interface DisplayUnit {
  readonly label: string;
  readonly perSi: number;
}

/** How a quantity is written. */
export interface QuantityOptions {
  readonly system: UnitSystem;
  /** Show times in milliseconds: for intervals of contacts and arcs. */
  readonly milli?: boolean;
}

/** Pound-force foot, N·m: 0.3048 m × 0.45359237 kg × 9.80665 m/s², exact. */
const LBF_FT = 1.3558179483314003;
/** Pound foot squared, kg·m²: 0.45359237 kg × (0.3048 m)², exact. */
const LB_FT2 = 0.0421401100938048;
/** Mechanical horsepower, W: 550 ft·lbf/s. */
const HORSEPOWER = 745.6998715822702;
/** International Table British thermal unit, J, exact. */
const BTU = 1055.05585262;
/** r/min in one rad/s. */
const RPM_PER_RADPS = 30 / Math.PI;
/** Shorter times than this are written in µs, s: in ms they would need a power of ten. */
const MICROSECONDS_BELOW = 1e-5;
/** Degrees in one radian. */
const DEGREES_PER_RADIAN = 180 / Math.PI;
/** Foot, m, exact. */
const FOOT = 0.3048;

const SI_DISPLAY: Readonly<Record<string, DisplayUnit>> = {
  'rad/s': { label: 'r/min', perSi: RPM_PER_RADPS },
  rad: { label: '°', perSi: DEGREES_PER_RADIAN },
  W: { label: 'kW', perSi: 1e-3 },
  J: { label: 'kJ', perSi: 1e-3 },
  H: { label: 'mH', perSi: 1e3 },
  'J/K': { label: 'kJ/K', perSi: 1e-3 },
  '1': { label: '', perSi: 1 },
};

const US_DISPLAY: Readonly<Record<string, DisplayUnit>> = {
  ...SI_DISPLAY,
  N·m: { label: 'lbf·ft', perSi: 1 / LBF_FT },
  'N·m/rad': { label: 'lbf·ft/rad', perSi: 1 / LBF_FT },
  'N·m·s/rad': { label: 'lbf·ft·s/rad', perSi: 1 / LBF_FT },
  'N·m·s²/rad²': { label: 'lbf·ft·s²/rad²', perSi: 1 / LBF_FT },
  'kg·m²': { label: 'lb·ft²', perSi: 1 / LB_FT2 },
  W: { label: 'hp', perSi: 1 / HORSEPOWER },
  J: { label: 'Btu', perSi: 1 / BTU },
  'J/K': { label: 'Btu/K', perSi: 1 / BTU },
  m: { label: 'ft', perSi: 1 / FOOT },
  'm/s²': { label: 'ft/s²', perSi: 1 / FOOT },
};

/** The unit in which an SI quantity is shown, and the factor to it. A unit without an entry is shown as it is. */
export function displayUnit(unit: string, options: QuantityOptions): DisplayUnit {
  if (unit === 's' && options.milli === true) return { label: 'ms', perSi: 1e3 };
  const table = options.system === 'us' ? US_DISPLAY : SI_DISPLAY;
  return table[unit] ?? { label: unit, perSi: 1 };
}

/**
 * Formats a number with three significant digits; whole digits are never rounded away (1402, not 1400), five and
 * more are grouped by narrow no-break spaces. The minus is the true minus sign.
 */
export function formatNumber(value: number): string {
  if (!Number.isFinite(value)) return 'not a number';
  const size = Math.abs(value);
  const sign = value < 0 ? '−' : '';
  if (size === 0) return '0';
  // 99.95 would show as 100.0 with three significant digits taken literally; round first, then decide.
  const rounded = Number(size.toPrecision(3));
  if (rounded >= 100) return sign + groupThousands(Math.round(size));
  if (rounded >= 0.001) return sign + size.toPrecision(3);
  const [digits, exponent] = size.toExponential(2).split('e');
  return `${sign}${digits} × 10${superscript(Number(exponent))}`;
}

/**
 * Sizes below which a quantity of a machine that a contactor switches is rounding of the arithmetic, SI: a millionth of what an instrument
 * shows. Units without an entry are shown whatever their size.
 */
const ROUNDING: Readonly<Record<string, number>> = {
  A: 1e-9,
  V: 1e-9,
  N·m: 1e-9,
  J: 1e-9,
  W: 1e-9,
  'rad/s': 1e-9,
  rad: 1e-9,
  'A²·s': 1e-12,
  C: 1e-12,
};

/** Formats an SI value with its display unit: "1402 A", "0.421 s", "−1.73 lbf·ft". Null is "—". */
export function formatQuantity(value: number | null, unit: string, options: QuantityOptions): string {
  if (value === null) return '—';
  if (value !== 0 && Math.abs(value) < (ROUNDING[unit] ?? 0)) return formatQuantity(0, unit, options);
  const brief = unit === 's' && value !== 0 && Math.abs(value) < MICROSECONDS_BELOW;
  const shown = brief ? { label: 'µs', perSi: 1e6 } : displayUnit(unit, options);
  const number = formatNumber(value * shown.perSi);
  if (shown.label === '') return number;
  return shown.label === '°' ? `${number}°` : `${number} ${shown.label}`;
}

/** A share of one as "12.3 %". */
export function formatPercent(share: number): string {
  return `${formatNumber(100 * share)} %`;
}

/** How far a value is from what was aimed at: "+1.2 %", "below 0.1 %"; null is "—". */
export function formatDeviation(error: number | null): string {
  if (error === null) return '—';
  const percent = Math.round(1000 * error) / 10;
  if (percent === 0) return 'below 0.1 %';
  return `${percent < 0 ? '−' : '+'}${Math.abs(percent).toFixed(1)} %`;
}

/** An instant of the run, to a tenth of a millisecond: what separates two poles' clearings is of that size. */
export function formatInstant(t: number): string {
  return Number.isFinite(t) ? `${t.toFixed(4).replace('-', '−')} s` : 'not a number';
}

/** "18.1 × rated": a multiple and what it is a multiple of. */
export function formatMultiple(multiple: number, of: string): string {
  return `${formatNumber(multiple)} × ${of}`;
}

function groupThousands(whole: number): string {
  const digits = String(whole);
  return digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/gu, '\u202F');
}

function superscript(exponent: number): string {
  return [...String(exponent)].map((digit) => (digit === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)])).join('');
}
