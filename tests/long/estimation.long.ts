import fc from 'fast-check';
import { expect, it } from 'vitest';
import { estimateCircuit } from '../../src/estimate/estimateCircuit.ts';
import { exactNameplate } from '../support/arbitraryNameplate.ts';

const SEED = 20_241;
const RUNS = 1000;

it('every exact nameplate of a random double-cage machine is reproduced within 1 %', () => {
  const wrong: string[] = [];
  let worst = 0;
  for (const { nameplate } of fc.sample(exactNameplate, { seed: SEED, numRuns: RUNS })) {
    const { items } = estimateCircuit(nameplate).estimation;
    for (const { name, error } of items) {
      worst = Math.max(worst, Math.abs(error!));
      // The promise of the estimation.
      if (!(Math.abs(error!) < 0.01)) wrong.push(`${name}: ${error} of ${JSON.stringify(nameplate)}`);
    }
  }
  console.log(`${RUNS} machines, seed ${SEED}: worst error ${(100 * worst).toPrecision(2)} %`);
  expect(wrong).toEqual([]);
});
