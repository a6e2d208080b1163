import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../src/index.ts';
import { energyFigure } from '../../src/report/energyFigure.ts';
import type { FigureSpec } from '../../src/report/figureSpec.ts';
import { timeCurrentFigure } from '../../src/report/judgement/timeCurrentFigure.ts';
import { waysToStopFigure } from '../../src/report/judgement/waysToStopFigure.ts';
import { motorFigure } from '../../src/report/motorFigure.ts';
import { renderSvg, type SvgOptions } from '../../src/report/renderSvg.ts';
import { sequenceDetailFigure, sequenceFigure } from '../../src/report/sequenceFigure.ts';
import { switchingFigures } from '../../src/report/switchingFigures.ts';
import { overviewFigure } from '../../src/report/timeFigure.ts';
import { torqueSpeedFigure } from '../../src/report/torqueSpeedFigure.ts';
import { elasticRun } from '../unit/report/fakeElements.ts';
import { fakeJudgement, TIME_CURRENT } from '../unit/report/fakeJudgement.ts';
import { fakeMotor } from '../unit/report/fakeMotor.ts';
import { fakeRun } from '../unit/report/fakeRun.ts';
import { fakeSequence } from '../unit/report/fakeSequence.ts';

/**
 * The drawings are compared with stored ones; a drawing that differs is written beside them as `…-changed.svg` to be
 * looked at. UPDATE_FIGURES=1 stores the present ones. These tests show change, they do not prove right.
 */
const UPDATE = process.env.UPDATE_FIGURES === '1';
/** px; elementary functions differ in the last bit between engines, and coordinates are rounded to 0.01. */
const TOLERANCE = 0.02;

const run = fakeRun();
const example = simulate(
  parseScenario(readFileSync('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8')),
);
const figures: readonly (readonly [string, FigureSpec, SvgOptions])[] = [
  // README's picture
  ['../../examples/figures/plug', switchingFigures(example, { units: 'SI' })[1]!, { theme: 'light' }],
  ['overview', overviewFigure(run, { units: 'SI' }), { theme: 'light' }],
  ['switching-plug', switchingFigures(run, { units: 'us' })[1]!, { theme: 'dark' }],
  ['torque-speed-narrow', torqueSpeedFigure(run, { units: 'SI' }), { theme: 'light', width: 400 }],
  ['energy', energyFigure(run, { units: 'SI' }), { theme: 'css' }],
  ['switching-elastic', switchingFigures(elasticRun(), { units: 'SI' })[1]!, { theme: 'light' }],
  ['sequence', sequenceFigure(fakeSequence(), { units: 'SI' }), { theme: 'light' }],
  ['sequence-changeover', sequenceDetailFigure(fakeSequence(), { units: 'us' })!, { theme: 'dark' }],
  ['sequence-narrow', sequenceFigure(fakeSequence(), { units: 'SI' }), { theme: 'light', width: 400 }],
  ['motor', motorFigure(fakeMotor(), { units: 'SI' }), { theme: 'light' }],
  ['time-current', timeCurrentFigure(TIME_CURRENT, 'SI')!, { theme: 'light' }],
  ['time-current-narrow', timeCurrentFigure(TIME_CURRENT, 'SI')!, { theme: 'dark', width: 400 }],
  ['ways-to-stop', waysToStopFigure(fakeJudgement().alternatives, 'SI')!, { theme: 'light' }],
  ['motor-narrow', motorFigure(fakeMotor(), { units: 'us' }), { theme: 'dark', width: 400 }],
];

/** Text with its numbers taken out, and the numbers rounded to three decimals. */
function split(svg: string): { skeleton: string; numbers: number[] } {
  const numbers: number[] = [];
  const skeleton = svg.replace(/(?<![#\w])-?\d+(?:\.\d+)?/gu, (number) => {
    numbers.push(Math.round(Number(number) * 1000) / 1000);
    return '#';
  });
  return { skeleton, numbers };
}

describe('drawings', () => {
  it.each(figures)('%s is drawn as before', (name, spec, options) => {
    const svg = `${renderSvg(spec, options)}\n`;
    const stored = new URL(`${name}.svg`, import.meta.url);
    const changed = new URL(`${name}-changed.svg`, import.meta.url);
    if (UPDATE) writeFileSync(stored, svg);
    const before = split(existsSync(stored) ? readFileSync(stored, 'utf8') : '');
    const now = split(svg);
    const same =
      before.skeleton === now.skeleton &&
      before.numbers.every((number, i) => Math.abs(number - now.numbers[i]!) <= TOLERANCE);
    if (same) rmSync(changed, { force: true });
    else writeFileSync(changed, svg);
    expect(same, `see tests/figures/${name}-changed.svg`).toBe(true);
  });

  it.each(figures)('%s has no coordinate that is not a number', (_, spec, options) => {
    expect(renderSvg(spec, options)).not.toMatch(/NaN|Infinity|undefined/u);
  });
});
