import { readFileSync } from 'node:fs';
import type { Problem } from '../../../../src/scenario/problem.ts';
import { ScenarioError } from '../../../../src/scenario/scenarioError.ts';
import { readSurvey } from '../../../../src/survey/spec/readSurvey.ts';
import type { Survey } from '../../../../src/survey/spec/survey.ts';

/** A small scenario with something to vary, and lists. */
export const SMALL = `title: Smallest
supply: { lineVoltage: 460 V, frequency: 60 Hz }
machine:
  poles: 4
  statorResistance: 0.087 ohm
  statorLeakage: 0.302 ohm
  magnetising: 13.08 ohm
  cages: [{ resistance: 0.228 ohm, leakage: 0.302 ohm }]
  inertia: 1.662 kg m^2
  rated: { speed: 1705 rpm }
load:
  inertia: 0.05 kg m^2
  torque:
    - { kind: friction, torque: 12 N m }
    - { kind: gravity, torque: -60 N m }
starter:
  closingTime: 20 ms
  zeroSpeedSwitch: { dropOutSpeed: 60 rpm, pickUpSpeed: 120 rpm }
thermal: { insulationClass: F, ambient: 45 degC }
actions:
  - { at: 0 s, do: start forward }
  - { at: 1 s, do: plug }
`;

/** A survey as an object with some of its keys changed; undefined leaves a key out. */
export function surveyOf(changes: Readonly<Record<string, unknown>> = {}): string {
  return JSON.stringify({
    title: 'Instants',
    scenario: 'smallest.yaml',
    ask: 'random',
    runs: 100,
    vary: [{ field: 'supply.angle', distribution: 'uniform', from: '0 deg', to: '360 deg' }],
    ...changes,
  });
}

const fileText = (name: string): string =>
  name === 'smallest.yaml' ? SMALL : readFileSync(`examples/engineer/${name}`, 'utf8');

/** Reads a survey whose scenario is the small one, one of the examples, or the text given. */
export function read(source: string, scenario?: string): Survey {
  return readSurvey(source, {
    fileName: 'instants.yaml',
    scenarioText: (name) => scenario ?? fileText(name),
  });
}

/** Everything that is wrong with a survey; empty where it is read. */
export function problemsOf(source: string, scenario?: string): readonly Problem[] {
  try {
    read(source, scenario);
    return [];
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
}

/** The problems as `path: code`. */
export function codesOf(source: string, scenario?: string): string[] {
  return problemsOf(source, scenario).map(({ path, code }) => `${path}: ${code}`);
}

/** The problems of a field of a survey that asks something. */
export function fieldCodes(
  field: Readonly<Record<string, unknown>>,
  changes: Readonly<Record<string, unknown>> = {},
) {
  return codesOf(surveyOf({ ...changes, vary: [field] })).map((line) => line.replace(/^vary\.0\.?/u, ''));
}
