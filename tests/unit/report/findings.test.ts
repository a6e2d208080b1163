import { describe, expect, it } from 'vitest';
import { finding, question } from '../../../src/report/findings.ts';
import { keyNumbers } from '../../../src/report/keyNumbers.ts';
import { elasticRun, fullScenario } from './fakeElements.ts';
import { fakeMetrics, fakeRun } from './fakeRun.ts';

describe('the finding', () => {
  it('says in sentences what the metrics say', () => {
    expect(finding(fakeRun(), 'SI')).toBe(
      'Plugging brings the machine from 1788 r/min to zero speed in 0.480 s. ' +
        'The current peaks at 1402 A crest (15.8 × rated) in phase C; the air-gap torque reaches −3421 N·m (−14.6 × rated). ' +
        'The circuit has no leakage saturation: real peaks are higher. ' +
        'The rotor takes 2.40 times the heat of a start.',
    );
  });

  it('says so when the machine does not come to rest', () => {
    const metrics = { ...fakeMetrics() };
    for (const key of ['stopTimeFromParting', 'stopTimeFromTouch'] as const) {
      metrics[key] = { ...metrics[key], value: null, missing: 'it turns on' };
    }
    expect(finding(fakeRun({ metrics }), 'SI')).toContain(
      'does not come to zero speed before the end of the run',
    );
  });

  it('names a short circuit and claims nothing after it', () => {
    const run = fakeRun();
    const shortCircuit = {
      t: 1.545,
      phase: 'B',
      prospectiveCurrent: null,
      lastExtinction: 1.55,
      welded: false,
      bothClosed: false,
    } as const;
    const text = finding({ ...run, trajectory: { ...run.trajectory, shortCircuit } }, 'SI');
    expect(text).toContain('the contactors short-circuit two phases at 1.5450 s');
    expect(text).not.toContain('to rest');
  });

  it('says of a short circuit through a welded pole that no dead time would have prevented it', () => {
    const run = fakeRun();
    const shortCircuit = {
      t: 1.545,
      phase: 'B',
      prospectiveCurrent: null,
      lastExtinction: 1.55,
      welded: true,
      bothClosed: false,
    } as const;
    const text = finding({ ...run, trajectory: { ...run.trajectory, shortCircuit } }, 'SI');
    expect(text).toContain('pole B of the forward contactor is welded');
    expect(text).toContain('no dead time would have prevented it');
  });

  it('says which way the model of the leakage errs', () => {
    const linear = fakeRun();
    expect(finding(linear, 'SI')).toContain('no leakage saturation: real peaks are higher');
    const { leakageSaturation } = fullScenario().machine;
    const machine = { ...linear.scenario.machine, leakageSaturation: leakageSaturation! };
    const saturated = finding(fakeRun({ scenario: { ...linear.scenario, machine } }), 'SI');
    expect(saturated).toContain(
      'Leakage saturation is on: peaks are higher than those of the linear circuit.',
    );
    expect(saturated).not.toContain('real peaks are higher');
    const allLinear = { ...machine, leakageSaturation: { stator: null, cages: [null] } };
    expect(finding(fakeRun({ scenario: { ...linear.scenario, machine: allLinear } }), 'SI')).toContain(
      'real peaks are higher',
    );
  });

  it('names the faults of the installation', () => {
    const run = fakeRun();
    const starter = { ...run.scenario.starter, faults: fullScenario().starter.faults!.slice(0, 1) };
    expect(finding(fakeRun({ scenario: { ...run.scenario, starter } }), 'SI')).toContain(
      'Fault in this run: supply phase A is lost from 0.8000 s on.',
    );
    expect(finding(run, 'SI')).not.toContain('Fault');
  });

  it('says what an elastic coupling carries', () => {
    expect(finding(elasticRun(), 'SI')).toContain('the coupling carries up to −812 N·m (−3.46 × rated)');
    expect(finding(fakeRun(), 'SI')).not.toContain('coupling');
  });

  it('compares the rotor heat with the kinetic energy when the run has no start', () => {
    const metrics = { ...fakeMetrics() };
    metrics.plugToStartHeatRatio = {
      ...metrics.plugToStartHeatRatio,
      value: null,
      missing: 'the run has no start',
    };
    expect(keyNumbers(fakeRun({ metrics }), 'SI')[3]).toEqual({
      key: 'plugRotorHeat',
      label: 'Rotor heat',
      value: '118 kJ',
      detail: 'up to zero speed; 2.74 × kinetic energy; no multiple of a start: the run has no start',
    });
  });

  it('asks about starting when nothing is plugged', () => {
    const run = fakeRun();
    const start = { ...run, operations: { ...run.operations, reversal: null } };
    expect(question(start)).toBe('What happens when this machine is started?');
  });

  it('judges nothing: no word of suitability', () => {
    expect(finding(fakeRun(), 'SI')).not.toMatch(/suitable|safe|acceptable|too high|excessive|pass|fail/iu);
  });
});
