import type { FigureSpec, LinesPanel, StatesPanel } from '../figureSpec.ts';
import { formatNumber } from '../formatQuantity.ts';
import type { Quantity } from '../palette.ts';
import { valueAt } from './samples.ts';

/** Values of one panel under the cursor. */
export interface Readout {
  /** What the panel shows, without its unit. */
  readonly panel: string;
  readonly rows: readonly ReadoutRow[];
}

/** One value under the cursor. */
export interface ReadoutRow {
  readonly label: string;
  /** With its unit; a dash where the curve has no value. */
  readonly text: string;
  /** null: a state, not a number. */
  readonly quantity: Quantity | null;
  /** The same of the run that is compared with; null: there is none. */
  readonly pinned: string | null;
}

/**
 * The values of a figure at a place of its shared axis, read on its curves, in their units; states in words.
 *
 * @param behind the run that is compared with
 */
export function readouts(spec: FigureSpec, x: number, behind: FigureSpec | null = null): Readout[] {
  const other = behind === null ? [] : readouts(behind, x);
  const pinned = (panel: string, label: string) =>
    other.find((one) => one.panel === panel)?.rows.find((row) => row.label === label)?.text ?? null;
  return ownReadouts(spec, x).map(({ panel, rows }) => ({
    panel,
    rows: rows.map((row) => ({ ...row, pinned: pinned(panel, row.label) })),
  }));
}

function ownReadouts(spec: FigureSpec, x: number): Readout[] {
  return spec.panels.flatMap((panel): Readout[] => {
    if (panel.kind === 'lines') return [curveValues(panel, x)];
    return panel.kind === 'states' ? [states(panel, x, spec.x.domain[1])] : [];
  });
}

/** "Line currents: A −12.4 A, B 3.10 A; Speed: 1450 r/min": the values as a sentence. */
export function readoutWords(list: readonly Readout[]): string {
  return list
    .map(({ panel, rows }) => {
      const values = rows.map(({ label, text }) => (rows.length > 1 ? `${label} ${text}` : text));
      return `${panel}: ${values.join(', ')}`;
    })
    .join('; ');
}

/** Share of an axis below which a value is no value. */
const ROUNDING = 1e-9;

/** Splits "Speed (r/min)" into what is shown and its unit. */
export function axisWords(label: string): { readonly name: string; readonly unit: string } {
  const [, name = label, unit = ''] = /^(.*) \((.*)\)$/u.exec(label) ?? [];
  return { name, unit };
}

function curveValues(panel: LinesPanel, x: number): Readout {
  const { name, unit } = axisWords(panel.y.label);
  const rows = panel.series.flatMap((series): ReadoutRow[] => {
    if (series.form !== 'line') return [];
    const value = orZero(valueAt(series.x, series.y, x), panel);
    const text = Number.isFinite(value) ? `${formatNumber(value)} ${unit}`.trimEnd() : '—';
    return [{ label: series.label, text, quantity: series.quantity, pinned: null }];
  });
  return { panel: name, rows };
}

/** A value so small against its axis that it is rounding of the arithmetic is zero. */
function orZero(value: number, { y }: LinesPanel): number {
  return Math.abs(value) < ROUNDING * (y.domain[1] - y.domain[0]) ? 0 : value;
}

const STATE_ORDER = ['closed', 'arcing', 'on'] as const;

/** Rows in the same state together: "closed: forward A, forward B"; the rest is open or off. What lasts to the end is so there too. */
function states(panel: StatesPanel, x: number, end: number): Readout {
  const rows = STATE_ORDER.flatMap((state): ReadoutRow[] => {
    const own = panel.rows.filter((row) =>
      row.intervals.some((one) => one.state === state && x >= one.x0 && (x < one.x1 || one.x1 === end)),
    );
    const text = joinPoles(own.map((row) => row.label));
    return own.length === 0 ? [] : [{ label: state, text, quantity: null, pinned: null }];
  });
  return {
    panel: 'Contacts',
    rows: rows.length > 0 ? rows : [{ label: '', text: 'none closed', quantity: null, pinned: null }],
  };
}

/** "forward A, forward B, speed switch" as "forward A B, speed switch". */
function joinPoles(names: readonly string[]): string {
  const groups = new Map<string, string[]>();
  for (const name of names) {
    const [, device = name, pole] = /^(.*) ([ABC])$/u.exec(name) ?? [];
    groups.set(device, [...(groups.get(device) ?? []), ...(pole === undefined ? [] : [pole])]);
  }
  return [...groups].map(([device, poles]) => [device, ...poles].join(' ')).join(', ');
}
