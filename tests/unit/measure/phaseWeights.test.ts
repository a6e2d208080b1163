import { describe, expect, it } from 'vitest';
import { phaseWeights } from '../../../src/measure/phaseWeights.ts';
import { expectWithin } from '../../support/tolerance.ts';

const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe('weights of samples at irregular phases', () => {
  it('are equal where the phases are spread evenly, wherever they begin', () => {
    for (const weight of phaseWeights([0.3, 0.55, 0.8, 1.05]))
      expectWithin(weight, 0.25, { absolute: 1e-12 }, 'weight');
  });

  it('are half of both gaps to the neighbours, around the circle', () => {
    // Gaps: 0.1 to 0.2: 0.1; 0.2 to 0.6: 0.4; 0.6 to 1.1: 0.5.
    const [a, b, c] = phaseWeights([0.6, 0.1, 0.2]);
    expectWithin(a!, 0.45, { absolute: 1e-12 }, 'at 0.6');
    expectWithin(b!, 0.3, { absolute: 1e-12 }, 'at 0.1');
    expectWithin(c!, 0.25, { absolute: 1e-12 }, 'at 0.2');
  });

  it('add up to one, whatever the phases', () => {
    for (const phases of [[0.4], [0.4, 0.4], [-0.2, 7.3, 0.31, 0.9, 0.9], [0, 1, 2]])
      expectWithin(sum(phaseWeights(phases)), 1, { absolute: 1e-12 }, phases.join(' '));
    expect(phaseWeights([0.4])).toEqual([1]);
  });

  it('give the mean of a smooth periodic function from samples that lie anyhow', () => {
    // Irregular by a rotation that is no part of the period, and crowded by its square.
    const phases = Array.from({ length: 13 }, (_, k) => (((k + 1) * Math.SQRT2) % 1) ** 1.3);
    const f = (phase: number) => 2 + Math.cos(2 * Math.PI * phase) + 0.3 * Math.sin(4 * Math.PI * phase);
    const weights = phaseWeights(phases);
    const weighted = sum(phases.map((phase, i) => weights[i]! * f(phase)));
    const plain = sum(phases.map(f)) / phases.length;
    expectWithin(weighted, 2, { absolute: 0.05 }, 'weighted mean');
    // Unweighted the crowd at small phases counts too much.
    expect(Math.abs(plain - 2)).toBeGreaterThan(3 * Math.abs(weighted - 2));
  });
});
