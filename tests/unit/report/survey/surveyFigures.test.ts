import { describe, expect, it } from 'vitest';
import { renderSvg } from '../../../../src/report/renderSvg.ts';
import { binnedSpread } from '../../../../src/report/survey/binnedSpread.ts';
import { contourLines } from '../../../../src/report/survey/contourLines.ts';
import { convergenceFigure } from '../../../../src/report/survey/convergenceFigure.ts';
import { heatClasses, valueText } from '../../../../src/report/survey/heatClasses.ts';
import { heatMapDrawing } from '../../../../src/report/survey/heatMapDrawing.ts';
import { histogramFigure } from '../../../../src/report/survey/histogramFigure.ts';
import { indicesDrawing } from '../../../../src/report/survey/indicesDrawing.ts';
import { limitKeys } from '../../../../src/report/survey/limitKeys.ts';
import { limitMapDrawing } from '../../../../src/report/survey/limitMapDrawing.ts';
import { shownMetric } from '../../../../src/report/survey/shownMetric.ts';
import { svgSheet } from '../../../../src/report/survey/svgSheet.ts';
import { sweepCurve, sweepFigure } from '../../../../src/report/survey/sweepFigure.ts';
import { tornadoDrawing } from '../../../../src/report/survey/tornadoDrawing.ts';
import type { VariedField } from '../../../../src/survey/spec/survey.ts';
import { mapOf } from '../../../../src/survey/spread/map.ts';
import { summaryOf } from '../../../../src/survey/spread/summary.ts';
import type { Tornado } from '../../../../src/survey/spread/tornado.ts';
import { extremeOf } from '../../../../src/survey/worst/extremeOf.ts';
import { drawnRows, fakeSurvey, gridRows, INERTIA_GRID, source, TORQUE_GRID, WORST } from './fakeSurvey.ts';
import { elementsOf, horizontalReading } from './svgReading.ts';

const SURVEY = fakeSurvey();
const ROWS = drawnRows(SURVEY, 1500);
const SUMMARY = summaryOf(SURVEY, source(ROWS));
const TORQUE = shownMetric('plugMinimumTorque', 'SI');
/** Values of a metric in good runs, sorted. */
const sorted = (metric: number, rows = ROWS) =>
  rows.flatMap((row) => row.metrics[metric] ?? []).sort((a, b) => a - b);
/** Half a pixel of a drawing 960 px wide, as a share of a span. */
const HALF_PIXEL = 0.5 / 700;

describe('the histogram', () => {
  const figure = histogramFigure(SUMMARY.metrics[0]!, TORQUE)!;
  const svg = renderSvg(figure, { theme: 'light' });

  it('marks the quantiles where the axis has them', () => {
    const read = horizontalReading(svg);
    const marks = elementsOf(svg, 'line')
      .filter(({ attributes }) => attributes['stroke-dasharray'] === '4 2')
      .map(({ attributes }) => read(Number(attributes.x1)));
    const values = sorted(0);
    const span = figure.x.domain[1] - figure.x.domain[0];
    // Quantile as the middle of its neighbours or the value of the next rank: within one rank of the share of the values below.
    const expected = [0.05, 0.5, 0.95].map((share) => values[Math.ceil(share * values.length) - 1]!);
    expect(marks).toHaveLength(3);
    marks.forEach((mark, k) => {
      expect(Math.abs(mark - expected[k]!) / span / HALF_PIXEL).toBeLessThan(2);
    });
  });

  it('has a bar as high as the runs in its stretch, and holds every run with a value', () => {
    const [series] = figure.panels[0]!.kind === 'lines' ? figure.panels[0]!.series : [];
    if (series?.form !== 'envelope') throw new Error('no bars');
    const bars = [...series.x.keys()].filter((k) => k % 2 === 0);
    const last = bars.at(-1)!;
    const values = sorted(0);
    for (const k of bars) {
      const [from, to] = [series.x[k]!, series.x[k + 1]!];
      expect(series.high[k]).toBe(
        values.filter((v) => v >= from && (v < to || (k === last && v <= to))).length,
      );
      expect(series.high[k + 1]).toBe(series.high[k]);
    }
    expect(bars.reduce((sum, k) => sum + series.high[k]!, 0)).toBe(values.length);
  });

  it('says where nine of ten runs lie, or that all are the same', () => {
    expect(figure.title).toContain(`between ${TORQUE.text(SUMMARY.metrics[0]!.quantiles[1]!.value)} and`);
    const same = summaryOf(SURVEY, source(ROWS.slice(0, 1)));
    expect(histogramFigure(same.metrics[0]!, TORQUE)!.title).toMatch(/in every run$/u);
    expect(histogramFigure(summaryOf(SURVEY, source([])).metrics[0]!, TORQUE)).toBeNull();
  });
});

describe('a metric over a field', () => {
  const binned = binnedSpread(SURVEY, SUMMARY, source(ROWS));

  it('has the medians and 5 … 95 % of a list’s values, to half a class', () => {
    const closing = binned[2]!;
    expect(closing.at).toEqual([18, 20, 24]);
    SURVEY.metrics.forEach((_, m) => {
      const { smallest, largest } = SUMMARY.metrics[m]!;
      const half = (largest!.value - smallest!.value) / 1000;
      closing.at.forEach((at, k) => {
        const values = sorted(
          m,
          ROWS.filter(({ values: [, , closingTime] }) => closingTime === at),
        );
        const rank = (share: number) => values[Math.max(1, Math.ceil(share * values.length)) - 1]!;
        const { low, median, high } = closing.metrics[m]!;
        expect(Math.abs(low[k]! - rank(0.05)) / half).toBeLessThan(1.001);
        expect(Math.abs(median[k]! - rank(0.5)) / half).toBeLessThan(1.001);
        expect(Math.abs(high[k]! - rank(0.95)) / half).toBeLessThan(1.001);
      });
    });
  });

  it('has stretches of a range that hold every run once', () => {
    const { at, metrics } = binned[0]!;
    expect(at).toHaveLength(24);
    const width = at[1]! - at[0]!;
    const { smallest, largest } = SUMMARY.metrics[1]!;
    at.forEach((middle, k) => {
      const values = sorted(
        1,
        ROWS.filter(({ values: [angle] }) => Math.abs(angle! - middle) < width / 2),
      );
      const median = values[Math.ceil(values.length / 2) - 1]!;
      expect(
        Math.abs(metrics[1]!.median[k]! - median) / ((largest!.value - smallest!.value) / 1000),
      ).toBeLessThan(1.001);
    });
  });

  it('is a gap where no run has a value', () => {
    const rows = ROWS.map((row) => (row.values[2] === 20 ? { ...row, metrics: [null, 1, null] } : row));
    const gaps = binnedSpread(SURVEY, summaryOf(SURVEY, source(rows)), source(rows))[2]!.metrics[0]!;
    expect(gaps.median.map(Number.isNaN)).toEqual([false, true, false]);
  });

  it('of an angle has a gap where the angle comes round', () => {
    const survey = fakeSurvey({
      fields: [INERTIA_GRID],
      task: { kind: 'sweep' },
      metrics: ['residualAngle'],
    });
    const curve = { at: [1, 2, 3, 4], metrics: [[2, 3, -3, -2]] };
    const angle = shownMetric('residualAngle', 'SI');
    const [panel] = sweepFigure(survey, curve, [{ shown: angle, place: 0 }], 'SI').panels;
    if (panel?.kind !== 'lines' || panel.series[0]?.form !== 'line') throw new Error('no line');
    expect(Array.from(panel.series[0].y, (value) => Math.round(value / angle.perSi))).toEqual([
      2,
      3,
      Number.NaN,
      -3,
      -2,
    ]);
    expect([...panel.series[0].x]).toEqual([1, 2, 3, 3, 4]);
    expect(panel.points).toHaveLength(4);
  });

  it('is a curve through every run of a sweep over one field, whatever their order', () => {
    const survey = fakeSurvey({ fields: [INERTIA_GRID], task: { kind: 'sweep' } });
    const rows = [3, 1, 2].map((x, run) => ({
      run,
      values: [x],
      status: 'good' as const,
      reason: null,
      metrics: [10 * x, null, x],
      verdict: null,
    }));
    expect(sweepCurve(survey, source(rows))).toEqual({
      at: [1, 2, 3],
      metrics: [
        [10, 20, 30],
        [Number.NaN, Number.NaN, Number.NaN],
        [1, 2, 3],
      ],
    });
  });
});

describe('the tornado', () => {
  const tornado: Tornado = {
    metric: 'plugMinimumTorque',
    base: -180,
    bars: [
      { field: 'load.inertia', from: 0.04, to: 0.06, atFrom: -150, atTo: -220, swing: 70 },
      { field: 'supply.angle', from: 36, to: 324, atFrom: -170, atTo: -165, swing: 15 },
    ],
  };
  const svg = svgSheet(tornadoDrawing(tornado, SURVEY.fields, TORQUE, 'SI')!, 'wide');

  it('has bars from the medians’ value to both ends, hatched at the low quantile and filled at the high one', () => {
    const read = horizontalReading(svg);
    const bars = elementsOf(svg, 'rect')
      .filter(({ attributes }) => attributes.height === '13')
      .map(({ attributes: { x, width, fill } }) => ({
        from: read(Number(x)),
        to: read(Number(x) + Number(width)),
        hatched: fill!.startsWith('url('),
      }));
    const expected = [
      [-180, -150, true],
      [-220, -180, false],
      [-180, -170, true],
      [-180, -165, false],
    ] as const;
    expect(bars).toHaveLength(expected.length);
    expected.forEach(([from, to, hatched], k) => {
      expect(Math.abs(bars[k]!.from - from) / (80 * HALF_PIXEL)).toBeLessThan(1);
      expect(Math.abs(bars[k]!.to - to) / (80 * HALF_PIXEL)).toBeLessThan(1);
      expect(bars[k]!.hatched).toBe(hatched);
    });
    for (const text of ['−150 N·m', '−220 N·m', '0.0400 kg·m² … 0.0600 kg·m²', '36.0° … 324°'])
      expect(svg).toContain(`>${text}<`);
  });

  it('puts bars of the same side below each other', () => {
    const tops = elementsOf(svg, 'rect')
      .filter(({ attributes }) => attributes.height === '13')
      .map(({ attributes }) => Number(attributes.y));
    expect(tops[0]).toBe(tops[1]);
    expect(tops[3]).toBeGreaterThan(tops[2]! + 13);
  });

  it('is none without the run at the medians', () => {
    expect(tornadoDrawing({ ...tornado, base: null }, SURVEY.fields, TORQUE, 'SI')).toBeNull();
  });
});

it('indices are drawn with their intervals, the largest total first', () => {
  const index = (value: number) => ({ value, low: value - 0.05, high: value + 0.1 });
  const svg = svgSheet(
    indicesDrawing(
      {
        metric: 'plugMinimumTorque',
        used: 64,
        leftOut: 0,
        mean: -180,
        variance: 30,
        reason: null,
        sumOfFirst: index(0.9),
        note: '',
        fields: [
          { field: 'load.inertia', first: index(0.2), total: index(0.3) },
          { field: 'supply.angle', first: index(0.6), total: index(0.7) },
        ],
      },
      TORQUE,
    )!,
    'wide',
  );
  const read = horizontalReading(svg);
  const whiskers = elementsOf(svg, 'path').filter(({ attributes }) => attributes['stroke-width'] === '1.4');
  const ends = whiskers.map(({ attributes }) => {
    const [, low, , , , high] = /M([\d.]+),([\d.]+)V([\d.]+)M([\d.]+),[\d.]+H([\d.]+)/u.exec(attributes.d!)!;
    return [read(Number(low)), read(Number(high))];
  });
  const expected = [0.6, 0.7, 0.2, 0.3].map((value) => [100 * (value - 0.05), 100 * (value + 0.1)]);
  ends.flat().forEach((end, k) => {
    expect(Math.abs(end - expected.flat()[k]!) / (100 * HALF_PIXEL)).toBeLessThan(1);
  });
  expect(svg.indexOf('Supply angle')).toBeLessThan(svg.indexOf('Load inertia'));
});

describe('contour lines', () => {
  it('of a plane lie where the plane has the level: exact, as interpolation is linear', () => {
    const plane = (x: number, y: number) => 3 * x - 2 * y + 1;
    const cells = Array.from({ length: 6 }, (_, y) => Array.from({ length: 8 }, (_, x) => plane(x, y)));
    const pieces = contourLines(cells, 4.5);
    expect(pieces.length).toBeGreaterThan(5);
    for (const { x1, y1, x2, y2 } of pieces) {
      expect(Math.abs(plane(x1, y1) - 4.5) / 1e-12).toBeLessThan(1);
      expect(Math.abs(plane(x2, y2) - 4.5) / 1e-12).toBeLessThan(1);
    }
  });

  it('go round a missing cell, and a saddle keeps its high corners joined where its middle is high', () => {
    expect(
      contourLines(
        [
          [0, 2],
          [0, null],
        ],
        1,
      ),
    ).toEqual([]);
    expect(
      contourLines(
        [
          [0, 0],
          [0, 0],
        ],
        1,
      ),
    ).toEqual([]);
    // High corners at (0, 0) and (1, 1), middle above the level: the low corners are cut off.
    const [a, b] = contourLines(
      [
        [4, 0],
        [0, 4],
      ],
      1,
    );
    expect([a, b].map((piece) => (piece!.x1 + piece!.x2) / 2).sort()).toEqual([0.125, 0.875]);
    expect([a, b].map((piece) => (piece!.y1 + piece!.y2) / 2).sort()).toEqual([0.125, 0.875]);
    for (const piece of [a!, b!])
      expect(Math.hypot(piece.x1 - piece.x2, piece.y1 - piece.y2)).toBeLessThan(0.4);
  });
});

const LIMIT = fakeSurvey({ fields: [INERTIA_GRID, TORQUE_GRID], task: { kind: 'limitMap' } });
const CELLS = gridRows(LIMIT);
const MAP = mapOf(LIMIT, source(CELLS))!;

describe('the limit map', () => {
  const svg = svgSheet(limitMapDrawing(MAP, 'SI')!, 'wide');
  const [body, legend] = svg.split('<g class="legend">') as [string, string];

  it('has a letter in each cell, so that colour is not all that tells', () => {
    const letters = elementsOf(body, 'text').filter(({ text }) => /^[SN?×]( [a-z*]+)?$/u.test(text));
    const count = (letter: string) => letters.filter(({ text }) => text.startsWith(letter)).length;
    const outcome = (kind: string | undefined) =>
      CELLS.filter(({ verdict }) => verdict?.outcome === kind).length;
    expect(count('S')).toBe(outcome('suitable'));
    expect(count('N')).toBe(outcome('notSuitable'));
    expect(count('?')).toBe(outcome('notJudged'));
    expect(count('×')).toBe(outcome(undefined));
    for (const words of ['suitable', 'not suitable', 'not judged', 'no verdict'])
      expect(legend).toContain(`>${words}<`);
  });

  it('has the first field upwards and the second to the right', () => {
    const [none] = elementsOf(body, 'text').filter(({ text }) => text === '×');
    const [open] = elementsOf(body, 'text').filter(({ text }) => text.startsWith('?'));
    // Failed at the largest inertia without friction, not judged at the smallest with the largest.
    expect(Number(none!.attributes.x)).toBeLessThan(Number(open!.attributes.x));
    expect(Number(none!.attributes.y)).toBeLessThan(Number(open!.attributes.y));
  });

  it('has a line along every side between cells of different verdict', () => {
    const state = (i: number, j: number) => CELLS[i * 9 + j]?.verdict?.outcome ?? 'none';
    let sides = 0;
    for (let i = 0; i < 11; i++)
      for (let j = 0; j < 9; j++)
        sides +=
          Number(j < 8 && state(i, j) !== state(i, j + 1)) +
          Number(i < 10 && state(i, j) !== state(i + 1, j));
    const [line] = elementsOf(body, 'path').filter(({ attributes }) => attributes.class === 'boundary');
    expect(line!.attributes.d!.match(/M/gu)).toHaveLength(sides);
    expect(sides).toBeGreaterThan(8);
  });
});

describe('what decides in a cell', () => {
  it('stands in it as letters that the legend explains, the most frequent first', () => {
    const svg = svgSheet(limitMapDrawing(MAP, 'SI')!, 'wide');
    const [body, legend] = svg.split('<g class="legend">') as [string, string];
    const both = CELLS.filter(({ verdict }) => verdict?.decisive === 'windingTemperature stopTime');
    expect(elementsOf(body, 'text').filter(({ text }) => text === 'N ab')).toHaveLength(both.length);
    expect(both.length).toBeGreaterThan(3);
    expect(legend).toContain('>a: time to zero speed<');
    expect(legend).toContain('>b: winding temperature<');
  });

  it('is the run itself where no criterion is named', () => {
    const keys = limitKeys([
      { outcome: 'notSuitable', decisive: '' },
      { outcome: 'suitable', decisive: '' },
      { outcome: 'notJudged', decisive: 'shaftTorque' },
      null,
    ]);
    expect(keys.entries).toEqual([
      { letter: 'a', criterion: 'shaftTorque' },
      { letter: '*', criterion: '' },
    ]);
    expect(keys.of({ outcome: 'notSuitable', decisive: '' })).toBe('*');
  });

  it('is left out where the cells have no room for it', () => {
    const survey = {
      ...LIMIT,
      fields: [INERTIA_GRID, { ...TORQUE_GRID, spread: { ...TORQUE_GRID.spread, count: 81 } as never }],
    };
    const svg = svgSheet(limitMapDrawing(mapOf(survey, source(gridRows(survey)))!, 'SI')!, 'wide');
    expect(svg).not.toMatch(/>a: |>N ab</u);
  });
});

describe('the heat map', () => {
  const time = shownMetric('stopTimeFromTouch', 'SI');
  const svg = svgSheet(heatMapDrawing(MAP, 2, time, 'SI')!, 'wide');

  it('gives darker classes to larger values and hatches what has none', () => {
    const [body] = svg.split('<g class="legend"');
    const boxes = elementsOf(body!, 'rect').filter(
      ({ attributes }) => attributes['data-class'] !== undefined,
    );
    // Boxes come row after row from below, each over a number of columns.
    const columns = boxes.flatMap(({ attributes }) =>
      new Array<string>(Math.round(Number(attributes.width) / ((960 - 14 - 84) / 9))).fill(
        attributes['data-class']!,
      ),
    );
    expect(columns).toHaveLength(99);
    columns.forEach((place, k) => {
      const value = CELLS[k]!.metrics[2];
      expect(place).toBe(value == null ? 'none' : String(Math.floor(value / 2)));
    });
    // Numbers stand in the cells: lines would strike through them.
    expect(svg).not.toContain('data-level');
  });

  it('has lines at the round values where the cells are too small for numbers', () => {
    const fine: VariedField = { ...TORQUE_GRID, spread: { ...TORQUE_GRID.spread, count: 81 } as never };
    const survey = { ...LIMIT, fields: [INERTIA_GRID, fine] };
    const cells = svgSheet(heatMapDrawing(mapOf(survey, source(gridRows(survey)))!, 2, time, 'SI')!, 'wide');
    const levels = elementsOf(cells, 'path').flatMap(({ attributes }) => attributes['data-level'] ?? []);
    expect(levels).toEqual(['5', '10', '15']);
  });

  it('is darkest where a braking torque is hardest, which is its smallest value', () => {
    const [body] = svgSheet(heatMapDrawing(MAP, 0, TORQUE, 'SI')!, 'wide').split('<g class="legend"');
    const fills = elementsOf(body!, 'rect').filter(({ attributes }) =>
      /^\d/u.test(attributes['data-class'] ?? ''),
    );
    const fillOf = (place: string) =>
      fills.find(({ attributes }) => attributes['data-class'] === place)!.attributes.fill;
    const places = fills.map(({ attributes }) => Number(attributes['data-class']));
    // Class 0 holds the smallest torques.
    expect(fillOf('0')).toBe('#08306B');
    expect(fillOf(String(Math.max(...places)))).toBe('#F7FBFF');
  });

  it('has a legend in which no two edges look the same', () => {
    const close = heatClasses([277.1, 277.4, 278.2, 279.4]);
    const edges = close.edges.map((edge) => valueText(edge, close));
    expect(new Set(edges).size).toBe(edges.length);
    expect(valueText(0.12345, heatClasses([0, 12]))).toBe('0.123');
  });

  it('has a legend that grows darker evenly, so that grey print keeps the order', () => {
    const legend = svg.slice(svg.indexOf('<g class="legend"'));
    const grey = elementsOf(legend, 'rect')
      .map(({ attributes }) => attributes.fill!)
      .filter((fill) => fill.startsWith('#'))
      .map((fill) => {
        const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(fill.slice(at, at + 2), 16));
        // Luma of ITU-R BT.601.
        return 0.299 * r! + 0.587 * g! + 0.114 * b!;
      });
    expect(grey).toHaveLength(7);
    grey.slice(1).forEach((luma, k) => {
      expect(grey[k]! - luma).toBeGreaterThan(10);
    });
  });
});

it('the best value of a search only gets better, up to the last run', () => {
  const survey = fakeSurvey({ task: WORST, metrics: ['plugMinimumTorque'] });
  const rows = drawnRows(survey, 300);
  const found = extremeOf(survey, rows)!;
  const figure = convergenceFigure(found, rows.length, -187.3, TORQUE);
  const [panel] = figure.panels;
  if (panel?.kind !== 'lines' || panel.series[0]?.form !== 'line') throw new Error('no line');
  const { x, y } = panel.series[0];
  expect(y.at(-1)).toBe(Math.min(...sorted(0, rows)));
  expect(x.at(-1)).toBe(299);
  for (let k = 1; k < y.length; k++) expect(y[k]!).toBeLessThanOrEqual(y[k - 1]!);
  // It changes at the run that found better, not before.
  for (let k = 1; k < y.length; k++) if (y[k] !== y[k - 1]) expect(x[k]).toBe(x[k - 1]);
  expect(panel.references).toEqual([{ y: -187.3, label: 'as written' }]);
});
