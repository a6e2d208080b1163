import { describe, expect, it } from 'vitest';
import { finding, question } from '../../../src/report/findings.ts';
import { keyNumbers } from '../../../src/report/keyNumbers.ts';
import { fakeMetrics, fakeRun } from './fakeRun.ts';

describe('the finding', () => {
  it('says in sentences what the metrics say', () => {
    expect(finding(fakeRun(), 'SI')).toBe(
      'Plugging brings the machine from 1788 r/min to zero speed in 0.480 s. ' +
        'The current peaks at 1402 A crest (15.8 × rated) in phase C; the air-gap torque reaches −3421 N·m (−14.6 × rated). ' +
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
    const shortCircuit = { t: 1.545, phase: 'B', prospectiveCurrent: null, lastExtinction: 1.55 } as const;
    const text = finding({ ...run, trajectory: { ...run.trajectory, shortCircuit } }, 'SI');
    expect(text).toContain('the contactors short-circuit two phases at 1.5450 s');
    expect(text).not.toContain('to rest');
  });

  it('compares the rotor heat with the kinetic energy when the run has no start', () => {
    const metrics = { ...fakeMetrics() };
    metrics.plugToStartHeatRatio = {
      ...metrics.plugToStartHeatRatio,
      value: null,
      missing: 'the run has no start',
    };
    expect(keyNumbers(fakeRun({ metrics }), 'SI')[3]).toEqual({
      label: 'Rotor heat',
      value: '118 kJ',
      detail: '2.74 × kinetic energy; no multiple of a start: the run has no start',
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
