import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../../src/report/displayWidth.ts';
import { renderTerminal } from '../../../src/report/renderTerminal.ts';
import { fakeRun, fakeScenario } from './fakeRun.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const plain = { units: 'SI', colour: false } as const;

describe('the terminal summary', () => {
  const titles = [
    ...HOSTILE_TEXTS,
    'x'.repeat(300),
    '巻き戻し機の逆相制動'.repeat(12),
    '👷🏽‍♀️ e\u0301'.repeat(40),
    'many short words '.repeat(20),
  ];
  it.each(titles)('has no line over 80 columns with the title %j', (title) => {
    for (const units of ['SI', 'us'] as const) {
      const text = renderTerminal(fakeRun({ scenario: fakeScenario(title), warnings: [title] }), {
        ...plain,
        units,
      });
      for (const line of text.split('\n')) expect(displayWidth(line)).toBeLessThanOrEqual(80);
    }
  });

  it.each(HOSTILE_TEXTS)('lets no control character of the title %j through', (title) => {
    const text = renderTerminal(fakeRun({ scenario: fakeScenario(title), warnings: [title] }), plain);
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u);
  });

  it('ends with the four numbers that matter most', () => {
    const last = renderTerminal(fakeRun(), plain).trimEnd().split('\n').slice(-4);
    expect(last.map((line) => line.slice(0, 14).trim())).toEqual([
      'Peak current',
      'Worst torque',
      'Time to zero',
      'Rotor heat',
    ]);
    expect(last[0]).toContain('1402 A crest');
    expect(last[1]).toContain('−3421 N·m');
    expect(last[2]).toContain('0.480 s');
    expect(last[3]).toContain('2.40 × a start');
  });

  it('does not mix units', () => {
    const run = fakeRun({ scenario: fakeScenario('Belt') });
    expect(renderTerminal(run, { ...plain, units: 'us' })).not.toMatch(/N·m|kJ|kW/u);
    expect(renderTerminal(run, plain)).not.toMatch(/lbf|Btu|hp/u);
  });

  it('begins with what went wrong when a run did not end as asked', () => {
    const status = { code: 'stepLimit', time: 0.4, message: 'The step limit was reached.' } as const;
    const first = renderTerminal(fakeRun({ status }), plain).split('\n')[0];
    expect(first).toBe('! The run did not end as asked, at 0.4000 s: The step limit was reached.');
  });

  it('uses escape sequences only when colour is asked for', () => {
    expect(renderTerminal(fakeRun(), { ...plain, colour: true })).toContain('\u001B[1m');
    expect(renderTerminal(fakeRun(), plain)).not.toContain('\u001B');
  });

  it('draws the trace in ASCII on request, with no braille character', () => {
    expect(renderTerminal(fakeRun(), { ...plain, ascii: true })).not.toMatch(/[\u2800-\u28FF]/u);
    expect(renderTerminal(fakeRun(), plain)).toMatch(/[\u2801-\u28FF]/u);
  });

  it('the scale of the trace ends at the extremes of the table, which lie between samples', () => {
    const run = fakeRun();
    const worst = { ...run.metrics.plugMinimumTorque, value: -9876 };
    const metrics = { ...run.metrics, plugMinimumTorque: worst };
    expect(renderTerminal({ ...run, metrics }, plain)).toMatch(/^ +−9876$/mu);
  });

  it('shows the cautions and the warnings', () => {
    const text = renderTerminal(fakeRun({ warnings: ['Look here.'] }), plain).replaceAll('\n', ' ');
    expect(text).toContain('A zero-speed switch is not a safety stop.');
    expect(text).toContain('Note: Look here.');
  });
});

it('in ASCII the summary of an ASCII scenario has no other character and no line over 80 columns', () => {
  const text = renderTerminal(fakeRun(), { units: 'us', colour: false, ascii: true });
  expect(text).not.toMatch(/[^\n\x20-\x7E]/u);
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
});
