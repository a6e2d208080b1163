/** The truth table of the verdict, and its sentence. */
import { describe, expect, it } from 'vitest';
import {
  type Criterion,
  type CriterionParts,
  judged,
  notJudged,
  waived,
} from '../../../src/assess/criterion.ts';
import { verdict } from '../../../src/assess/verdict.ts';
import type { RunResult } from '../../../src/measure/result.ts';
import type { RunStatusCode } from '../../../src/simulate/status.ts';
import { PLUGGED, pluggedRun } from '../../support/judgedRun.ts';

const run = pluggedRun();

const parts = (more: Partial<CriterionParts> = {}): CriterionParts => ({
  key: 'cageTemperature',
  name: 'temperature of the cage',
  value: 200,
  unit: '°C',
  limit: 250,
  limitIs: 'most',
  source: 'invented',
  remark: '',
  required: true,
  ...more,
});
const PASS = judged(parts());
const CLOSE = judged(parts({ key: 'windingTemperature', name: 'temperature of the winding', value: 240 }));
const FAIL = judged(parts({ value: 280 }));
const OPEN = notJudged(
  parts({ key: 'contactLife', name: 'life of the contacts', value: null }),
  'x is missing',
);
const OPTIONAL = notJudged(
  parts({ key: 'stopTime', name: 'time', required: false, value: null }),
  'y is missing',
);
const WAIVED_ONE = waived({
  key: 'shaftTorque',
  name: 'torque between motor and load',
  unit: 'N·m',
  limitIs: 'most',
  remark: '',
});

describe('the outcome', () => {
  it.each<[string, readonly Criterion[], string]>([
    ['nothing but passes', [PASS], 'suitable'],
    ['close to a limit', [PASS, CLOSE], 'suitable'],
    ['a waived criterion', [PASS, WAIVED_ONE], 'suitable'],
    ['an optional one not judged', [PASS, OPTIONAL], 'suitable'],
    ['a required one not judged', [PASS, OPEN], 'notJudged'],
    ['a fail', [PASS, FAIL], 'notSuitable'],
    ['a fail and one not judged', [OPEN, FAIL], 'notSuitable'],
    ['an optional one that fails', [PASS, judged(parts({ value: 251, required: false }))], 'notSuitable'],
  ])('of %s', (_name, criteria, outcome) => {
    expect(verdict(criteria, run).outcome).toBe(outcome);
  });

  it('names what decides and what is left open', () => {
    expect(verdict([PASS, FAIL, OPEN, OPTIONAL], run)).toMatchObject({
      decisive: ['cageTemperature'],
      leftOpen: ['stopTime'],
    });
    expect(verdict([PASS, OPEN, OPTIONAL], run)).toMatchObject({
      decisive: ['contactLife'],
      leftOpen: ['stopTime'],
    });
    expect(verdict([PASS, CLOSE, WAIVED_ONE], run)).toMatchObject({
      decisive: ['windingTemperature'],
      leftOpen: [],
    });
  });
});

describe('the sentence', () => {
  it('says by how much a limit is missed', () => {
    expect(verdict([PASS, FAIL], run).sentence).toBe(
      'Plugging is not suitable by these criteria: temperature of the cage exceeds its limit by 30 K.',
    );
    const life = judged(
      parts({ name: 'life of the contacts', unit: 'operations', value: 300, limit: 400, limitIs: 'least' }),
    );
    expect(verdict([life], run).sentence).toContain('life of the contacts falls short of its limit by 25 %.');
    const far = judged(parts({ name: 'crest', unit: 'A', value: 5000 }));
    expect(verdict([far], run).sentence).toContain('crest is 20 times its limit.');
    const over = judged(parts({ name: 'crest', unit: 'A', value: 280 }));
    expect(verdict([over], run).sentence).toContain('crest exceeds its limit by 12 %.');
  });

  it('tells a limit of zero by its remark', () => {
    const turned = judged(parts({ name: 'speed left', value: 3, limit: 0, remark: 'the machine runs' }));
    expect(verdict([turned], run).sentence).toBe(
      'Plugging is not suitable by these criteria: speed left: the machine runs.',
    );
  });

  it('names the closest limit of a suitable stop', () => {
    expect(verdict([PASS, CLOSE], run).sentence).toBe(
      'Plugging is suitable by these criteria; the closest to its limit is temperature of the winding, 10 K below it.',
    );
    expect(verdict([WAIVED_ONE], run).sentence).toBe('Plugging is suitable by these criteria.');
  });

  it('says what is missing', () => {
    expect(verdict([PASS, OPEN, OPEN], run).sentence).toBe(
      'Plugging could not be judged because x is missing.',
    );
  });

  it('counts what it does not name', () => {
    expect(
      verdict(
        Array.from({ length: 6 }, () => FAIL),
        run,
      ).sentence,
    ).toMatch(/by 30 K; and 2 more\.$/);
  });

  it('never calls anything safe', () => {
    for (const criteria of [[PASS], [FAIL], [OPEN], [CLOSE, WAIVED_ONE]]) {
      const { sentence, reservations } = verdict(criteria, run);
      expect([sentence, ...reservations].join(' ')).not.toMatch(/\bsafe/i);
    }
  });
});

describe('a run speaks before the criteria', () => {
  const ended = (code: RunStatusCode, reversal = run.operations.reversal): RunResult => ({
    ...run,
    status: { code, time: 0.1, message: 'this is what happened' },
    operations: { ...run.operations, reversal },
    usable: code === 'finished' || code === 'endTimeReached',
  });

  it.each<[RunStatusCode, string, string]>([
    ['finished', 'suitable', 'notSuitable'],
    ['endTimeReached', 'suitable', 'notSuitable'],
    ['switchNeverOpened', 'suitable', 'notSuitable'],
    ['notSettled', 'notSuitable', 'notSuitable'],
    ['lineToLineShortCircuit', 'notSuitable', 'notSuitable'],
    ['overspeed', 'notSuitable', 'notSuitable'],
    ['nonFiniteValue', 'notJudged', 'notJudged'],
    ['stepLimit', 'notJudged', 'notJudged'],
  ])('%s: %s where criteria pass, %s where one fails', (code, passing, failing) => {
    expect(verdict([PASS], ended(code)).outcome).toBe(passing);
    expect(verdict([FAIL], ended(code)).outcome).toBe(failing);
    if (passing !== 'suitable')
      expect(verdict([PASS], ended(code)).sentence).toContain('this is what happened');
  });

  it('a run without a reversal is not judged, unless a criterion fails', () => {
    const none = ended('finished', null);
    expect(verdict([PASS], none)).toMatchObject({
      outcome: 'notJudged',
      sentence: 'Plugging could not be judged because no plug or reversal takes place in this run.',
    });
    expect(verdict([FAIL], none).outcome).toBe('notSuitable');
    expect(verdict([PASS], ended('lineToLineShortCircuit', null)).outcome).toBe('notSuitable');
    expect(verdict([PASS], ended('notSettled', null)).outcome).toBe('notJudged');
  });

  it('a plug that the switch refuses says so', () => {
    const refused = pluggedRun({
      starter: { ...PLUGGED.starter, zeroSpeedSwitch: { dropOutSpeed: 300, pickUpSpeed: 400, delay: 0 } },
      initial: 'rest',
      actions: [
        { at: 0, do: 'startForward' },
        { at: 0.3, do: 'plug' },
      ],
      load: { inertia: 0.03, torques: [{ kind: 'friction', torque: 10, breakaway: 10 }] },
    });
    expect(verdict([PASS], refused)).toMatchObject({ outcome: 'notJudged' });
    expect(verdict([PASS], refused).sentence).toContain('the plug command came to nothing');
  });

  it('an energy balance that does not close gives no verdict', () => {
    for (const residual of [2e-6, Number.NaN])
      expect(verdict([FAIL], { ...run, ledger: { ...run.ledger, residual } })).toMatchObject({
        outcome: 'notJudged',
      });
  });

  it('a control that fails speaks against it', () => {
    const found = (finding: RunResult['controlFindings'][number]) =>
      verdict([PASS], { ...run, controlFindings: [finding] });
    const contactor = 'reverse';
    for (const finding of [
      { kind: 'startsByItself', contactor, t: 1, cause: '', held: false },
      { kind: 'notBraked', t: 1, speed: 100, shown: true },
      { kind: 'voltageDrops', contactor, t: 1, times: 1, returns: false },
      { kind: 'heldByInterlock', contactor, t: 1 },
      { kind: 'overloadTrips', t: 1 },
    ] as const)
      expect(found(finding).outcome, finding.kind).toBe('notSuitable');
    const pressed = { at: 0.5, do: 'press', button: 'overloadTest' } as const;
    const tested = { ...run, scenario: { ...run.scenario, actions: [pressed] } };
    expect(verdict([PASS], { ...tested, controlFindings: [{ kind: 'overloadTrips', t: 0.5 }] }).outcome).toBe(
      'suitable',
    );
  });
});

describe('the reservations', () => {
  it('name the closing angle, the saturation that is left out, and what is waived', () => {
    const { reservations } = verdict([PASS, WAIVED_ONE], run);
    expect(reservations).toHaveLength(3);
    expect(reservations[0]).toContain('one closing angle');
    expect(reservations[1]).toContain('without saturation of the leakage paths');
    expect(reservations[2]).toBe(
      "By the scenario's own statement no limit applies to: torque between motor and load.",
    );
    const { scenario } = run;
    const machine = { ...scenario.machine, leakageSaturation: { stator: null, cages: [null] } };
    expect(verdict([PASS], { ...run, scenario: { ...scenario, machine } }).reservations).toHaveLength(1);
  });
});
