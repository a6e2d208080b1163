import { describe, expect, it } from 'vitest';
import { layoutFigure, type PaintOptions } from '../../../../src/report/canvas/layoutFigure.ts';
import { paintFigure } from '../../../../src/report/canvas/paintFigure.ts';
import { quantityColour, surfaceColour } from '../../../../src/report/palette.ts';
import { expectWithin } from '../../../support/tolerance.ts';
import { recordingPen } from './recordingPen.ts';
import { panelOf, sampleFigure } from './sampleFigure.ts';

const OPTIONS: PaintOptions = { width: 900, height: 560, theme: 'light', textSize: 13, span: null };
/** px: what is compared is computed twice in another order. */
const SAME = { absolute: 1e-6 };

const painted = (spec = sampleFigure(), change: Partial<PaintOptions> = {}) => {
  const recording = recordingPen();
  const layout = paintFigure(recording.pen, spec, { ...OPTIONS, ...change });
  return { ...recording, layout, words: recording.texts.map(({ text }) => text) };
};
const curvesOf = ({ strokes }: ReturnType<typeof painted>) =>
  strokes.filter(({ colour, corners }) => colour === quantityColour('speed', 'light') && corners.length > 50);

describe('where everything of a figure stands', () => {
  const { layout } = layoutFigure(sampleFigure(), OPTIONS);

  it('px and values of the shared axis are each other’s inverse', () => {
    for (const x of [0, 0.123, 1]) expectWithin(layout.xAt(layout.pxAt(x)), x, { absolute: 1e-12 }, 'x');
  });

  it('a place beyond the panel belongs to the edge', () => {
    expect(layout.xAt(-50)).toBe(0);
    expectWithin(layout.xAt(5000), 1, { absolute: 1e-12 }, 'right edge');
  });

  it('panels stand below each other without overlap, within the height, and are found by a height', () => {
    const edges = layout.plots.flatMap(({ top, bottom }) => [top, bottom]);
    expect(edges).toEqual([...edges].sort((a, b) => a - b));
    expect(edges.at(-1)!).toBeLessThan(OPTIONS.height);
    expect(layout.plots.map(({ top, bottom }) => layout.panelAt((top + bottom) / 2))).toEqual([0, 1, 2]);
    expect(layout.panelAt(0)).toBe(-1);
  });

  it('panels of curves share the height by their weights', () => {
    const heavy = { ...panelOf('Torque (N·m)', (t) => t), weight: 3 };
    const { plots } = layoutFigure(
      sampleFigure({ panels: [panelOf('Speed (r/min)', (t) => t), heavy] }),
      OPTIONS,
    ).layout;
    const [one, three] = plots.map(({ top, bottom }) => bottom - top);
    expectWithin(three! / one!, 3, { relative: 1e-9 }, 'ratio of heights');
  });

  it('the panels do not move when the events do, where rows are kept for words', () => {
    const tops = (marks: ReturnType<typeof sampleFigure>['marks']) =>
      layoutFigure(sampleFigure({ marks }), { ...OPTIONS, markRows: 4 }).layout.plots.map(({ top }) => top);
    expect(tops([])).toEqual(tops(sampleFigure().marks));
  });

  it('what is compared is shown to its end, even where it lasts longer', () => {
    const longer = sampleFigure({ x: { label: 'Time (s)', domain: [0, 3] } });
    expect(layoutFigure(sampleFigure(), { ...OPTIONS, behind: longer }).layout.span).toEqual([0, 3]);
  });

  it('over the whole run the vertical axis is the figure’s own', () => {
    expect(layout.plots[1]!.domain).toEqual([-10, 30]);
  });

  it('over a stretch it spans what is to be seen there, with zero and 8 % above', () => {
    // The ramp 20·t reaches 8 at 0.4; below zero stands the usual fiftieth.
    const { plots } = layoutFigure(sampleFigure(), { ...OPTIONS, span: [0.2, 0.4] }).layout;
    expectWithin(plots[1]!.domain![1], 1.08 * 8, { relative: 1e-9 }, 'upper end');
    expectWithin(plots[1]!.domain![0], -0.02 * 8, { relative: 1e-9 }, 'lower end');
  });

  it('a stretch between two samples is scaled by what is interpolated at its ends', () => {
    const { plots } = layoutFigure(sampleFigure(), { ...OPTIONS, span: [0.5002, 0.5008] }).layout;
    expectWithin(plots[1]!.domain![1], 1.08 * 20 * 0.5008, { relative: 1e-9 }, 'upper end');
  });

  it('a curve of zeros does not fill the panel with rounding errors', () => {
    const spec = sampleFigure({ panels: [panelOf('Speed (r/min)', () => 1e-9)] });
    const [low, high] = layoutFigure(spec, { ...OPTIONS, span: [0.2, 0.4] }).layout.plots[0]!.domain!;
    expectWithin(high - low, 0.02 * 40, { relative: 1e-6 }, 'span of the axis');
  });
});

describe('painting a figure', () => {
  it('puts the ends of a curve where the axes have them', () => {
    const whole = painted();
    const [ramp] = curvesOf(whole);
    const [x0, y0] = ramp!.corners[0]!;
    const [x1, y1] = ramp!.corners.at(-1)!;
    const plot = whole.layout.plots[1]!;
    expectWithin(x0, plot.left, SAME, 'left end');
    expectWithin(x1, plot.right, SAME, 'right end');
    // 0 and 20 on an axis from −10 to 30: a quarter and three quarters of the height.
    const height = plot.bottom - plot.top;
    expectWithin(y0, plot.bottom - 0.25 * height, SAME, 'start');
    expectWithin(y1, plot.bottom - 0.75 * height, SAME, 'end');
  });

  it('names axes with their units, every curve, rated value, event and point', () => {
    const { words } = painted();
    for (const word of ['Speed (r/min)', 'Torque (N·m)', 'Time (s)', 'one', 'rated', 'crest', 'no current'])
      expect(words).toContain(word);
    for (const mark of sampleFigure().marks) expect(words).toContain(mark.label);
  });

  it('has a title only where the picture goes away alone', () => {
    expect(painted().words).not.toContain('A ramp and a parabola');
    expect(painted(undefined, { heading: true }).words).toContain('A ramp and a parabola');
  });

  it('tells closed, arcing and on apart without colour: full, hatched, thin', () => {
    const { fills, strokes, layout } = painted();
    const contacts = quantityColour('contacts', 'light');
    const bars = fills.filter(({ colour }) => colour === contacts);
    const closed = bars.find(({ x }) => Math.abs(x - layout.pxAt(0.1)) < 1e-6)!;
    const on = bars.find(({ x }) => Math.abs(x - layout.pxAt(0.3)) < 1e-6)!;
    expect(bars).toHaveLength(3);
    expect(on.height).toBeLessThan(closed.height / 2);
    expectWithin(closed.width, layout.pxAt(0.6) - layout.pxAt(0.1), SAME, 'length of the closed bar');
    const hatch = strokes.find(
      ({ corners, colour }) => colour === surfaceColour('ink', 'light') && corners.length > 10,
    );
    expect(hatch?.corners.every(([, y]) => y > layout.plots[0]!.top && y < layout.plots[0]!.bottom)).toBe(
      true,
    );
  });

  it('paints the compared run thin, pale and broken, below, and names it once', () => {
    const both = painted(undefined, { behind: sampleFigure() });
    const curves = curvesOf(both);
    expect(curves).toHaveLength(4);
    const [pinned, own] = curves;
    expect(pinned!.opacity).toBeLessThan(own!.opacity);
    expect(pinned!.width).toBeLessThan(own!.width);
    expect(pinned!.dash.length).toBeGreaterThan(0);
    expect(own!.dash).toEqual([]);
    expect(both.words.filter((word) => word === 'pinned run')).toHaveLength(1);
  });

  it('does not compare quantities in different units', () => {
    const behind = sampleFigure({ panels: [panelOf('Torque (lbf·ft)', (t) => t)] });
    const both = painted(undefined, { behind });
    expect(curvesOf(both)).toHaveLength(2);
    expect(both.words).not.toContain('pinned run');
  });

  it('a mark out of sight is not painted', () => {
    const { words } = painted(undefined, { span: [0.55, 0.65] });
    expect(words).not.toContain('start: forward contactor closes');
    expect(words).toContain('forward contacts part');
    expect(words).not.toContain('no current');
  });

  it.each([
    ['light', 900, 560],
    ['dark', 360, 600],
    ['light', 1280, 400],
  ] as const)('no words of events overlap or leave the picture (%s, %i × %i)', (theme, width, height) => {
    const marks = Array.from({ length: 12 }, (_, i) => ({ x: 0.05 + 0.08 * i, label: `event number ${i}` }));
    const { texts } = painted(sampleFigure({ marks }), { theme, width, height });
    const words = texts.filter(({ text }) => text.startsWith('event number'));
    expect(words.length).toBeGreaterThan(1);
    for (const one of words) {
      expect(one.left).toBeGreaterThanOrEqual(0);
      expect(one.right).toBeLessThanOrEqual(width);
      const alike = words.filter((other) => other !== one && Math.abs(other.y - one.y) < 5);
      expect(alike.every((other) => other.left > one.right || other.right < one.left)).toBe(true);
    }
  });

  it('where words do not fit the earlier events keep theirs, and a shorter stretch has room for more', () => {
    const marks = Array.from({ length: 12 }, (_, i) => ({ x: 0.5 + 0.004 * i, label: `event number ${i}` }));
    const named = (span: readonly [number, number] | null) =>
      painted(sampleFigure({ marks }), { span }).words.filter((word) => word.startsWith('event number'));
    expect(named(null).length).toBeLessThan(12);
    expect(named(null)).toContain('event number 0');
    expect(named([0.49, 0.56]).length).toBeGreaterThan(named(null).length);
  });

  it('paints bars from zero', () => {
    const spec = sampleFigure({
      x: { label: 'Energy (kJ)', domain: [-10, 40] },
      panels: [{ kind: 'bars', rows: [{ label: 'cage', value: -5, text: '−5 kJ', quantity: 'heat' }] }],
      marks: [],
      bands: [],
    });
    const { fills, layout, words } = painted(spec);
    const bar = fills.find(({ colour }) => colour === quantityColour('heat', 'light'))!;
    expectWithin(bar.x + bar.width, layout.pxAt(0), SAME, 'right end');
    expectWithin(bar.x, layout.pxAt(-5), SAME, 'left end');
    expect(words).toEqual(expect.arrayContaining(['cage', '−5 kJ']));
  });
});
