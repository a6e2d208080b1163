import type { TimeCurrentData } from '../../assess/protection/timeCurrent.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { paragraph } from '../markup.ts';
import { noteFigure } from './noteFigure.ts';
import { timeCurrentFigure } from './timeCurrentFigure.ts';

/** Currents of the run against protective devices and the withstand of the locked rotor. */
export function protectionSection(data: TimeCurrentData, units: UnitSystem): string {
  const figure = timeCurrentFigure(data, units);
  const missing = missingParts(data);
  return `<section><h2>Protection</h2>
${figure === null ? paragraph('The run holds no current to compare.') : noteFigure(figure)}
${missing.length === 0 ? '' : paragraph(`Not in the figure because not given: ${missing.join('; ')}.`)}
${paragraph('The overload relay is a first-order thermal memory; a real one scatters about its class. The withstand of the locked rotor is a line of constant I²t about the stated time. Curves of breakers and fuses are drawn as they are given, without their scatter.', 'muted')}
</section>`;
}

function missingParts({
  plug,
  start,
  overload,
  lockedRotor,
  curves,
  instantaneousTrip,
}: TimeCurrentData): string[] {
  return [
    ...(plug === null ? ['the current of a plug stop'] : []),
    ...(start === null ? ['the current of a start'] : []),
    ...(overload === null ? ['an overload relay'] : []),
    ...(lockedRotor.cold === null ? ['the locked-rotor withstand time from cold'] : []),
    ...(lockedRotor.hot === null ? ['the locked-rotor withstand time from hot'] : []),
    ...(curves.length === 0 ? ['curves of breakers or fuses'] : []),
    ...(instantaneousTrip === null ? ['the setting of an instantaneous trip'] : []),
  ];
}
