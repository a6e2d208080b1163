import { describe, expect, it } from 'vitest';
import { circuitOf } from '../../../src/machine/circuit.ts';
import { magneticsOf, type StatorPart } from '../../../src/machine/magnetics.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';
import {
  LEAKAGE_SATURATION,
  LINEAR,
  leakageFlux,
  magnetisingCurrent,
  RATED_FLUX,
  repeatableNumbers,
  SUPPLY,
  WITH_ALL,
  WITH_LEAKAGE,
  WITH_MAIN,
} from './saturableMachine.ts';

const PARTS: readonly StatorPart[] = ['both', 'beta', 'open'];

/** Fluxes of magnitudes up to `most` times rated, alike in part so that some currents are small. */
function fill(psi: Float64Array, random: () => number, most: number): void {
  const common = [random(), random()];
  const own = random() ** 2;
  for (let n = 0; n < psi.length; n++) psi[n] = (most * RATED_FLUX * (common[n % 2]! + own * random())) / 2;
}

describe.each(PARTS)('the magnetic circuit, stator: %s', (part) => {
  const circuit = circuitOf(WITH_ALL, SUPPLY);
  const magnetics = magneticsOf(circuit, part);
  const first = part === 'open' ? 1 : 0;

  it('finds the main flux at which the currents cancel, for fluxes up to five times rated, in few steps', () => {
    const random = repeatableNumbers(7);
    for (let n = 0; n < 3000; n++) {
      fill(magnetics.psi, random, 5);
      const steps = magnetics.solve();
      const [mD, mQ] = [magnetics.main[0]!, magnetics.main[1]!];
      const size = Math.hypot(mD, mQ);
      const im = magnetisingCurrent(size) / size;
      let [gD, gQ] = [im * mD, im * mQ];
      for (let k = first; k < magnetics.windings; k++) {
        gD -= magnetics.current[2 * k]!;
        gQ -= magnetics.current[2 * k + 1]!;
      }
      // 1e-14 of the current that the largest flux alone would drive through the smallest leakage.
      const largest = Math.max(...magnetics.psi.map(Math.abs));
      const absolute = (1e-14 * largest) / (0.4 * LINEAR.cages[0]!.Llr);
      expectAllWithin([gD, gQ], [0, 0], { absolute }, 'sum of currents');
      expect(steps).toBeLessThanOrEqual(8);
    }
  });

  it('gives every winding the current whose leakage flux is missing to the main flux', () => {
    const random = repeatableNumbers(11);
    const leakage = [LINEAR.Lls, ...LINEAR.cages.map((cage) => cage.Llr)];
    const laws = [LEAKAGE_SATURATION.stator, ...LEAKAGE_SATURATION.cages];
    for (let n = 0; n < 200; n++) {
      fill(magnetics.psi, random, 2);
      magnetics.solve();
      for (let k = first; k < 3; k++) {
        const i = [magnetics.current[2 * k]!, magnetics.current[2 * k + 1]!] as const;
        const size = Math.hypot(...i);
        const flux = leakageFlux(leakage[k]!, laws[k]!, size) / size;
        const missing = [0, 1].map((axis) => magnetics.psi[2 * k + axis]! - magnetics.main[axis]!);
        if (part === 'beta' && k === 0) expect(i[0]).toBe(0);
        else expectWithin(flux * i[0], missing[0]!, { absolute: 1e-14 }, 'leakage flux D');
        expectWithin(flux * i[1], missing[1]!, { absolute: 1e-14 }, 'leakage flux Q');
      }
    }
  });

  it('is at the least stored energy: every other main flux stores more', () => {
    const random = repeatableNumbers(13);
    const leakage = [LINEAR.Lls, ...LINEAR.cages.map((cage) => cage.Llr), WITH_ALL.core!.L];
    const laws = [LEAKAGE_SATURATION.stator, ...LEAKAGE_SATURATION.cages, null];
    /** Energy by trapezoids of the defining laws, with the main flux at an arbitrary place. */
    const stored = (mD: number, mQ: number) => {
      const area = (current: (flux: number) => number, flux: number) => {
        let sum = 0;
        for (let n = 0; n < 400; n++) sum += current(((n + 0.5) * flux) / 400) * (flux / 400);
        return sum;
      };
      let total = area(magnetisingCurrent, Math.hypot(mD, mQ));
      for (let k = first; k < magnetics.windings; k++) {
        const d = part === 'beta' && k === 0 ? 0 : magnetics.psi[2 * k]! - mD;
        const flux = Math.hypot(d, magnetics.psi[2 * k + 1]! - mQ);
        total += area((x) => inverse(leakage[k]!, laws[k]!, x), flux);
      }
      return 1.5 * total;
    };
    for (let n = 0; n < 5; n++) {
      fill(magnetics.psi, random, 2);
      magnetics.solve();
      const [mD, mQ] = [magnetics.main[0]!, magnetics.main[1]!];
      const least = stored(mD, mQ);
      expectWithin(magnetics.energy(), least, { relative: 1e-4 }, 'energy');
      for (let direction = 0; direction < 8; direction++) {
        const step = 0.02 * RATED_FLUX;
        const angle = (direction * Math.PI) / 4;
        expect(stored(mD + step * Math.cos(angle), mQ + step * Math.sin(angle))).toBeGreaterThan(least);
      }
    }
  });

  it('has the derivatives of main flux, currents and energy that differences show', () => {
    const random = repeatableNumbers(17);
    const rate = new Float64Array(magnetics.psi.length);
    const mainRate = new Float64Array(2);
    const currentRate = new Float64Array(magnetics.psi.length);
    for (let n = 0; n < 50; n++) {
      fill(magnetics.psi, random, 3);
      const start = Float64Array.from(magnetics.psi);
      for (let m = 0; m < rate.length; m++) rate[m] = 100 * random();
      const h = 1e-8;
      const at = (time: number) => {
        for (let m = 0; m < rate.length; m++) magnetics.psi[m] = start[m]! + time * rate[m]!;
        magnetics.solve();
        return [...magnetics.main, ...magnetics.current, magnetics.energy()];
      };
      const [before, after] = [at(-h), at(h)];
      at(0);
      magnetics.differentiate(rate, mainRate, currentRate);
      let power = 0;
      for (let k = 2 * first; k < rate.length; k++) power += 1.5 * magnetics.current[k]! * rate[k]!;
      const exact = [...mainRate, ...currentRate, power];
      const difference = exact.map((_, k) => (after[k]! - before[k]!) / (2 * h));
      // 1e-8 s at 100 V moves the flux by 1e-6 Wb: errors of differences are roundings over that, or its bend.
      for (const [k, value] of exact.entries()) {
        const size = k < 2 ? 100 : k < exact.length - 1 ? 1e6 : 1e5;
        expectWithin(value, difference[k]!, { absolute: 1e-5 * size, relative: 1e-5 }, `derivative ${k}`);
      }
    }
  });
});

describe('the magnetic circuit', () => {
  it('forgets: the same fluxes give the same bits whatever was solved before', () => {
    const magnetics = magneticsOf(circuitOf(WITH_ALL, SUPPLY), 'both');
    const psi = [0.9, -0.2, 0.85, 0.1, 0.8, -0.15, 1, 0.1];
    magnetics.psi.set(psi);
    magnetics.solve();
    const first = [...magnetics.main, ...magnetics.current];
    magnetics.psi.fill(3);
    magnetics.solve();
    magnetics.psi.set(psi);
    magnetics.solve();
    expect([...magnetics.main, ...magnetics.current]).toEqual(first);
  });

  it('without flux is without current', () => {
    for (const machine of [WITH_ALL, WITH_MAIN, WITH_LEAKAGE]) {
      const magnetics = magneticsOf(circuitOf(machine, SUPPLY), 'both');
      magnetics.solve();
      expect([...magnetics.main, ...magnetics.current].every((x) => x === 0)).toBe(true);
      expect(magnetics.energy()).toBe(0);
    }
  });
});

/** Current at a leakage flux by bisection of the law. */
function inverse(L: number, law: Parameters<typeof leakageFlux>[1], flux: number): number {
  let [low, high] = [0, 1e5];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (leakageFlux(L, law, middle) < flux) low = middle;
    else high = middle;
  }
  return low;
}
