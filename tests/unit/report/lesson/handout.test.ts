import { describe, expect, it } from 'vitest';
import type { FigureSpec } from '../../../../src/report/figureSpec.ts';
import { givenRows } from '../../../../src/report/lesson/givenRows.ts';
import { emptyAxes, enlargedFigure, printedFigure } from '../../../../src/report/lesson/handoutFigures.ts';
import { hide } from '../../../../src/report/lesson/hiddenFault.ts';
import { newLesson } from '../../../../src/report/lesson/lesson.ts';
import { QUESTION_KEYS, QUESTIONS } from '../../../../src/report/lesson/question.ts';
import { renderHandoutHtml } from '../../../../src/report/lesson/renderHandoutHtml.ts';
import { EVERY_FAULT, viewWith } from './faultyViews.ts';

const view = viewWith([]);
const predict = newLesson('predict', QUESTION_KEYS, null);
const sheets = (html: string) => {
  const at = html.indexOf('<section class="answers">');
  return [html.slice(html.indexOf('<section class="questions">'), at), html.slice(at)] as const;
};
const axes = (spec: FigureSpec) =>
  spec.panels.map((panel) =>
    panel.kind === 'lines' ? [panel.y.label, panel.y.domain, panel.weight] : panel.kind,
  );

describe('empty axes', () => {
  it.each([printedFigure(view.time), enlargedFigure(view)!, view.plane])(
    'of $id are those of the figure, with nothing in them',
    (spec) => {
      const empty = emptyAxes(spec, 'Sketch');
      expect(axes(empty)).toEqual(axes(spec));
      expect(empty.x).toEqual(spec.x);
      for (const panel of empty.panels) {
        if (panel.kind === 'lines') expect([...panel.series, ...panel.points]).toEqual([]);
        if (panel.kind === 'states') expect(panel.rows.flatMap(({ intervals }) => intervals)).toEqual([]);
      }
      expect(empty.marks).toEqual([]);
      expect(`${empty.title}${empty.note}`).toBe('Sketch');
      expect(
        empty.bands.every(
          ({ label, x0, x1 }) => label === '' && x0 >= spec.x.domain[0] && x1 <= spec.x.domain[1],
        ),
      ).toBe(true);
    },
  );
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
