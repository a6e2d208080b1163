import { computeExtent, paddedDomain } from './envelope.ts';
import type { FigureSpec, LinesPanel, PointMark, Series } from './figureSpec.ts';
import {
  displayUnit,
  formatMultiple,
  formatNumber,
  formatQuantity,
  type UnitSystem,
} from './formatQuantity.ts';
import { type MotorPoint, type MotorPointKind, type MotorSheet, POINT_NAMES } from './motorSheet.ts';

/** How the figure of a motor is made. */
export interface MotorFigureOptions {
  readonly units: UnitSystem;
}

/** Points named in the panel of the torque, and in that of the current. */
const NAMED: Readonly<Record<'torque' | 'current', readonly MotorPointKind[]>> = {
  torque: ['plugging', 'lockedRotor', 'pullUp', 'breakdown', 'rated'],
  current: ['plugging', 'lockedRotor', 'rated'],
};

/** Torque and current in the steady state over speed, from full speed against the field to full speed with it. */
export function motorFigure(sheet: MotorSheet, options: MotorFigureOptions): FigureSpec {
  const speedUnit = displayUnit('rad/s', { system: options.units });
  const x = sheet.curve.speed.map((speed) => speed * speedUnit.perSi);
  const low = x[0] ?? -1;
  const high = x.at(-1) ?? 1;
  return {
    id: 'motor',
    title: motorTitle(sheet, options.units),
    note: `Steady state with the forward phase sequence at ${voltageWords(sheet)}. Grey ground: the shaft turns against the field, as after plugging. The first cycles after a switching, when torque and current swing far beyond, are not in these curves.`,
    description: `Air-gap torque and line current of the steady state against speed, from synchronous speed against the field to synchronous speed with it. ${pointsInWords(sheet, options.units)}`,
    x: { label: `Speed (${speedUnit.label})`, domain: [low, high] },
    panels: [torquePanel(sheet, x, options), currentPanel(sheet, x, options)],
    marks: [
      { x: low, label: 'slip 2' },
      { x: 0, label: 'rest, slip 1' },
      { x: high, label: 'synchronous, slip 0' },
    ],
    bands: [{ x0: low, x1: 0, label: 'plugging' }],
  };
}

function motorTitle(sheet: MotorSheet, units: UnitSystem): string {
  const at = (kind: MotorPointKind) => sheet.points.find((point) => point.kind === kind);
  const breakdown = at('breakdown');
  const plugging = at('plugging');
  const parts = [
    ...(breakdown === undefined
      ? []
      : [
          `the torque breaks down at ${times(breakdown.torque, sheet.rated.torque)} rated and ${formatQuantity(breakdown.speed, 'rad/s', { system: units })}`,
        ]),
    ...(plugging === undefined
      ? []
      : [
          `turning at full speed against the field the motor draws ${times(plugging.current, sheet.rated.current)} rated current`,
        ]),
  ];
  if (parts.length === 0) return 'Torque and current of the motor over speed';
  const text = parts.join('; ');
  return `${text[0]?.toUpperCase()}${text.slice(1)}`;
}

function voltageWords({ lineVoltage, frequency }: MotorSheet): string {
  return `${formatNumber(lineVoltage)} V, ${formatNumber(frequency)} Hz`;
}

function times(value: number, base: number): string {
  return `${formatNumber(value / base)} ×`;
}

function pointsInWords(sheet: MotorSheet, units: UnitSystem): string {
  const show = (value: number, unit: string) => formatQuantity(value, unit, { system: units });
  return sheet.points
    .map(
      (point) =>
        `${POINT_NAMES[point.kind]}: ${show(point.speed, 'rad/s')}, ${show(point.torque, 'N·m')}, ${show(point.current, 'A')}`,
    )
    .join('; ');
}

function torquePanel(sheet: MotorSheet, x: Float64Array, { units }: MotorFigureOptions): LinesPanel {
  const unit = displayUnit('N·m', { system: units });
  const rated = sheet.rated.torque * unit.perSi;
  const y = sheet.curve.torque.map((torque) => torque * unit.perSi);
  const load = loadSeries(sheet, units);
  const points = pointMarks(sheet, 'torque', units);
  const extent = computeExtent(
    y,
    load?.y ?? [],
    [rated],
    points.map((point) => point.y),
  );
  return {
    kind: 'lines',
    weight: 2.6,
    y: { label: `Air-gap torque (${unit.label})`, domain: paddedDomain(extent, 0.12) },
    series: [
      ...(load === null ? [] : [load]),
      { form: 'line', label: 'motor', quantity: 'torque', dash: 'solid', x, y },
    ],
    references: [{ y: rated, label: 'rated' }],
    points,
  };
}

function currentPanel(sheet: MotorSheet, x: Float64Array, { units }: MotorFigureOptions): LinesPanel {
  const { current } = sheet.curve;
  const points = pointMarks(sheet, 'current', units);
  const extent = computeExtent(
    current,
    [sheet.rated.current],
    points.map((point) => point.y),
  );
  return {
    kind: 'lines',
    weight: 1.8,
    y: { label: 'Line current, r.m.s. (A)', domain: paddedDomain(extent, 0.14) },
    series: [{ form: 'line', label: 'motor', quantity: 'currentA', dash: 'solid', x, y: current }],
    references: [{ y: sheet.rated.current, label: 'rated' }],
    points,
  };
}

function loadSeries({ load }: MotorSheet, units: UnitSystem): (Series & { form: 'line' }) | null {
  if (load === null) return null;
  const speed = displayUnit('rad/s', { system: units }).perSi;
  const torque = displayUnit('N·m', { system: units }).perSi;
  return {
    form: 'line',
    label: 'load',
    quantity: 'loadTorque',
    dash: 'dash',
    x: load.speed.map((value) => value * speed),
    y: load.torque.map((value) => value * torque),
  };
}

function pointMarks(sheet: MotorSheet, panel: 'torque' | 'current', units: UnitSystem): PointMark[] {
  const speed = displayUnit('rad/s', { system: units }).perSi;
  const unit = panel === 'torque' ? 'N·m' : 'A';
  const { perSi } = displayUnit(unit, { system: units });
  const short = (point: MotorPoint) => {
    const name = point.kind === 'plugging' ? 'full speed' : POINT_NAMES[point.kind];
    return `${name} ${formatQuantity(point[panel], unit, { system: units })}`;
  };
  const label = (point: MotorPoint) =>
    point.kind === 'rated'
      ? short(point)
      : `${short(point)}, ${formatMultiple(point[panel] / sheet.rated[panel], 'rated')}`;
  return sheet.points
    .filter((point) => NAMED[panel].includes(point.kind))
    .map((point) => ({
      x: point.speed * speed,
      y: point[panel] * perSi,
      label: label(point),
      short: short(point),
      place: isBelowCurve(sheet, point, panel) ? 'below' : 'above',
      quantity: panel === 'torque' ? 'torque' : 'currentA',
    }));
}

/** True where the curve rises to the right of a point, or has its minimum there: above it the label would cross the curve. */
function isBelowCurve({ curve }: MotorSheet, point: MotorPoint, panel: 'torque' | 'current'): boolean {
  if (point.kind === 'pullUp') return true;
  if (point.kind === 'breakdown' || point.kind === 'rated') return false;
  const next = curve.speed.findIndex((speed) => speed > point.speed + NEIGHBOUR * Math.abs(curve.speed[0]!));
  return next >= 0 && curve[panel][next]! > point[panel];
}

/** How far to the right the curve is compared with a point, as a share of synchronous speed. */
const NEIGHBOUR = 0.05;
