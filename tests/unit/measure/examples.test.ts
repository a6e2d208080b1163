import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../../src/index.ts';

const NAMES = readdirSync('examples').filter((name) => name.endsWith('.yaml'));
const figuresOf = (name: string) => simulate(parseScenario(readFileSync(`examples/${name}`, 'utf8')));

describe('the examples at default tolerance', () => {
  it.each(NAMES)(
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
    expect(heat('should-not-be-plugged')).toBeGreaterThan(200e3);
    expect(heat('plugs-comfortably')).toBeLessThan(3e3);
  });
});
