/**
 * Sine, power and their like may differ in the last bit from engine to engine. No number of a run or a fit may
 * depend on it: with every such function of this engine off by a unit in the last place, everything must come out the same.
 */
import { describe, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../../src/index.ts';
import { exampleText } from '../../support/examples.ts';
import { withNudgedMath } from '../../support/nudgedMath.ts';

/** Everything that a scenario's text leads to, every digit of it. */
function outcome(name: string): string {
  const scenario = parseScenario(exampleText(name));
  const { metrics, ledger, trajectory } = simulate(scenario);
  const { events, stats, tEnd } = trajectory;
  return JSON.stringify({ scenario, metrics, ledger, events, stats, end: trajectory.at(tEnd) });
}

const EXAMPLES = [
  'what-if-only-the-nameplate-is-known',
  'may-this-belt-be-plugged',
  'what-happens-after-the-stop-button',
  'how-hard-does-plugging-twist-the-shaft',
].map((name) => `${name}.yaml`);

describe('with the last bits of an engine changed', () => {
  it.each(EXAMPLES)('%s comes out the same', (name) => {
    expect(withNudgedMath(() => outcome(name))).toBe(outcome(name));
  });

  it('the changed functions stand in the place of the engine’s while the work lasts, and not after it', () => {
    const own = (name: string) => Reflect.get(Math, name) as (...values: number[]) => number;
    const [sin, pow] = [own('sin'), own('pow')];
    const [nudgedSin, nudgedPow] = withNudgedMath(() => [own('sin')(1), own('pow')(1.1, 2.2)]);
    expect(Math.abs(nudgedSin! - sin(1))).toBe(2 ** -53);
    expect(Math.abs(nudgedPow! - pow(1.1, 2.2))).toBe(2 ** -52);
    expect([own('sin'), own('pow')]).toEqual([sin, pow]);
  });
});
