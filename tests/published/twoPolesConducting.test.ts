/**
 * Two terminals connected at constant speed: sequence circuits in series, I = V_LL/|Z(s) + Z(2 − s)|, mean torque T(s) − T(2 − s)
 * of the sequence currents (symmetrical components, textbook). Numbers for the Krause 50 hp machine computed, to the digits given.
 */
import { describe, it } from 'vitest';
import { circuitOf } from '../../src/machine/circuit.ts';
import { newObservation } from '../../src/machine/electricalModel.ts';
import { twoPoleSteadyState } from '../../src/machine/twoPoleSteadyState.ts';
import { twoPoles } from '../../src/machine/twoPoles.ts';
import { integrate } from '../../src/simulate/integrate.ts';
import { segmentProblem } from '../../src/simulate/segment.ts';
import { plainMode, plainShaft } from '../support/plainShaft.ts';
import { publishedSource } from '../support/published.ts';
import { run } from '../support/readings.ts';
import { startAtOnce } from '../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE, type TextbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'twoPolesConducting',
  'Symmetrical components, two terminals on the supply and the third open: current U/|Z(s) + Z(2 − ' +
    's)|, mean torque that of slip s less that of 2 − s, for Krause’s 50 hp machine; ours once by the ' +
    'sequence circuits and once by integration over time until it has settled.',
  'exact',
);

const TABLE = [
  [1, 341.367, 0],
  [0.05, 94.0438, 177.9013],
  [1.5, 322.4454, -159.9301],
] as const;

/** Effective current and mean torque over the last supply period, after `settle` seconds at constant speed. */
function settled(textbook: TextbookMachine, slip: number, settle: number) {
  const { machine, supply, synchronousSpeed } = textbook;
  const model = twoPoles(circuitOf(machine, supply), supply, [0, -1, 2]);
  const shaft = plainShaft(textbook, 1e15);
  const problem = segmentProblem(model, shaft, plainMode(shaft));
  const omegaM = (1 - slip) * synchronousSpeed;
  const y0 = [...new Array<number>(model.size).fill(0), omegaM, 0];
  const options = {
    relativeTolerance: 1e-10,
    absoluteTolerance: y0.map(() => 1e-10),
    stats: { evaluations: 0, steps: 0 },
    maxSteps: 1e6,
  };
  const from = settle - 1 / supply.frequency;
  const count = 240;
  const observation = newObservation();
  let square = 0;
  let torque = 0;
  let sample = 0;
  for (const step of integrate(problem, 0, y0, settle, options))
    for (; sample < count; sample++) {
      const t = from + ((sample + 0.5) * (settle - from)) / count;
      if (t > step.t1) break;
      const y = y0.map((_, c) => step.value(c, t));
      model.observe(t, y, omegaM, 0, observation);
      square += model.terminalCurrent(t, y, 0) ** 2 / count;
      torque += observation.torque / count;
    }
  return { current: Math.sqrt(square), torque };
}

describe('the sequence circuits in series', () => {
  it.each(TABLE)('at slip %d carry the computed current and torque (50 hp)', (slip, current, torque) => {
    const state = twoPoleSteadyState(KRAUSE.hp50.machine, KRAUSE.hp50.supply, slip);
    compare(state.current, current, { absolute: 5.1e-4 }, `current at slip ${slip}, sequence circuits`, 'A');
    // One unit of the last digit: recomputed with complex arithmetic the last value is −159.93004.
    const what = `mean torque at slip ${slip}, sequence circuits`;
    compare(state.torque, torque, { absolute: 1e-4 }, what, 'N·m');
  });
});

describe('two poles conducting at constant speed', () => {
  it.each(TABLE)('settle to the circuit’s current and torque at slip %d (50 hp)', (slip, current, torque) => {
    // Slowest decay 1.79/s at standstill: e^{−1.79·10} is 1e-8.
    const state = settled(KRAUSE.hp50, slip, 10);
    compare(state.current, current, { absolute: 6e-4 }, `current at slip ${slip}, settled`, 'A');
    compare(state.torque, torque, { absolute: 1.5e-4 }, `mean torque at slip ${slip}, settled`, 'N·m');
  });

  it('settle to the circuit’s current and torque with two cages', () => {
    for (const slip of [0.04, 1, 1.8]) {
      const exact = twoPoleSteadyState(DOUBLE_CAGE.machine, DOUBLE_CAGE.supply, slip);
      const state = settled(DOUBLE_CAGE, slip, 8);
      expectWithin(state.current, exact.current, { relative: 1e-6 }, `current at slip ${slip}`);
      expectWithin(state.torque, exact.torque, { absolute: 1e-4 }, `torque at slip ${slip}`);
    }
  });

  it('in a whole run: a start with the pole of phase B missing stays at rest with that current', () => {
    const end = 10;
    const start = run(
      startAtOnce(KRAUSE.hp50, end, { inertia: 1e12, starter: { closingScatter: [0, 100, 0] } }),
    );
    const period = 1 / 60;
    const current = Math.sqrt(start.integral('iA2', end - period, end) / period);
    const what = 'current at rest, a whole run with the pole of phase B missing';
    compare(current, 341.367, { absolute: 6e-4 }, what, 'A');
    expectWithin(start.extreme('iB', 'magnitude').value, 0, { absolute: 1e-9 }, 'current of the open phase');
  });
});

listedInGuide();
