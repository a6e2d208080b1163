import { describe, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../../src/index.ts';
import { EXAMPLE_SCENARIOS, exampleText } from '../../support/examples.ts';

const figuresOf = (name: string) => simulate(parseScenario(exampleText(name)));

describe('the examples at default tolerance', () => {
  it.each(EXAMPLE_SCENARIOS)(
    '%s finishes, its energy balance closes below 1e-6 and nothing has to be warned of',
    (name) => {
      const { status, ledger, usable, warnings } = figuresOf(name);
      expect(status.code).toBe('finished');
      expect(ledger.residual).toBeLessThan(1e-6);
      expect(ledger.electricalIn).toBeGreaterThan(1000);
      expect(usable).toBe(true);
      expect(warnings).toEqual([]);
    },
  );

  it('the one that should not be plugged takes hundreds of kilojoules in the rotor, the comfortable one two', () => {
    const heat = (name: string) => figuresOf(`${name}.yaml`).metrics.plugRotorHeat.value;
    expect(heat('should-this-fan-be-plugged')).toBeGreaterThan(200e3);
    expect(heat('may-this-belt-be-plugged')).toBeLessThan(3e3);
  });
});
