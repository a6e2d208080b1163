import { type ReadonlySignal, useSignal, useSignalEffect } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useId, useLayoutEffect, useRef } from 'preact/hooks';
import { keyWish, wheelFactor } from '../../report/canvas/figureKeys.ts';
import { paintStretch } from '../../report/canvas/paintCursor.ts';
import type { PaintedLayout } from '../../report/canvas/paintedLayout.ts';
import { paintFigure } from '../../report/canvas/paintFigure.ts';
import type { Pen } from '../../report/canvas/pen.ts';
import { pictureTextSize } from '../../report/canvas/penScale.ts';
import { printOptions } from '../../report/canvas/printOptions.ts';
import { chosenSpan, type Span, zoomed } from '../../report/canvas/zoom.ts';
import type { FigureSpec } from '../../report/figureSpec.ts';
import type { Theme } from '../../report/palette.ts';
import { canvasPen } from './canvasPen.ts';
import { FigureMenu } from './FigureMenu.tsx';
import { useFrameRequest } from './useFrameRequest.ts';
import './figureView.css';

/** A figure that is looked at closely, and the cursor that is moved along it. */
export interface FigureViewProps {
  readonly spec: FigureSpec;
  /** The run that is compared with; null: none. */
  readonly behind: FigureSpec | null;
  /** Visible stretch of the shared axis; null: all. */
  readonly span: Span | null;
  readonly theme: Theme;
  /** What the picture is called by those who do not see it. */
  readonly label: string;
  /** Where the cursor stands; only the layer above the curves follows it. */
  readonly cursor: ReadonlySignal<number>;
  /** What the cursor moves along, in its unit. */
  readonly range: Span;
  /** Where the cursor stands, in words. */
  readonly cursorWords: (cursor: number) => string;
  readonly paintCursorAt: (pen: Pen, layout: PaintedLayout, cursor: number) => void;
  /** Where a hand on the picture, px, wants the cursor. */
  readonly cursorUnder: (layout: PaintedLayout, place: readonly [number, number]) => number;
  readonly onSeek: (cursor: number) => void;
  /** null: the picture always shows all. */
  readonly onSpan: ((span: Span | null) => void) | null;
  /** Stands before the tools above the picture. */
  readonly lead?: JSX.Element;
  /** Rows kept for the words of events. */
  readonly markRows?: number;
  /** The curves of `spec` are on the canvas. */
  readonly onPainted?: () => void;
  /** Scenario's file name, for what is saved. */
  readonly fileName: string;
}

/** How much one press of a button enlarges, and undoes that. */
const ENLARGE = 2;
const REDUCE = 0.5;

/** A figure on a canvas with a cursor on a second one: dragged, zoomed, read and saved, with a hand or with keys. */
export function FigureView(props: FigureViewProps): JSX.Element {
  const { spec, behind, span, theme, cursor, range, onSeek, onSpan } = props;
  const id = useId();
  const area = useRef<HTMLDivElement>(null);
  const below = useRef<HTMLCanvasElement>(null);
  const above = useRef<HTMLCanvasElement>(null);
  const layout = useRef<PaintedLayout | null>(null);
  const size = useSignal<DOMRectReadOnly | null>(null);
  const stretch = useSignal<Span | null>(null);
  const isChoosing = useSignal(false);
  const isDragging = useRef(false);

  const paintAbove = () => {
    const { current } = layout;
    if (current === null || above.current === null) return;
    const pen = canvasPen(above.current, current.width, current.height, devicePixelRatio);
    if (pen === null) return;
    props.paintCursorAt(pen, current, cursor.peek());
    if (stretch.peek() !== null) paintStretch(pen, current, stretch.peek() ?? current.span, theme);
  };
  const paintBelow = () => {
    const box = size.peek();
    if (box === null || below.current === null) return;
    const { width, height } = box;
    const pen = canvasPen(below.current, width, height, devicePixelRatio);
    if (pen === null) return;
    const textSize = pictureTextSize(getComputedStyle(document.documentElement).fontSize, width);
    const rows = props.markRows === undefined ? {} : { markRows: props.markRows };
    layout.current = paintFigure(pen, spec, { width, height, theme, textSize, span, behind, ...rows });
    paintAbove();
    props.onPainted?.();
  };
  const requestBelow = useFrameRequest(paintBelow);
  const requestAbove = useFrameRequest(paintAbove);

  useEffect(() => {
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) size.value = entry.contentRect;
    });
    if (area.current !== null) observer.observe(area.current);
    return () => observer.disconnect();
  }, [size]);
  useLayoutEffect(requestBelow, [spec, behind, span, theme, size.value, requestBelow]);
  useSignalEffect(() => {
    cursor.value;
    stretch.value;
    requestAbove();
  });

  const whole = (): Span => layout.current?.whole ?? spec.x.domain;
  const zoomBy = (factor: number, about: number) => onSpan?.(zoomed(span, whole(), factor, about));
  const onPointerDown = (event: PointerEvent) => {
    const { current } = layout;
    if (current === null || event.button !== 0) return;
    above.current?.setPointerCapture(event.pointerId);
    const x = current.xAt(event.offsetX);
    isDragging.current = true;
    if (onSpan !== null && (event.shiftKey || isChoosing.value)) stretch.value = [x, x];
    else onSeek(props.cursorUnder(current, [event.offsetX, event.offsetY]));
  };
  const onPointerMove = (event: PointerEvent) => {
    const { current } = layout;
    if (current === null || !isDragging.current) return;
    if (stretch.value !== null) stretch.value = [stretch.value[0], current.xAt(event.offsetX)];
    else onSeek(props.cursorUnder(current, [event.offsetX, event.offsetY]));
  };
  const letGo = () => {
    isDragging.current = false;
    stretch.value = null;
  };
  const onPointerUp = () => {
    const chosen =
      stretch.value === null || layout.current === null
        ? undefined
        : chosenSpan(stretch.value[0], stretch.value[1], layout.current.pxAt);
    letGo();
    if (chosen === undefined) return;
    isChoosing.value = false;
    onSpan?.(chosen);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const { key, shiftKey: shift } = event;
    const axis = onSpan === null ? range : whole();
    const wish = keyWish({ key, shift, cursor: cursor.peek(), range, span, whole: axis });
    if (wish === null || (wish.kind === 'span' && onSpan === null)) return;
    event.preventDefault();
    if (wish.kind === 'seek') onSeek(wish.x);
    else onSpan?.(wish.span);
  };
  const onWheel = (event: WheelEvent) => {
    if (!event.ctrlKey || onSpan === null || layout.current === null) return;
    event.preventDefault();
    zoomBy(wheelFactor(event.deltaY), layout.current.xAt(event.offsetX));
  };

  return (
    <figure class="figure-view">
      <figcaption>
        {props.lead}
        <div class="figure-tools screen-only">
          {onSpan !== null && (
            <>
              <button type="button" aria-label="Enlarge" onClick={() => zoomBy(ENLARGE, cursor.peek())}>
                +
              </button>
              <button type="button" aria-label="Reduce" onClick={() => zoomBy(REDUCE, cursor.peek())}>
                −
              </button>
              <button
                type="button"
                aria-pressed={isChoosing.value}
                title="Then drag over the picture; or drag with Shift held"
                onClick={() => {
                  isChoosing.value = !isChoosing.value;
                }}
              >
                Choose a stretch
              </button>
            </>
          )}
          <FigureMenu
            spec={spec}
            span={span}
            fileName={props.fileName}
            printed={() => layout.current && printOptions(layout.current, span, behind)}
          />
        </div>
        <strong id={`${id}-title`}>{spec.title}</strong>
      </figcaption>
      <div
        ref={area}
        class={isChoosing.value ? 'figure-area figure-choosing' : 'figure-area'}
        role="slider"
        tabIndex={0}
        aria-label={props.label}
        aria-describedby={`${id}-title ${id}-about`}
        aria-valuemin={range[0]}
        aria-valuemax={range[1]}
        aria-valuenow={cursor.value}
        aria-valuetext={props.cursorWords(cursor.value)}
        onKeyDown={onKeyDown}
      >
        <canvas ref={below} />
        <canvas
          ref={above}
          onPointerDown={onPointerDown}
          onPointerMove={onPointerMove}
          onPointerUp={onPointerUp}
          onPointerCancel={letGo}
          onDblClick={() => onSpan?.(null)}
          onWheel={onWheel}
        />
      </div>
      <p id={`${id}-about`} class="visually-hidden">
        {spec.description} Arrow keys move the cursor, with Shift ten times as far
        {onSpan === null ? '.' : '; plus and minus enlarge and reduce, Escape shows the whole run.'}
      </p>
      {spec.note === '' ? null : (
        <details class="figure-note screen-only">
          <summary>How to read it</summary>
          <p>{spec.note}</p>
        </details>
      )}
    </figure>
  );
}
