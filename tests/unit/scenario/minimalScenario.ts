import { readScenario } from '../../../src/scenario/readScenario.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import { stubEstimator } from './stubEstimator.ts';

export interface Group {
  [key: string]: unknown;
}

/**
 * The smallest scenario that says everything it must, with some keys replaced.
 *
 * @param changes section → key → value; a value of undefined takes the key out
 */
export function minimalScenario(changes: Group = {}): Group {
  const base: Group = {
    title: 'Smallest',
    supply: { lineVoltage: '460 V', frequency: '60 Hz' },
    machine: {
      poles: 4,
      statorResistance: '0.087 ohm',
      statorLeakage: '0.302 ohm',
      magnetising: '13.08 ohm',
      cages: [{ resistance: '0.228 ohm', leakage: '0.302 ohm' }],
      inertia: '1.662 kg m^2',
      rated: { speed: '1705 rpm' },
    },
    load: { inertia: '0 kg m^2', torque: 'none' },
    actions: [{ at: '0 s', do: 'start forward' }],
  };
  const merged = merge(base, changes);
  if (!isGroup(merged)) throw new Error('not a group');
  return merged;
}

function isGroup(value: unknown): value is Group {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function merge(base: unknown, changes: unknown): unknown {
  if (!isGroup(base) || !isGroup(changes)) return changes;
  const merged: Group = { ...base };
  for (const [key, value] of Object.entries(changes)) {
    if (value === undefined) delete merged[key];
    else merged[key] = merge(base[key], value);
  }
  return merged;
}

/** Reads a scenario whose circuit, if it has none, is that of the stub. */
export function parseScenario(source: unknown): Scenario {
  return readScenario(source, {}, stubEstimator()).scenario;
}

/** The problems of a scenario that must be refused. */
export function problemsOf(source: unknown, fileName = 'test.yaml'): ScenarioError['problems'] {
  try {
    readScenario(source, { fileName }, stubEstimator());
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
  throw new Error('the scenario was accepted');
}

/** The same as `code path`, one per problem. */
export function codesOf(source: unknown): string[] {
  return problemsOf(source).map(({ code, path }) => `${code} ${path}`.trim());
}
