import { describe, expect, it } from 'vitest';
import { rmsBefore, takeReading } from '../../../../src/report/lesson/readings.ts';
import { readingTable } from '../../../../src/report/lesson/readingTable.ts';
import type { Film } from '../../../../src/report/live/film.ts';
import { viewWith } from './faultyViews.ts';

const STEP = 2e-4;
const times = Float64Array.from({ length: 1001 }, (_, i) => i * STEP);
const PERIOD = 0.02;
/** Straight lines between samples of a sine lie below it by a share of (ω·step)²/6 of its mean square at most. */
const CHORDS = (2 * Math.PI * (STEP / PERIOD)) ** 2 / 6;

describe('the r.m.s. value of the last period', () => {
  it('of a sine is its crest over √2, wherever the period ends', () => {
    for (const t of [0.02, 0.1, 0.13337, 0.2]) {
      const found = rmsBefore(
        times,
        (i) => 70 * Math.sin((2 * Math.PI * times[i]!) / PERIOD + 0.4),
        t,
        PERIOD,
      );
      expect(Math.abs(found! / (70 / Math.SQRT2) - 1)).toBeLessThan(CHORDS);
    }
  });

  it('of a constant is the constant, of a ramp √((a² + ab + b²)/3), exactly', () => {
    // Rounding of a hundred additions.
    expect(Math.abs(rmsBefore(times, () => -5, 0.15, PERIOD)! - 5)).toBeLessThan(1e-12);
    const [a, b] = [0.1307, 0.1507];
    const ramp = rmsBefore(times, (i) => times[i]!, b, b - a)!;
    expect(Math.abs(ramp / Math.sqrt((a * a + a * b + b * b) / 3) - 1)).toBeLessThan(1e-12);
  });

  it('does not exist before a whole period has passed', () => {
    expect(rmsBefore(times, () => 1, 0.0199, PERIOD)).toBeNull();
    expect(rmsBefore(times, () => 1, 0.3, PERIOD)).toBeNull();
  });
});

describe('a reading', () => {
  const text = (film: Film, t: number, label: string) =>
    takeReading(film, t).rows.find((row) => row.label.startsWith(label))?.text;
  const healthy = viewWith([]).film;

  it('of a healthy machine that runs shows three like currents, three like voltages and the supply', () => {
    const read = (label: string) => Number.parseFloat(text(healthy, 1.7, label) ?? '');
    const currents = ['A', 'B', 'C'].map((phase) => read(`Line current ${phase}`));
    const voltages = ['A–B', 'B–C', 'C–A'].map((pair) => read(`Voltage ${pair}`));
    // Three digits are shown: half a unit of the last one on either side.
    for (const current of currents) expect(Math.abs(current / currents[0]! - 1)).toBeLessThan(0.01);
    for (const voltage of voltages) expect(Math.abs(voltage - voltages[0]!)).toBeLessThanOrEqual(1);
    expect(voltages[0]).toBeGreaterThan(380);
    expect(voltages[0]).toBeLessThanOrEqual(400);
    expect(text(healthy, 1.7, 'Forward contactor')).toBe('in');
    expect(text(healthy, 1.7, 'Reverse contactor')).toBe('out');
    expect(text(healthy, 1.7, 'Speed')).toMatch(/^14\d\d r\/min, forward$/u);
    expect(text(healthy, 1.7, 'Zero-speed switch, forward')).toBe('actuated');
    expect(text(healthy, 1.7, 'Overload relay')).toBe('not tripped');
    expect(text(healthy, 1.7, 'Control voltage')).toBe('there');
  });

  it('while plugging shows the reverse contactor in and the forward one out', () => {
    expect(text(healthy, 2, 'Forward contactor')).toBe('out');
    expect(text(healthy, 2, 'Reverse contactor')).toBe('in');
  });

  it('of a machine that has lost its supply shows no current and too low a control voltage', () => {
    const { film } = viewWith([{ kind: 'supplyLost', from: 1.2, until: 1.4 }]);
    for (const phase of ['A', 'B', 'C'])
      expect(Number.parseFloat(text(film, 1.35, `Line current ${phase}`) ?? '')).toBe(0);
    expect(text(film, 1.35, 'Control voltage')).toBe('too low');
  });

  it('of a line whose pole does not touch shows no current there, and current in the other two', () => {
    const { film } = viewWith([{ kind: 'deadPole', contactor: 'reverse', pole: 'C' }]);
    expect(text(film, 2.2, 'Line current C')).toBe('0 A');
    for (const phase of ['A', 'B'])
      expect(Number.parseFloat(text(film, 2.2, `Line current ${phase}`) ?? '')).toBeGreaterThan(5);
  });

  it('has the same rows at every instant, and stands in a table by its instant', () => {
    const [early, late] = [takeReading(healthy, 0), takeReading(healthy, 2.6)];
    expect(early.rows.map(({ label }) => label)).toEqual(late.rows.map(({ label }) => label));
    expect(early.rows[0]?.text).toContain('less than one period');
    const table = readingTable([early, late]);
    expect(table.heads).toEqual(['t = 0.0000 s', 't = 2.6000 s']);
    expect(table.rows.map(({ cells }) => cells[1])).toEqual(late.rows.map((row) => row.text));
  });

  it('outside the run is one at its end', () => {
    expect(takeReading(healthy, 99).t).toBe(healthy.tEnd);
  });
});
