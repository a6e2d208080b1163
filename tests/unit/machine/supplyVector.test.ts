import { describe, expect, it } from 'vitest';
import { supplyVector } from '../../../src/machine/supplyVector.ts';
import { expectAllWithin } from '../../support/tolerance.ts';

const supply = { lineVoltage: 400, frequency: 50, angle: 0.7 };
const crest = 400 * Math.sqrt(2 / 3);
/** Phase voltage from the definition u_k = Û·cos(ωt + φ − k·2π/3). */
const phase = (k: number, t: number) => crest * Math.cos(100 * Math.PI * t + 0.7 - (k * 2 * Math.PI) / 3);

/** (2/3)(u_A + a·u_B + a²·u_C) of the terminals. */
function spaceVector(connection: readonly [number, number, number], t: number): [number, number] {
  const third = (2 * Math.PI) / 3;
  const u = connection.map((k) => phase(k, t));
  return [
    (2 / 3) * u.reduce((sum, value, k) => sum + value * Math.cos(k * third), 0),
    (2 / 3) * u.reduce((sum, value, k) => sum + value * Math.sin(k * third), 0),
  ];
}

describe('supplyVector', () => {
  it.each([
    ['all as named', [0, 1, 2], 1],
    ['B and C exchanged', [0, 2, 1], -1],
    ['A and B exchanged', [1, 0, 2], -1],
    ['C and A exchanged', [2, 1, 0], -1],
    ['all moved on', [1, 2, 0], 1],
    ['two terminals on one phase', [0, 0, 2], 0],
  ] as const)('is the space vector of the terminal voltages: %s', (_name, connection, sequence) => {
    const vector = supplyVector(supply, connection);
    expect(vector.sequence).toBe(sequence);
    for (const t of [0, 0.0013, 0.0042, 0.011]) {
      const angle = vector.omega * t;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const [pRe, pIm] = vector.positive;
      const [nRe, nIm] = vector.negative;
      const sum = [pRe * c - pIm * s + nRe * c + nIm * s, pRe * s + pIm * c - nRe * s + nIm * c];
      expectAllWithin(sum, spaceVector(connection, t), { absolute: 1e-10 }, `vector at ${t}`);
    }
  });
});
