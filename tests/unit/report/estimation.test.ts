import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../../src/report/displayWidth.ts';
import { formatDeviation } from '../../../src/report/formatQuantity.ts';
import { keyNumbers } from '../../../src/report/keyNumbers.ts';
import { renderReportHtml } from '../../../src/report/renderReportHtml.ts';
import { renderSummaryJson } from '../../../src/report/renderSummaryJson.ts';
import { renderTerminal } from '../../../src/report/renderTerminal.ts';
import { fakeBands, fakeEstimation } from './fakeElements.ts';
import { fakeMetrics, fakeRun } from './fakeRun.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const estimation = fakeEstimation();
const bands = fakeBands();
const base = { units: 'SI', version: '1' } as const;

describe('a circuit found from a nameplate', () => {
  const page = text(renderReportHtml(fakeRun(), { ...base, estimation }));

  it('has a section of its own in the report, between inputs and method', () => {
    const html = renderReportHtml(fakeRun(), { ...base, estimation });
    const headings = [...html.matchAll(/<h2>([^<]*)<\/h2>/gu)].map((match) => match[1]);
    expect(headings.slice(0, 3)).toEqual(['Inputs', 'From nameplate to circuit', 'Method']);
  });

  it('is compared with each item: aim, what the circuit gives, error, source', () => {
    expect(page).toMatch(/rated current\s+62\.8 A\s+62\.9 A\s+\+0\.2 %\s+given/u);
    expect(page).toMatch(/efficiency\s+92\.0 %\s+92\.0 %\s+below 0\.1 %\s+given/u);
    expect(page).toMatch(/locked-rotor torque\s+400 N·m\s+388 N·m\s+−3\.0 %\s+IEC 60034-12, design N/u);
    expect(page).toMatch(/locked-rotor apparent power\s+at most 400\s000 VA\s+371\s000 VA\s+kept\s/u);
    expect(page).toMatch(/locked-rotor power factor\s+—\s+0\.410\s+—/u);
  });

  it('names no largest deviation where the scenario has changed the circuit after it was found', () => {
    const of = (changed: Partial<typeof estimation>) =>
      renderTerminal(fakeRun(), { units: 'SI', colour: false, estimation: { ...estimation, ...changed } });
    expect(of({})).toContain('Largest');
    expect(of({ changedBy: ['saturation'] })).not.toContain('Largest deviation');
  });

  it('stands with its reactances and the remarks', () => {
    // 2π · 60 Hz · 0.302/(2π · 60) H
    expect(page).toMatch(/Stator leakage reactance\s+0\.302 Ω/u);
    expect(page).toContain('reactances at 60.0 Hz');
    expect(page).toContain('The inertia was not stated.');
  });

  it('from tests is called so', () => {
    const html = renderReportHtml(fakeRun(), { ...base, estimation: { ...estimation, from: 'tests' } });
    expect(html).toContain('<h2>From tests to circuit</h2>');
  });

  it('is told in the terminal: the largest deviation and what was not given', () => {
    const out = terminal({ estimation });
    expect(out).toContain(
      'Circuit estimated from the nameplate, 5 items aimed at. Largest deviation: locked-rotor torque 388 N·m for 400 N·m, −3.0 %.',
    );
    expect(out).toContain(
      'Not given: locked-rotor torque (IEC 60034-12, design N); breakdown torque (assumed: typical); locked-rotor apparent power (IEC 60034-12, design N).',
    );
    expect(out).toContain('The inertia was not stated.');
  });

  it('stands in the summary as it is, and null stands where there is none', () => {
    const summary = JSON.parse(renderSummaryJson(fakeRun(), { version: '1', estimation, bands }));
    expect(summary.estimation).toEqual(estimation);
    expect(summary.bands).toEqual(bands);
    const bare = JSON.parse(renderSummaryJson(fakeRun(), { version: '1' }));
    expect([bare.estimation, bare.nameplate, bare.bands]).toEqual([null, null, null]);
  });

  it('is not mentioned where the circuit was given', () => {
    for (const none of [{}, { estimation: null, bands: null }]) {
      expect(renderReportHtml(fakeRun(), { ...base, ...none })).not.toMatch(/nameplate|In brackets/u);
      expect(terminal(none)).not.toMatch(/estimated|In brackets/u);
    }
  });

  it.each(HOSTILE_TEXTS)('shows %j as text', (hostile) => {
    const items = estimation.items.map((item) => ({ ...item, name: hostile, source: hostile }));
    const all = {
      estimation: { ...estimation, items, remarks: [hostile] },
      bands: { ...bands, sentence: hostile },
    };
    const html = renderReportHtml(fakeRun(), { ...base, ...all });
    expect(html).not.toMatch(/<(?:script|img)/u);
    expect(html).not.toMatch(/[\u202A-\u202E\u2066-\u2069]/u);
    const out = renderTerminal(fakeRun(), { units: 'SI', colour: false, ...all });
    expect(out.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u);
  });
});

describe('what a nameplate leaves open', () => {
  it('stands beside the key numbers, in the unit of each', () => {
    expect(keyNumbers(fakeRun(), 'SI', bands).map((number) => number.range)).toEqual([
      '(1180 … 1630)',
      '(−4000 … −2900)',
      undefined,
      undefined,
    ]);
    // 4000 N·m over 1.35582 N·m per lbf·ft.
    expect(keyNumbers(fakeRun(), 'us', bands)[1]?.range).toBe('(−2950 … −2139)');
  });

  it('gives current and torque of the worst closing angle without a range, which would be that of another angle', () => {
    const metrics = { ...fakeMetrics() };
    metrics.plugPeakCurrent = { ...metrics.plugPeakCurrent, value: 1700 };
    metrics.plugMinimumTorque = { ...metrics.plugMinimumTorque, value: -4100 };
    metrics.stopTimeFromParting = { ...metrics.stopTimeFromParting, value: 0.6 };
    const [current, torque, time] = keyNumbers(fakeRun(), 'SI', bands, fakeRun({ metrics }));
    expect(current).toMatchObject({
      value: '1700 A crest',
      detail: expect.stringContaining('at the worst closing angle'),
    });
    expect(torque).toMatchObject({ value: '−4100 N·m' });
    expect([current?.range, torque?.range]).toEqual([undefined, undefined]);
    // The other numbers stay those of the scenario.
    expect(time?.value).toBe('0.480 s');
  });

  it('is on the first page and in a table with the circuits that gave each end', () => {
    const html = renderReportHtml(fakeRun(), { ...base, estimation, bands });
    expect(html).toContain('1402 A crest <span class="range">(1180 … 1630)</span>');
    const page = text(html);
    expect(page).toContain('In brackets: the range over 9 circuits that the data allow.');
    expect(page).toContain('What the nameplate leaves open');
    expect(page).toMatch(
      /Highest phase current\s+1402 A crest\s+\(1180 … 1630\)\s+lowest: slip 20 % below; highest: locked-rotor current 20 % above/u,
    );
    expect(page).toMatch(/I²t, phase A\s+—\s+\(41\s000 … 52\s000\)/u);
  });

  it('is in the terminal, in lines of at most 80 columns, in ASCII too', () => {
    expect(terminal({ bands })).toContain('1402 A crest (1180 … 1630)');
    for (const ascii of [true, false]) {
      const out = renderTerminal(fakeRun(), { units: 'SI', colour: false, ascii, estimation, bands });
      for (const line of out.split('\n')) expect(displayWidth(line)).toBeLessThanOrEqual(80);
      if (ascii) expect(out).not.toMatch(/[^\n\x20-\x7E]/u);
    }
  });
});

it.each([
  [0.0123, '+1.2 %'],
  [-0.0006, '−0.1 %'],
  [0.0004, 'below 0.1 %'],
  [0, 'below 0.1 %'],
  [null, '—'],
])('a deviation of %s is written %s', (error, written) => {
  expect(formatDeviation(error)).toBe(written);
});

/** The summary for the terminal with its line breaks undone. */
function terminal(background: object): string {
  return renderTerminal(fakeRun(), { units: 'SI', colour: false, ...background }).replace(/\n/gu, ' ');
}

function text(html: string): string {
  return html.replace(/<(script|style)[\s\S]*?<\/\1>/gu, ' ').replace(/<[^>]*>/gu, ' ');
}
