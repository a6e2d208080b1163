import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { parseScenario, simulate } from '../../../src/index.ts';

it('a pole that clears a rounding before a scheduled change does not stop the run', () => {
  const example = parseScenario(readFileSync('examples/engineer/may-this-belt-be-plugged.yaml', 'utf8'));
  const { status, ledger } = simulate({
    ...example,
    starter: {
      ...example.starter,
      closingScatter: [0, 0.004, 0.008],
      openingScatter: [0.003, 0, 0.001],
    },
  });
  expect(status.code).toBe('finished');
  expect(ledger.residual).toBeLessThan(1e-6);
});
