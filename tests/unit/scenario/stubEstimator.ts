import type {
  CircuitEstimator,
  EstimatedCircuit,
  Nameplate,
  TestReadings,
} from '../../../src/scenario/nameplate.ts';

/** A round circuit that no motor has: what is asked of the estimator counts here, not what it finds. */
export const FOUND: EstimatedCircuit = {
  circuit: {
    Rs: 1,
    Lls: 0.004,
    Lm: 0.2,
    cages: [{ Rr: 0.5, Llr: 0.006 }],
    inertia: 0.03,
    rated: { current: 15, torque: null, power: 7500, speed: null },
  },
  estimation: { from: 'nameplate', items: [], misfit: 0, remarks: [] },
  notes: [
    { path: 'inertia', value: '0.03 kg m^2', origin: 'assumed', source: 'typical' },
    { path: 'statorResistance', value: '1 ohm', origin: 'estimated' },
  ],
};

/** Takes down what it is asked and gives back one circuit. */
export function stubEstimator(found: EstimatedCircuit = FOUND): CircuitEstimator & {
  readonly nameplates: Nameplate[];
  readonly readings: TestReadings[];
} {
  const nameplates: Nameplate[] = [];
  const readings: TestReadings[] = [];
  return {
    nameplates,
    readings,
    fromNameplate: (nameplate) => {
      nameplates.push(nameplate);
      return found;
    },
    fromTests: (tests) => {
      readings.push(tests);
      return { ...found, estimation: { ...found.estimation, from: 'tests' } };
    },
  };
}
