import type { Quantity } from './palette.ts';

/**
 * A figure as data, whatever draws it: panels stacked over one shared horizontal axis, with marks for events.
 * Values are in the units the axis labels state.
 */
export interface FigureSpec {
  /** Unique in a report; letters, digits and hyphens. */
  readonly id: string;
  /** Says what is seen, with the numbers. */
  readonly title: string;
  /** How to read it, one sentence. */
  readonly note: string;
  /** Text alternative for readers who do not see the figure. */
  readonly description: string;
  readonly x: AxisSpec;
  readonly panels: readonly PanelSpec[];
  readonly marks: readonly EventMark[];
  readonly bands: readonly Band[];
}

/** An axis: its title and the range it spans. */
export interface AxisSpec {
  /** "Quantity (unit)" */
  readonly label: string;
  /** Lowest and highest value of the range, in the unit of the label, in this order. */
  readonly domain: readonly [number, number];
  /** Logarithmic, over a positive domain; absent: linear. Only static drawings follow it. */
  readonly scale?: 'log';
}

/** One panel of a figure. */
export type PanelSpec = LinesPanel | StatesPanel | BarsPanel;

/** Curves over the shared axis. */
export interface LinesPanel {
  readonly kind: 'lines';
  readonly y: AxisSpec;
  /** Share of the figure's height, relative to the other panels. */
  readonly weight: number;
  readonly series: readonly Series[];
  readonly references: readonly ReferenceLine[];
  readonly points: readonly PointMark[];
}

/**
 * What contacts, coils and buttons do: a row per pole or device, an interval where it is closed, arcing or on, nothing where
 * it is open or off.
 */
export interface StatesPanel {
  readonly kind: 'states';
  readonly rows: readonly StateRow[];
}

/** Labelled bars from zero; the shared horizontal axis is the value. */
export interface BarsPanel {
  readonly kind: 'bars';
  readonly rows: readonly BarRow[];
}

/** How a line is broken. */
export type Dash = 'solid' | 'dash' | 'dot' | 'dashdot';

/**
 * One curve or band of a panel, with its legend entry; a line without a label is named by a marked point on it. All columns
 * have the same length, one entry per sample in ascending order of `x`; all numbers are in the units of the panel's axes.
 */
export type Series =
  | {
      readonly form: 'line';
      readonly label: string;
      readonly quantity: Quantity;
      readonly dash: Dash;
      readonly x: Float64Array;
      readonly y: Float64Array;
    }
  /** Smallest and largest value in each column of the drawing: an oscillation too fast to draw as a line. */
  | {
      readonly form: 'envelope';
      readonly label: string;
      readonly quantity: Quantity;
      readonly x: Float64Array;
      readonly low: Float64Array;
      readonly high: Float64Array;
    };

/** A thin line at a rated value. */
export interface ReferenceLine {
  /** In the unit of the panel's own axis. */
  readonly y: number;
  readonly label: string;
}

/** One value worth a number, such as an exact extremum. */
export interface PointMark {
  /** In the unit of the shared axis. */
  readonly x: number;
  /** In the unit of the panel's own axis. */
  readonly y: number;
  readonly label: string;
  /** What is written instead in a narrow drawing. */
  readonly short?: string;
  /** Where the label wants to stand; outwards from zero where nothing is said. */
  readonly place?: 'above' | 'below';
  readonly quantity: Quantity;
}

/** A mark on the shared axis where something discrete happens. */
export interface EventMark {
  /** In the unit of the shared axis. */
  readonly x: number;
  readonly label: string;
}

/** One row of a panel of states: a pole or a device over time, or the heading of the rows below it. */
export interface StateRow {
  readonly label: string;
  /** What is written instead where there is no room for the label. */
  readonly short?: string;
  /** Heads a group of rows; has no intervals. */
  readonly heading?: true;
  readonly intervals: readonly StateInterval[];
}

/**
 * closed, arcing: a pole that conducts. on: a button pressed, a coil energised, an armature in, a switch actuated. Each has a form
 * of its own in every drawing.
 */
export type RowState = 'closed' | 'arcing' | 'on';

/** A stretch of the shared axis in which a pole conducts or a device is on. */
export interface StateInterval {
  /** Beginning, in the unit of the shared axis. */
  readonly x0: number;
  /** End, in the unit of the shared axis. */
  readonly x1: number;
  readonly state: RowState;
}

/** A stretch of the shared axis with a name: fewer than three poles conduct, or the machine brakes. */
export interface Band {
  /** Beginning, in the unit of the shared axis. */
  readonly x0: number;
  /** End, in the unit of the shared axis. */
  readonly x1: number;
  readonly label: string;
}

/** One bar of a panel of bars. */
export interface BarRow {
  readonly label: string;
  /** Length of the bar, in the unit of the axis. */
  readonly value: number;
  /** The value with its unit. */
  readonly text: string;
  readonly quantity: Quantity;
}
