import { type LeakagePath, leakagePath } from './leakagePath.ts';
import { curvedPath, type MagnetisingPath, straightPath } from './magnetisingPath.ts';
import type { ScenarioShape } from './scenarioShape.ts';

/**
 * The machine as it is wound: three stator windings, three per rotor cage, three for the iron if it has losses, each with
 * its own current, in that order. No transformation and no flux as a state:
 *   im_s = i_s + (2/3)·Σ cos(θ + (r − s)·120°)·i_r + i_iron,s       what magnetises, along stator winding s
 *   ψm_s = P(|im|)·im_s,   |im|² = (2/3)·Σ im_s²,                     ψm_r = (2/3)·Σ cos(θ + (r − s)·120°)·ψm_s
 *   λ_k  = S(|i|)·i_k with the magnitude of the three currents of its own group
 * so that dψ/dt = (∂ψ/∂i)·di/dt + ω·∂ψ/∂θ with the incremental inductances ∂ψ/∂i. The torque is what the coenergy gains with
 * the angle: p·Σ ψm_s·∂im_s/∂θ. Currents of a group add up to zero.
 */
export interface WindingMachine {
  readonly windings: number;
  readonly resistance: Float64Array;
  /** Incremental inductances at the point last set, row-major, H. */
  readonly inductance: Float64Array;
  /** Flux linkages there, Wb. */
  readonly flux: Float64Array;
  /** Their change with the electrical angle at held currents, Wb/rad. */
  readonly turning: Float64Array;
  /** Evaluates everything at currents (A) and electrical angle θ (rad). */
  set(currents: Float64Array, theta: number): void;
  /** As `set`, but without inductances and turning. */
  setFluxOnly(currents: Float64Array, theta: number): void;
  /** Air-gap torque at the point last set, N·m. */
  torque(): number;
  /** Its time derivative, N·m/s, from those of the currents and the electrical speed. */
  torqueRate(currentRate: Float64Array, electricalSpeed: number): number;
  /** Energy stored at the point last set, J. */
  energy(): number;
}

const HALF_SQRT3 = Math.sqrt(3) / 2;
const TWO_THIRDS = 2 / 3;

/** Winding impedance over that of the equivalent star: a delta winding has three times as much. */
export function impedanceScale(scenario: ScenarioShape): number {
  return scenario.machine.connection === 'delta' ? 3 : 1;
}

/** Builds the machine in the quantities of its own windings. */
export function windingMachine(scenario: ScenarioShape): WindingMachine {
  const { machine } = scenario;
  const scale = impedanceScale(scenario);
  const root = Math.sqrt(scale);
  const cages = machine.cages.length;
  const groups = 1 + cages + (machine.core ? 1 : 0);
  const windings = 3 * groups;
  const p = machine.polePairs;

  // A winding of the delta carries 1/√3 of the equivalent star's current at √3 times its flux.
  const bent = (L: number, law: { current: number; remaining: number } | null | undefined): LeakagePath =>
    leakagePath(scale * L, law ? { current: law.current / root, remaining: law.remaining } : null);
  const leakages = [
    bent(machine.Lls, machine.leakageSaturation?.stator),
    ...machine.cages.map((cage, c) => bent(cage.Llr, machine.leakageSaturation?.cages[c])),
    ...(machine.core ? [bent(machine.core.L, null)] : []),
  ];
  const main: MagnetisingPath = machine.mainSaturation
    ? curvedPath(machine.mainSaturation.map((q) => ({ current: q.current / root, flux: q.flux * root })))
    : straightPath(scale * machine.Lm);
  const isStraight = machine.mainSaturation === undefined;

  const resistance = new Float64Array(windings);
  resistance.fill(scale * machine.Rs, 0, 3);
  machine.cages.forEach((cage, c) => {
    resistance.fill(scale * cage.Rr, 3 + 3 * c, 6 + 3 * c);
  });
  if (machine.core) resistance.fill(scale * machine.core.R, windings - 3, windings);

  const turns = (group: number) => group > 0 && group <= cages;

  const inductance = new Float64Array(windings * windings);
  const flux = new Float64Array(windings);
  const turning = new Float64Array(windings);
  const currents = new Float64Array(windings);
  const cosine = new Float64Array(3);
  const sine = new Float64Array(3);
  const rotor = new Float64Array(3);
  const magnetising = new Float64Array(3);
  const magnetisingTurn = new Float64Array(3);
  const mainFlux = new Float64Array(3);
  const B = new Float64Array(9);
  const C = new Float64Array(9);
  const BC = new Float64Array(9);
  const CBC = new Float64Array(9);
  const point = { flux: 0, slope: 0 };

  function turnTo(theta: number): void {
    const c = Math.cos(theta);
    const s = Math.sin(theta);
    cosine[0] = c;
    cosine[1] = -0.5 * c - HALF_SQRT3 * s;
    cosine[2] = -0.5 * c + HALF_SQRT3 * s;
    sine[0] = s;
    sine[1] = -0.5 * s + HALF_SQRT3 * c;
    sine[2] = -0.5 * s - HALF_SQRT3 * c;
    for (let k = 0; k < 3; k++) {
      for (let r = 0; r < 3; r++) C[3 * k + r] = TWO_THIRDS * cosine[(r - k + 3) % 3]!;
    }
  }

  function rotorSum(i: Float64Array): void {
    for (let r = 0; r < 3; r++) {
      let sum = 0;
      for (let c = 0; c < cages; c++) sum += i[3 + 3 * c + r]!;
      rotor[r] = sum;
    }
  }

  function setFluxOnly(i: Float64Array, theta: number): void {
    for (let k = 0; k < windings; k++) currents[k] = i[k]!;
    turnTo(theta);
    rotorSum(i);
    let square = 0;
    for (let s = 0; s < 3; s++) {
      let along = i[s]! + (groups > 1 + cages ? i[windings - 3 + s]! : 0);
      let across = 0;
      for (let r = 0; r < 3; r++) {
        along += C[3 * s + r]! * rotor[r]!;
        across -= TWO_THIRDS * sine[(r - s + 3) % 3]! * rotor[r]!;
      }
      magnetising[s] = along;
      magnetisingTurn[s] = across;
      square += along * along;
    }
    const size = Math.sqrt(TWO_THIRDS * square);
    let secant = main.initial;
    let slope = main.initial;
    if (!isStraight && size > 0) {
      main.read(size, point);
      secant = point.flux / size;
      slope = point.slope;
    }
    const along = size > 0 ? (TWO_THIRDS * (slope - secant)) / (size * size) : 0;
    for (let s = 0; s < 3; s++) {
      mainFlux[s] = secant * magnetising[s]!;
      for (let k = 0; k < 3; k++) {
        B[3 * s + k] = (s === k ? secant : 0) + along * magnetising[s]! * magnetising[k]!;
      }
    }
    for (let g = 0; g < groups; g++) {
      const leakage = leakages[g]!.secant(squareOf(g));
      for (let k = 0; k < 3; k++) {
        let linked = mainFlux[k]!;
        if (turns(g)) {
          linked = 0;
          for (let s = 0; s < 3; s++) linked += C[3 * s + k]! * mainFlux[s]!;
        }
        flux[3 * g + k] = leakage * currents[3 * g + k]! + linked;
      }
    }
  }

  /** |i|² of a group. */
  function squareOf(g: number): number {
    const a = currents[3 * g]!;
    const b = currents[3 * g + 1]!;
    const c = currents[3 * g + 2]!;
    return TWO_THIRDS * (a * a + b * b + c * c);
  }

  function set(i: Float64Array, theta: number): void {
    setFluxOnly(i, theta);
    for (let a = 0; a < 3; a++) {
      for (let b = 0; b < 3; b++) {
        BC[3 * a + b] = B[3 * a]! * C[b]! + B[3 * a + 1]! * C[3 + b]! + B[3 * a + 2]! * C[6 + b]!;
      }
    }
    for (let a = 0; a < 3; a++) {
      for (let b = 0; b < 3; b++) {
        CBC[3 * a + b] = C[a]! * BC[b]! + C[3 + a]! * BC[3 + b]! + C[6 + a]! * BC[6 + b]!;
      }
    }
    for (let g = 0; g < groups; g++) {
      for (let h = 0; h < groups; h++) {
        for (let a = 0; a < 3; a++) {
          for (let b = 0; b < 3; b++) {
            const value = turns(g)
              ? turns(h)
                ? CBC[3 * a + b]!
                : BC[3 * b + a]!
              : turns(h)
                ? BC[3 * a + b]!
                : B[3 * a + b]!;
            inductance[(3 * g + a) * windings + 3 * h + b] = value;
          }
        }
      }
      addLeakage(g);
    }
    turnFluxes();
  }

  function addLeakage(g: number): void {
    const path = leakages[g]!;
    const square = squareOf(g);
    const secant = path.secant(square);
    const along = path.bends && square > 0 ? (TWO_THIRDS * (path.slope(square) - secant)) / square : 0;
    for (let a = 0; a < 3; a++) {
      const row = (3 * g + a) * windings + 3 * g;
      for (let b = 0; b < 3; b++) {
        const rank = along * currents[3 * g + a]! * currents[3 * g + b]!;
        inductance[row + b] = inductance[row + b]! + rank + (a === b ? secant : 0);
      }
    }
  }

  function turnFluxes(): void {
    for (let k = 0; k < 3; k++) {
      let still = 0;
      for (let s = 0; s < 3; s++) still += B[3 * k + s]! * magnetisingTurn[s]!;
      let moved = 0;
      for (let s = 0; s < 3; s++) {
        moved += BC[3 * s + k]! * magnetisingTurn[s]! - TWO_THIRDS * sine[(k - s + 3) % 3]! * mainFlux[s]!;
      }
      for (let g = 0; g < groups; g++) turning[3 * g + k] = turns(g) ? moved : still;
    }
  }

  function torque(): number {
    return (
      p *
      (mainFlux[0]! * magnetisingTurn[0]! +
        mainFlux[1]! * magnetisingTurn[1]! +
        mainFlux[2]! * magnetisingTurn[2]!)
    );
  }

  function torqueRate(rate: Float64Array, electricalSpeed: number): number {
    const own = rotor.slice();
    rotorSum(rate);
    const change = rotor.slice();
    rotor.set(own);
    const along = [0, 0, 0];
    const across = [0, 0, 0];
    for (let s = 0; s < 3; s++) {
      along[s] =
        rate[s]! + (groups > 1 + cages ? rate[windings - 3 + s]! : 0) + electricalSpeed * magnetisingTurn[s]!;
      for (let r = 0; r < 3; r++) {
        along[s] = along[s]! + C[3 * s + r]! * change[r]!;
        // d²/dθ² of a cosine is its negative.
        across[s] =
          across[s]! -
          TWO_THIRDS * sine[(r - s + 3) % 3]! * change[r]! -
          electricalSpeed * C[3 * s + r]! * own[r]!;
      }
    }
    let sum = 0;
    for (let s = 0; s < 3; s++) {
      const fluxRate = B[3 * s]! * along[0]! + B[3 * s + 1]! * along[1]! + B[3 * s + 2]! * along[2]!;
      sum += fluxRate * magnetisingTurn[s]! + mainFlux[s]! * across[s]!;
    }
    return p * sum;
  }

  function energy(): number {
    let square = 0;
    for (let s = 0; s < 3; s++) square += mainFlux[s]! * mainFlux[s]!;
    let sum = main.stored(Math.sqrt(TWO_THIRDS * square));
    for (let g = 0; g < groups; g++) sum += leakages[g]!.stored(squareOf(g));
    // Three phases hold 3/2 of what the magnitudes of the vectors say.
    return 1.5 * sum;
  }

  return { windings, resistance, inductance, flux, turning, set, setFluxOnly, torque, torqueRate, energy };
}
