import { describe, expect, it } from 'vitest';
import { type Circuit, circuitOf } from '../../../src/machine/circuit.ts';
import { type ConductingSet, connectedModel } from '../../../src/machine/connectedModel.ts';
import { deadModel } from '../../../src/machine/deadModel.ts';
import { type ElectricalModel, newObservation } from '../../../src/machine/electricalModel.ts';
import { FLOW, FLOW_COUNT } from '../../../src/machine/flows.ts';
import { NOTHING_INSERTED } from '../../../src/machine/inserted.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';
import {
  LINEAR,
  oneCage,
  RATED_FLUX,
  repeatableNumbers,
  SUPPLY,
  WITH_ALL,
  WITH_CORE,
  WITH_LEAKAGE,
  WITH_MAIN,
} from './saturableMachine.ts';

const STIFF = { ...SUPPLY, angle: 0.4 };
const WEAK = {
  ...STIFF,
  sourceResistance: 0.05,
  sourceInductance: 0.4e-3,
  cable: { resistance: 0.03, inductance: 0.1e-3 },
};
const INSERTED = { lineResistance: 0.2, rotorResistance: 0.1, star: false };

const CIRCUITS: readonly (readonly [string, Circuit])[] = [
  ['one cage', circuitOf(oneCage(LINEAR), STIFF)],
  ['two cages', circuitOf(LINEAR, STIFF)],
  ['one cage on a weak supply with resistors', circuitOf(oneCage(LINEAR), WEAK, INSERTED)],
  ['two cages on a weak supply with resistors', circuitOf(LINEAR, WEAK, INSERTED)],
  ['resistors in the lines alone', circuitOf(LINEAR, STIFF, { ...NOTHING_INSERTED, lineResistance: 0.3 })],
  ['inductance of the source alone', circuitOf(LINEAR, { ...STIFF, sourceInductance: 1e-3 })],
  ['main saturation', circuitOf(WITH_MAIN, WEAK)],
  ['leakage saturation', circuitOf(WITH_LEAKAGE, STIFF)],
  ['core', circuitOf(WITH_CORE, WEAK, INSERTED)],
  ['everything', circuitOf(WITH_ALL, WEAK, INSERTED)],
  ['everything and one cage', circuitOf(oneCage(WITH_ALL), STIFF)],
];

const POLES: readonly (readonly [string, ConductingSet, 'auto' | 'stationary'])[] = [
  ['three poles', { kind: 'three', connection: [0, 1, 2] }, 'auto'],
  ['three poles, reverse sequence', { kind: 'three', connection: [0, 2, 1] }, 'auto'],
  ['three poles, stationary axes', { kind: 'three', connection: [0, 1, 2] }, 'stationary'],
  ['three poles, two terminals on one phase', { kind: 'three', connection: [0, 0, 2] }, 'auto'],
  ['two poles, A open', { kind: 'two', connection: [-1, 1, 2] }, 'auto'],
  ['two poles, B open', { kind: 'two', connection: [0, -1, 2] }, 'auto'],
  ['two poles, C open, B on A', { kind: 'two', connection: [1, 0, -1] }, 'auto'],
  ['no poles', { kind: 'none', connection: [-1, -1, -1] }, 'auto'],
];

/** Fluxes around a common vector, so that currents are a few times rated. */
function randomFlux(circuit: Circuit, random: () => number): number[] {
  const common = [1.2 * RATED_FLUX * random(), 1.2 * RATED_FLUX * random()];
  const pairs = 1 + circuit.cageCount + (circuit.core ? 1 : 0);
  return Array.from({ length: 2 * pairs }, (_, n) => common[n % 2]! + 0.25 * RATED_FLUX * random());
}

/** Flows of one instant, into an array that holds something else before. */
function flowsOf(model: ElectricalModel, t: number, y: readonly number[], omegaM: number, theta: number) {
  const out = new Float64Array(FLOW_COUNT + 2).fill(77);
  model.observeFlows(t, y, omegaM, theta, out);
  return out;
}

/** The same read off a whole observation, by the definitions of the flows. */
function fromObservation(
  model: ElectricalModel,
  t: number,
  y: readonly number[],
  omegaM: number,
  theta: number,
) {
  const seen = newObservation();
  model.observe(t, y, omegaM, theta, seen);
  const out = new Float64Array(FLOW_COUNT);
  out[FLOW.iAlpha] = seen.iAlpha;
  out[FLOW.iBeta] = seen.iBeta;
  out[FLOW.sourcePower] = 1.5 * (seen.vAlpha * seen.iAlpha + seen.vBeta * seen.iBeta);
  out[FLOW.torque] = seen.torque;
  out[FLOW.irSquared1] = seen.irSquared1;
  out[FLOW.irSquared2] = seen.irSquared2;
  out[FLOW.coreSquared] = seen.coreSquared;
  out[FLOW.uSquared] = seen.uAlpha * seen.uAlpha + seen.uBeta * seen.uBeta;
  return out;
}

const CASES = CIRCUITS.flatMap(([name, circuit]) =>
  POLES.map(([poles, set, frame]) => [`${name}, ${poles}`, circuit, set, frame] as const),
);

describe.each(CASES)('flows of %s', (_name, circuit, set, frame) => {
  const model = connectedModel(circuit, STIFF, set, frame);
  const names = Object.keys(FLOW) as (keyof typeof FLOW)[];
  const known = set.kind === 'three' ? names : names.filter((name) => name !== 'uSquared');

  it('are what the whole observation says', () => {
    const random = repeatableNumbers(11);
    for (let n = 0; n < 20; n++) {
      const [t, omegaM, theta] = [0.5 + 0.5 * random(), 150 * random(), 3 * random()];
      const y = model.fromStationary(t, randomFlux(circuit, random));
      const wanted = fromObservation(model, t, y, omegaM, theta);
      const found = flowsOf(model, t, y, omegaM, theta);
      for (const name of known) {
        // What turns by one rounding of an angle of 300 rad moves by 1e-13 of the vector, and may itself pass zero.
        const whole = name.startsWith('i') ? Math.hypot(wanted[0]!, wanted[1]!) : 0;
        expectWithin(
          found[FLOW[name]],
          wanted[FLOW[name]]!,
          { relative: 1e-12, absolute: 1e-12 * Math.max(1, whole, name === 'sourcePower' ? 1e5 : 0) },
          `${name}, instant ${n}`,
        );
      }
      expect([...found.subarray(FLOW_COUNT)]).toEqual([77, 77]);
    }
  });

  it('have heat and torque that the right-hand side agrees with', () => {
    // Independent of both readings: currents of the terminals and torque of the derivatives.
    const random = repeatableNumbers(12);
    const [t, omegaM] = [0.0123, 61];
    const y = model.fromStationary(t, randomFlux(circuit, random));
    const found = flowsOf(model, t, y, omegaM, 0);
    const torque = model.derivatives(t, y, omegaM, []);
    expectWithin(found[FLOW.torque], torque, { relative: 1e-10, absolute: 1e-9 }, 'torque');
    const third = (2 * Math.PI) / 3;
    expectAllWithin(
      [0, 1, 2].map((k) => model.terminalCurrent(t, y, k)),
      [0, 1, 2].map(
        (k) => found[FLOW.iAlpha]! * Math.cos(k * third) + found[FLOW.iBeta]! * Math.sin(k * third),
      ),
      { absolute: 1e-9 },
      'terminal current',
    );
  });

  it('follow from the instant alone, not from the one looked at before', () => {
    const random = repeatableNumbers(13);
    const instants = [0, 1, 2].map((k) => {
      const t = 0.01 * k + 0.003;
      return [t, model.fromStationary(t, randomFlux(circuit, random)), 40 * k] as const;
    });
    const [first] = instants;
    const alone = flowsOf(model, first![0], first![1], first![2], 0.2);
    for (const [t, y, omegaM] of instants) {
      flowsOf(model, t, y, omegaM, 0.2);
      model.observe(t, y, omegaM, 0.2, newObservation());
    }
    expect(flowsOf(model, first![0], first![1], first![2], 0.2)).toEqual(alone);
  });
});

describe('flows of a machine without flux', () => {
  it('are all zero, whatever stood there before', () => {
    const found = flowsOf(deadModel(6), 0.1, [], 50, 2);
    expect([...found]).toEqual([...new Array<number>(FLOW_COUNT).fill(0), 77, 77]);
    expect([...fromObservation(deadModel(6), 0.1, [], 50, 2)]).toEqual(new Array(FLOW_COUNT).fill(0));
  });
});
