import { describe, expect, it } from 'vitest';
import type { FigureSpec, StatesPanel } from '../../../src/report/figureSpec.ts';
import { interactiveFigure } from '../../../src/report/interactiveFigure.ts';
import { renderSvg } from '../../../src/report/renderSvg.ts';
import { sequenceDetailFigure, sequenceFigure, sequenceFigures } from '../../../src/report/sequenceFigure.ts';
import { textWidth } from '../../../src/report/svgLayout.ts';
import { END, REVERSE } from './fakeRun.ts';
import { CHANNELS, coil, device, fakeSequence, SEQUENCE_EVENTS, STOP } from './fakeSequence.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const run = fakeSequence();
/** Everything that can have a row. */
const crowded = fakeSequence({
  channels: [
    ...CHANNELS,
    device('reverseButton', 0.5, 0.6),
    device('resetButton', 0.7, 0.8),
    device('emergencyStop', 2),
    device('overload', 2.1),
    device('reverseMemory', 1.6, 1.7),
    device('forwardRun', 0.01, STOP),
    device('reverseRun'),
    device('ready', 0.2),
    device('reverseTimer', 0.05, 0.1),
    coil('reverseTimer', 0, 0.1),
    device('limitTimer', 0),
    coil('limitTimer', 0, 2),
    device('lockout', 0.03, 1.5),
    device('switchReverse', 1.99, 2.1),
    {
      of: { kind: 'controlVoltage' },
      changes: [
        { t: 0, value: 'on' },
        { t: 1.6, value: 'off' },
      ],
    },
  ],
});
const SI = { units: 'SI' } as const;
const figures = [...sequenceFigures(run, SI), ...sequenceFigures(crowded, SI)];
const DRAWINGS = figures.flatMap((spec) =>
  [960, 400].map((width) => [spec.id, width, renderSvg(spec, { theme: 'light', width })] as const),
);

interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where the texts of a drawing stand by the estimate that lays them out; letters reach 0.75 em up and 0.2 em down. */
function textBoxes(svg: string): TextBox[] {
  return [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/gu)].map(([, attributes = '', text = '']) => {
    const read = (name: string) => new RegExp(` ${name}="([^"]*)"`, 'u').exec(attributes)?.[1];
    const size = Number(read('font-size'));
    const width = textWidth(text, size);
    const x = Number(read('x'));
    const y = Number(read('y'));
    const anchor = read('text-anchor') ?? 'start';
    const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
    return { text, left, right: left + width, top: y - 0.75 * size, bottom: y + 0.2 * size };
  });
}

describe.each(DRAWINGS)('the drawing of %s, %i px wide', (_, width, svg) => {
  const boxes = textBoxes(svg);

  it('has every text inside its frame', () => {
    const height = Number(/viewBox="0 0 \d+ (\d+)"/u.exec(svg)?.[1]);
    for (const box of boxes) {
      expect(box.left, box.text).toBeGreaterThanOrEqual(0);
      expect(box.right, box.text).toBeLessThanOrEqual(width);
      expect(box.top, box.text).toBeGreaterThanOrEqual(0);
      expect(box.bottom, box.text).toBeLessThanOrEqual(height);
    }
  });

  it('has no text upon another', () => {
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1)) {
        const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        expect(apart, `${a.text} / ${b.text}`).toBe(true);
      }
  });

  it('has every bar of a state inside its frame', () => {
    for (const [, x = '', w = ''] of svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/gu))
      expect(Number(x) + Number(w)).toBeLessThanOrEqual(width);
  });
});

const statesOf = (spec: FigureSpec) => spec.panels[0] as StatesPanel;

describe('the sequence chart', () => {
  it('has the states above, then current, speed and thermal memory with the level that trips', () => {
    const spec = sequenceFigure(run, SI);
    expect(spec.panels.map((panel) => (panel.kind === 'lines' ? panel.y.label : panel.kind))).toEqual([
      'states',
      'Line current, r.m.s. (A)',
      'Speed (r/min)',
      'Thermal memory (share of trip)',
    ]);
    const thermal = spec.panels[3]!;
    expect(thermal.kind === 'lines' && thermal.references).toEqual([{ y: 1, label: 'trips' }]);
    expect(sequenceFigure(fakeSequence({ thermal: null }), SI).panels).toHaveLength(3);
  });

  it('shows the r.m.s. value that all three phases have together: that of each where they are balanced', () => {
    const balanced = fakeSequence();
    const crest = 30;
    const trajectory = {
      ...balanced.trajectory,
      sampleAt: (instants: Float64Array) => {
        const columns = balanced.trajectory.sampleAt(instants);
        const phase = (shift: number) => columns.t.map((t) => crest * Math.cos(314 * t - shift));
        return { ...columns, iA: phase(0), iB: phase((2 * Math.PI) / 3), iC: phase((4 * Math.PI) / 3) };
      },
    };
    const panel = sequenceFigure({ ...balanced, trajectory }, { ...SI, waveforms: true }).panels[1]!;
    const series = panel.kind === 'lines' ? panel.series[0]! : null;
    if (series?.form !== 'line') throw new Error('no line of the current');
    // A sum of three squares of cosines: exact but for rounding.
    for (const value of series.y.subarray(0, 200)) expect(value).toBeCloseTo(crest / Math.SQRT2, 9);
  });

  it('says in its title which event decided the run, with the cause and the speed', () => {
    expect(sequenceFigure(run, SI).title.replaceAll('\u00A0', ' ')).toBe(
      'Reverse coil released: zero-speed switch opens at 41 r/min, t = 1.9551 s',
    );
  });

  it.each([
    ['overloadTrips', 'overload relay trips', 'Overload relay trips at 1785 r/min'],
    ['emergencyStopPressed', 'emergency stop pressed', 'Emergency stop pressed at 1785 r/min'],
    ['supplyLost', 'the supply is lost', 'The supply is lost at 1785 r/min'],
  ] as const)('has %s in its title before anything else', (kind, text, words) => {
    const events = [...SEQUENCE_EVENTS, { t: 1.2, kind, text, speed: 186.9 }];
    const { title } = sequenceFigure(fakeSequence({ events }), SI);
    expect(title.replaceAll('\u00A0', ' ')).toBe(`${words}, t = 1.2000 s`);
  });

  it('says of a change-over that ends in a short circuit that it does', () => {
    const shortCircuit = {
      t: REVERSE,
      phase: 'A',
      prospectiveCurrent: null,
      lastExtinction: 1.6,
      welded: false,
      bothClosed: false,
    } as const;
    const failed = { ...run, trajectory: { ...run.trajectory, shortCircuit } };
    expect(sequenceDetailFigure(failed, SI)?.title).toMatch(
      /onto contacts that still conduct: short circuit$/u,
    );
  });

  it('tells who does not see it when each device was on', () => {
    const { description } = sequenceFigure(run, SI);
    expect(description).toContain('-K2 reverse contactor coil: on from 1.5200 s to 1.9551 s.');
    expect(description).toContain(
      '-K1 forward pole B: closed from 0.0250 s to 1.5000 s, arcing from 1.5000 s to 1.5023 s.',
    );
    const dead = sequenceFigure(fakeSequence({ channels: [coil('reverseContactor')] }), SI).description;
    expect(dead).toContain('-K2 reverse contactor coil: never.');
    const times = Array.from({ length: 40 }, (_, i) => 0.5 + 0.01 * i);
    const chatters = fakeSequence({ channels: [device('forwardContactor', ...times)] });
    expect(sequenceFigure(chatters, SI).description).toContain('and 17 times more.');
  });

  it('of a window has its axis and its rows cut to it', () => {
    const spec = sequenceFigure(run, { ...SI, window: [1.4, 1.6] });
    expect(spec.x.domain).toEqual([1.4, 1.6]);
    for (const { intervals } of statesOf(spec).rows)
      for (const { x0, x1 } of intervals) {
        expect(x0).toBeGreaterThanOrEqual(1.4);
        expect(x1).toBeLessThanOrEqual(1.6);
      }
  });

  it('enlarges the change-over in milliseconds from the release of the coil', () => {
    const spec = sequenceDetailFigure(run, SI)!;
    expect(spec.x.label).toBe('Time after 1.4900 s (ms)');
    expect(spec.title).toBe(
      'Reverse contactor closes 55.0 ms after the forward coil drops, 38.9 ms after the last arc is out',
    );
    const touch = statesOf(spec).rows.find(({ label }) => label === '-K2 reverse pole A')?.intervals[0]?.x0;
    // ms; differences of seconds with 15 digits.
    expect(touch).toBeCloseTo(1e3 * (REVERSE - STOP), 9);
  });

  it('has no enlargement where there is no change-over', () => {
    expect(sequenceFigures(fakeSequence({ events: [] }), SI).map(({ id }) => id)).toEqual(['sequence']);
    expect(sequenceDetailFigure(fakeSequence({ events: [] }), SI)).toBeNull();
  });
});

describe('states in a drawing', () => {
  const svg = renderSvg(
    {
      ...sequenceFigure(run, SI),
      panels: [
        {
          kind: 'states',
          rows: (['on', 'closed', 'arcing'] as const).map((state) => ({
            label: state,
            intervals: [{ x0: 0.5, x1: 1, state }],
          })),
        },
      ],
      marks: [],
      bands: [],
    },
    { theme: 'light' },
  );

  it('differ in form, not in colour alone: thin, thick, hatched with an outline', () => {
    const bars = [
      ...svg.matchAll(/<rect x="[\d.]+" y="[\d.]+" width="[\d.]+" height="([\d.]+)" fill="([^"]+)"([^/]*)/gu),
    ];
    expect(bars.map(([, height]) => Number(height))).toEqual([4, 10, 10]);
    expect(bars[0]?.[2]).toBe(bars[1]?.[2]);
    expect(bars[2]?.[2]).toContain('hatch');
    expect(bars.map(([, , , rest]) => rest?.includes('stroke'))).toEqual([false, false, true]);
  });

  it('a row whose label does not fit beside the drawing is named by its short label', () => {
    expect(renderSvg(sequenceFigure(run, SI), { theme: 'light', width: 400 })).toContain('>-K3 fwd mem<');
  });
});

describe('states in a plot to zoom into', () => {
  const plot = interactiveFigure(sequenceFigure(run, { ...SI, waveforms: true }));
  const bars = plot.traces.filter((trace) => 'hovertext' in trace) as {
    readonly base: number[];
    readonly x: number[];
    readonly y: number[];
    readonly hovertext: string[];
    readonly width: number;
    readonly marker: object;
  }[];

  it('answer with device, state, from and to wherever they are pointed at', () => {
    const [trace] = bars.filter(({ hovertext }) => hovertext[0]?.includes('reverse contactor coil'));
    expect(trace?.hovertext).toEqual(['-K2 reverse contactor coil: on from 1.5200 s to 1.9551 s']);
    expect(trace?.base).toEqual([1.52]);
    expect(trace?.x[0]).toBeCloseTo(0.4351, 12);
  });

  it('of an enlargement answer in its milliseconds', () => {
    const enlarged = interactiveFigure(sequenceDetailFigure(run, SI)!);
    expect(JSON.stringify(enlarged.traces)).toContain('-K2 reverse contactor coil: on from 30.0 ms to');
  });

  it('differ in form as in the drawing', () => {
    const of = (state: string) => bars.find(({ hovertext }) => hovertext[0]?.includes(`: ${state} from`))!;
    expect(of('on').width).toBeLessThan(of('closed').width);
    expect(of('arcing').marker).toHaveProperty('pattern');
    expect(of('closed').marker).not.toHaveProperty('pattern');
  });

  it('stand in the rows that their names stand at, and headings are no names of rows', () => {
    const { ticktext } = (plot.layout as { readonly yaxis: { readonly ticktext: string[] } }).yaxis;
    const at = bars.find(({ hovertext }) => hovertext[0]?.startsWith('-S0'))?.y[0] ?? -1;
    expect(ticktext[at]).toBe('-S0 stop');
    expect(ticktext[0]).toBe('');
    expect(JSON.stringify(plot.layout)).toContain('<b>Buttons: pressed</b>');
  });

  it.each(HOSTILE_TEXTS)('print a label of %j as it is, and no markup of it', (label) => {
    const rows = [
      { label, heading: true as const, intervals: [] },
      { label, intervals: [{ x0: 0, x1: END, state: 'on' as const }] },
    ];
    const spec = { ...sequenceFigure(run, SI), panels: [{ kind: 'states' as const, rows }], marks: [] };
    const { traces, layout } = interactiveFigure(spec);
    expect(JSON.stringify([traces, layout]).replaceAll(/<\/?b>/gu, '')).not.toContain('<');
  });
});
