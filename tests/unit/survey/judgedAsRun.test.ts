import { expect, it } from 'vitest';
import { judgement, parseScenario, simulate } from '../../../src/index.ts';
import { judgedAsRun } from '../../../src/survey/judgedAsRun.ts';
import { exampleText } from '../../support/examples.ts';

it('what does not depend on the closing angle is judged as by the whole judgement', () => {
  const scenario = parseScenario(exampleText('may-this-belt-be-plugged.yaml'));
  const alone = judgedAsRun(simulate(scenario), false);
  const whole = judgement(scenario, { cageIsFitted: false, extremes: false }).suitability;
  const ofAngle = new Set([
    'shaftTorque',
    'deceleration',
    'instantaneousTrip',
    'makingCapacity',
    'breakingCapacity',
    'contactLife',
    'tipping',
    'sliding',
  ]);
  const rest = ({ criteria }: typeof alone) => criteria.filter(({ key }) => !ofAngle.has(key));
  expect(rest(alone).length).toBeGreaterThan(10);
  expect(rest(alone)).toEqual(rest(whole));
});

it('no criterion that takes the worst angle is judged more severely by one angle than by thirteen', () => {
  const scenario = parseScenario(exampleText('may-this-belt-be-plugged.yaml'));
  const alone = judgedAsRun(simulate(scenario), false);
  const whole = judgement(scenario, { cageIsFitted: false, extremes: false }).suitability;
  for (const key of ['shaftTorque', 'instantaneousTrip'] as const) {
    const of = ({ criteria }: typeof alone) => criteria.find((criterion) => criterion.key === key)!.value!;
    expect(of(alone)).toBeLessThanOrEqual(of(whole));
  }
  expect(alone.wear).not.toBeNull();
});

it('a run that ends badly has no wear and no "suitable"', () => {
  const text = exampleText('may-this-belt-be-plugged.yaml')
    .replace('closingTime: 18 ms', 'closingTime: 9 ms')
    .replace('changeoverDelay: 12 ms', 'deadTime: 1 ms');
  const alone = judgedAsRun(simulate(parseScenario(text)), false);
  expect(alone.wear).toBeNull();
  expect(alone.verdict.outcome).not.toBe('suitable');
});
