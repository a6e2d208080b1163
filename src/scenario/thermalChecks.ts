import { withUnit } from './field.ts';
import type { InsulationClass, ThermalData } from './judgementData.ts';
import type { Impossibility } from './starterView.ts';

/** Thermal data as far as they depend on each other; null: not stated, undefined: not known, as it was refused. */
export type ThermalView = {
  readonly [K in
    | 'insulationClass'
    | 'ambient'
    | 'ratedRise'
    | 'lockedRotorTimeCold'
    | 'lockedRotorTimeHot'
    | 'cageLimit'
    | 'cageRatedTemperature'
    | 'outerCageShare']: ThermalData[K] | undefined;
};

/** How many cages the circuit states; `fitted`: the circuit is found from a nameplate or tests. */
export type StatedCages = number | 'fitted' | undefined;

/** °C; rises at rated load hold for cooling air of this temperature (IEC 60034-1). */
const REFERENCE_AMBIENT = 40;

/** Class and letter of an insulation, as they are printed. */
export const CLASS_WITH_LETTER: Readonly<Record<InsulationClass, string>> = {
  '130': '130 (B)',
  '155': '155 (F)',
  '180': '180 (H)',
};

/**
 * What thermal data cannot be beside each other.
 *
 * @param view in SI, temperatures in °C
 * @param cages of the machine
 */
export function thermalImpossibilities(view: ThermalView, cages: StatedCages): readonly Impossibility[] {
  const found: Impossibility[] = [];
  const report = (key: string, message: string, expected: string) =>
    found.push({ path: ['thermal', key], message, expected });
  const { insulationClass, ambient, ratedRise, lockedRotorTimeCold: cold, lockedRotorTimeHot: hot } = view;
  const { cageLimit, cageRatedTemperature, outerCageShare } = view;
  const inCelsius = (value: number) => withUnit(value, 'degC');

  if (typeof insulationClass === 'string' && isNumber(ambient) && ambient >= Number(insulationClass)) {
    const message = `is not below ${inCelsius(Number(insulationClass))}, the temperature of thermal class ${CLASS_WITH_LETTER[insulationClass]}`;
    report('ambient', message, 'the temperature of the cooling air');
  }
  const hottest = typeof insulationClass === 'string' ? Number(insulationClass) - REFERENCE_AMBIENT : null;
  if (hottest !== null && isNumber(ratedRise) && ratedRise > hottest) {
    const message = `takes the winding beyond ${inCelsius(Number(insulationClass))}, the temperature of its thermal class, in cooling air of 40 degC`;
    report('ratedRise', message, `a rise up to ${withUnit(hottest, 'K')}`);
  }
  if (isNumber(cold) && isNumber(hot) && hot > cold) {
    const message = `is longer than the ${withUnit(cold, 's')} from ambient temperature`;
    report('lockedRotorTimeHot', message, 'a time up to lockedRotorTimeCold');
  }
  if (isNumber(cageRatedTemperature) && isNumber(ambient) && cageRatedTemperature <= ambient) {
    const message = `is not above the ambient temperature of ${inCelsius(ambient)}`;
    report('cageRatedTemperature', message, 'a higher temperature');
  }
  if (isNumber(cageLimit) && isNumber(cageRatedTemperature) && cageLimit <= cageRatedTemperature) {
    const message = `is not above the ${inCelsius(cageRatedTemperature)} of the cage at rated load`;
    report('cageLimit', message, 'a temperature above cageRatedTemperature');
  } else if (isNumber(cageLimit) && isNumber(ambient) && cageLimit <= ambient) {
    const message = `is not above the ambient temperature of ${inCelsius(ambient)}`;
    report('cageLimit', message, 'a higher temperature');
  }
  if (isNumber(outerCageShare) && cages !== undefined && cages !== 2) {
    const why = cages === 'fitted' ? 'is found by fitting: an outer cage of it is no body' : 'has one cage';
    report(
      'outerCageShare',
      `has no meaning for a machine whose circuit ${why}`,
      'two stated cages, or this key left out',
    );
  }
  return found;
}

function isNumber(value: number | null | undefined): value is number {
  return typeof value === 'number';
}
