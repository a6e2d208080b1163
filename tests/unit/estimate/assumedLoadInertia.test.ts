import { expect, it } from 'vitest';
import { assumedLoadInertia } from '../../../src/estimate/assumedLoadInertia.ts';
import { expectWithin } from '../../support/tolerance.ts';

it('is what IEC 60034-12 has for design N at 50 Hz, and what NEMA MG 1-12.54 has at 60 Hz', () => {
  const iec = assumedLoadInertia(75e3, 50, 4);
  // J = 0.04·P^0.9·p^2.5 = 0.04 × 75^0.9 × 2^2.5 (formula from memory, computed outside this project).
  expectWithin(iec.value, 11.0202, { relative: 1e-5 }, '75 kW, 4 poles, kg·m²');
  expect(iec.source).toContain('IEC 60034-12');
  const nema = assumedLoadInertia(100 * 745.7, 60, 4);
  // 441.33 lb·ft², computed outside this project; the published table has 441.
  expectWithin(nema.value, 18.598, { relative: 1e-4 }, '100 hp, 1800 r/min, kg·m²');
  expect(nema.source).toContain('12.54');
});

it('exists for every motor that a scenario may have', () => {
  for (const power of [1, 1e3, 1e6, 1e8])
    for (const frequency of [10, 50, 60, 400])
      for (const poles of [2, 8, 48])
        expect(assumedLoadInertia(power, frequency, poles).value).toBeGreaterThan(0);
});
