import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FigureSpec } from '../../../../src/report/figureSpec.ts';
import { answersOf } from '../../../../src/report/lesson/answers.ts';
import { givenRows } from '../../../../src/report/lesson/givenRows.ts';
import { emptyAxes, enlargedFigure, printedFigure } from '../../../../src/report/lesson/handoutFigures.ts';
import { hide } from '../../../../src/report/lesson/hiddenFault.ts';
import { newLesson } from '../../../../src/report/lesson/lesson.ts';
import { QUESTION_KEYS, QUESTIONS } from '../../../../src/report/lesson/question.ts';
import { renderHandoutHtml } from '../../../../src/report/lesson/renderHandoutHtml.ts';
import { roundedUp, sketchAxis } from '../../../../src/report/lesson/sketchAxis.ts';
import { EVERY_FAULT, viewWith } from './faultyViews.ts';

const view = viewWith([]);
const predict = newLesson('predict', QUESTION_KEYS, null);
const sheets = (html: string) => {
  const at = html.indexOf('<section class="answers">');
  return [html.slice(html.indexOf('<section class="questions">'), at), html.slice(at)] as const;
};
const names = (spec: FigureSpec) =>
  spec.panels.map((panel) => (panel.kind === 'lines' ? [panel.y.label, panel.weight] : panel.kind));
const domains = (spec: FigureSpec) =>
  spec.panels.flatMap((panel) =>
    panel.kind === 'lines' ? [[panel.y.label, ...panel.y.domain] as const] : [],
  );
const FIGURES = [printedFigure(view.time), enlargedFigure(view)!, view.plane];

describe('empty axes', () => {
  it.each(FIGURES)('of $id are those of the figure, with nothing in them', (spec) => {
    const empty = emptyAxes(spec, 'Sketch');
    expect(names(empty)).toEqual(names(spec));
    for (const panel of empty.panels) {
      if (panel.kind === 'lines') expect([...panel.series, ...panel.points]).toEqual([]);
      if (panel.kind === 'states') expect(panel.rows.flatMap(({ intervals }) => intervals)).toEqual([]);
    }
    expect([...empty.marks, ...empty.bands]).toEqual([]);
    expect(`${empty.title}${empty.note}`).toBe('Sketch');
  });

  it.each(FIGURES)(
    'of $id hold the curves, and reach equally far up and down for current and torque',
    (spec) => {
      const empty = domains(emptyAxes(spec, 'Sketch'));
      domains(spec).forEach(([label, low, high], i) => {
        const [, bottom, top] = empty[i]!;
        const voltage = /voltage/u.test(label);
        expect(voltage ? 0 : -bottom, label).toBe(voltage ? bottom : top);
        expect(top, label).toBeGreaterThanOrEqual(Math.max(high, voltage ? 0 : -low));
      });
    },
  );

  it('are the same for answers that differ by half: they tell none', () => {
    // From 1 : 1.5 of 340 to 1.5 of 600 the next round number is 1000 throughout.
    const torque = (size: number) =>
      sketchAxis({ label: 'Air-gap torque (N·m)', domain: [-size, 0.3 * size] }).domain;
    for (const size of [340, 450, 600]) expect(torque(size)).toEqual([-1000, 1000]);
    expect(sketchAxis({ label: 'Time (s)', domain: [0, 2.6] }).domain).toEqual([0, 5]);
    expect(sketchAxis({ label: 'Speed (r/min)', domain: [-30, 1626] }).domain).toEqual([-2000, 2000]);
    expect(sketchAxis({ label: 'Terminal voltage (V)', domain: [-8, 432] }).domain).toEqual([0, 500]);
  });

  it('around a closing are as long in every run', () => {
    const short = { ...enlargedFigure(view)!, x: { label: '', domain: [-15, 20] as const } };
    expect(emptyAxes(short, 'Sketch').x.domain).toEqual([-15, 50]);
  });
});

it('a number is rounded up to 1, 2 or 5 times a power of ten, by less than 2.5 times', () => {
  for (const power of [-6, -3, -1, 0, 2, 5])
    for (const digit of [1, 2, 5]) {
      // As a person writes it: the decimal number nearest to it.
      const round = Number(`${digit}e${power}`);
      expect(roundedUp(round)).toBeCloseTo(round, 12);
    }
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), (value) => {
      const ratio = roundedUp(value) / value;
      expect(ratio).toBeGreaterThan(1 - 2e-9);
      expect(ratio).toBeLessThanOrEqual(2.5 + 1e-8);
      expect(roundedUp(value).toExponential(6)).toMatch(/^[125]\.000000e/u);
    }),
    { seed: 6 },
  );
  expect([0, -1, Number.NaN, Infinity].map(roundedUp)).toEqual([1, 1, 1, 1]);
});

describe('the figures of the answers', () => {
  it('keep every crest of the curves they stand for', () => {
    const printed = printedFigure(view.time);
    for (const [label, column] of [
      ['Line current A (A)', 'iA'],
      ['Line current C (A)', 'iC'],
      ['Air-gap torque (N·m)', 'torque'],
    ] as const) {
      const panel = printed.panels.find((one) => one.kind === 'lines' && one.y.label === label);
      const series =
        panel?.kind === 'lines'
          ? panel.series.find(({ quantity }) => /current|^torque$/u.test(quantity))
          : undefined;
      expect(series?.form).toBe('envelope');
      if (series?.form !== 'envelope') continue;
      const own = view.film.columns[column];
      expect(Math.max(...series.high)).toBe(own.reduce((most, value) => Math.max(most, value)));
      expect(Math.min(...series.low)).toBe(own.reduce((least, value) => Math.min(least, value)));
    }
  });

  it('enlarge the stretch around the closing that plugs, on a clock that begins there', () => {
    const enlarged = enlargedFigure(view)!;
    const touch = view.time.marks.find(({ label }) => label.startsWith('plug: '))!.x;
    expect(enlarged.x.domain[0]).toBeCloseTo(-15, 9);
    expect(enlarged.x.domain[1]).toBeCloseTo(50, 9);
    expect(enlarged.marks.find(({ label }) => label.startsWith('plug: '))?.x).toBe(0);
    const panel = enlarged.panels.find((one) => one.kind === 'lines');
    const line = panel?.kind === 'lines' ? panel.series[0] : undefined;
    if (line?.form !== 'line') throw new Error('a line');
    const whole = view.time.panels.find((one) => one.kind === 'lines');
    const source = whole?.kind === 'lines' ? whole.series[0] : undefined;
    if (source?.form !== 'line') throw new Error('a line');
    const inside = [...source.x].filter((t) => t >= touch - 0.015 && t <= touch + 0.05);
    expect(line.x.length).toBe(inside.length);
    expect(line.x[0]).toBeCloseTo((inside[0]! - touch) * 1000, 9);
  });
});

describe('a handout', () => {
  const html = renderHandoutHtml({ view, lesson: predict, version: '0.0.0' });
  const [questions, answers] = sheets(html);

  it('asks every question on the first sheet and answers it on the second', () => {
    for (const key of QUESTION_KEYS) {
      expect(questions).toContain(QUESTIONS[key].sentence.slice(0, 40));
      expect(answers).toContain(`>${QUESTIONS[key].name}</th>`);
    }
  });

  it('has no number of the run on its first sheet, and all of them on its second', () => {
    for (const { value } of view.keyNumbers) {
      expect(questions).not.toContain(value);
      expect(answers).toContain(value);
    }
    expect(questions).not.toContain(view.finding.slice(0, 30));
    expect(answers).toContain('not a safety stop');
  });

  it('says rotor heat at the top of the answers as the multiple that is asked for', () => {
    const heat = answersOf(view).get('rotorHeat')!;
    expect(heat.text).toMatch(/× kinetic energy$/u);
    const top = /<dl class="numbers">.*?<\/dl>/su.exec(answers)?.[0];
    expect(top).toContain(`<dd class="value">${heat.text}</dd>`);
    expect(top).not.toContain('<dd class="value">2.00 × a start');
  });

  it('begins its answers on a leaf of their own, whether a browser knows leaves or only pages', () => {
    expect(html).toContain('break-before:page;break-before:right');
    // Where only pages are known, a page without question or answer lies between the two.
    expect(questions).toMatch(
      /<div class="notes">\s*<h2>[^<]*<\/h2>\s*(?:<span class="line"><\/span>)+\s*<\/div>\s*<\/section>\s*$/u,
    );
    expect(html).toContain('.axes,.notes{break-before:page}');
  });

  it('draws the same three figures on both, and needs nothing but itself', () => {
    expect(questions.match(/<svg/gu)).toHaveLength(3);
    expect(answers.match(/<svg/gu)).toHaveLength(3);
    expect(html).toContain("default-src 'none'");
    expect(html).not.toMatch(/<script|<img|<link/u);
    const ids = [...html.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('shows a hostile title as text', () => {
    const hostile = { ...view, scenario: { ...view.scenario, title: '<img src=x>', description: '<b>' } };
    expect(renderHandoutHtml({ view: hostile, lesson: predict, version: '0.0.0' })).not.toMatch(/<img|<b>/u);
  });

  it.each(EVERY_FAULT.slice(0, 4).map((fault) => [fault.kind, fault] as const))(
    'about a hidden %s names it on the second sheet alone',
    (_, fault) => {
      const [first, second] = sheets(
        renderHandoutHtml({
          view: viewWith([fault]),
          lesson: newLesson('hiddenFault', [], hide([fault])),
          version: '0.0.0',
        }),
      );
      expect(second).toMatch(/What is wrong: .*(?:lost|welded|dead)/u);
      // The list of possible answers names every kind, and the data say what an emergency stop does to both coils.
      const rest = first
        .replaceAll(/<ul class="choices">.*?<\/ul>/gsu, '')
        .replace('both coils are dead', '');
      expect(rest.match(/weld|lost|stuck|\bdead\b(?! time)|Supply [ABC]/giu)).toBeNull();
    },
  );
});

it('the data on the first sheet leave out what is not stated and what no one calculates with', () => {
  const rows = givenRows(view, false);
  expect(rows.map(({ label }) => label)).not.toContain('Relative tolerance');
  expect(rows.every(({ value }) => value !== 'not stated')).toBe(true);
  expect(rows.find(({ label }) => label === 'Crest of the rated current')?.value).toBe('20.6 A');
  expect(givenRows(view, true).length).toBeGreaterThan(rows.length);
});
