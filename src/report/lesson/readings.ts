import type { Channel, ChannelValue } from '../../simulate/channels.ts';
import { displayUnit, formatInstant, formatQuantity } from '../formatQuantity.ts';
import { channelValue } from '../live/channelValue.ts';
import type { Film } from '../live/film.ts';
import { frameAt } from '../live/frameAt.ts';
import { sampleBelow } from '../live/sampleBelow.ts';

/** One line of what a technician reads. */
export interface ReadingRow {
  readonly label: string;
  readonly text: string;
}

/** What instruments and eyes show at one instant. */
export interface Reading {
  /** s */
  readonly t: number;
  readonly rows: readonly ReadingRow[];
}

/** What an instrument of the right range does not show any more, share of rated. Common practice, no source. */
const RESOLUTION = 1e-3;
/** √3: line-to-line against phase quantities. */
const SQRT3 = Math.sqrt(3);

/**
 * What a technician can read at an instant without being told what is wrong: r.m.s. line currents and line-to-line voltages over the
 * supply period that ends there, speed, which contactors are in, the zero-speed switch, the overload relay.
 *
 * @param t s
 */
export function takeReading(film: Film, t: number): Reading {
  const at = Math.min(Math.max(t, film.tStart), film.tEnd);
  const { columns } = film;
  const period = 1 / film.base.frequency;
  const rms = (unit: string, base: number, value: (i: number) => number) => {
    const result = rmsBefore(columns.t, value, at, period);
    return result === null
      ? '— (less than one period since the start)'
      : formatQuantity(result < RESOLUTION * base ? 0 : result, unit, { system: film.units });
  };
  const { uAlpha, uBeta } = columns;
  return {
    t: at,
    rows: [
      ...(['iA', 'iB', 'iC'] as const).map((name) => ({
        label: `Line current ${name.slice(1)}, r.m.s. of one period`,
        text: rms('A', film.base.currentCrest, (i) => columns[name][i]!),
      })),
      // Phase values are projections of the space vector: u_AB = u_A − u_B = (3/2)·uα − (√3/2)·uβ, and so on round.
      {
        label: 'Voltage A–B at the motor',
        text: rms('V', film.base.lineVoltage, (i) => 1.5 * uAlpha[i]! - (SQRT3 / 2) * uBeta[i]!),
      },
      { label: 'Voltage B–C at the motor', text: rms('V', film.base.lineVoltage, (i) => SQRT3 * uBeta[i]!) },
      {
        label: 'Voltage C–A at the motor',
        text: rms('V', film.base.lineVoltage, (i) => -1.5 * uAlpha[i]! - (SQRT3 / 2) * uBeta[i]!),
      },
      { label: 'Speed', text: speedText(film, at) },
      ...contactorRows(film.channels, at),
      ...switchRows(film.channels, at),
      ...deviceRows(film.channels, at),
    ],
  };
}

/**
 * R.m.s. value over the window [t − period, t] of samples taken as joined by straight lines: over a piece from a to b the mean square is
 * (a² + a·b + b²)/3. Null where the samples do not cover the window.
 *
 * @param times s, ascending
 * @param value of a sample, by its index
 */
export function rmsBefore(
  times: Float64Array,
  value: (i: number) => number,
  t: number,
  period: number,
): number | null {
  const from = t - period;
  const first = times[0];
  const last = times.at(-1);
  // A rounding must not take the first whole period away.
  if (
    first === undefined ||
    last === undefined ||
    from < first - ROUNDING * period ||
    t > last + ROUNDING * period
  )
    return null;
  let sum = 0;
  for (let i = sampleBelow(times, from).index + 1; i < times.length && times[i - 1]! < t; i += 1) {
    const [t0, t1] = [times[i - 1]!, times[i]!];
    if (t1 <= t0) continue;
    const [v0, v1] = [value(i - 1), value(i)];
    const on = (instant: number) => v0 + ((v1 - v0) * (instant - t0)) / (t1 - t0);
    const [begin, end] = [Math.max(t0, from), Math.min(t1, t)];
    const [a, b] = [on(begin), on(end)];
    sum += ((end - begin) * (a * a + a * b + b * b)) / 3;
  }
  return Math.sqrt(sum / period);
}

/** Share of a period. */
const ROUNDING = 1e-9;

/** As from a tachometer: whole r/min. */
function speedText(film: Film, at: number): string {
  const speed = Math.round(frameAt(film, at).speed);
  const direction = speed === 0 ? '' : speed > 0 ? ', forward' : ', in reverse';
  return `${Math.abs(speed)} ${displayUnit('rad/s', { system: film.units }).label}${direction}`;
}

/** Where the armature is: from its own channel, or, where the coils are driven by hand, whether any pole is in. */
function contactorRows(channels: readonly Channel[], at: number): ReadingRow[] {
  return (['forward', 'reverse'] as const).map((contactor) => ({
    label: `${contactor === 'forward' ? 'Forward' : 'Reverse'} contactor`,
    text: isIn(channels, contactor, at) ? 'in' : 'out',
  }));
}

/** True while a contactor is seen to be in at t, s. */
export function isIn(channels: readonly Channel[], contactor: 'forward' | 'reverse', t: number): boolean {
  const armature = channels.find(({ of }) => of.kind === 'device' && of.device === `${contactor}Contactor`);
  if (armature !== undefined) return valueAt(armature, t) === 'on';
  return channels.some(
    (channel) =>
      channel.of.kind === 'pole' && channel.of.contactor === contactor && valueAt(channel, t) === 'closed',
  );
}

function switchRows(channels: readonly Channel[], at: number): ReadingRow[] {
  const own = channels.filter(({ of }) => of.kind === 'device' && /^switch/u.test(of.device));
  return own.map((channel) => ({
    label: `Zero-speed switch, ${channel.of.kind === 'device' && channel.of.device === 'switchForward' ? 'forward' : 'reverse'} contact`,
    text: valueAt(channel, at) === 'on' ? 'actuated' : 'at rest',
  }));
}

function deviceRows(channels: readonly Channel[], at: number): ReadingRow[] {
  const overload = channels.find(({ of }) => of.kind === 'device' && of.device === 'overload');
  const voltage = channels.find(({ of }) => of.kind === 'controlVoltage');
  // A voltage that never left its place has no channel; the row stands all the same, or its presence would tell.
  const controlled = channels.some(({ of }) => of.kind === 'device' && of.device === 'stopButton');
  return [
    ...(overload === undefined
      ? []
      : [{ label: 'Overload relay', text: valueAt(overload, at) === 'on' ? 'tripped' : 'not tripped' }]),
    ...(controlled
      ? [
          {
            label: 'Control voltage',
            text: voltage === undefined || valueAt(voltage, at) === 'on' ? 'there' : 'too low',
          },
        ]
      : []),
  ];
}

function valueAt(channel: Channel, t: number): ChannelValue {
  return channelValue(channel.changes, t);
}

/** Head of a reading in a table: its instant. */
export function readingHead(reading: Reading): string {
  return `t = ${formatInstant(reading.t)}`;
}
