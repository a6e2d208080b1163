import type {
  OperationCurrent,
  TimeCurrentData,
  TimeCurrentPoint,
} from '../../assess/protection/timeCurrent.ts';
import type { Dash, FigureSpec, PointMark, Series } from '../figureSpec.ts';
import { formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import type { Quantity } from '../palette.ts';

/** A line with the point at which its name stands. */
interface NamedLine {
  readonly series: Series & { form: 'line' };
  readonly point: PointMark;
}

/** The figure reaches this factor beyond all currents, and this factor beyond all times. */
const CURRENT_MARGIN = 1.6;
const TIME_MARGIN = 2;
/** Longer times are not drawn, s: a relay at the least current that trips it takes for ever. */
const LONGEST = 5000;
/** Smaller currents than this share of an operation's largest are not drawn. */
const LEAST_SHARE = 0.01;

/** Currents of start and plug against what trips and what the locked rotor withstands, both axes logarithmic; null: nothing to draw. */
export function timeCurrentFigure(data: TimeCurrentData, units: UnitSystem): FigureSpec | null {
  const times = timeDomain(data);
  const lines = [
    ...operationLines(data.plug, 'plug', 'solid', units),
    ...operationLines(data.start, 'start', 'dash', units),
    ...relayLines(data, units),
    ...withstandLines(data, units),
    ...data.curves.map(({ name, kind, points }, i) =>
      named(points, 'contacts', (['dot', 'dashdot'] as const)[i % 2]!, points[0]!, `${name} (${kind})`, name),
    ),
    ...tripLine(data, times, units),
  ];
  if (lines.length === 0) return null;
  const names = lines.map(({ point }) => point).filter(({ label }) => label !== '');
  const currents = lines.flatMap(({ series }) => [...series.x]);
  return {
    id: 'time-current',
    title: titleOf(data, units),
    note: 'Both axes logarithmic. The current of an operation is the constant current with the same I²t up to each time, √(I²t/t); fine dots: r.m.s. value of each supply period. An instantaneous trip acts on the crest, √2 times its setting.',
    description: names.map(({ label }) => label).join('; '),
    x: {
      label: 'Current, r.m.s. (A)',
      domain: [Math.min(...currents) / CURRENT_MARGIN, Math.max(...currents) * CURRENT_MARGIN],
      scale: 'log',
    },
    panels: [
      {
        kind: 'lines',
        weight: 5,
        y: { label: 'Time (s)', domain: times, scale: 'log' },
        series: lines.map(({ series }) => series),
        references: [],
        points: names,
      },
    ],
    marks: [],
    bands: [],
  };
}

function timeDomain({
  plug,
  start,
  overload,
  lockedRotor,
  curves,
}: TimeCurrentData): readonly [number, number] {
  const points = [
    ...(plug?.equivalent ?? []),
    ...(start?.equivalent ?? []),
    ...(overload?.cold ?? []),
    ...(overload?.warm ?? []),
    ...(lockedRotor.cold ?? []),
    ...(lockedRotor.hot ?? []),
    ...curves.flatMap((curve) => curve.points),
  ];
  const times = points.map(({ time }) => time).filter((time) => time > 0 && time < LONGEST);
  return times.length === 0
    ? [0.01, 10]
    : [Math.min(...times) / TIME_MARGIN, Math.max(...times) * TIME_MARGIN];
}

function operationLines(
  operation: OperationCurrent | null,
  name: string,
  dash: Dash,
  units: UnitSystem,
): NamedLine[] {
  if (operation === null) return [];
  const largest = Math.max(...operation.perPeriod.map(({ current }) => current));
  // Periods without current (the switch has opened, the shaft still turns) have no place on a logarithmic axis.
  const flows = ({ current }: TimeCurrentPoint) => current > LEAST_SHARE * largest;
  const last = operation.equivalent.at(-1)!;
  const label = `${name}, phase ${operation.phase}: ${amperes(last.current, units)} over ${seconds(last.time, units)}`;
  return [
    named(operation.equivalent, 'currentA', dash, last, label, name),
    // Named by the other line of the same operation.
    named(operation.perPeriod.filter(flows), 'currentA', 'dot', last, '', ''),
  ];
}

function relayLines({ overload, lockedRotor }: TimeCurrentData, units: UnitSystem): NamedLine[] {
  if (overload === null) return [];
  const line = (state: 'cold' | 'warm', dash: Dash) => {
    const points = overload[state];
    const at = nearestTo(points, lockedRotor.current);
    const label = `overload relay class ${overload.tripClass}, ${state}: ${seconds(at.time, units)} at ${amperes(at.current, units)}`;
    return named(points, 'contacts', dash, at, label, `relay ${state}`);
  };
  return [line('cold', 'solid'), line('warm', 'dash')];
}

function withstandLines({ lockedRotor }: TimeCurrentData, units: UnitSystem): NamedLine[] {
  const line = (state: 'cold' | 'hot', dash: Dash): NamedLine[] => {
    const points = lockedRotor[state];
    const [first] = points ?? [];
    if (points === null || first === undefined) return [];
    // The line is one of constant I²t: the stated time is its time at the current of the locked rotor.
    const time = first.time * (first.current / lockedRotor.current) ** 2;
    const at = { time, current: lockedRotor.current };
    const label = `locked rotor withstood from ${state}: ${seconds(time, units)} at ${amperes(at.current, units)}`;
    return [named(points, 'heat', dash, at, label, `withstand ${state}`)];
  };
  return [...line('cold', 'solid'), ...line('hot', 'dash')];
}

function tripLine(
  { instantaneousTrip }: TimeCurrentData,
  [low, high]: readonly [number, number],
  units: UnitSystem,
): NamedLine[] {
  if (instantaneousTrip === null) return [];
  const points = [low, high].map((time) => ({ time, current: instantaneousTrip }));
  // A quarter of the way up, clear of the curves that end at the top and at the bottom.
  const at = { time: low ** 0.75 * high ** 0.25, current: instantaneousTrip };
  return [
    named(
      points,
      'contacts',
      'dashdot',
      at,
      `instantaneous trip ${amperes(instantaneousTrip, units)}`,
      'inst. trip',
    ),
  ];
}

function named(
  points: readonly TimeCurrentPoint[],
  quantity: Quantity,
  dash: Dash,
  at: TimeCurrentPoint,
  label: string,
  short: string,
): NamedLine {
  return {
    series: {
      form: 'line',
      label: '',
      quantity,
      dash,
      x: Float64Array.from(points, ({ current }) => current),
      y: Float64Array.from(points, ({ time }) => time),
    },
    point: { x: at.current, y: at.time, label, short, quantity },
  };
}

function nearestTo(points: readonly TimeCurrentPoint[], current: number): TimeCurrentPoint {
  const distance = (point: TimeCurrentPoint) => Math.abs(Math.log(point.current / current));
  return points.reduce((best, point) => (distance(point) < distance(best) ? point : best));
}

function titleOf({ plug, overload }: TimeCurrentData, units: UnitSystem): string {
  const last = plug?.equivalent.at(-1);
  if (last === undefined) return 'Currents and what protects against them';
  const stop = `The plug stop takes ${amperes(last.current, units)} over ${seconds(last.time, units)}`;
  if (overload === null) return stop;
  const relay = nearestTo(overload.warm, last.current);
  return `${stop}; the warm overload relay trips near that current after ${seconds(relay.time, units)}`;
}

function seconds(time: number, units: UnitSystem): string {
  return formatQuantity(time, 's', { system: units });
}

function amperes(current: number, units: UnitSystem): string {
  return formatQuantity(current, 'A', { system: units });
}
