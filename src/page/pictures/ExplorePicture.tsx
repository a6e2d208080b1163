import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { plotlyFigure } from '../../report/canvas/plotlyFigure.ts';
import { interactiveFigure } from '../../report/interactiveFigure.ts';
import type { PageProps } from '../actions.ts';
import { effectiveTheme } from '../theme.ts';
import { loadPlotly } from './loadPlotly.ts';
import './explorePicture.css';
import './plotlyRules.css';

/** Every curve of the run with its values under the pointer; the library for it is fetched when it is opened first. */
export function ExplorePicture({ state }: PageProps): JSX.Element {
  const isOpen = useSignal(false);
  const trouble = useSignal('');
  const plot = useRef<HTMLDivElement>(null);
  const view = state.view.value;
  const theme = effectiveTheme.value;
  useEffect(() => {
    const { current } = plot;
    if (!isOpen.value || view === null || current === null) return;
    // A run that comes while the library is fetched takes the place of this one.
    let isWanted = true;
    const draw = async () => {
      try {
        const Plotly = await loadPlotly();
        if (!isWanted) return;
        const figure = plotlyFigure(interactiveFigure(view.time), theme, current.clientWidth);
        await Plotly.react(current, figure.data, figure.layout, figure.config);
        trouble.value = '';
      } catch (error) {
        trouble.value = `The plotting library could not be loaded: ${error instanceof Error ? error.message : error}`;
      }
    };
    void draw();
    return () => {
      isWanted = false;
    };
  }, [isOpen.value, view, theme, trouble]);
  return (
    <details
      class="explore-picture screen-only"
      onToggle={(event) => {
        isOpen.value = event.currentTarget.open;
      }}
    >
      <summary>Explore in detail</summary>
      {/* Tells the library that its style sheet is there already (plotlyRules.css): the policy forbids it to write one. */}
      <div id="plotly.js-style-global" class="no-inline-styles" hidden />
      <p role="status">{trouble.value}</p>
      <div ref={plot} class="explore-plot" />
    </details>
  );
}
