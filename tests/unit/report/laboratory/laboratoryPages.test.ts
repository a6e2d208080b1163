import { describe, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../../../src/index.ts';
import type { LaboratoryPageOptions } from '../../../../src/report/laboratory/laboratoryOptions.ts';
import { renderLaboratoryCsv } from '../../../../src/report/laboratory/renderLaboratoryCsv.ts';
import { renderLaboratoryHtml } from '../../../../src/report/laboratory/renderLaboratoryHtml.ts';
import { renderLaboratoryTerminal } from '../../../../src/report/laboratory/renderLaboratoryTerminal.ts';
import type { LaboratorySheet, Prediction } from '../../../../src/survey/laboratory/laboratory.ts';
import { QUANTITY_WORDS } from '../../../../src/survey/laboratory/quantityWords.ts';
import { TOLERANCES } from '../../../../src/survey/laboratory/tolerances.ts';
import { exampleText } from '../../../support/examples.ts';
import { HOSTILE_TEXTS } from '../hostile.ts';

const scenario = parseScenario(exampleText('what-should-the-laboratory-set-show.yaml'));
const run = simulate(scenario);

function prediction(
  key: Prediction['key'],
  unit: string,
  [low, predicted, high]: readonly number[],
): Prediction {
  return {
    key,
    ...QUANTITY_WORDS[key],
    unit,
    repeats: key === 'plugPeakCurrent' ? 10 : 1,
    predicted: predicted!,
    low: low!,
    high: high!,
    scatter: { low: predicted! * 0.9, high: predicted! * 1.1 },
    parts: [{ words: 'closing instant', down: 7.12, up: 4.78 }],
    open: null,
  };
}

/** Numbers of no machine, so that each is known again on the page. */
const sheet: LaboratorySheet = {
  scenario,
  steps: [
    {
      key: 'plugStop',
      title: 'Plug stop, ten times',
      cautions: ['One hand stays at the emergency stop.'],
      doing: ['Start, then plug.'],
      readings: [
        prediction('plugPeakCurrent', 'A', [17.31, 31.37, 44.91]),
        prediction('noLoadPower', 'W', [161.4, 213.7, 274.2]),
        prediction('partingToTouch', 's', [0.0183, 0.0221, 0.0257]),
        prediction('noLoadSpeed', 'rad/s', [156, 156.5, 157]),
      ],
    },
  ],
  evaluation: [
    prediction('meanFriction', 'N·m', [0.361, 0.473, 0.587]),
    prediction('plugHeatMultiple', '1', [2.57, 2.83, 3.11]),
  ],
  tolerances: TOLERANCES,
  closingAngles: 13,
  instruments: [{ words: 'recorder', reaches: [{ words: 'crest', value: 56.1, unit: 'A' }] }],
  pauses: {
    plugStop: {
      time: 43.2,
      perHour: 72.9,
      permissible: 145.8,
      bound: 'the winding',
      running: 5,
      untilTrip: 14,
      untilHot: null,
    },
    reversal: 'the section thermal is missing',
  },
  lateSwitch: [],
  storedEnergy: 773.6,
  leftOut: HOSTILE_TEXTS,
};

const page = (options: Partial<LaboratoryPageOptions> = {}) =>
  renderLaboratoryHtml(sheet, { units: 'SI', blank: false, version: '0', run, ...options });

describe('the printed procedure', () => {
  const html = page();

  it('shows what is expected and within which limits, in units that instruments show', () => {
    expect(html).toContain('<td>31.4 A crest</td><td>17.3 … 44.9 A crest</td>');
    expect(html).toContain('<td>214 W</td><td>161 … 274 W</td>');
    expect(html).toContain('<td>22.1 ms</td><td>18.3 … 25.7 ms</td>');
    expect(html).toContain('<td>1494 r/min</td>');
  });

  it('has lines for group, date and instructor with no name in them, and ten trials to fill in', () => {
    for (const name of ['Group', 'Date', 'Instructor']) expect(html).toContain(`<dt>${name}</dt><dd></dd>`);
    expect(html.match(/<th scope="row">Trial \d+<\/th><td><\/td>/gu)).toHaveLength(10);
  });

  it('says the pause rounded up, the trials rounded down, and who decides where it is not known', () => {
    expect(html).toMatch(/at least 45 s from standstill to the next start, at most 72 trials an hour/u);
    expect(html).toContain('the overload relay trips after 14 trials');
    expect(
      renderLaboratoryTerminal(
        { ...sheet, steps: [{ ...sheet.steps[0]!, key: 'reversal' }] },
        { units: 'SI', blank: false, colour: false },
      ).replaceAll(/\s+/gu, ' '),
    ).toContain('not worked out, because the section thermal is missing. The instructor decides.');
  });

  it('warns of flywheel, locked rotor, hot rotor and switch, and defers to local rules', () => {
    for (const words of [
      /guard is closed and nobody touches/u,
      /only with the mechanical clamp, at reduced voltage, for seconds/u,
      /keep the pause/u,
      /zero-speed switch is not a protective device/u,
      /emergency stop is within everybody/u,
      /Local rules and licensed practice decide/u,
    ])
      expect(html).toMatch(words);
  });

  it('needs nothing from elsewhere, numbers its pages and lets no text of others act', () => {
    expect(html).not.toMatch(/<script|<img|href="http/u);
    expect(html).toContain('counter(page)');
    expect(html).not.toMatch(/NaN|undefined|Infinity/u);
  });

  it('is in the units of the United States where they are asked for, but power meters show watts', () => {
    const us = page({ units: 'us' });
    expect(us).toContain('0.349 lbf·ft');
    expect(us).toContain('<td>214 W</td>');
  });
});

it('a blank sheet tells no prediction, no range and no figure of the run', () => {
  const html = page({ blank: true });
  for (const number of ['31.4', '17.3 …', '214', '22.1', '1494', '0.473', '2.83', '0.774'])
    expect(html, number).not.toContain(`${number} `);
  expect(html).toContain('Own prediction');
  expect(html).toContain('Sketch what you expect');
  expect(html).not.toContain('For the instructor');
  expect(html).toContain('at least 45 s');
});

it('the table has a line for every trial, in SI, and none of the numbers when blank', () => {
  const lines = renderLaboratoryCsv(sheet, { blank: false }).trimEnd().split('\r\n');
  expect(lines).toHaveLength(1 + 10 + 3 + 2);
  expect(lines[1]).toMatch(/^1,plugPeakCurrent,.*,1,A,31\.37,17\.31,44\.91,/u);
  expect(lines.at(-1)).toMatch(/^evaluation,plugHeatMultiple,/u);
  expect(new Set(lines.map((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/u).length))).toEqual(
    new Set([12]),
  );
  expect(renderLaboratoryCsv(sheet, { blank: true })).not.toMatch(/31\.37|17\.31/u);
});

it('no line of the terminal is wider than 80 columns', () => {
  const text = renderLaboratoryTerminal(sheet, { units: 'us', blank: false, colour: false });
  expect(text).toContain('17.3 … 44.9 A crest');
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});
