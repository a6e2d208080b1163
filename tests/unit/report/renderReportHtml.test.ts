import { describe, expect, it } from 'vitest';
import { buildReportFiles } from '../../../src/report/buildReportFiles.ts';
import { renderReportHtml } from '../../../src/report/renderReportHtml.ts';
import { sha256Base64 } from '../../../src/report/sha256.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { fullScenario } from './fakeElements.ts';
import { fakeRun, fakeScenario } from './fakeRun.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const options = { units: 'SI', version: '1.2.3', plotlySource: 'var Plotly = {};</script>' } as const;
const html = renderReportHtml(fakeRun(), options);

function hostileRun(text: string) {
  const scenario = { ...fakeScenario(text), description: text };
  const status = { code: 'notSettled', time: 2, message: text } as const;
  return fakeRun({ scenario, status, warnings: [text] });
}

describe('the report', () => {
  it.each(HOSTILE_TEXTS)('shows %j as text in every place it stands', (text) => {
    const origins = [{ path: `load.${text}`, value: text, origin: 'given' as const }];
    const hostile = renderReportHtml(hostileRun(text), { ...options, origins });
    expect(tags(hostile, 'script')).toHaveLength(3);
    expect(tags(hostile, 'style')).toHaveLength(1);
    expect(tags(hostile, 'title')).toEqual(tags(html, 'title'));
    expect(tags(hostile, 'img')).toEqual([]);
    expect(hostile).not.toMatch(/<[^>]*\son[a-z]+=/u);
    expect(hostile).not.toMatch(/[\u202A-\u202E\u2066-\u2069]/u);
  });

  it('allows its own two scripts by their hashes and nothing from anywhere', () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/u.exec(html)?.[1] ?? '';
    const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/gu)].map((match) => match[1] ?? '');
    expect(scripts).toHaveLength(2);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain(
      `script-src ${scripts.map((code) => `'sha256-${sha256Base64(code)}'`).join(' ')};`,
    );
  });

  it('refers to nothing outside itself', () => {
    expect(html).not.toMatch(/\b(?:src|href)="(?!#)/u);
    expect(html).not.toMatch(/@import|url\((?!#)/u);
  });

  it('has headings in order, one of the first level', () => {
    const levels = [...html.matchAll(/<h([1-6])[ >]/gu)].map((match) => Number(match[1]));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    for (let i = 1; i < levels.length; i += 1) expect(levels[i]! - levels[i - 1]!).toBeLessThanOrEqual(1);
  });

  it('has the sections of a calculation note in order', () => {
    const sections = [...html.matchAll(/<h2>([^<]*)<\/h2>/gu)].map((match) => match[1]);
    expect(sections).toEqual(['Inputs', 'Method', 'Results', 'Checks', 'Sources', 'Plots to zoom into']);
  });

  it('gives every table header a scope and every figure a title and a description', () => {
    expect(html.match(/<th(?! scope=)[ >]/gu)).toBeNull();
    const drawings = [...html.matchAll(/<svg [^>]*aria-labelledby="(\S+) (\S+)"/gu)];
    expect(drawings.length).toBe(html.match(/<svg /gu)?.length);
    for (const [, title, description] of drawings) {
      expect(html).toContain(`<title id="${title}">`);
      expect(html).toContain(`<desc id="${description}">`);
    }
  });

  it('has no id twice', () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/gu)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('begins with what went wrong when a run did not end as asked, and not otherwise', () => {
    const failed = renderReportHtml(hostileRun('It stopped.'), options);
    expect(failed.indexOf('role="alert"')).toBeGreaterThan(0);
    expect(failed.indexOf('role="alert"')).toBeLessThan(failed.indexOf('<h1>'));
    expect(html).not.toContain('role="alert"');
  });

  it('warns when the energy ledger does not close', () => {
    const run = fakeRun();
    const open = renderReportHtml({ ...run, ledger: { ...run.ledger, residual: 2e-4 } }, options);
    expect(open).toContain('The energy ledger does not close');
    expect(html).not.toContain('The energy ledger does not close');
  });

  it('without a plotting library has no script at all', () => {
    const still = renderReportHtml(fakeRun(), { units: 'SI', version: '1' });
    expect(tags(still, 'script')).toEqual([]);
    expect(still).toContain("script-src 'none'");
  });

  it('does not mix units', () => {
    const bare = { ...fakeRun(), scenario: { ...fakeScenario('Belt'), description: '' } };
    expect(text(renderReportHtml({ ...bare }, { units: 'us', version: '1' }))).not.toMatch(
      /\d (?:N·m|kJ|kW|kg·m²)/u,
    );
    expect(text(renderReportHtml({ ...bare }, { units: 'SI', version: '1' }))).not.toMatch(
      /\d (?:lbf|lb·ft|Btu|hp)/u,
    );
  });

  it('says for every input where it comes from, when that is known', () => {
    const origins = [{ path: 'supply.sourceResistance', value: '0 ohm', origin: 'assumed' as const }];
    expect(text(renderReportHtml(fakeRun(), { ...options, origins }))).toMatch(
      /supply\.sourceResistance\s+0 ohm\s+assumed/u,
    );
  });
});

it('explains each word of origin that occurs, and puts the source beside the word', () => {
  const origins = [
    { path: 'machine.breakdownTorque', value: '2.0', origin: 'standard', source: 'IEC 60034-12, table 1' },
    { path: 'machine.statorResistance', value: '0.2 ohm', origin: 'estimated' },
  ] as const;
  const page = text(renderReportHtml(fakeRun(), { ...options, origins }));
  expect(page).toMatch(/machine\.breakdownTorque\s+2\.0\s+standard: IEC 60034-12, table 1/u);
  expect(page).toMatch(/machine\.statorResistance\s+0\.2 ohm\s+estimated\s/u);
  expect(page).toContain(
    'standard: not stated, taken from the table of a standard; estimated: found by fitting',
  );
  expect(page).not.toContain('assumed: not stated');
});

it('calls a machine with slip rings by its name', () => {
  const kind = (scenario: Scenario) => renderReportHtml(fakeRun({ scenario }), options);
  expect(kind(fullScenario())).toContain('plugging of a slip-ring induction motor');
  expect(kind(fakeScenario())).toContain('plugging of a cage induction motor');
});

describe('the report folder', () => {
  it('holds the report, a drawing per figure, the trace and the summary', () => {
    expect(buildReportFiles(fakeRun(), options).map((file) => file.name)).toEqual([
      'report.html',
      'figures/time.svg',
      'figures/switching-1-start.svg',
      'figures/switching-2-plug.svg',
      'figures/torque-speed.svg',
      'figures/energy.svg',
      'trace.csv',
      'summary.json',
    ]);
  });

  it('is the same, byte for byte, when made twice', () => {
    expect(buildReportFiles(fakeRun(), options)).toEqual(buildReportFiles(fakeRun(), options));
  });
});

function tags(page: string, name: string): string[] {
  return page.match(new RegExp(`<${name}(?=[\\s>/])`, 'giu')) ?? [];
}

function text(page: string): string {
  return page.replace(/<(script|style)[\s\S]*?<\/\1>/gu, ' ').replace(/<[^>]*>/gu, ' ');
}
