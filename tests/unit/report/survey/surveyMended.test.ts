import { describe, expect, it } from 'vitest';
import { METRIC_KEYS } from '../../../../src/measure/metric.ts';
import { displayWidth } from '../../../../src/report/displayWidth.ts';
import { fieldName } from '../../../../src/report/survey/fieldWords.ts';
import { failureSentence, gravestReason } from '../../../../src/report/survey/gravestReason.ts';
import { renderSurveyHtml } from '../../../../src/report/survey/renderSurveyHtml.ts';
import { renderSurveyTerminal } from '../../../../src/report/survey/renderSurveyTerminal.ts';
import { runCommandText } from '../../../../src/report/survey/runCommand.ts';
import {
  leadWords,
  sumWords,
  TOTALS_NOTE,
  tornadoWarnings,
} from '../../../../src/report/survey/sensitivityWords.ts';
import { surveyFindings } from '../../../../src/report/survey/surveyFindings.ts';
import { badness, WORSE_SIDE, worseFirst } from '../../../../src/report/survey/worseSide.ts';
import { runner } from '../../../../src/survey/runs/runner.ts';
import type { Survey, SurveyRow } from '../../../../src/survey/spec/survey.ts';
import { summaryOf } from '../../../../src/survey/spread/summary.ts';
import { shortRun } from '../../../support/shortRun.ts';
import { between, surveyOf } from '../../survey/runs/numberFields.ts';
import * as fake from './fakeSurvey.ts';

const OPTIONS = { units: 'SI', version: '1.2.3', shard: null } as const;
const text = (html: string) =>
  html
    .replace(/<style>.*?<\/style>/su, '')
    .replaceAll(/<[^>]*>/gu, ' ')
    .replaceAll(/\s+/gu, ' ');
const page = (survey: Survey, rows: readonly SurveyRow[], options = {}) =>
  renderSurveyHtml(survey, fake.source(rows), { ...OPTIONS, ...options });
const terminal = (survey: Survey, rows: readonly SurveyRow[], options = {}) =>
  renderSurveyTerminal(survey, surveyFindings(survey, fake.source(rows)), { ...OPTIONS, ...options });
const LIMIT = fake.fakeSurvey({ fields: [fake.INERTIA_GRID, fake.TORQUE_GRID], task: { kind: 'limitMap' } });
const SENSITIVITY = fake.fakeSurvey({ task: { kind: 'sensitivity', samples: 32, sequence: 'quasi' } });

describe('the command for a run', () => {
  it('is one that a checkout has, without the words of npm, and names the folder that was named', () => {
    expect(runCommandText({ surveyFile: 'a.yaml' }, 7)).toBe(
      'npm start --silent -- survey a.yaml --run 7 > run-7.yaml',
    );
    expect(runCommandText({ surveyFile: "a b'.yaml", folder: 'out/x y' }, 7)).toBe(
      String.raw`npm start --silent -- survey 'a b'\''.yaml' --out 'out/x y' --run 7 > run-7.yaml`,
    );
  });

  it('is told in words where the survey’s file is not known', () => {
    const rows = fake.drawnRows(fake.fakeSurvey(), 150);
    for (const shown of [text(page(fake.fakeSurvey(), rows)), terminal(fake.fakeSurvey(), rows)]) {
      expect(shown).toMatch(/the survey(?:&#39;|&apos;|')s\s+file/u);
      expect(shown).not.toMatch(/SURVEY\.yaml|npm start/u);
    }
  });

  it('is the same in page and terminal, where the shell joins its lines again', () => {
    const rows = fake.drawnRows(fake.fakeSurvey(), 150);
    const known = { surveyFile: `surveys/${'long-'.repeat(8)}name.yaml`, folder: 'reports/there' };
    const lines = terminal(fake.fakeSurvey(), rows, known);
    for (const line of lines.split('\n')) expect(displayWidth(line)).toBeLessThanOrEqual(80);
    const [command] = /npm start.*?\.yaml\n/su.exec(lines.replaceAll(/ \\\n */gu, ' '))!;
    expect(text(page(fake.fakeSurvey(), rows, known)).replaceAll('&gt;', '>')).toContain(command.trim());
  });
});

describe('a verdict', () => {
  const mended = fake.gridRows(LIMIT).map((row): SurveyRow => {
    const decisive = { notJudged: 'shaftTorque', notSuitable: 'stopTime', suitable: 'stopTime' };
    const [inertia = 0] = row.values;
    const outcome = inertia > 1 ? 'notSuitable' : 'notJudged';
    return row.verdict === null ? row : { ...row, verdict: { outcome, decisive: decisive[outcome] } };
  });

  it('that changes names what fails in the cell that fails, not what is missing in the other', () => {
    expect(text(page(LIMIT, mended))).toContain(
      'not judged (no figure or limit for torque of the shaft) to not suitable (time to zero speed)',
    );
  });

  it('that is none says what is missing', () => {
    const count = mended.filter(({ verdict }) => verdict?.outcome === 'notJudged').length;
    expect(text(page(LIMIT, mended))).toContain(
      `Not judged in ${count} of the runs: a figure or limit is missing that is required for torque of the shaft (${count})`,
    );
  });
});

describe('the worse side', () => {
  it('of a braking torque and of a margin is the smallest, of what heats, loads and lasts the largest', () => {
    const sides = (keys: readonly (keyof typeof WORSE_SIDE)[]) => keys.map((key) => WORSE_SIDE[key].side);
    expect(sides(['plugMinimumTorque', 'arcMargin', 'lowestTerminalVoltage'])).toEqual(
      new Array(3).fill('smallest'),
    );
    expect(sides(['plugPeakCurrent', 'stopTimeFromTouch', 'plugRotorHeat'])).toEqual(
      new Array(3).fill('largest'),
    );
    for (const key of METRIC_KEYS) expect(WORSE_SIDE[key].why).not.toBe('');
    expect(badness('plugCouplingTorque')(-5)).toBeGreaterThan(badness('plugCouplingTorque')(3));
    const [worse] = worseFirst('plugMinimumTorque', { value: -9, run: 1 }, { value: -1, run: 2 })!;
    expect(worse).toEqual({ value: -9, run: 1, end: 'smallest' });
  });

  it('is the large figure at the head of a sweep', () => {
    const html = page({ ...LIMIT, task: { kind: 'sweep' } }, fake.gridRows(LIMIT));
    const head = text(html.slice(html.indexOf('<dl'), html.indexOf('</dl>')));
    expect(head).toContain('−950 N·m smallest, run 8; largest −150 N·m');
  });
});

describe('sensitivity', () => {
  const index = (value: number, half: number) => ({ value, low: value - half, high: value + half });
  const field = (name: string, value: number, half: number) => ({
    field: name,
    first: null,
    total: index(value, half),
  });

  it('says that runs do not tell the leading field where intervals overlap', () => {
    const words = leadWords([field('starter.changeoverDelay', 1.08, 0.3), field('supply.angle', 1.05, 0.3)]);
    expect(words).toContain('do not tell which field matters most');
    expect(words).toContain('supply angle');
    expect(leadWords([field('load.inertia', 0.8, 0.1), field('supply.angle', 0.2, 0.1)])).toBe(
      '80 % of its variance hangs on load inertia',
    );
    expect(leadWords([field('load.inertia', 1.1, 0.1), field('supply.angle', 0.2, 0.1)])).not.toContain(
      'all',
    );
  });

  it('says of the sum what its interval bears out', () => {
    expect(sumWords({ value: 0.58, low: 0.16, high: 1.02 })).toContain('do not tell');
    expect(sumWords({ value: 0.58, low: 0.5, high: 0.7 })).toContain('comes from fields acting together');
    expect(sumWords({ value: 1.2, low: 1.1, high: 1.3 })).toContain('more samples');
  });

  it('explains totals above 100 % and has their intervals, on the page and in the terminal', () => {
    const rows = fake.sensitivityRows(SENSITIVITY, 32);
    expect(text(page(SENSITIVITY, rows))).toContain(TOTALS_NOTE);
    const lines = terminal(SENSITIVITY, rows).replaceAll(/\n\s*/gu, ' ');
    expect(lines).toContain(TOTALS_NOTE);
    expect(lines).toMatch(/Total indices: [^(]*\d+ % \(\S+ % … \S+ %\)/u);
  });

  it('warns of a field that comes round and of one whose ends lie on one side', () => {
    const bar = (name: string, atFrom: number, atTo: number) =>
      ({ field: name, from: 36, to: 324, atFrom, atTo, swing: 1 }) as const;
    const bars = [
      bar('supply.angle', -170, -190),
      bar('load.inertia', -190, -200),
      bar('starter.closingTime', -170, -190),
    ];
    const warnings = tornadoWarnings(
      { metric: 'plugMinimumTorque', base: -180, bars },
      SENSITIVITY.fields,
      'SI',
    );
    expect(warnings).toHaveLength(2);
    expect(warnings[0]).toMatch(/supply angle at t = 0 comes round: its two ends, 36.0° and 324°/u);
    expect(warnings[1]).toContain('Both ends of load inertia');
  });
});

describe('runs that cannot be used', () => {
  const survey = fake.fakeSurvey();
  const bad = (run: number, status: 'failed' | 'refused', reason: string) =>
    fake.badRow(run, [1, 0.05, 18], survey, status, reason);
  const rows = [
    ...fake.drawnRows(survey, 20),
    ...[20, 21, 22].map((run) => bad(run, 'failed', '4000 integration steps were not enough')),
    bad(23, 'failed', 'line-to-line short circuit at 1.0204 s: both contactors are closed'),
    bad(24, 'refused', 'dropOutSpeed lies above pickUpSpeed.'),
  ];

  it('are counted at the head with the gravest reason, not the most frequent', () => {
    const summary = summaryOf(survey, fake.source(rows));
    expect(gravestReason(summary.reasons)?.firstRun).toBe(23);
    const sentence = failureSentence(summary)!;
    expect(sentence).toContain(
      '5 of 25 runs cannot be used: 4 ended badly, 1 with values that no scenario can have.',
    );
    expect(sentence).toContain('Gravest reason (one run, first run 23): line-to-line short circuit');
    for (const task of [survey.task, fake.WORST] as const) {
      const asked = { ...survey, task };
      const head = text(page(asked, rows)).split('What is varied')[0]!;
      expect(head).toContain(sentence);
      expect(terminal(asked, rows).replaceAll(/\n\s*/gu, ' ')).toContain(sentence);
    }
    expect(failureSentence(summaryOf(survey, fake.source(rows.slice(0, 20))))).toBeNull();
  });
});

describe('names of fields', () => {
  it.each([
    ['duty.operationsPerHour', 'Operations per hour'],
    ['load.torque.torque', 'Load torque'],
    ['load.torque.1.torque', 'Load torque 2'],
    ['limits.contactLife', 'Operations the contacts must last'],
    ['solver.maxSteps', 'solver.maxSteps'],
  ])('%s: %s', (path, name) => {
    expect(fieldName(path)).toBe(name);
  });
});

describe('half a period of the supply', () => {
  it('changes no torque, no time and no magnitude of a current', () => {
    const survey = surveyOf(shortRun(), [between('supply.angle', 'deg', 0, 360)], { metrics: fake.METRICS });
    const run = runner(survey);
    const [near, far] = [run(0, [37]), run(1, [217])];
    near.metrics.forEach((value, k) => {
      // The integration is good to about a millionth.
      expect(Math.abs(far.metrics[k]! / value! - 1) / 1e-6).toBeLessThan(1);
    });
    expect(Math.abs(run(2, [127]).metrics[0]! / near.metrics[0]! - 1)).toBeGreaterThan(0.01);
  });

  it('is told where the angle of the supply covers it, and not else', () => {
    const told = 'repeats with the other sign';
    expect(text(page(fake.fakeSurvey(), fake.drawnRows(fake.fakeSurvey(), 30)))).toContain(told);
    const part = fake.fakeSurvey({
      fields: [{ ...fake.ANGLE, spread: { kind: 'uniform', from: 0, to: 90 } }],
    });
    expect(text(page(part, fake.drawnRows(part, 30)))).not.toContain(told);
  });
});

it('figures over the fields are small ones side by side, a grid per metric', () => {
  const survey = fake.fakeSurvey();
  const html = page(survey, fake.drawnRows(survey, 60));
  const section = html.slice(html.indexOf('How the figures follow'));
  expect(section.match(/display:grid/gu)).toHaveLength(survey.metrics.length);
  expect(section.match(/<svg/gu)).toHaveLength(survey.metrics.length * survey.fields.length);
});
