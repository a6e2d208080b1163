import type { IndependentMetric } from './independentMetric.ts';
import type { PhaseVariableRun } from './phaseVariableModel.ts';
import type { Step } from './stepper.ts';

/** Size (crest of a phase voltage) and angle from the axis of phase A of three phase voltages that add up to zero. */
export function terminalVector(v: readonly [number, number, number]): {
  readonly size: number;
  readonly angle: number;
} {
  const alpha = (2 * v[0] - v[1] - v[2]) / 3;
  const beta = (v[1] - v[2]) / Math.sqrt(3);
  return { size: Math.hypot(alpha, beta), angle: Math.atan2(beta, alpha) };
}

/** Golden-section search is continued until the bracket is this small, s. */
const SEARCH_WIDTH = 1e-10;

/** Least line voltage (r.m.s. equivalent) at the motor in some steps, while all three terminals are connected. */
export function lowestTerminalVoltage(run: PhaseVariableRun, steps: readonly Step[]): IndependentMetric {
  const { circuit, scenario, stepper } = run;
  const { sourceInductance, sourceResistance, lineVoltage, cable } = scenario.supply;
  const connected = steps.filter((step) => step.mode.supply.every((phase) => phase >= 0));
  const first = connected[0];
  if (!first) return { value: null };
  const bare = connected.every((step) => step.mode.inserted.line === 0);
  if (sourceInductance === 0 && sourceResistance === 0 && !cable && bare)
    return { value: lineVoltage, time: first.t0 };

  const size = (y: Float64Array, f: Float64Array) =>
    Math.sqrt(3 / 2) * terminalVector(circuit.terminalVoltages(y, f)).size;
  const sizeAt = (step: Step, t: number) => {
    const y = stepper.within(step, t);
    return size(y, stepper.derivativeWithin(step, t, y));
  };
  let value = Number.POSITIVE_INFINITY;
  let time = 0;
  const offer = (v: number, t: number) => {
    if (v < value) {
      value = v;
      time = t;
    }
  };
  for (let k = 0; k < connected.length; k++) {
    const step = connected[k]!;
    circuit.setMode(step.mode);
    const left = size(step.y0, step.f0);
    offer(left, step.t0);
    offer(size(step.y1, step.f1), step.t1);
    const next = connected[k + 1];
    if (!next || next.t0 !== step.t1) continue;
    circuit.setMode(step.mode);
    const middle = size(step.y1, step.f1);
    circuit.setMode(next.mode);
    const right = size(next.y1, next.f1);
    if (middle > left || middle > right || middle > value * 1.001) continue;
    const joined = (t: number) => sizeAt(t <= step.t1 ? step : next, t);
    const found = goldenMinimum(joined, step.t0, next.t1);
    offer(joined(found), found);
  }
  return { value, time };
}

/** Golden-section search for the minimum of a function with one minimum in [a, b]. */
function goldenMinimum(f: (x: number) => number, a: number, b: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = a;
  let high = b;
  let x1 = high - ratio * (high - low);
  let x2 = low + ratio * (high - low);
  let f1 = f(x1);
  let f2 = f(x2);
  while (high - low > SEARCH_WIDTH) {
    if (f1 < f2) {
      high = x2;
      x2 = x1;
      f2 = f1;
      x1 = high - ratio * (high - low);
      f1 = f(x1);
    } else {
      low = x1;
      x1 = x2;
      f1 = f2;
      x2 = low + ratio * (high - low);
      f2 = f(x2);
    }
  }
  return (low + high) / 2;
}
