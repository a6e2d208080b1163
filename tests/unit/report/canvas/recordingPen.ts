import type { Pen } from '../../../../src/report/canvas/pen.ts';
import { textWidth } from '../../../../src/report/svgLayout.ts';

/** One stroke of a recorded pen: its corners and how it was drawn. */
export interface Stroke {
  readonly corners: readonly (readonly [number, number])[];
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
  readonly opacity: number;
}

/** A text of a recorded pen with the space it takes, px. */
export interface Written {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly y: number;
}

/** A filled rectangle. */
export interface Filled {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly colour: string;
}

/** What a pen has drawn. */
export interface Recording {
  readonly pen: Pen;
  readonly strokes: Stroke[];
  readonly texts: Written[];
  readonly fills: Filled[];
  readonly circles: { readonly x: number; readonly y: number }[];
}

/** A pen that remembers what it draws. */
export function recordingPen(): Recording {
  const strokes: Stroke[] = [];
  const texts: Written[] = [];
  const fills: Filled[] = [];
  const circles: { x: number; y: number }[] = [];
  let corners: [number, number][] = [];
  let dash: number[] = [];
  const saved: { alpha: number }[] = [];
  const nothing = () => {};
  const state = {
    fillStyle: '',
    strokeStyle: '',
    font: '',
    globalAlpha: 1,
    lineCap: 'butt',
    lineJoin: 'miter',
    lineWidth: 1,
    textAlign: 'left',
    textBaseline: 'alphabetic',
    beginPath: () => {
      corners = [];
    },
    moveTo: (x: number, y: number) => corners.push([x, y]),
    lineTo: (x: number, y: number) => corners.push([x, y]),
    arc: (x: number, y: number) => circles.push({ x, y }),
    rect: nothing,
    clip: nothing,
    fill: nothing,
    clearRect: nothing,
    strokeRect: nothing,
    strokeText: nothing,
    setTransform: nothing,
    save: () => saved.push({ alpha: state.globalAlpha }),
    restore: () => {
      state.globalAlpha = saved.pop()?.alpha ?? 1;
    },
    setLineDash: (lengths: number[]) => {
      dash = lengths;
    },
    stroke: () =>
      strokes.push({
        corners,
        colour: state.strokeStyle,
        width: state.lineWidth,
        dash,
        opacity: state.globalAlpha,
      }),
    fillRect: (x: number, y: number, width: number, height: number) =>
      fills.push({ x, y, width, height, colour: state.fillStyle }),
    fillText: (text: string, x: number, y: number) => {
      const width = textWidth(text, Number.parseFloat(state.font.replace(/^\d+ /u, '')));
      const left = state.textAlign === 'right' ? x - width : state.textAlign === 'center' ? x - width / 2 : x;
      texts.push({ text, left, right: left + width, y });
    },
  };
  return { pen: state as unknown as Pen, strokes, texts, fills, circles };
}
