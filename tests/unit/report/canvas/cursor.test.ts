import { describe, expect, it } from 'vitest';
import { layoutFigure } from '../../../../src/report/canvas/layoutFigure.ts';
import { paintCursor, paintPoint, paintStretch } from '../../../../src/report/canvas/paintCursor.ts';
import { pictureTextSize, pixelSize } from '../../../../src/report/canvas/penScale.ts';
import { nearestInstant, planePoint, planeTail } from '../../../../src/report/canvas/planePath.ts';
import { readouts, readoutWords } from '../../../../src/report/canvas/readouts.ts';
import type { Film } from '../../../../src/report/live/film.ts';
import { expectWithin } from '../../../support/tolerance.ts';
import { recordingPen } from './recordingPen.ts';
import { panelOf, sampleFigure } from './sampleFigure.ts';

const OPTIONS = { width: 900, height: 560, theme: 'light', textSize: 13, span: null } as const;
/** px */
const SAME = { absolute: 1e-6 };

/** A film of a point on a circle of 100 r/min and 10 N·m, once round in 1 s. */
function circleFilm(): Film {
  const t = Float64Array.from({ length: 1001 }, (_, i) => i / 1000);
  const turn = (law: (angle: number) => number, size: number) => t.map((x) => size * law(2 * Math.PI * x));
  const columns = { t, speed: turn(Math.cos, 100), torque: turn(Math.sin, 10) };
  return { units: 'SI', tStart: 0, tEnd: 1, columns } as unknown as Film;
}

describe('the cursor over time', () => {
  const spec = sampleFigure();
  const { layout } = layoutFigure(spec, OPTIONS);

  it('runs through all panels and has a dot on each curve where its law puts it', () => {
    const { pen, strokes, circles } = recordingPen();
    paintCursor(pen, layout, spec, 0.25, 'light');
    const [line] = strokes;
    expect(line!.corners.every(([x]) => x === layout.pxAt(0.25))).toBe(true);
    expect(line!.corners[1]![1] - line!.corners[0]![1]).toBeGreaterThan(layout.bottom - layout.top);
    expect(circles).toHaveLength(2);
    expectWithin(circles[0]!.y, layout.pyAt(1, 5), SAME, 'ramp at 0.25: 5');
    expectWithin(circles[1]!.y, layout.pyAt(2, 1.25), SAME, 'parabola at 0.25: 1.25');
  });

  it('is not painted out of sight', () => {
    const { pen, strokes, circles } = recordingPen();
    paintCursor(pen, layoutFigure(spec, { ...OPTIONS, span: [0.5, 0.6] }).layout, spec, 0.25, 'light');
    expect([strokes.length, circles.length]).toEqual([0, 0]);
  });

  it('reads every curve between its samples, with units, and states in words', () => {
    expect(readouts(spec, 0.25055)).toMatchObject([
      { panel: 'Contacts', rows: [{ label: 'closed', text: 'forward A B' }] },
      { panel: 'Speed', rows: [{ label: 'one', text: '5.01 r/min', quantity: 'speed' }] },
      { panel: 'Torque', rows: [{ label: 'one', text: '1.26 N·m' }] },
    ]);
  });

  it('tells arcing from closed, and what is on at the very end', () => {
    expect(readouts(spec, 0.65)[0]!.rows.map(({ label, text }) => `${label}: ${text}`)).toEqual([
      'arcing: forward A',
      'on: speed switch',
    ]);
    expect(readouts(spec, 1)[0]!.rows[0]!.text).toBe('speed switch');
    expect(readouts(spec, 0.05)[0]!.rows).toMatchObject([{ label: '', text: 'none closed' }]);
  });

  it('stands beside what the compared run has there, where it has the same quantity', () => {
    const behind = sampleFigure({ panels: [panelOf('Speed (r/min)', (t) => 40 * t)] });
    const rows = readouts(spec, 0.25, behind).map((one) => one.rows[0]!.pinned);
    expect(rows).toEqual([null, '10.0 r/min', null]);
  });

  it('has a dash beyond the end of a curve', () => {
    expect(readouts(spec, 1.2)[1]!.rows[0]!.text).toBe('—');
  });

  it('is a sentence for those who do not see it', () => {
    const words = readoutWords(readouts(spec, 0.25));
    expect(words).toBe('Contacts: forward A B; Speed: 5.00 r/min; Torque: 1.25 N·m');
  });

  it('what a hand does not choose is dimmed on both sides', () => {
    const { pen, fills } = recordingPen();
    paintStretch(pen, layout, [0.75, 0.25], 'light');
    expectWithin(fills[0]!.x + fills[0]!.width, layout.pxAt(0.25), SAME, 'left part');
    expectWithin(fills[1]!.x, layout.pxAt(0.75), SAME, 'right part');
  });
});

describe('the moving point in a plane', () => {
  const film = circleFilm();
  const spec = sampleFigure({
    x: { label: 'Speed (r/min)', domain: [-120, 120] },
    panels: [{ ...panelOf('Torque (N·m)', () => 0), y: { label: 'Torque (N·m)', domain: [-12, 12] } }],
    marks: [],
    bands: [],
  });
  const { layout } = layoutFigure(spec, OPTIONS);

  it('stands where the run is, at the end of the way it came in 20 ms', () => {
    const { pen, strokes, circles } = recordingPen();
    const { speed, torque } = planePoint(film, 0.25);
    paintPoint(pen, layout, spec, speed, torque, planeTail(film, 0.25), 'light');
    expectWithin(circles[0]!.x, layout.pxAt(0), { absolute: 1e-3 }, 'top of the circle: speed 0');
    expectWithin(circles[0]!.y, layout.pyAt(0, 10), { absolute: 1e-3 }, 'top of the circle: 10 N·m');
    const tail = strokes[0]!.corners;
    expect(tail).toHaveLength(21);
    expectWithin(tail[0]![0], layout.pxAt(100 * Math.cos(2 * Math.PI * 0.23)), SAME, '20 ms before');
  });

  it('is taken to the place of the run nearest to a hand', () => {
    const place = [layout.pxAt(-150), layout.pyAt(0, 0)] as const;
    expectWithin(nearestInstant(film, layout, 0, place, 0.5), 0.5, { absolute: 2e-3 }, 'leftmost');
  });

  it('where start and end meet it stays at the one it was at', () => {
    const place = [layout.pxAt(100), layout.pyAt(0, 0)] as const;
    expect(nearestInstant(film, layout, 0, place, 0.05)).toBeLessThan(0.05);
    expect(nearestInstant(film, layout, 0, place, 0.95)).toBeGreaterThan(0.95);
  });
});

describe('the size of a canvas', () => {
  it('has as many own pixels as the display shows, and never none', () => {
    expect(pixelSize(300.4, 200, 1.5)).toEqual({ width: 451, height: 300 });
    expect(pixelSize(0, 0, 1)).toEqual({ width: 1, height: 1 });
  });

  it('text grows with the text of the page and is smaller on a telephone', () => {
    expect(pictureTextSize('24px', 900)).toBe(1.5 * pictureTextSize('16px', 900));
    expect(pictureTextSize('16px', 360)).toBeLessThan(pictureTextSize('16px', 900));
    expect(pictureTextSize('', 900)).toBe(pictureTextSize('16px', 900));
  });
});
