/** The judgement as a whole, on the example that plugs well: suitable as it stands, and not with any one thing changed. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CriterionKey } from '../../../src/assess/criterion.ts';
import { parseScenario } from '../../../src/estimate/parseScenario.ts';
import { judgedAlone } from '../../../src/survey/judgedAlone.ts';
import { judgement } from '../../../src/survey/judgement.ts';

const TEXT = readFileSync('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8');

function edited(...edits: readonly (readonly [string, string])[]): string {
  return edits.reduce((text, [before, after]) => {
    if (!text.includes(before)) throw new Error(`the example has no "${before}"`);
    return text.replace(before, after);
  }, TEXT);
}

function judge(...edits: readonly (readonly [string, string])[]) {
  const { suitability } = judgedAlone(parseScenario(edited(...edits)), false);
  const outcome = (key: CriterionKey) => suitability.criteria.find((one) => one.key === key)?.outcome;
  return { verdict: suitability.verdict, outcome };
}

describe('the example that plugs well', () => {
  it('is suitable, though not everything is judged', () => {
    const { verdict, outcome } = judge();
    expect(verdict.outcome).toBe('suitable');
    expect(verdict.sentence).toMatch(/^Plugging is suitable by these criteria/u);
    expect(outcome('tipping')).toBe('notJudged');
  });

  // What a limit of the file, or what it says of the plant, makes of each criterion beyond its limit.
  it.each<[CriterionKey, ...(readonly [string, string])[]]>([
    [
      'staysAtRest',
      [
        '{ kind: friction, torque: 12 N m',
        '{ kind: gravity, torque: 20 N m }\n    - { kind: friction, torque: 12 N m',
      ],
    ],
    ['stopTime', ['stopTime: 0.4 s', 'stopTime: 0.15 s']],
    ['stopAngle', ['stopTime: 0.4 s', 'stopAngle: 1 rev']],
    ['reverseCreep', ['reverseCreep: 30 deg', 'reverseCreep: 1 deg']],
    ['deadTimeMargin', ['stopTime: 0.4 s', 'deadTimeMargin: 50 ms']],
    [
      'windingTemperature',
      ['insulationClass: 155 (F)', 'insulationClass: 130 (B)'],
      ['runningTime: 3 min', 'runningTime: 10 s'],
      ['operationsPerHour: 12', 'operationsPerHour: 300'],
      ['operationsPerDay: 150', 'operationsPerDay: 3000'],
    ],
    [
      'cageTemperature',
      [
        'lockedRotorTimeHot: 12 s',
        'lockedRotorTimeHot: 12 s\n  cageRatedTemperature: 85 degC\n  cageLimit: 110 degC',
      ],
      ['runningTime: 3 min', 'runningTime: 10 s'],
      ['operationsPerHour: 12', 'operationsPerHour: 300'],
      ['operationsPerDay: 150', 'operationsPerDay: 3000'],
    ],
    ['operationsPerHour', ['runningTime: 3 min', 'runningTime: 5 min']],
    ['lockedRotorWithstand', ['lockedRotorTimeHot: 12 s', 'lockedRotorTimeHot: 0.3 s']],
    ['overloadRelay', ['setting: 14.6 A, class: 10', 'setting: 6 A, class: 10']],
    ['makingCapacity', ['lifeAc3: 1.2e6', 'makingCapacity: 150 A\n  lifeAc3: 1.2e6']],
    ['breakingCapacity', ['lifeAc3: 1.2e6', 'breakingCapacity: 70 A\n  lifeAc3: 1.2e6']],
    [
      'contactorOperationsPerHour',
      ['operationsPerHourAc4: 250', 'operationsPerHourAc3: 11\n  operationsPerHourAc4: 250'],
    ],
    ['contactLife', ['contactLife: 100000', 'contactLife: 1e6']],
    ['instantaneousTrip', ['instantaneousTrip: 240 A', 'instantaneousTrip: 200 A']],
    [
      'voltageDip',
      ['stopTime: 0.4 s', 'voltageDip: 5 %'],
      ['frequency: 50 Hz', 'frequency: 50 Hz\n  shortCircuitPower: 1 MVA'],
    ],
    ['shaftTorque', ['couplingTorque: 1.1 kN m', 'couplingTorque: 300 N m']],
    ['deceleration', ['stopTime: 0.4 s', 'decelerationRadius: 100 mm\n  deceleration: 1 g0']],
    ['tipping', ['stopTime: 0.4 s', 'decelerationRadius: 100 mm\n  tippingRatio: 2']],
    ['sliding', ['stopTime: 0.4 s', 'decelerationRadius: 100 mm\n  slidingFriction: 0.3']],
  ])('fails by %s, which makes it not suitable', (key, ...edits) => {
    const { verdict, outcome } = judge(...edits);
    expect(outcome(key)).toBe('fail');
    expect(verdict.outcome).toBe('notSuitable');
    expect(verdict.decisive).toContain(key);
  });

  it('fails where time alone ends the plugging', () => {
    const { verdict, outcome } = judge([
      '  - { at: 1 s, do: plug }',
      '  - { at: 1 s, do: start reverse }\n  - { at: 1.2 s, do: coast }',
    ]);
    expect(outcome('endedBySwitch')).toBe('fail');
    expect(verdict.outcome).toBe('notSuitable');
  });

  // A required criterion that lacks something bars "suitable".
  it.each<[string, string]>([
    ['  insulationClass: 155 (F)\n', 'the insulation class is missing'],
    ['  operationsPerHour: 12\n', 'operations per hour'],
    ['  contactLife: 100000\n', 'contactLife'],
    ['  couplingTorque: 1.1 kN m', 'torque limit of coupling'],
  ])('is not judged without %s', (line, missing) => {
    const { verdict } = judge([line, line.includes('coupling') ? '  #' : '']);
    expect(verdict.outcome).toBe('notJudged');
    expect(verdict.sentence).toMatch(/^Plugging could not be judged/u);
    expect(verdict.sentence).toContain(missing);
  });
});

describe('what a judgement is not made of', () => {
  const plug = 'cycle: start and plug stop';
  it.each<[string, readonly [string, string]]>([
    ['the duty contains no plugging', [plug, 'cycle: start and coast']],
    ['the duty contains no plugging', [plug, `${plug}\n  pluggingShare: 0 %\n  inchingShare: 100 %`]],
    [
      'the scenario assumes faults of the starter',
      [
        '  closingTime: 18 ms',
        '  faults: [{ kind: welded pole, contactor: forward, pole: A }]\n  closingTime: 18 ms',
      ],
    ],
  ])('%s: it could not be judged', (why, edit) => {
    const { verdict } = judge(edit);
    expect(verdict.outcome).toBe('notJudged');
    expect(verdict.sentence).toContain(why);
  });
});

describe('full reversal', () => {
  it('wears contacts by reversals, and its sentences are those of a drive that reverses', () => {
    const text = readFileSync('examples/teacher/what-does-a-full-reversal-cost.yaml', 'utf8');
    const rest = TEXT.slice(TEXT.indexOf('thermal:')).replace('start and plug stop', 'full reversal');
    const { suitability } = judgedAlone(parseScenario(`${text}\n${rest}`), false);
    const life = suitability.criteria.find(({ key }) => key === 'contactLife')!;
    expect(life.outcome).not.toBe('notJudged');
    // Both contactors take turns: neither lasts longer than the other.
    const { forward, reverse } = suitability.wear!;
    expect(reverse.operations!.value / forward.operations!.value).toBeCloseTo(1, 1);
    const sentences = suitability.consequences!.sentences.join(' ');
    expect(sentences).toContain('Reversing neither holds nor is fail-safe');
    expect(sentences).not.toContain('zero-speed switch');
    const rate = suitability.criteria.find(({ key }) => key === 'operationsPerHour')!;
    expect(rate.remark).toContain('the running time is not used');
  });
});

describe('a slip-ring motor', () => {
  const text = readFileSync('examples/engineer/how-hard-does-plugging-twist-the-shaft.yaml', 'utf8');
  const cageOf = (thermal: string) => {
    const { suitability } = judgedAlone(
      parseScenario(`${text}\nthermal: ${thermal}\nduty: { operationsPerHour: 5, runningTime: 60 s }`),
      false,
    );
    return suitability.criteria.find(({ key }) => key === 'cageTemperature')!;
  };
  it('has an insulated rotor: its limit is that of the insulation, not of a cage', () => {
    const cage = cageOf('{ insulationClass: 155 (F) }');
    expect(cage.limit).toBe(155);
    expect(cage.source).toContain('wound rotor');
  });
  it('is not judged without that class', () => {
    expect(cageOf('{ altitude: 0 m }')).toMatchObject({
      outcome: 'notJudged',
      remark: expect.stringContaining('a wound rotor is insulated'),
    });
  });
});

describe('a judgement with everything', () => {
  const scenario = parseScenario(TEXT);

  it('answers the inverse questions only when asked', () => {
    expect(judgement(scenario, { cageIsFitted: false, extremes: false }).extremes).toBe(null);
  });

  it('chooses the resistor that brings plugging within its limits where current or torque fails', () => {
    // A rigid shaft carries 439 N·m at the worst of the closing angles.
    const tight = parseScenario(edited(['couplingTorque: 1.1 kN m', 'couplingTorque: 400 N m']));
    const { alternatives, suitability } = judgement(tight, { cageIsFitted: false, extremes: false });
    expect(suitability.verdict.decisive).toContain('shaftTorque');
    const way = alternatives.find(({ name }) => name === 'lineResistors')!;
    expect(way.setting).toBe('chosen: the smallest with which no criterion fails');
    // With it the same criterion does not fail any more, and with a few per cent less it does.
    const outcomeWith = (share: number) => {
      const { closingTime, openingTime } = tight.starter;
      const resistance = share * way.chosen!.value;
      const lineResistors = { resistance, closingTime, openingTime, bypassAfter: null };
      const judged = judgedAlone(
        { ...tight, starter: { ...tight.starter, lineResistors } },
        false,
      ).suitability;
      return judged.criteria.find(({ key }) => key === 'shaftTorque')!.outcome;
    };
    expect(outcomeWith(1)).not.toBe('fail');
    expect(outcomeWith(0.9)).toBe('fail');
  });

  it('looks for no resistor where none could help', () => {
    const worn = parseScenario(edited(['contactLife: 100000', 'contactLife: 1e6']));
    const { alternatives } = judgement(worn, { cageIsFitted: false, extremes: false });
    expect(alternatives.find(({ name }) => name === 'lineResistors')!.setting).toContain(
      'the steady current of plugging',
    );
  });

  it('takes torque and current from the worst of the closing angles', () => {
    const { result, worst, suitability } = judgement(scenario, { cageIsFitted: false, extremes: false });
    const torque = ({ metrics }: typeof result) => Math.abs(metrics.plugMinimumTorque.value!);
    expect(torque(worst)).toBeGreaterThan(1.02 * torque(result));
    const { value } = suitability.criteria.find(({ key }) => key === 'shaftTorque')!;
    const alone = judgedAlone({ ...scenario, supply: worst.scenario.supply }, false).suitability;
    expect(value).toBe(alone.criteria.find(({ key }) => key === 'shaftTorque')!.value);
  });
});
