import fc from 'fast-check';
import { it } from 'vitest';
import { anyHandling, expectControlLaws } from '../support/controlLaws.ts';

it('whatever hands do, coils exclude each other, stops drop them at once, no phases are short-circuited and the ledger closes', () => {
  fc.assert(fc.property(anyHandling, expectControlLaws), { seed: 20261126, numRuns: 25 });
});
