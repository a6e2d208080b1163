import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { buildSuitabilityFiles } from '../../../src/report/buildSuitabilityFiles.ts';
import type { JudgedRun } from '../../../src/report/judgedRun.ts';
import { leftText } from '../../../src/report/judgement/judgedText.ts';
import { outcomeMark, outcomeText } from '../../../src/report/judgement/outcomeMark.ts';
import { timeCurrentFigure } from '../../../src/report/judgement/timeCurrentFigure.ts';
import { usedLimits } from '../../../src/report/judgement/usedLimits.ts';
import { waysToStopFigure } from '../../../src/report/judgement/waysToStopFigure.ts';
import { renderCriteriaCsv } from '../../../src/report/renderCriteriaCsv.ts';
import { renderReportHtml } from '../../../src/report/renderReportHtml.ts';
import { renderSuitabilityHtml } from '../../../src/report/renderSuitabilityHtml.ts';
import { criterion, fakeJudgement, fakeJudgementOf, TIME_CURRENT } from './fakeJudgement.ts';
import { fakeRun } from './fakeRun.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const note = (judged: JudgedRun = fakeJudgement(), units: 'SI' | 'us' = 'SI') =>
  renderSuitabilityHtml(judged, { units, version: '1.2.3' });

/** The words of a page, one space between them. */
const words = (html: string) =>
  html
    .replace(/<style>.*?<\/style>/gsu, '')
    // Pieces that a line does not break are no words of their own.
    .replace(/<\/?span[^>]*>/gu, '')
    .replace(/<[^>]+>/gu, ' ')
    .replaceAll('&#39;', "'")
    .replace(/[ \n]+/gu, ' ');

const firstPage = (html: string) => words(html.split('<section class="first')[1]!.split('</section>')[0]!);

describe('an outcome', () => {
  it.each([
    [criterion('stopTime'), 'pass', 'pass'],
    [criterion('stopTime', { outcome: 'close' }), 'close', 'close to the limit'],
    [criterion('stopTime', { outcome: 'fail' }), 'fail', 'fail'],
    [
      criterion('stopTime', { outcome: 'notJudged', remark: 'not judged because X is missing' }),
      'open',
      'not judged because X is missing',
    ],
    [
      criterion('stopTime', {
        value: null,
        limit: null,
        source: 'the scenario states that no limit applies',
      }),
      'none',
      'waived: no limit applies, by the scenario',
    ],
    [
      criterion('stopTime', { value: null, limit: null, source: 'does not apply', remark: 'it reverses' }),
      'none',
      'does not apply: it reverses',
    ],
  ] as const)('is told in words and by form: %#', (given, form, text) => {
    expect(outcomeText(given)).toEqual({ form, words: text });
  });

  it('has a mark of its own form, whatever the colour', () => {
    const forms = ['pass', 'close', 'fail', 'open', 'none'] as const;
    const drawings = forms.map((form) => outcomeMark(form).replace(`data-form="${form}"`, ''));
    expect(new Set(drawings).size).toBe(forms.length);
    for (const drawing of drawings) expect(drawing).not.toMatch(/#[0-9a-f]{3}/iu);
  });
});

describe('what is left to a limit', () => {
  it.each([
    // (2 − 1)/2
    [criterion('stopTime'), '50.0 %'],
    // 145 − 100 kelvins
    [criterion('windingTemperature', { value: 100, limit: 145, unit: '°C', margin: 0.31 }), '45.0 K'],
    [criterion('deceleration', { value: 30, limit: 3, margin: -9 }), '10.0 × limit'],
    [criterion('reverseCreep', { value: 0, limit: 0, margin: 0 }), '—'],
    [criterion('voltageDip', { value: null, margin: null }), '—'],
    [
      criterion('cageTemperature', { value: Number.POSITIVE_INFINITY, unit: '°C', margin: -1 }),
      'exceeded without bound',
    ],
  ] as const)('%#: %s', (given, text) => {
    expect(leftText(given, 'SI')).toBe(text);
  });

  it('of a temperature is a difference in kelvins in both systems, as in the standards of both', () => {
    const given = criterion('windingTemperature', { value: 100, limit: 145, unit: '°C', margin: 0.31 });
    expect(leftText(given, 'us')).toBe('45.0 K');
  });
});

describe('the first page', () => {
  const page = firstPage(note());

  it('says title block, question, verdict, numbers, cautions and where to sign', () => {
    for (const text of [
      'Plant Foundry 2',
      'Tag M-17',
      'Revision C',
      'Date 2026-03-14',
      'Prepared P. P.',
      'Does plugging suit this load',
      'Plugging is not suitable by these criteria: cage temperature exceeds its limit by 12 %.',
      'Peak current',
      'Rotor heat',
      'Local codes and a licensed engineer decide.',
      'Accepted by licensed engineer: signature, date',
    ])
      expect(page).toContain(text);
  });

  it('leaves a line where the title block says nothing', () => {
    expect(page).toContain('Checked to be filled in by hand');
    const empty = firstPage(note({ ...fakeJudgement(), result: fakeRun() }));
    expect(empty.split('to be filled in by hand').length - 1).toBe(6);
  });

  it('has a row for every criterion with value, limit, what is left, outcome and source', () => {
    expect(page).toContain('Winding temperature 100 °C ≤ 145 °C 45.0 K pass NEMA MG 1 (from memory)');
    expect(page).toContain('Cage temperature 336 °C ≤ 300 °C −36.0 K fail');
    expect(page).toContain('Making current 190 A ≤ 200 A 5.00 % close to the limit');
    expect(page).toContain('Voltage dip — ≤ 12.0 % — not judged because the short-circuit power is missing');
    expect(page).toContain('Sliding of the load — — — waived: no limit applies, by the scenario');
  });

  it('shows the range of a life beside it', () => {
    expect(page).toContain('Life of the contacts 183\u202F000 63\u202F700 … 366\u202F000 ≥ 150\u202F000');
  });

  it('names what is not judged and not needed', () => {
    expect(page).toContain('Not judged, and not needed for the verdict: voltage dip.');
  });

  it('states temperatures in degrees Celsius in US units too, as NEMA MG 1 does', () => {
    expect(firstPage(note(fakeJudgement(), 'us'))).toContain('Winding temperature 100 °C ≤ 145 °C 45.0 K');
  });

  it('says at its top that figures of a run that ended badly must not be used', () => {
    const judged = fakeJudgement();
    const html = note({ ...judged, result: { ...judged.result, usable: false } });
    expect(html).toContain('<p class="alarm" role="alert">');
    expect(note()).not.toContain('class="alarm"');
  });
});

describe('the sections', () => {
  const text = words(note());

  it.each([
    ['rises of each body', 'Winding 1.00 K 3.00 K 10.0 K 5.00 K 100 °C'],
    ['what a body lacks', 'not judged because its limit is missing'],
    ['operations per hour with what binds', 'the duty 70.0 /h winding'],
    ['a cycle the run does not show', 'Full reversal not judged because the run shows no reversal'],
    ['the duty type', 'S5, 40 %, FI 2.4'],
    ['succession', 'stands 40 operations from cold and any number from the temperature of rated load'],
    ['origin of a parameter by word', '1800 s assumed half an hour (common practice, no source)'],
    ['withstand from hot', 'From hot 12.0 s 3.30 % standard: NEMA MG 1'],
    ['withstand that is missing', 'not judged because the locked-rotor withstand time from cold is missing'],
    ['operations until the relay trips', 'Without running or pause, relay cold 29 300 %'],
    ['a relay that never trips', 'In the rhythm of the duty, relay cold never trips 20.0 %'],
    ['life with its range', '183\u202F000 (63\u202F700 … 366\u202F000)'],
    ['replacement with its range', '2026-12-02 (2026-02-07 … after 9999-12-31)'],
    ['a generic life', 'generic curve, not this device'],
    ['arc charge of each pole', '0.390 0.240 0.570 128\u202F000 (64\u202F000 … 256\u202F000)'],
    ['make erosion', 'Make erosion is not judged because the bounce time is missing'],
    ['mechanical lives', 'the zero-speed switch is not judged because its mechanical life is missing'],
    ['a way that was simulated', 'Plugging nothing holds the load 0.490 s 4.00 900 N·m'],
    ['a way that was not', 'Mechanical brake no figures: the torque of a brake is missing'],
    ['an inverse question', 'Largest load inertia 1.00 kg·m² 2.00 kg·m² Temperature of the cage'],
    ['operations per hour of a way to stop that time limits', 'reverse contactor 70.0 /h limited by time'],
    ['one without answer', 'Most operations per hour none not answered: the duty is missing'],
    ['one that nothing answers', 'none passes At 2.00 ms: dead-time margin'],
    ['what failures lead to', 'If the supply fails the shaft coasts for 12 s.'],
    ['what the figure lacks', 'Not in the figure because not given: the current of a start'],
  ])('say %s', (_, expected) => {
    expect(text).toContain(expected);
  });

  it('say what is missing where whole parts are', () => {
    const judged = fakeJudgement({ extremes: null, alternatives: [] });
    const bare = words(
      note({
        ...judged,
        suitability: {
          ...judged.suitability,
          heating: 'the start is missing',
          wear: null,
          consequences: null,
        },
      }),
    );
    expect(bare).toContain('Heating and duty Not judged because the start is missing.');
    expect(bare).toContain('Wear of the contacts Not judged because the section contactors is missing.');
    expect(bare).toContain('The inverse questions were not asked for this note.');
    expect(bare).toContain('Not compared because the run contains no stop.');
    expect(bare).toContain('Not judged because no plug or reversal takes place in the run.');
  });

  it('never call anything safe', () => {
    expect(text.replaceAll('not a safety stop', '')).not.toMatch(/safe/iu);
  });

  it('show no number that is none', () => {
    for (const units of ['SI', 'us'] as const)
      expect(note(fakeJudgement(), units)).not.toMatch(/NaN|Infinity|undefined|not a number|\bnull\b/u);
  });
});

describe('text of a scenario', () => {
  it.each(HOSTILE_TEXTS)('comes out as text: %#', (hostile) => {
    const html = note(fakeJudgementOf(hostile));
    expect(html).not.toMatch(/<script|<img|<!-- |onmouseover='/u);
    expect(html.match(/<style>/gu)?.length).toBe(1);
    for (const control of ['\u202E', '\u2066', '\u0000', '\u0007']) expect(html).not.toContain(control);
  });

  it('is really in the page: title, description, title block, curve, setting and remark', () => {
    const html = note(fakeJudgementOf('<b>x</b>'));
    expect(html).not.toContain('<b>x</b>');
    // Heading and title; description; six of the title block; the curve in both drawings.
    expect(html).toContain('<h1>&lt;b&gt;x&lt;/b&gt;</h1>');
    expect(html.match(/<dd[^>]*>&lt;b&gt;x&lt;\/b&gt;<\/dd>/gu)?.length).toBe(6);
    expect(html).toContain('<p>&lt;b&gt;x&lt;/b&gt;</p>');
    expect(html).toContain('&lt;b&gt;x&lt;/b&gt; (fuse)');
    expect(html).toContain('<small>&lt;b&gt;x&lt;/b&gt;; &lt;b&gt;x&lt;/b&gt;</small>');
  });

  it.each([...HOSTILE_TEXTS, '=1+1', '+1+cmd', '-1+1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '\uFF1D1'])(
    'is no formula and breaks no row of the criteria: %j',
    (hostile) => {
      const csv = renderCriteriaCsv([
        criterion('voltageDip', { name: hostile, source: hostile, remark: hostile }),
      ]);
      const { data } = Papa.parse<string[]>(csv, { skipEmptyLines: true });
      expect(data.map((row) => row.length)).toEqual([11, 11]);
      for (const at of [1, 9, 10]) expect(data[1]?.[at]).not.toMatch(/^\s*[=+\-@\uFF1D]/u);
      expect(csv.replaceAll('\r\n', '')).not.toMatch(
        /[\p{Cc}\p{Surrogate}\u202A-\u202E\u2028\u2066-\u2069]/u,
      );
    },
  );
});

describe('a line of a table', () => {
  const html = note();

  it('does not end between a number and its unit', () => {
    expect(html).toContain('<span class="keep">1.00 K</span>');
    expect(html).toContain('winding <span class="keep">145 °C</span>, cage <span class="keep">150 °C</span>');
    expect(html).toContain(
      '<span class="keep">183\u202F000</span> <span class="keep">(63\u202F700 …</span> <span class="keep">366\u202F000)</span>',
    );
  });

  it('does not end between the mark of an outcome and its first word', () => {
    expect(html).toMatch(/<span class="keep"><svg[^>]*>(?:(?!<\/svg>).)*<\/svg>close<\/span> to the limit/u);
  });
});

describe('the time–current figure', () => {
  const spec = timeCurrentFigure(TIME_CURRENT, 'SI')!;
  const panel = spec.panels[0]!;
  const lines = panel.kind === 'lines' ? panel.series.filter((series) => series.form === 'line') : [];
  const rows = lines.map(({ x, y }) => Array.from(x, (current, i) => ({ time: y[i]!, current })));

  it('draws exact copies of the data', () => {
    const { plug, overload, lockedRotor, curves } = TIME_CURRENT;
    for (const points of [
      plug!.equivalent,
      plug!.perPeriod,
      overload!.cold,
      overload!.warm,
      lockedRotor.cold!,
      curves[0]!.points,
    ])
      expect(rows).toContainEqual(points.map(({ time, current }) => ({ time, current })));
  });

  it('draws the instantaneous trip over the whole height, and nothing that is not given', () => {
    expect(rows.at(-1)!.map(({ current }) => current)).toEqual([1000, 1000]);
    expect(rows.length).toBe(7);
  });

  it('names every line on the line itself, with the stated withstand time', () => {
    const labels = panel.kind === 'lines' ? panel.points.map(({ label }) => label) : [];
    // 80 s at 200 A is a quarter of that at twice the current.
    expect(labels).toContain('locked rotor withstood from cold: 20.0 s at 400 A');
    const named =
      panel.kind === 'lines' ? panel.points.find(({ label }) => label.startsWith('locked')) : null;
    expect([named?.x, named?.y]).toEqual([400, 20]);
    expect(labels).toContain('overload relay class 10, warm: 2.00 s at 400 A');
    expect(labels).toContain('plug, phase C: 99.0 A over 0.140 s');
    expect(labels).toContain('main fuse (fuse)');
    expect(lines.every(({ label }) => label === '')).toBe(true);
  });

  it('is left out where there is nothing to draw', () => {
    const nothing = {
      ...TIME_CURRENT,
      plug: null,
      overload: null,
      lockedRotor: { current: 400, cold: null, hot: null },
      curves: [],
      instantaneousTrip: null,
    };
    expect(timeCurrentFigure(nothing, 'SI')).toBeNull();
  });

  it('leaves out periods without current, which a logarithmic axis cannot show', () => {
    const plug = TIME_CURRENT.plug!;
    const perPeriod = [...plug.perPeriod, { time: 9, current: 0 }, { time: 9.02, current: 1e-9 }];
    const drawn = timeCurrentFigure({ ...TIME_CURRENT, plug: { ...plug, perPeriod } }, 'SI')!;
    expect(drawn.x.domain).toEqual(spec.x.domain);
    expect(drawn.x.domain[0]).toBeGreaterThan(0);
  });
});

describe('the figure of the ways to stop', () => {
  it('draws the speed of each run from its command, and a mark where it comes to zero', () => {
    const judged = fakeJudgement();
    const spec = waysToStopFigure(judged.alternatives, 'SI')!;
    const panel = spec.panels[0]!;
    const [line] = panel.kind === 'lines' ? panel.series : [];
    if (line?.form !== 'line') throw new Error('no line');
    const { trajectory } = judged.result;
    for (const i of [0, 300, 600])
      expect(line.y[i]!).toBeCloseTo((trajectory.at(1.49 + line.x[i]!).speed * 30) / Math.PI, 6);
    expect(spec.marks).toEqual([{ x: 0.49, label: 'plugging 0.490 s' }]);
  });

  it('names a way on its curve that ends beyond the figure', () => {
    const [plug] = fakeJudgement().alternatives;
    const coast = { ...plug!, name: 'coast', figures: { ...plug!.figures!, time: 30 } } as const;
    const panel = waysToStopFigure([plug!, coast], 'SI')!.panels[0]!;
    const labels = panel.kind === 'lines' ? panel.points.map(({ label }) => label) : [];
    expect(labels).toEqual(['coasting, at rest after 30.0 s']);
  });

  it('is left out where nothing was simulated', () => {
    expect(waysToStopFigure(fakeJudgement().alternatives.slice(1), 'SI')).toBeNull();
  });
});

describe('sources', () => {
  const sources = (thermal?: { insulationClass: '130' | '155' }) => {
    const { result, suitability } = fakeJudgement();
    const scenario = { ...result.scenario, ...(thermal && { thermal }) } as typeof result.scenario;
    return usedLimits(scenario, suitability).map(({ source }) => source);
  };

  it('list the limit of the class that is stated and no other', () => {
    expect(sources({ insulationClass: '155' }).join()).toContain('class 155 (F)');
    expect(sources({ insulationClass: '155' }).join()).not.toContain('class 130');
    expect(sources().join()).not.toContain('thermal class');
  });

  it('list the scatter of generic lives where a life is generic', () => {
    expect(sources().join()).toContain('about a life that is not that of the device');
    expect(sources().join()).not.toContain('about a stated one');
  });
});

describe('the files', () => {
  it('are the note, two figures and the criteria', () => {
    const names = buildSuitabilityFiles(fakeJudgement(), { units: 'SI', version: '1' }).map(
      ({ name }) => name,
    );
    expect(names).toEqual([
      'suitability.html',
      'figures/time-current.svg',
      'figures/ways-to-stop.svg',
      'criteria.csv',
    ]);
  });

  it('the criteria are in SI with all digits, a formula is none', () => {
    const csv = renderCriteriaCsv([
      criterion('voltageDip', { value: 0.123456789, name: '=1+1, "x"', margin: -0.5, outcome: 'fail' }),
    ]);
    const [head, row] = csv.split('\r\n');
    expect(head).toBe('key,criterion,value,limit,limit_is,unit,margin,outcome,required,source,remark');
    expect(row).toBe(
      'voltageDip,"\'=1+1, ""x""",0.123456789,2,at most,1,-0.5,fail,yes,NEMA MG 1 (from memory),',
    );
  });
});

describe('the report of a run', () => {
  it('says that suitability judges only where there is something to judge by', () => {
    const run = fakeRun();
    const sentence = 'the command suitability does, by the limits of the scenario';
    const options = { units: 'SI', version: '1' } as const;
    expect(renderReportHtml(run, options)).not.toContain(sentence);
    const duty = { cycle: 'startPlugStop' } as NonNullable<typeof run.scenario.duty>;
    expect(renderReportHtml({ ...run, scenario: { ...run.scenario, duty } }, options)).toContain(sentence);
  });
});
