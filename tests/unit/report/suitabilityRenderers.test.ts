import { describe, expect, it } from 'vitest';
import {
  type Criterion,
  type CriterionParts,
  judged,
  notJudged,
  waived,
} from '../../../src/assess/criterion.ts';
import type { Suitability } from '../../../src/assess/suitability.ts';
import { displayWidth } from '../../../src/report/displayWidth.ts';
import type { JudgedRun } from '../../../src/report/judgedRun.ts';
import { renderSuitabilityJson } from '../../../src/report/renderSuitabilityJson.ts';
import { renderSuitabilityTerminal } from '../../../src/report/renderSuitabilityTerminal.ts';
import type { SuitabilityFile } from '../../../src/report/suitabilityFile.ts';
import type { Alternative } from '../../../src/survey/alternatives/alternative.ts';
import { fakeJudgement } from './fakeJudgement.ts';
import { fakeRun, fakeScenario } from './fakeRun.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const parts = (key: Criterion['key'], value: number | null, limit: number, unit: string): CriterionParts => ({
  key,
  name: `name of ${key}`,
  value,
  limit,
  unit,
  limitIs: 'most',
  source: 'stated',
  remark: '',
  required: true,
});

/** One criterion of every outcome; margins by hand: 0.5/1, 0.005/0.1; 400 is four times 100. */
const CRITERIA: readonly Criterion[] = [
  judged(parts('stopTime', 0.5, 1, 's')),
  judged(parts('voltageDip', 0.095, 0.1, '1')),
  judged(parts('shaftTorque', 400, 100, 'N·m')),
  judged(parts('windingTemperature', Number.POSITIVE_INFINITY, 145, '°C')),
  notJudged({ ...parts('contactLife', null, 1e5, 'operations'), source: '' }, 'the life is missing'),
  waived({ key: 'tipping', name: 'tipping', unit: 'm/s²', limitIs: 'most', remark: '' }),
];

const COAST: Alternative = {
  name: 'coast',
  setting: '',
  chosen: null,
  remark: '',
  figures: {
    command: 1,
    time: 12,
    reachesZero: true,
    angle: 4 * Math.PI,
    peakCurrent: 0,
    peakTorque: 300,
    couplingTorque: null,
    statorHeat: 0,
    rotorHeat: 5000,
    lineResistorHeat: 0,
  },
  cost: {
    operationsPerHour: 31,
    binding: 'winding',
    contactLife: Number.POSITIVE_INFINITY,
    wearsFirst: null,
  },
  reversalTime: null,
  result: null,
  missing: null,
};

const BRAKE: Alternative = {
  ...COAST,
  name: 'mechanicalBrake',
  figures: null,
  cost: { operationsPerHour: null, binding: null, contactLife: null, wearsFirst: null },
  missing: 'its torque is missing',
};

function judgedRun(changes: Partial<JudgedRun> = {}, title = 'Belt'): JudgedRun {
  const result = fakeRun({ scenario: fakeScenario(title) });
  const suitability: Suitability = {
    verdict: {
      outcome: 'notSuitable',
      sentence: 'Plugging is not suitable by these criteria: torque.',
      decisive: ['shaftTorque'],
      leftOpen: [],
      reservations: ['One angle only.'],
    },
    criteria: CRITERIA,
    heating: 'the run shows no start',
    wear: null,
    timeCurrent: {
      start: null,
      plug: null,
      overload: null,
      lockedRotor: { current: 1, cold: null, hot: null },
      curves: [],
      instantaneousTrip: null,
    },
    consequences: null,
  };
  return { result, suitability, alternatives: [COAST, BRAKE], extremes: null, ...changes };
}

const plain = { units: 'SI', colour: false } as const;
const page = (text: string) => text.replaceAll(/\s+/gu, ' ');

describe('the page of the terminal', () => {
  it('says every outcome in words beside value, limit and margin', () => {
    const text = page(renderSuitabilityTerminal(judgedRun(), plain));
    expect(text).toContain('Time to zero speed 0.500 s ≤ 1.00 s 50.0 % pass');
    expect(text).toContain('Voltage dip 9.50 % ≤ 10.0 % 5.00 % close to limit');
    expect(text).toContain('Torque of the shaft 400 N·m ≤ 100 N·m 4.00 × limit FAIL');
    expect(text).toContain('Winding temperature no bound ≤ 145 °C no bound FAIL');
    expect(text).toContain('Tipping of the load — — — waived');
    expect(text).toContain('Missing for a verdict: life of the contacts (the life is missing).');
  });

  it('sets the ways to stop side by side and says why one is not compared', () => {
    const text = page(renderSuitabilityTerminal(judgedRun(), plain));
    // 4π rad are two revolutions; nothing wears the contacts.
    expect(text).toContain('coasting 12.0 2.00 300 0 5.00 no wear 31.0');
    expect(text).toContain('Not compared: mechanical brake (its torque is missing).');
  });

  it('marks operations per hour that time limits, not heat', () => {
    const timely: Alternative = { ...COAST, cost: { ...COAST.cost, binding: 'time' } };
    const plug: Alternative = { ...COAST, name: 'plug' };
    const text = renderSuitabilityTerminal(judgedRun({ alternatives: [plug, timely] }), plain);
    // Digits stay under digits
    expect(text).toMatch(/^plugging .* 31\.0$/mu);
    expect(text).toMatch(/^coasting .* 31\.0\*$/mu);
    const [warm, late] = ['plugging', 'coasting'].map((way) =>
      text.split('\n').find((line) => line.startsWith(way)),
    );
    expect(late).toHaveLength(warm!.length + 1);
    expect(page(text)).toContain('* limited by time, not by heat: the cycle has no rest left.');
    expect(page(renderSuitabilityTerminal(judgedRun(), plain))).not.toContain('limited by time');
    const data: SuitabilityFile = JSON.parse(
      renderSuitabilityJson(judgedRun({ alternatives: [plug, timely] }), { version: '1' }),
    );
    expect(data.alternatives.map(({ binding }) => binding)).toEqual(['winding', 'time']);
  });

  it('says what was set with its value, what a way leaves open, and that rotor heat is to rest', () => {
    const line: Alternative = {
      ...COAST,
      name: 'lineResistors',
      setting: 'chosen: the smallest',
      chosen: { value: 0.26, unit: 'Ω' },
      remark: 'nothing holds the load',
    };
    const later: Alternative = {
      ...line,
      name: 'longerDeadTime',
      setting: '',
      chosen: { value: 0.371, unit: 's' },
    };
    const direct: Alternative = {
      ...line,
      name: 'directCurrent',
      remark: '',
      chosen: { value: 58.4, unit: 'A' },
    };
    const alternatives = [COAST, line, later, direct];
    const text = page(renderSuitabilityTerminal(judgedRun({ alternatives }), plain));
    expect(text).toContain(
      'Set: line resistors 0.260 Ω per line, chosen: the smallest. longer dead time 0.371 s. d.c. injection 58.4 A, chosen',
    );
    expect(text).toContain('Note: nothing holds the load (line resistors, longer dead time).');
    expect(text).toContain('Rotor: heat from the command to rest.');
    const data: SuitabilityFile = JSON.parse(
      renderSuitabilityJson(judgedRun({ alternatives }), { version: '1' }),
    );
    expect(data.alternatives.map(({ chosen, remark }) => ({ chosen, remark }))).toEqual([
      { chosen: null, remark: '' },
      { chosen: { value: 0.26, unit: 'Ω' }, remark: 'nothing holds the load' },
      { chosen: { value: 0.371, unit: 's' }, remark: 'nothing holds the load' },
      { chosen: { value: 58.4, unit: 'A' }, remark: '' },
    ]);
  });

  it('gives lives of contacts two digits, with the range of the stop that the duty is made of', () => {
    const { suitability } = fakeJudgement();
    const plug: Alternative = {
      ...COAST,
      name: 'plug',
      cost: { operationsPerHour: 31, binding: 'winding', contactLife: 183000, wearsFirst: 'reverse' },
    };
    const other: Alternative = {
      ...COAST,
      cost: { ...plug.cost, contactLife: 7_655_000, wearsFirst: 'forward' },
    };
    const judged = judgedRun({ suitability, alternatives: [plug, other] });
    const text = page(renderSuitabilityTerminal(judged, plain)).replaceAll('\u202F', ' ');
    expect(text).toMatch(/plugging 12\.0 .* 180 000 31\.0 coasting 12\.0 .* 7 700 000 31\.0/u);
    expect(text).toContain('Range of the contacts: plugging 64 000 … 370 000 operations.');
    expect(text).toContain(
      'Contacts to be replaced 180 000 operations (64 000 … 370 000, reverse contactor)',
    );
  });

  it('says at the life, and where the life decides, that it stands on no data of the contactor', () => {
    const { suitability } = fakeJudgement();
    const verdict = { ...suitability.verdict, decisive: ['contactLife'] as const };
    const caution =
      "Caution: The life of the contacts decides the verdict and stands on a generic curve, not this contactor's data.";
    const of = (changes: Partial<Suitability>) =>
      page(renderSuitabilityTerminal(judgedRun({ suitability: { ...suitability, ...changes } }), plain));
    expect(of({ verdict })).toContain(caution);
    expect(of({ verdict })).toContain("on 2026-12-02; generic curve, not this contactor's data");
    // Another criterion decides.
    expect(of({})).not.toContain(caution);
    const { wear } = suitability;
    if (wear === null) throw new Error('the judgement has no wear');
    const stated = {
      ...wear,
      reverse: { ...wear.reverse, basis: { ...wear.reverse.basis, generic: false } },
    };
    expect(of({ verdict, wear: stated })).not.toContain('generic curve');
  });

  it('prints every sentence on what failures lead to, as a block of its own', () => {
    const { suitability } = fakeJudgement();
    const { consequences } = suitability;
    if (consequences === null) throw new Error('the judgement has no consequences');
    const sentences = [
      'If the supply fails the shaft coasts for 12 s.',
      'At rest nothing holds the load: it turns the shaft by itself.',
      'Plugging neither holds nor is fail-safe.',
    ];
    const judged = judgedRun({
      suitability: { ...suitability, consequences: { ...consequences, sentences } },
    });
    const block = ['If supply, contactor or switch fails', ...sentences].join('\n');
    expect(renderSuitabilityTerminal(judged, plain)).toContain(`\n\n${block}\n\n`);
    expect(renderSuitabilityTerminal(judgedRun(), plain)).not.toContain('switch fails');
  });

  it('says up to where the rotor heat of its key number counts', () => {
    expect(page(renderSuitabilityTerminal(judgedRun(), plain))).toMatch(
      /Rotor heat .* (?:in one stop, up to zero speed|in one full reversal) /u,
    );
  });

  it('uses US units throughout when asked', () => {
    const text = renderSuitabilityTerminal(judgedRun(), { ...plain, units: 'us' });
    // 400 N·m over 1.35582 N·m; temperatures stay in °C, as in NEMA MG 1.
    expect(page(text)).toContain('Torque of the shaft 295 lbf·ft ≤ 73.8 lbf·ft');
    expect(text).toContain('≤ 145 °C');
    expect(text).not.toMatch(/N·m|kJ/u);
  });

  it('shows an inverse question with what binds, and one that was not answered with the reason', () => {
    const extremes: JudgedRun['extremes'] = [
      {
        name: 'largestInertia',
        unit: 'kg·m²',
        present: 0.8,
        boundary: { kind: 'found', value: 2.5, beyond: 2.6, binding: ['cage temperature'], trials: 9 },
        missing: null,
        remark: '',
      },
      {
        name: 'smallestResistor',
        unit: 'Ω',
        present: null,
        boundary: null,
        missing: 'none is needed',
        remark: '',
      },
    ];
    const text = page(renderSuitabilityTerminal(judgedRun({ extremes }), plain));
    expect(text).toContain('Largest load inertia 2.50 kg·m² beyond it: cage temperature; now 0.800 kg·m²');
    expect(text).toContain('Smallest line resistor — not answered: none is needed');
    expect(renderSuitabilityTerminal(judgedRun(), plain)).not.toContain('How far it may go');
  });

  it.each([...HOSTILE_TEXTS, 'x'.repeat(300)])(
    'keeps to 80 columns and lets no control through: %j',
    (title) => {
      const text = renderSuitabilityTerminal(judgedRun({}, title), plain);
      for (const line of text.split('\n')) expect(displayWidth(line)).toBeLessThanOrEqual(80);
      expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u);
    },
  );

  it('has colour only when asked, and the words do not change with it', () => {
    const coloured = renderSuitabilityTerminal(judgedRun(), { ...plain, colour: true });
    expect(coloured).toContain('\u001B[1;31mFAIL');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences are what is removed
    expect(coloured.replaceAll(/\u001B\[[\d;]*m/gu, '')).toBe(renderSuitabilityTerminal(judgedRun(), plain));
  });
});

describe('the JSON', () => {
  const data: SuitabilityFile = JSON.parse(renderSuitabilityJson(judgedRun(), { version: '1.2.3' }));

  it('has the keys of version 1, in this order', () => {
    expect(data.suitabilityVersion).toBe(1);
    expect(Object.keys(data)).toEqual([
      'suitabilityVersion',
      'program',
      'scenario',
      'status',
      'verdict',
      'criteria',
      'metrics',
      'heating',
      'wear',
      'alternatives',
      'extremes',
      'consequences',
      'warnings',
      'cautions',
    ]);
  });

  it('gives SI, and a reason wherever a number is missing', () => {
    const criterion = (key: Criterion['key']) => data.criteria.find((found) => found.key === key);
    expect(criterion('shaftTorque')).toMatchObject({ value: 400, limit: 100, margin: -3, missing: null });
    expect(criterion('windingTemperature')).toMatchObject({ value: null, outcome: 'fail', margin: null });
    expect(criterion('windingTemperature')?.missing).toBe('it grows without bound');
    expect(criterion('contactLife')?.missing).toBe('not judged because the life is missing');
    expect(criterion('tipping')?.missing).toBe('the scenario states that no limit applies');
    expect(data.heating.permissible.startPlugStop).toEqual({
      value: null,
      unit: '1/h',
      missing: 'the run shows no start',
      binding: null,
    });
    expect(data.alternatives[0]).toMatchObject({ name: 'coast', time: 12, rotorHeat: 5000 });
    expect(data.alternatives[1]).toMatchObject({ time: null, missing: 'its torque is missing' });
  });
});
