import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../../src/report/displayWidth.ts';
import type { LinesPanel } from '../../../src/report/figureSpec.ts';
import { motorFigure } from '../../../src/report/motorFigure.ts';
import { renderMotorTerminal } from '../../../src/report/renderMotorTerminal.ts';
import { renderSvg } from '../../../src/report/renderSvg.ts';
import { fakeEstimation, fullScenario } from './fakeElements.ts';
import { fakeMotor } from './fakeMotor.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const sheet = fakeMotor();
const spec = motorFigure(sheet, { units: 'SI' });
const panel = (at: number, figure = spec) => figure.panels[at] as LinesPanel;

describe('the figure of a motor', () => {
  it('spans the speeds from minus to plus synchronous speed and names the plugging region', () => {
    expect(spec.x.label).toBe('Speed (r/min)');
    expect(spec.x.domain.map(Math.round)).toEqual([-1800, 1800]);
    expect(spec.bands).toEqual([{ x0: spec.x.domain[0], x1: 0, label: 'plugging' }]);
    expect(spec.marks.map((mark) => mark.label)).toEqual(['slip 2', 'rest, slip 1', 'synchronous, slip 0']);
  });

  it('has torque above current, each with its rated value as a line', () => {
    expect([panel(0).y.label, panel(1).y.label]).toEqual([
      'Air-gap torque (N·m)',
      'Line current, r.m.s. (A)',
    ]);
    expect(panel(0).references).toEqual([{ y: 234.6, label: 'rated' }]);
    expect(panel(1).references).toEqual([{ y: 62.8, label: 'rated' }]);
  });

  it('marks the named points with value and multiple of rated', () => {
    expect(panel(0).points.map((point) => point.label)).toEqual([
      'rated 235 N·m',
      'breakdown 704 N·m, 3.00 × rated',
      'pull-up 282 N·m, 1.20 × rated',
      'locked rotor 352 N·m, 1.50 × rated',
      'full speed 469 N·m, 2.00 × rated',
    ]);
    expect(panel(1).points.map((point) => point.label)).toEqual([
      'rated 62.8 A',
      'locked rotor 377 A, 6.00 × rated',
      'full speed 440 A, 7.00 × rated',
    ]);
  });

  it('has no pull-up point for a motor without a minimum', () => {
    const points = sheet.points.filter((point) => point.kind !== 'pullUp');
    const labels = panel(0, motorFigure({ ...sheet, points }, { units: 'SI' })).points;
    expect(labels.some((point) => point.label.startsWith('pull-up'))).toBe(false);
  });

  it('draws the load where one is given', () => {
    const names = (figure: typeof spec) => panel(0, figure).series.map((series) => series.label);
    expect(names(spec)).toEqual(['motor']);
    const { speed } = sheet.curve;
    const load = { speed, torque: speed.map((value) => 0.001 * value * Math.abs(value)) };
    expect(names(motorFigure({ ...sheet, load }, { units: 'SI' }))).toEqual(['load', 'motor']);
  });

  it('has torques in lbf·ft in US units', () => {
    const us = motorFigure(sheet, { units: 'us' });
    expect(panel(0, us).y.label).toBe('Air-gap torque (lbf·ft)');
    // 703.8 N·m over 1.35582 N·m per lbf·ft.
    expect(panel(0, us).points[1]?.label).toContain('519 lbf·ft');
  });

  it('leaves the multiples out on a telephone, where they would not fit', () => {
    const narrow = renderSvg(spec, { theme: 'light', width: 400 });
    expect(narrow).toContain('breakdown 704 N·m<');
    expect(renderSvg(spec, { theme: 'light' })).toContain('breakdown 704 N·m, 3.00 × rated<');
  });
});

describe('the motor in the terminal', () => {
  const out = renderMotorTerminal(sheet, { units: 'SI', colour: false });

  it('begins with the circuit, reactances at the frequency', () => {
    expect(out).toMatch(/^Stator resistance +0\.0870 Ω$/mu);
    expect(out).toMatch(/^Magnetising reactance +13\.1 Ω$/mu);
    expect(out).toMatch(/reactances at\s60\.0 Hz/u);
  });

  it('has words of a saturating leakage beside the column of numbers, which stay on one line with their names', () => {
    const { leakageSaturation, core } = fullScenario().machine;
    const machine = { ...sheet.machine, leakageSaturation: leakageSaturation!, core: core! };
    const text = renderMotorTerminal({ ...sheet, machine }, { units: 'SI', colour: false });
    expect(text).toMatch(/^Stator leakage saturates +around 220 A crest, down to 60\.0 %$/mu);
    expect(text).toMatch(/^Core resistance \(iron loss\) +95\.0 Ω$/mu);
    expect(text).not.toContain('Rotor leakage saturates');
  });

  it('has a row for each point: speed, slip, torque, current, both multiples, power factor', () => {
    expect(out).toMatch(/^breakdown +1530 +0\.1500 +704 +3\.00 +251 +4\.00 +0\.700$/mu);
    expect(out).toMatch(/^plugging, full speed +−1800 +2\.0000 +469 +2\.00 +440 +7\.00 +0\.300$/mu);
  });

  it('has the nameplate beside what an estimated circuit gives, and nothing of it otherwise', () => {
    const estimated = renderMotorTerminal(
      { ...sheet, estimation: fakeEstimation() },
      { units: 'SI', colour: false },
    );
    expect(estimated).toMatch(/^locked-rotor torque +388 N·m {2}for 400 N·m \(IEC 60034-12, design N\):/mu);
    expect(estimated).toContain('−3.0 %');
    expect(estimated).toMatch(/^locked-rotor power factor +0\.410 {2}nothing stated/mu);
    expect(estimated).toContain('Note: The inertia was not stated.');
    expect(out).not.toMatch(/nameplate|estimated/u);
  });

  it.each([...HOSTILE_TEXTS, 'x'.repeat(300)])('has no line over 80 columns with the title %j', (title) => {
    for (const units of ['SI', 'us'] as const) {
      const text = renderMotorTerminal(
        { ...sheet, title, estimation: fakeEstimation() },
        { units, colour: false },
      );
      for (const line of text.split('\n')) expect(displayWidth(line)).toBeLessThanOrEqual(80);
      expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u);
    }
  });

  it('does not mix units, and is ASCII on request', () => {
    const options = { units: 'us', colour: false, ascii: true } as const;
    const us = renderMotorTerminal({ ...sheet, title: 'Belt', estimation: fakeEstimation() }, options);
    expect(us).not.toMatch(/N[·*]m|kW/u);
    expect(us).toContain('lbf*ft');
    expect(us).not.toMatch(/[^\n\x20-\x7E]/u);
  });
});
