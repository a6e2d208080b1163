import { asciiText } from './asciiText.ts';
import { displayUnit, formatNumber, type UnitSystem } from './formatQuantity.ts';
import type { MotorSheet } from './motorSheet.ts';
import { textTable } from './textTable.ts';

/** Rows of the table: every sixth of synchronous speed. */
const STEPS = 12;

/** Torque and current of a motor at thirteen speeds from synchronous speed backwards to synchronous speed, as text. */
export function motorCurveTable(
  { curve, rated }: MotorSheet,
  options: { readonly units: UnitSystem; readonly ascii?: boolean },
): string {
  const torque = displayUnit('N·m', { system: options.units });
  const speed = displayUnit('rad/s', { system: options.units });
  const synchronous = curve.speed.at(-1) ?? 0;
  const rows = Array.from({ length: STEPS + 1 }, (_, i) => {
    const wanted = ((2 * i) / STEPS - 1) * synchronous;
    const at = nearest(curve.speed, wanted);
    return [
      '',
      formatNumber(curve.speed[at]! * speed.perSi),
      formatNumber(1 - curve.speed[at]! / synchronous),
      formatNumber(curve.torque[at]! * torque.perSi),
      formatNumber(curve.torque[at]! / rated.torque),
      formatNumber(curve.current[at]!),
      formatNumber(curve.current[at]! / rated.current),
    ];
  });
  const lines = textTable([
    ['', 'speed', 'slip', 'torque', '× rated', 'current', '× rated'],
    ['', speed.label, '', torque.label, '', 'A', ''],
    ...rows,
  ]);
  const text = `${lines.join('\n')}\n`;
  return options.ascii === true ? asciiText(text) : text;
}

function nearest(values: Float64Array, wanted: number): number {
  const distances = values.map((value) => Math.abs(value - wanted));
  return distances.indexOf(Math.min(...distances));
}
