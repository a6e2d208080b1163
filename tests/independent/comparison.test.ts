import { describe, expect, it } from 'vitest';
import { METRIC_KEYS, type Metric, simulate } from '../../src/index.ts';
import { COMPARISON_RUNS } from './comparisonRuns.ts';
import type { IndependentMetric } from './independentMetric.ts';
import { runPhaseVariableModel } from './phaseVariableModel.ts';

/** Times agree to this, s. */
const TIME = 1e-6;

/** Peaks, heats, charges and other values agree to this fraction. */
const RELATIVE = 1e-5;

/** An extremum is flat: its instant is known less well than its value, s. */
const TIME_OF_EXTREMUM = 1e-5;

/** Below these a value is nothing beside the machine's own (rated about 6 A, 12 N·m): no relative agreement asked. */
const FLOOR: Readonly<Record<string, number>> = {
  A: 1e-4,
  N·m: 1e-4,
  'rad/s': 1e-5,
  rad: 1e-5,
  A·s: 1e-8,
};

/** A ledger's residual measures an error, it is no figure of the run: each side stays below this. */
const LEDGER = 1e-6;

const FULL_TURN = 2 * Math.PI;

/** The same angle on the branch nearest to another: −π and π are one. */
const onBranchOf = (reference: number, angle: number) =>
  angle - FULL_TURN * Math.round((angle - reference) / FULL_TURN);

/** What two readings of one metric do not agree on, in words; empty when they agree. */
function disagreements(key: string, ours: Metric, theirs: IndependentMetric, timed: boolean): string[] {
  if (ours.value === null || theirs.value === null) {
    return ours.value === theirs.value ? [] : [`${key}: ${ours.value} against ${theirs.value}`];
  }
  if (key === 'ledgerResidual') {
    return Math.max(ours.value, theirs.value) < LEDGER ? [] : [`${key}: ${ours.value} and ${theirs.value}`];
  }
  const found: string[] = [];
  const value = ours.unit === 'rad' ? onBranchOf(theirs.value, ours.value) : ours.value;
  const allowed = ours.unit === 's' ? TIME : RELATIVE * Math.abs(theirs.value) + (FLOOR[ours.unit] ?? 0);
  if (!(Math.abs(value - theirs.value) <= allowed)) {
    found.push(`${key}: ${value} against ${theirs.value}, allowed ${allowed}`);
  }
  if (theirs.phase !== undefined && theirs.phase !== ours.phase) {
    found.push(`${key}: phase ${ours.phase} against ${theirs.phase}`);
  }
  if (timed && theirs.time !== undefined && ours.time !== undefined) {
    if (!(Math.abs(ours.time - theirs.time) <= TIME_OF_EXTREMUM)) {
      found.push(`${key}: at ${ours.time} s against ${theirs.time} s`);
    }
  }
  return found;
}

describe('space vectors and phase variables give the same figures', () => {
  it.each(COMPARISON_RUNS.map((scenario) => ({ scenario, title: scenario.title })))(
    'for $title',
    { timeout: 30_000 },
    ({ scenario }) => {
      const ours = simulate(scenario).metrics;
      const theirs = runPhaseVariableModel(scenario).metrics;
      expect(Object.keys(theirs).sort()).toEqual([...METRIC_KEYS].sort());
      const stiff = scenario.supply.sourceInductance === 0 && scenario.supply.sourceResistance === 0;
      const found = METRIC_KEYS.flatMap((key) => {
        // What stays the same has no time of its own: the voltage on a stiff supply, the creep of a shaft without load.
        const constant =
          (key === 'lowestTerminalVoltage' && stiff) ||
          (key === 'creepSpeed' && scenario.load.torques.length === 0);
        return disagreements(key, ours[key], theirs[key]!, !constant);
      });
      expect(found).toEqual([]);
    },
  );
});
