import type { RunResult } from '../../measure/result.ts';
import type { StopFigures } from '../../measure/stopFigures.ts';
import type { Alternative, StopName } from '../../survey/alternatives/alternative.ts';
import { computeExtent, paddedDomain } from '../envelope.ts';
import type { Dash, EventMark, FigureSpec, PointMark, Series } from '../figureSpec.ts';
import { displayUnit, formatQuantity, type UnitSystem } from '../formatQuantity.ts';
import { STOP_LABELS } from '../judgementWords.ts';
import { capital } from './judgedText.ts';

/** A way of stopping that was simulated. */
interface Simulated extends Alternative {
  readonly figures: StopFigures;
  readonly result: RunResult;
}

/** Points of a curve. */
const POINTS = 601;
/** Shown before the command and after the last stop, shares of the span. */
const BEFORE = 0.04;
const AFTER = 0.06;
/** A way that takes longer than so many times the slowest that does not coast runs out of the figure. */
const LONGEST_SHARE = 3;
/** Where on a curve that runs out of the figure its name stands, share of the span. */
const NAME_AT = 0.86;
/** Without any electric or mechanical braking the figure shows so long, s. */
const LEAST_SPAN = 0.1;

const COASTING: readonly StopName[] = ['coast', 'throughStop'];
const DASHES: readonly Dash[] = ['dash', 'dashdot', 'dot', 'solid'];

/** Speed over time after the command, a curve for every way of stopping that was simulated; null: none was. */
export function waysToStopFigure(alternatives: readonly Alternative[], units: UnitSystem): FigureSpec | null {
  const ways = alternatives.filter(isSimulated);
  if (ways.length === 0) return null;
  const span = spanOf(ways);
  const speed = displayUnit('rad/s', { system: units });
  const series = ways.map((way, i) => curve(way, i, span, speed.perSi));
  const extent = computeExtent([0], ...series.map(({ y }) => y));
  return {
    id: 'ways-to-stop',
    title: titleOf(ways, units),
    note: 'Speed of the motor shaft after the stopping command. Each name stands at the instant at which its curve comes to zero.',
    description: ways.map((way) => inWords(way, units)).join('; '),
    x: { label: 'Time after the command (s)', domain: [-BEFORE * span, span] },
    panels: [
      {
        kind: 'lines',
        weight: 3,
        y: { label: `Speed (${speed.label})`, domain: paddedDomain(extent, 0.08) },
        series,
        references: [],
        points: ways.flatMap((way, i) => nameOnCurve(way, series[i]!, span, units)),
      },
    ],
    marks: marksOf(ways, span, units),
    bands: [],
  };
}

function isSimulated(way: Alternative): way is Simulated {
  return way.figures !== null && way.result !== null;
}

/** What a way takes in all: a reversal up to the speed of the other direction, s; null: it does not end in its run. */
function lasting({ figures, reversalTime }: Simulated): number | null {
  return figures.time === null ? null : Math.max(figures.time, reversalTime ?? 0);
}

function spanOf(ways: readonly Simulated[]): number {
  const times = (coasting: boolean) =>
    ways.filter(({ name }) => COASTING.includes(name) === coasting).flatMap((way) => lasting(way) ?? []);
  const braked = Math.max(LEAST_SPAN, ...times(false));
  const fitting = times(true).filter((time) => time <= LONGEST_SHARE * braked);
  const allCoast = times(false).length === 0;
  return (1 + AFTER) * Math.max(braked, ...(allCoast ? times(true) : fitting));
}

function curve(
  { name, figures, result }: Simulated,
  index: number,
  span: number,
  perSi: number,
): Series & { form: 'line' } {
  const { trajectory } = result;
  const { command } = figures;
  const from = Math.max(trajectory.tStart, command - BEFORE * span);
  const to = Math.min(trajectory.tEnd, command + span);
  const { t, speed } = trajectory.sample(from, to, POINTS);
  return {
    form: 'line',
    label: '',
    quantity: 'speed',
    dash: name === 'plug' ? 'solid' : DASHES[index % DASHES.length]!,
    x: t.map((time) => time - command),
    y: speed.map((value) => value * perSi),
  };
}

function marksOf(ways: readonly Simulated[], span: number, units: UnitSystem): EventMark[] {
  return ways
    .flatMap(({ name, figures }): EventMark[] =>
      figures.time === null || figures.time > span
        ? []
        : [{ x: figures.time, label: `${STOP_LABELS[name]} ${seconds(figures.time, units)}` }],
    )
    .sort((a, b) => a.x - b.x);
}

/** A curve that does not come to zero within the figure is named on the curve itself. */
function nameOnCurve(
  { name, figures }: Simulated,
  { x, y }: Series & { form: 'line' },
  span: number,
  units: UnitSystem,
): PointMark[] {
  if (figures.time !== null && figures.time <= span) return [];
  const at = x.findLastIndex((time) => time <= NAME_AT * span);
  const ends =
    figures.time === null ? 'not at rest in its run' : `at rest after ${seconds(figures.time, units)}`;
  return [
    {
      x: x[at]!,
      y: y[at]!,
      label: `${STOP_LABELS[name]}, ${ends}`,
      short: STOP_LABELS[name],
      place: name === 'throughStop' ? 'below' : 'above',
      quantity: 'speed',
    },
  ];
}

function titleOf(ways: readonly Simulated[], units: UnitSystem): string {
  const timeOf = (name: StopName) => ways.find((way) => way.name === name)?.figures.time ?? null;
  const plug = timeOf('plug');
  const coast = timeOf('coast');
  if (plug === null) return 'Ways to stop this load';
  const stops = `Plugging stops the load in ${seconds(plug, units)}`;
  return coast === null ? stops : `${stops}, coasting in ${seconds(coast, units)}`;
}

function inWords({ name, figures }: Simulated, units: UnitSystem): string {
  const ends =
    figures.time === null ? 'does not come to rest in its run' : `stops in ${seconds(figures.time, units)}`;
  return `${capital(STOP_LABELS[name])} ${ends}`;
}

function seconds(time: number, units: UnitSystem): string {
  return formatQuantity(time, 's', { system: units });
}
