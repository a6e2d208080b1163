import { describe, expect, it } from 'vitest';
import { cutFigure } from '../../../../src/report/canvas/cutFigure.ts';
import { exportName } from '../../../../src/report/canvas/exportName.ts';
import { figureCsv } from '../../../../src/report/canvas/figureCsv.ts';
import { layoutFigure } from '../../../../src/report/canvas/layoutFigure.ts';
import { decodeColumn, pageWidth, plotlyFigure } from '../../../../src/report/canvas/plotlyFigure.ts';
import { printOptions } from '../../../../src/report/canvas/printOptions.ts';
import { encodeColumn } from '../../../../src/report/encodeColumn.ts';
import type { Series } from '../../../../src/report/figureSpec.ts';
import { interactiveFigure } from '../../../../src/report/interactiveFigure.ts';
import { renderSvg } from '../../../../src/report/renderSvg.ts';
import { panelOf, sampleFigure } from './sampleFigure.ts';

const line = (label: string, x: readonly number[], y: readonly number[]): Series => ({
  form: 'line',
  label,
  quantity: 'speed',
  dash: 'solid',
  x: Float64Array.from(x),
  y: Float64Array.from(y),
});
const figureOf = (series: readonly Series[], axis = 'Speed (r/min)') =>
  sampleFigure({ panels: [{ ...panelOf(axis, () => 0), series }] });
const rowsOf = (text: string) => text.split('\r\n').map((row) => row.split(','));

describe('numbers of a figure as CSV', () => {
  it('has a column for each curve, named with its unit, and all digits', () => {
    const csv = figureCsv(
      figureOf([line('motor', [0, 0.1], [1 / 3, -2]), line('load', [0, 0.1], [0, 1e-9])]),
    );
    expect(csv).toBe(
      'Time (s),Speed motor (r/min),Speed load (r/min)\r\n0,0.3333333333333333,0\r\n0.1,-2,1e-9\r\n',
    );
  });

  it('leaves empty what a curve does not have at an instant, and loses none', () => {
    const csv = figureCsv(figureOf([line('one', [0, 2], [1, 2]), line('two', [1, 2], [3, Number.NaN])]));
    expect(rowsOf(csv).slice(1)).toEqual([['0', '1', ''], ['1', '', '3'], ['2', '2', ''], ['']]);
  });

  it('keeps both sides of a switching, which have one instant', () => {
    const csv = figureCsv(figureOf([line('one', [0, 1, 1, 2], [0, 5, 7, 8])]));
    expect(rowsOf(csv).slice(1, 5)).toEqual([
      ['0', '0'],
      ['1', '5'],
      ['1', '7'],
      ['2', '8'],
    ]);
  });

  it('gives curves that turn back places of their own', () => {
    const plane = {
      ...figureOf([line('run', [0, 2, 1], [1, 2, 3]), line('steady', [0, 1], [4, 5])], 'Torque (N·m)'),
    };
    const rows = rowsOf(figureCsv({ ...plane, x: { label: 'Speed (r/min)', domain: [0, 2] } }));
    expect(rows[0]).toHaveLength(4);
    expect(rows.slice(1, 4)).toEqual([
      ['0', '1', '0', '4'],
      ['2', '2', '1', '5'],
      ['1', '3', '', ''],
    ]);
  });

  it('is never a formula and quotes what needs it', () => {
    const [head] = figureCsv(figureOf([line('a, b', [0], [0])], '=1+1 (V)')).split('\r\n');
    expect(head).toBe('Time (s),"\'=1+1 a, b (V)"');
  });
});

describe('a stretch of a figure alone', () => {
  const cut = cutFigure(sampleFigure(), [0.2, 0.65]);

  it('is the figure itself where nothing is cut', () => {
    const spec = sampleFigure();
    expect(cutFigure(spec, null)).toBe(spec);
  });

  it('has the samples, events, states and grounds of the stretch and no others', () => {
    const csv = rowsOf(figureCsv(cut));
    expect([csv[1]![0], csv.at(-2)![0]]).toEqual(['0.2', '0.65']);
    expect(csv).toHaveLength(1 + 451 + 1);
    expect(cut.marks.map(({ x }) => x)).toEqual([0.6, 0.61]);
    expect(cut.bands).toEqual([]);
    const [states] = cut.panels;
    expect(states?.kind === 'states' && states.rows[0]!.intervals).toEqual([
      { x0: 0.2, x1: 0.6, state: 'closed' },
      { x0: 0.6, x1: 0.65, state: 'arcing' },
    ]);
  });

  it('can be drawn', () => {
    expect(renderSvg(cut, { theme: 'light' })).toContain('forward contacts part');
  });
});

describe('files of pictures', () => {
  it('are named after the scenario and the figure, safely', () => {
    expect(exportName('plug-stop.yaml', 'time', 'svg')).toBe('plug-stop-time.svg');
    expect(exportName('../../my file.yml', 'time', 'csv')).toBe('my-file-time.csv');
    expect(exportName('', 'time', 'png')).toBe('run-time.png');
  });

  it('are light, with a title, and as wide as a page at least', () => {
    const { layout } = layoutFigure(sampleFigure(), {
      width: 360,
      height: 600,
      theme: 'dark',
      textSize: 11,
      span: null,
    });
    const options = printOptions(layout, [0, 0.5], null);
    expect(options).toMatchObject({ theme: 'light', heading: true, span: [0, 0.5] });
    expect(options.width).toBeGreaterThanOrEqual(760);
  });
});

describe('a figure for the plotting library', () => {
  const figure = interactiveFigure(sampleFigure());
  const light = plotlyFigure(figure, 'light', 900);
  const text = (value: object) => JSON.stringify(value);

  it('has the very columns of the curves', () => {
    const ramp = light.data.find((trace) => 'x' in trace && trace.x instanceof Float64Array) as {
      x: Float64Array;
      y: Float32Array;
    };
    expect([ramp.x.length, ramp.x[500], ramp.y[500]]).toEqual([1001, 0.5, 10]);
  });

  it('decodes what was encoded', () => {
    const values = Float64Array.from([0, -1.5, Math.PI, 1e300]);
    expect(decodeColumn(encodeColumn(values, 'f8'))).toEqual(values);
    expect(decodeColumn(encodeColumn(values.subarray(0, 2), 'f4'))).toEqual(Float32Array.from([0, -1.5]));
  });

  it('has no name of a colour left, and other colours in the other theme', () => {
    const dark = plotlyFigure(figure, 'dark', 900);
    for (const one of [light, dark]) expect(text(one)).not.toContain('colour:');
    expect(text(light)).not.toBe(text(dark));
  });

  it('asks for no bold by markup, which a strict policy for style sheets forbids', () => {
    expect(text(figure.layout)).toContain('<b>');
    expect(text(light)).not.toContain('<b>');
    const { annotations } = light.layout as { annotations: { text: string; font?: { weight: number } }[] };
    expect(annotations.find((one) => one.text === 'Speed (r/min)')?.font).toEqual({ weight: 600 });
  });

  it('offers to send nothing to a server', () => {
    expect(light.config).toMatchObject({ showSendToCloud: false });
  });

  it('names events in the layout of its width', () => {
    const marks = (width: number) => text(plotlyFigure(figure, 'light', width).layout);
    expect(marks(360)).toContain('plug: reverse contactor closes');
    expect(['narrow', 'wide', 'large']).toEqual([360, 900, 1600].map(pageWidth));
    expect(plotlyFigure(figure, 'light', 360).config).toMatchObject({ displayModeBar: false });
  });
});
