import type { UnitArithmetic, UnitFactory } from '#unitmath';
import unitmath from '#unitmath';
import { raised, squared } from '../numeric/raised.ts';

/** W; the electrical horsepower, by definition. Source: NIST SP 811 (2008), appendix B.8. */
const electricalHorsepower = 746;
/** W; 75 kgf·m/s with g = 9.80665 m/s². Source: NIST SP 811 (2008), appendix B.8. */
const metricHorsepower = 735.49875;

/** m/s²; the standard acceleration of free fall. Source: 3rd CGPM (1901). */
const standardGravity = 9.80665;

/** mm; a thousandth of an inch of 25.4 mm. Source: international yard and pound agreement (1959). */
const milInMillimetres = 0.0254;

/** The library's own arithmetic but for the power, for which it would ask the engine; it takes all of it or none. */
const ARITHMETIC: UnitArithmetic = {
  conv: (value) => (typeof value === 'string' ? Number.parseFloat(value) : value),
  clone: (value) => value,
  add: (a, b) => a + b,
  sub: (a, b) => a - b,
  mul: (a, b) => a * b,
  div: (a, b) => a / b,
  pow: raised,
};

/**
 * The library's own `lb`, `ft`, `lbf` and `hp` are the legal ones (pound and yard agreement of 1959, standard gravity
 * of the CGPM 1901); a test holds it to that. Here only what it lacks is added.
 */
const unit: UnitFactory = unitmath.config({
  type: ARITHMETIC,
  // Choosing prefixes would ask for more of the arithmetic, and a factor has none.
  prefix: 'never',
  definitions: {
    baseQuantities: ['APPARENT_POWER'],
    units: {
      rpm: { value: `${Math.PI / 30} rad/s` },
      // Thousand feet and thousand circular mils (a circle of one mil diameter), the cable maker's units.
      kft: { value: '1000 ft' },
      kcmil: { value: `${(1000 * Math.PI * squared(milInMillimetres)) / 4} mm^2` },
      kgf: { value: `${standardGravity} N` },
      standardGravity: { value: `${standardGravity} m/s^2` },
      rev: { value: `${2 * Math.PI} rad` },
      hpElectric: { value: `${electricalHorsepower} W` },
      hpMetric: { value: `${metricHorsepower} W` },
      VA: { quantity: 'APPARENT_POWER', value: 1, prefixes: 'SHORT' },
    },
  },
});

/** Words, each with an optional whole power, joined by spaces and slashes. */
const unitShape = /^[A-Za-z]+(?:\^-?[1-9])?(?:[ /][A-Za-z]+(?:\^-?[1-9])?)*$/;

/**
 * Converts one of a unit into another unit. The only place that knows the unit library.
 *
 * @param from a unit in the library's spelling (see `normaliseUnit`)
 * @param to the same
 * @returns how many `to` one `from` is; `unknown` where `from` is not a unit; `otherDimension` where it is one of
 *   another quantity
 */
export function unitFactor(from: string, to: string): UnitFactor {
  if (from === to) return 1;
  if (!unitShape.test(from)) return 'unknown';
  const key = `${from} in ${to}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const factor = foundFactor(from, to);
  // A hostile file may name any number of units.
  if (known.size < MOST_KNOWN) known.set(key, factor);
  return factor;
}

type UnitFactor = number | 'unknown' | 'otherDimension';

/** Factors found before: a survey reads the same units in every run. */
const known = new Map<string, UnitFactor>();
/** Factors that are kept; people use some thirty units. */
const MOST_KNOWN = 500;

function foundFactor(from: string, to: string): UnitFactor {
  try {
    unit(1, from);
  } catch {
    return 'unknown';
  }
  try {
    return unit(1, from).to(to).getValue();
  } catch {
    return 'otherDimension';
  }
}
