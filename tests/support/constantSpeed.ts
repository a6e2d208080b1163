import { inverse, Matrix } from 'ml-matrix';
import type { MachineData } from '../../src/scenario/scenario.ts';
import { linearSolution } from './matrixExponential.ts';

/**
 * The machine at constant speed as a linear system in currents, written from the inductance matrix (Krause, Analysis of
 * Electric Machinery, voltage equations in the arbitrary reference frame): with i = [is, ir1, ir2 …] as space vectors,
 *
 *     v = (R + jΩ·L)·i + L·di/dt,   Ω = diag(ω, ω − ω_r, …),   L = Lm·1 + diag(Lls, Llr1, …)
 *
 * complex numbers as 2×2 blocks. Written without flux linkages as states, unlike the simulator.
 */
export interface LinearMachine {
  /** Currents at time t, [isRe, isIm, ir1Re, …], from those at 0, in axes turning at the frame speed. */
  readonly currents: (initial: readonly number[], voltage: readonly [number, number], t: number) => number[];
  /** Steady currents under a constant voltage vector. */
  readonly steady: (voltage: readonly [number, number]) => number[];
  /** (3/2)·p·Lm·Im(Σ ir* · is) */
  readonly torque: (currents: readonly number[]) => number;
}

/**
 * @param frame speed of the axes, electrical rad/s, negative for reverse sequence
 * @param omegaM mechanical rad/s
 */
export function linearMachine(machine: MachineData, frame: number, omegaM: number): LinearMachine {
  const n = 1 + machine.cages.length;
  const leakage = [machine.Lls, ...machine.cages.map((cage) => cage.Llr)];
  const resistance = [machine.Rs, ...machine.cages.map((cage) => cage.Rr)];
  const L = Matrix.zeros(2 * n, 2 * n);
  const Z = Matrix.zeros(2 * n, 2 * n);
  for (let j = 0; j < n; j++) {
    const speed = j === 0 ? frame : frame - machine.polePairs * omegaM;
    for (let k = 0; k < n; k++) {
      const inductance = machine.Lm + (j === k ? leakage[j]! : 0);
      for (const axis of [0, 1]) L.set(2 * j + axis, 2 * k + axis, inductance);
      Z.set(2 * j, 2 * k + 1, -speed * inductance);
      Z.set(2 * j + 1, 2 * k, speed * inductance);
    }
    for (const axis of [0, 1])
      Z.set(2 * j + axis, 2 * j + axis, Z.get(2 * j + axis, 2 * j + axis) + resistance[j]!);
  }
  const invL = inverse(L);
  const A = invL.mmul(Z).mul(-1);
  const invA = inverse(A);
  const drive = ([re, im]: readonly [number, number]) => {
    const v = Matrix.zeros(2 * n, 1);
    v.set(0, 0, re);
    v.set(1, 0, im);
    return invL.mmul(v);
  };
  return {
    currents: (initial, voltage, t) =>
      linearSolution(A, drive(voltage), Matrix.columnVector([...initial]), t, invA).to1DArray(),
    steady: (voltage) => invA.mmul(drive(voltage)).mul(-1).to1DArray(),
    torque: (i) => {
      let rotorRe = 0;
      let rotorIm = 0;
      for (let j = 1; j < n; j++) {
        rotorRe += i[2 * j]!;
        rotorIm += i[2 * j + 1]!;
      }
      return 1.5 * machine.polePairs * machine.Lm * (rotorRe * i[1]! - rotorIm * i[0]!);
    },
  };
}

/** Projection of a space vector [re, im] in axes turned by `angle` on the axes of phases A, B, C. */
export function phasesOf(vector: readonly [number, number], angle: number): [number, number, number] {
  const on = (phase: number) => {
    const axis = angle - (phase * 2 * Math.PI) / 3;
    return vector[0] * Math.cos(axis) - vector[1] * Math.sin(axis);
  };
  return [on(0), on(1), on(2)];
}
