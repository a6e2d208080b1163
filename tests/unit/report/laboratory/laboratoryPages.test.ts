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

const LIMIT = {
  ...{ key: 'instantaneousTrip' as const, value: 44.91, most: 28.28, unit: 'A' },
  ...{ words: 'The crest of the current', consequence: 'The breaker may open.' },
};

/** Numbers of no machine, so that each is known again on the page. */
const sheet: LaboratorySheet = {
  scenario,
  steps: [
    {
      key: 'plugStop',
      title: 'Plug stop, ten times',
      cautions: ['One hand stays at the emergency stop.'],
      limits: [LIMIT],
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
      untilTripWithPause: 6,
      untilHot: null,
    },
    reversal: 'the section thermal is missing',
  },
  leastTime: { parts: [{ step: 'plugStop', trials: 10, each: 50.7 }], total: 507 },
  lateSwitch: [
    { later: 0, speed: 0.5, angle: 0.02 },
    { later: 0.037, speed: 8.171, angle: 3.291 },
  ],
  ...{ turnsOn: null, storedEnergy: 773.6, inertia: 0.0632 },
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
    expect(html).toMatch(/at least 45 s from standstill to the next start, at most 70 trials an hour/u);
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

  it('warns that the emergency stop does not brake, for how long the disc may turn on, and says what sets the pause', () => {
    expect(html).toContain(
      'reckons with an emergency stop that only takes the supply away and does not brake',
    );
    expect(html).toContain('how long the disc then turns on is not predicted here');
    expect(html).toContain('the pause, which is set here by the winding.');
    const runDown = prediction('runDownTime', 's', [18.1, 23.3, 31.2]);
    const steps = [...sheet.steps, { ...sheet.steps[0]!, key: 'runDown' as const, readings: [runDown] }];
    const known = (blank: boolean, turnsOn: LaboratorySheet['turnsOn'] = { most: 31.2, isOpen: false }) =>
      renderLaboratoryHtml(
        { ...sheet, steps, turnsOn, pauses: { ...sheet.pauses, plugStop: 'no duty' } },
        { units: 'SI', blank, version: '0', run },
      );
    expect(known(false)).toMatch(/31\.2 s/u);
    for (const blank of [false, true])
      expect(known(blank)).toContain('the disc then turns on for up to 35 s or so, as in');
    expect(known(true)).not.toMatch(/31\.2 s/u);
    expect(known(false, { most: 31.2, isOpen: true })).toContain('for up to 35 s or so, or longer');
    expect(known(false, { most: 4e5, isOpen: false })).toContain('may then turn on for longer than an hour');
    expect(known(false)).toContain('keep the pause that the instructor sets.');
  });

  it('says where a step may pass a limit of the scenario, and that the relay may trip in spite of the pause', () => {
    expect(html).toContain(
      '<p class="alarm">The crest of the current may go beyond the crest of its setting, 28.3 A (√2 × limits.instantaneousTrip): it may reach 44.9 A. The breaker may open.</p>',
    );
    expect(html).toContain('With this pause the overload relay still trips after 6 trials');
    const text = renderLaboratoryTerminal(sheet, { units: 'SI', blank: true, colour: false });
    expect(text.replaceAll(/\s+/gu, ' ')).toContain('(√2 × limits.instantaneousTrip). The breaker may open.');
  });

  it('says how long the trials take, and what fewer of them save', () => {
    expect(html).toContain('Time of the trials with their pauses: at least 9 min (step 1: 10 × 51 s)');
    expect(html).toContain('5 plug stops instead of 10 save about 4 min');
    expect(page({ blank: true })).toMatch(/at least 9 min \(trials of step 1: 10\)/u);
    const unknown = { ...sheet, leastTime: 'the section thermal is missing' };
    expect(
      renderLaboratoryTerminal(unknown, { units: 'SI', blank: false, colour: false }).replaceAll(
        /\s+/gu,
        ' ',
      ),
    ).toContain('Least time of the trials: not worked out, because the section thermal is missing.');
  });

  it('keeps what is to be done on one page with the table for it, and lets figures fill a page', () => {
    for (const step of html.split('<section class="step">').slice(1)) {
      const [kept] = step.split('</div>\n<div class="scroll"><table class="trials"');
      expect(kept).toMatch(/^\n<div class="together">\n<h2>[\s\S]*<\/ol>[\s\S]*<\/table>/u);
    }
    expect(html).toContain('.together{break-inside:avoid}');
    const heights = [...html.matchAll(/<svg [^>]*viewBox="0 0 960 (\d+)"/gu)].map(([, height]) =>
      Number(height),
    );
    // 180 mm of paper are 960 px wide, and 222 mm of them high.
    expect(Math.max(...heights)).toBeLessThan((960 * 222) / 180);
    expect(Math.min(...heights)).toBeGreaterThan((960 * 170) / 180);
    expect(html.match(/Line current [ABC] \(A\)<\/text>/gu)).toHaveLength(3);
    expect(html).not.toMatch(/Terminal voltage \(V/u);
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

it('a blank sheet keeps the delays to set, and tells neither what they lead to nor the rule of the heats', () => {
  const creep = { ...sheet.steps[0]!, key: 'creep' as const };
  const both = { ...sheet, steps: [creep] };
  const [told, blank] = [false, true].map((left) =>
    renderLaboratoryHtml(both, { units: 'SI', blank: left, version: '0', run }),
  );
  for (const words of ['37.0 ms', 'If the switch opens later than it is set']) {
    expect(told).toContain(words);
    expect(blank).toContain(words);
  }
  for (const words of [
    '78.0 r/min',
    '189°',
    '1 : 3 : 4',
    'takes 1 of it in a start',
    '<th scope="col">Rule',
    '44.9 A',
  ]) {
    expect(told, words).toContain(words);
    expect(blank, words).not.toContain(words);
  }
  expect(blank).toContain('½·J·ω²');
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
