/**
 * Locked rotor is a linear circuit with constant coefficients: exact solutions. The single R–L circuit and the standstill values of
 * the Krause machines are computed (closed form; matrix exponential), to the digits given. κ: IEC 60909-0,
 * κ = 1.02 + 0.98·e^{−3R/X} (formula looked up, values computed from it).
 */
import { describe, it } from 'vitest';
import { steadyState } from '../../src/machine/steadyState.ts';
import { linearMachine, phasesOf } from '../support/constantSpeed.ts';
import { pointComparisons } from '../support/pointComparisons.ts';
import { publishedSource } from '../support/published.ts';
import { type Readings, run } from '../support/readings.ts';
import { startAtOnce } from '../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE, type TextbookMachine, textbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';
import { allowedError, type Comparison, worstOf } from '../support/worstOf.ts';

const { compare, listedInGuide } = publishedSource(
  'lockedRotor',
  'Switching on with the rotor locked, which is a linear circuit: closed form of one circuit of resistance and reactance (0.1 Ω, 1 Ω, ' +
    '50 Hz, 100 V crest), and a matrix exponential for the machines of Krause et al. and an invented double-cage machine. Of 400 ' +
    'instantaneous values the table has the worst of each run, measured against the run’s largest (10⁻⁷ of it is allowed). The ' +
    'crest factor of IEC 60909-0, κ = 1.02 + 0.98·e^(−3R/X), is a fit of the exact one that is itself off by up to 0.6 %.',
  'exact',
);

/** kg·m²: turns by less than 1e-9 of synchronous speed during the test. */
const LOCKED = 1e12;
const kappa = (ratio: number) => 1.02 + 0.98 * Math.exp(-3 * ratio);

/** A machine whose magnetising branch carries nothing, so that standstill is one R–L circuit. */
function seriesCircuit(R: number, X: number, phaseCrest: number, frequency: number): TextbookMachine {
  return textbookMachine({
    lineVoltage: phaseCrest * Math.sqrt(1.5),
    frequency,
    poles: 2,
    rs: R / 2,
    Xls: X / 2,
    XM: 1e8 * X,
    cages: [{ rr: R / 2, Xlr: X / 2 }],
    J: LOCKED,
    power: 1,
    rpm: null,
  });
}

describe('one R–L circuit (0.1 Ω, 1 Ω, 50 Hz, 100 V crest)', () => {
  const textbook = seriesCircuit(0.1, 1, 100, 50);

  // u = Û·sin(ωt + α) is φ = α − 90°.
  it.each([
    [0, 172.8154, 0.0094471],
    [90, 105.7481, 0.014663],
  ])('switched on at α = %d° peaks as computed', (alpha, peak, time) => {
    const start = run(startAtOnce(textbook, 0.05, { supply: { angle: ((alpha - 90) * Math.PI) / 180 } }));
    const found = start.extreme('iA', 'magnitude');
    const on = `R–L circuit switched on ${alpha}° after the zero of its voltage`;
    compare(found.value, peak, { absolute: 6e-5 }, `peak current, ${on}`, 'A');
    compare(1000 * found.time, 1000 * time, { absolute: 1e-3 }, `time of the peak, ${on}`, 'ms');
  });

  it('follows the closed form at every instant', () => {
    const alpha = 0.6;
    const omega = 100 * Math.PI;
    const theta = Math.atan2(1, 0.1);
    const crest = 100 / Math.hypot(1, 0.1);
    const start = run(startAtOnce(textbook, 0.08, { supply: { angle: alpha - Math.PI / 2 } }));
    const all: Comparison[] = [];
    for (let k = 1; k <= 40; k++) {
      const t = 0.002 * k;
      const exact =
        crest *
        (Math.sin(omega * t + alpha - theta) - Math.sin(alpha - theta) * Math.exp((-t * 0.1 * omega) / 1));
      all.push({
        ours: start.trajectory.at(t).iA,
        published: exact,
        tolerance: { absolute: 1e-5 },
        quantity: `current ${2 * k} ms after switching on, R–L circuit`,
        unit: 'A',
      });
    }
    compareWorst(all);
  });

  it('peaks near the standard’s crest factor for the tabulated R/X', () => {
    // The standard's formula is a fit of the worst peak at α = 0: within 0.6 % of the exact solution.
    for (const [ratio, printed] of [
      [0.05, 1.86349],
      [0.1, 1.746],
      [0.15, 1.64488],
      [0.2, 1.55784],
      [0.42, 1.29798],
    ] as const) {
      expectWithin(kappa(ratio), printed, { absolute: 5.1e-6 }, 'κ');
      const worst =
        peakVector(run(startAtOnce(seriesCircuit(ratio, 1, 100, 50), 0.04))) / (100 / Math.hypot(1, ratio));
      const quantity = `worst crest factor of an R–L circuit with R/X = ${ratio}, beside κ of IEC 60909-0`;
      compare(worst, printed, { relative: 0.009 }, quantity, '', 'looked up');
    }
  });

  it('without resistance peaks at twice the crest', () => {
    const worst = peakVector(run(startAtOnce(seriesCircuit(1e-9, 1, 100, 50), 0.02))) / 100;
    compare(worst, 2, { relative: 1e-6 }, 'worst crest factor of a circuit without resistance', '');
  });
});

describe.each([
  ['3 hp', KRAUSE.hp3, 92.969, 105.094, 0.006317, 1.1304, 1.1094, 95.037, 134.749, -24.65],
  ['50 hp', KRAUSE.hp50, 557.45, 695.202, 0.006771, 1.2471, 1.234, 585.141, 1677.09, -568.935],
] as const)(
  'the %s machine switched on with the rotor locked',
  (name, textbook, crest, worst, tWorst, exact, standard, atZero, maximum, minimum) => {
    const locked = (angle: number) => run(startAtOnce(textbook, 0.3, { inertia: LOCKED, supply: { angle } }));
    const last = { absolute: 6e-4 };

    it('has the computed peaks', () => {
      const turned = locked(Math.PI / 2);
      const peak = turned.extreme('iA', 'magnitude');
      const end = `rotor locked, ${name}`;
      const atVoltageZero = `peak of phase A switched on at its voltage’s zero, ${end}`;
      const best = locked(0).extreme('iA', 'magnitude').value;
      compare(peak.value, worst, last, atVoltageZero, 'A');
      compare(1000 * peak.time, 1000 * tWorst, { absolute: 6e-4 }, `time of the ${atVoltageZero}`, 'ms');
      compare(best, atZero, last, `peak of phase A switched on at its voltage’s crest, ${end}`, 'A');
      compare(turned.extreme('torque', 'max').value, maximum, last, `greatest torque, ${end}`, 'N·m');
      compare(turned.extreme('torque', 'min').value, minimum, last, `least torque, ${end}`, 'N·m');
    });

    it('exceeds the standard’s crest factor a little, as two coupled circuits do', () => {
      const state = steadyState(textbook.machine, textbook.supply, 1);
      compare(
        Math.SQRT2 * state.current,
        crest,
        last,
        `crest of the steady current, rotor locked, ${name}`,
        'A',
      );
      const ratio = state.statorCurrent[0] / -state.statorCurrent[1];
      expectWithin(kappa(ratio), standard, { absolute: 5.1e-5 }, 'κ');
      expectWithin(worst / (Math.SQRT2 * state.current), exact, { absolute: 5.1e-5 }, 'exact factor');
    });
  },
);

describe.each([
  ['3 hp', KRAUSE.hp3],
  ['50 hp', KRAUSE.hp50],
  ['double-cage', DOUBLE_CAGE],
] as const)('the %s machine at standstill against the matrix exponential', (name, textbook) => {
  it('has the exact currents and torque at every instant', () => {
    const { machine, supply } = textbook;
    const phi = 0.4;
    const omega = 2 * Math.PI * supply.frequency;
    const crest = supply.lineVoltage * Math.sqrt(2 / 3);
    const linear = linearMachine(machine, omega, 0);
    const rest = new Array<number>(2 + 2 * machine.cages.length).fill(0);
    const start = run(startAtOnce(textbook, 0.3, { inertia: LOCKED, supply: { angle: phi } }));
    const largest = start.extreme('iA', 'magnitude').value;
    const swing = start.extreme('torque', 'max').value;
    const currents: Comparison[] = [];
    const torques: Comparison[] = [];
    for (let k = 1; k <= 30; k++) {
      const t = 0.01 * k - 0.0003 * k;
      const exact = linear.currents(rest, [crest * Math.cos(phi), crest * Math.sin(phi)], t);
      const phases = phasesOf([exact[0]!, exact[1]!], omega * t);
      const point = start.trajectory.at(t);
      const when = `${(1000 * t).toFixed(1)} ms after switching on, rotor locked, ${name}`;
      const at = { phases, torque: linear.torque(exact) };
      const made = pointComparisons(point, at, { current: largest, torque: swing }, when);
      currents.push(...made.currents);
      torques.push(made.torque);
    }
    compareWorst(currents);
    compareWorst(torques);
  });
});

/** Demands all, lists the one that is farthest off. */
function compareWorst(all: readonly Comparison[]): void {
  const { ours, published, tolerance, quantity, unit } = worstOf(all, allowedError);
  compare(ours, published, tolerance, quantity, unit);
}

/** Largest magnitude of the current vector: the worst phase peak over all supply angles. */
function peakVector(readings: Readings): number {
  return readings.largestVector(0, readings.trajectory.tEnd, 20001);
}

listedInGuide();
