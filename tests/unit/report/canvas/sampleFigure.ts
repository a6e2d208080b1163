import type { FigureSpec, LinesPanel } from '../../../../src/report/figureSpec.ts';

/** Instants of the sample figure, s: 0 to 1 in equal steps. */
export const INSTANTS = Float64Array.from({ length: 1001 }, (_, i) => i / 1000);

/** A panel with the curve `law` of time. */
export function panelOf(label: string, law: (t: number) => number): LinesPanel {
  return {
    kind: 'lines',
    weight: 1,
    y: { label, domain: [-10, 30] },
    series: [
      { form: 'line', label: 'one', quantity: 'speed', dash: 'solid', x: INSTANTS, y: INSTANTS.map(law) },
    ],
    references: [{ y: 25, label: 'rated' }],
    points: [{ x: 0.5, y: 10, label: 'crest', quantity: 'speed' }],
  };
}

/** A figure of closed formulas: contacts, a ramp of 20 per second, and a parabola. */
export function sampleFigure(change: Partial<FigureSpec> = {}): FigureSpec {
  return {
    id: 'sample',
    title: 'A ramp and a parabola',
    note: 'For tests.',
    description: 'Nothing to be seen.',
    x: { label: 'Time (s)', domain: [0, 1] },
    panels: [
      {
        kind: 'states',
        rows: [
          {
            label: 'forward A',
            intervals: [
              { x0: 0.1, x1: 0.6, state: 'closed' },
              { x0: 0.6, x1: 0.7, state: 'arcing' },
            ],
          },
          { label: 'forward B', intervals: [{ x0: 0.1, x1: 0.6, state: 'closed' }] },
          { label: 'speed switch', intervals: [{ x0: 0.3, x1: 1, state: 'on' }] },
        ],
      },
      panelOf('Speed (r/min)', (t) => 20 * t),
      panelOf('Torque (N·m)', (t) => 20 * t * t),
    ],
    marks: [
      { x: 0.1, label: 'start: forward contactor closes' },
      { x: 0.6, label: 'forward contacts part' },
      { x: 0.61, label: 'plug: reverse contactor closes' },
    ],
    bands: [{ x0: 0.7, x1: 1, label: 'no current' }],
    ...change,
  };
}
