import { describe, expect, it } from 'vitest';
import { type Inserted, NOTHING_INSERTED } from '../../../src/machine/inserted.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import type { RunResult } from '../../../src/measure/result.ts';
import type { FigureSpec, LinesPanel } from '../../../src/report/figureSpec.ts';
import { insertedWords, steadyCircuits } from '../../../src/report/steadyCircuits.ts';
import { switchingFigures } from '../../../src/report/switchingFigures.ts';
import { overviewFigure, timeFigure } from '../../../src/report/timeFigure.ts';
import { torqueSpeedFigure } from '../../../src/report/torqueSpeedFigure.ts';
import { elasticRun } from './fakeElements.ts';
import { fakeRun, REVERSE } from './fakeRun.ts';

const si = { units: 'SI' } as const;

function torquePanel(spec: FigureSpec): LinesPanel {
  const found = spec.panels.find((panel) => panel.kind === 'lines' && /torque/iu.test(panel.y.label));
  if (found?.kind !== 'lines') throw new Error('the figure has no panel of torque');
  return found;
}

const labels = (panel: LinesPanel) => panel.series.map((series) => series.label);

/** The made-up run with something in the circuit from the reversing touch on. */
function withInserted(inserted: Inserted): RunResult {
  const run = fakeRun();
  const segments = run.trajectory.segments.map((segment) =>
    segment.t0 >= REVERSE ? { ...segment, inserted } : segment,
  );
  return { ...run, trajectory: { ...run.trajectory, segments } };
}

describe('the torque of an elastic coupling', () => {
  const elastic = elasticRun();

  it.each([
    ['the whole run', timeFigure(elastic, si)],
    ['the first page', overviewFigure(elastic, si)],
    ['the plugging', switchingFigures(elastic, si)[1]!],
  ])('is drawn with that of the air gap in the figure of %s', (_, spec) => {
    const panel = torquePanel(spec);
    expect(panel.y.label).toBe('Torque (N·m)');
    expect(labels(panel)).toEqual(['air gap', 'coupling']);
    expect(panel.points.map((point) => point.label)).toContain('coupling −812 N·m, −3.46 × rated');
  });

  it('is not drawn where the shaft is rigid', () => {
    for (const spec of [timeFigure(fakeRun(), si), switchingFigures(fakeRun(), si)[1]!]) {
      expect(torquePanel(spec).y.label).toBe('Air-gap torque (N·m)');
      expect(labels(torquePanel(spec))).not.toContain('coupling');
    }
  });

  it('does not pass for the load in the torque–speed plane: the load is a line at constant speed', () => {
    const load = torquePanel(torqueSpeedFigure(elastic, si)).series.at(-1)!;
    expect(load.label).toBe('load, steady');
    // 30 N·m of dry friction, whatever the speed.
    if (load.form === 'line') expect(new Set(load.y)).toEqual(new Set([30]));
    expect(labels(torquePanel(torqueSpeedFigure(fakeRun(), si))).at(-1)).toBe('load');
  });
});

describe('the steady curves of the torque–speed plane', () => {
  const star: Inserted = { ...NOTHING_INSERTED, star: true };

  it('are those of the circuits of the run', () => {
    expect(steadyCircuits(withInserted(star).trajectory)).toEqual([
      { sequence: 1, inserted: NOTHING_INSERTED },
      { sequence: -1, inserted: star },
    ]);
    expect(steadyCircuits(fakeRun().trajectory)).toEqual([
      { sequence: 1, inserted: NOTHING_INSERTED },
      { sequence: -1, inserted: NOTHING_INSERTED },
    ]);
  });

  it('have the torque of the circuit as it is connected', () => {
    const inserted = { ...NOTHING_INSERTED, lineResistance: 0.7 };
    const run = withInserted(inserted);
    const curve = torquePanel(torqueSpeedFigure(run, si)).series.find((series) =>
      series.label.startsWith('steady, reverse'),
    )!;
    expect(curve.label).toBe('steady, reverse, 0.700 Ω lines');
    if (curve.form !== 'line') throw new Error('a curve is a line');
    const { machine, supply } = run.scenario;
    const synchronous = 60 * Math.PI;
    const slip = (synchronous + (curve.x[240]! * Math.PI) / 30) / synchronous;
    const wanted = -steadyState(machine, supply, slip, inserted).torque;
    // 1e-9: conversion of the speed to r/min and back.
    expect(Math.abs(curve.y[240]! / wanted - 1)).toBeLessThan(1e-9);
  });

  it('are named where they run when one sequence has several circuits', () => {
    const run = withInserted({ ...NOTHING_INSERTED, rotorResistance: 0.4 });
    const segments = [...run.trajectory.segments];
    const last = segments.findLastIndex((segment) => segment.kind === 'three');
    const whole = segments[last]!;
    segments.splice(last, 1, { ...whole, t1: 1.8 }, { ...whole, t0: 1.8, inserted: NOTHING_INSERTED });
    const trajectory = { ...run.trajectory, segments };
    const names = torquePanel(torqueSpeedFigure({ ...run, trajectory }, si)).points.map(
      (point) => point.label,
    );
    expect(names).toEqual(expect.arrayContaining(['0.400 Ω rotor', 'as built']));
    expect(torquePanel(torqueSpeedFigure(run, si)).points.map((point) => point.label)).not.toContain(
      'as built',
    );
  });

  it('say what is in the circuit', () => {
    expect(insertedWords(NOTHING_INSERTED)).toBe('');
    expect(insertedWords({ star: true, lineResistance: 0.5, rotorResistance: 2 })).toBe(
      ', star, 0.500 Ω lines, 2.00 Ω rotor',
    );
  });
});
