import { describe, expect, it } from 'vitest';
import { parseScenario, type RunResult, simulate } from '../../../../src/index.ts';
import { evaluationSection } from '../../../../src/report/laboratory/evaluationSection.ts';
import { inertiaSentence } from '../../../../src/report/laboratory/formulaText.ts';
import { predictedText } from '../../../../src/report/laboratory/predictionText.ts';
import { benchOf, plugStopOf, reversalOf, startOf } from '../../../../src/survey/laboratory/bench.ts';
import type { Prediction } from '../../../../src/survey/laboratory/laboratory.ts';
import { runFigures } from '../../../../src/survey/laboratory/movingQuantities.ts';
import { QUANTITIES, type QuantityKey } from '../../../../src/survey/laboratory/quantities.ts';
import { QUANTITY_WORDS } from '../../../../src/survey/laboratory/quantityWords.ts';
import { quantitiesOf } from '../../../../src/survey/laboratory/ranges.ts';
import { storedEnergy } from '../../../../src/survey/laboratory/steadyQuantities.ts';
import { EVALUATED } from '../../../../src/survey/laboratory/steps.ts';
import { exampleText } from '../../../support/examples.ts';

const set = parseScenario(exampleText('what-should-the-laboratory-set-show.yaml'));
const bench = benchOf(simulate(set));
const at = { start: 0, plug: 0, reversal: 0 };
const shown = quantitiesOf(bench.scenario, bench, runFigures(bench.scenario, bench, at));

const predictionOf = (key: QuantityKey): Prediction => {
  const value = shown[key];
  if (value === undefined) throw new Error(`no ${key}`);
  return {
    key,
    ...QUANTITY_WORDS[key],
    unit: QUANTITIES[key].unit,
    repeats: 1,
    predicted: value,
    low: value,
    high: value,
    scatter: { low: value, high: value },
    parts: [],
    open: null,
  };
};

const INERTIA = 0.0042 + 0.059;
const energy = storedEnergy(bench.scenario, bench.direction);
const evaluation = EVALUATED.map(predictionOf);
const sheet = { evaluation, inertia: INERTIA, storedEnergy: energy };
const SYNCHRONOUS = (2 * Math.PI * 50) / 2;

/** The sum that the sheet describes, over the speed of a run: `field` is the speed of its field, J is as printed. */
function heat(
  { trajectory }: RunResult,
  field: number,
  J: number,
  perTorque: number,
  end = trajectory.tEnd,
): number {
  const step = 1e-3;
  let sum = 0;
  for (let t = trajectory.tStart; t + step < end; t += step) {
    const [a, b] = [trajectory.at(t), trajectory.at(t + step)];
    const speed = (a.speed + b.speed) / 2;
    const torque = (J * (b.speed - a.speed)) / step + perTorque * a.loadTorque;
    sum += torque * (field - speed) * step;
  }
  return sum;
}

describe.each(['SI', 'us'] as const)('with the numbers as printed in %s units', (units) => {
  const html = evaluationSection(sheet, { units, blank: false, version: '0' });
  const numberOf = (text: string) => Number(/-?[\d.]+/u.exec(text.replace('−', '-'))![0]);
  const printed = (key: QuantityKey) => numberOf(predictedText(predictionOf(key), units));
  const sentence = inertiaSentence(INERTIA, units);
  const J = numberOf(/([\d.]+) (?:kg·m²|lbf·ft·s²)/u.exec(sentence)![1]!);
  const speed = (printed('noLoadSpeed') * Math.PI) / 30;
  /** One torque unit of the sheet in N·m, from the exact foot and pound. */
  const torqueUnit = units === 'SI' ? 1 : 0.3048 * 0.45359237 * 9.80665;
  const stored = (J * speed ** 2) / 2;

  it('the energy is ½·J·ω²', () => {
    const [, number, unit] = /½·J·ω² = ([\d.]+) (kJ|ft·lbf)/u.exec(html)!;
    expect((numberOf(number!) * (unit === 'kJ' ? 1000 : 1)) / stored).toBeCloseTo(1, 2);
    if (units === 'us') {
      const [, heatNumber] = /\(([\d.]+) Btu\)/u.exec(html)!;
      const [, divisor] = /([\d.]+) of these are 1 Btu/u.exec(sentence)!;
      expect(numberOf(number!) / numberOf(divisor!) / numberOf(heatNumber!)).toBeCloseTo(1, 2);
      const [, mass, by, force] = /is ([\d.]+) lb·ft², divided by ([\d.]+): ([\d.]+)/u.exec(sentence)!;
      expect(numberOf(mass!) / numberOf(by!) / numberOf(force!)).toBeCloseTo(1, 2);
    }
  });

  const rated = 2.7;
  const resistance = printed('lockedRotorPower') / (3 * rated ** 2);
  const formulas: Readonly<Partial<Record<QuantityKey, () => number>>> = {
    noLoadReactance: () => 400 / Math.sqrt(3) / printed('noLoadCurrent'),
    shortCircuitResistance: () => resistance,
    shortCircuitReactance: () =>
      Math.sqrt((printed('lockedRotorVoltage') / Math.sqrt(3) / rated) ** 2 - resistance ** 2),
    meanFriction: () => (J * speed) / 2 / printed('halfSpeedTime'),
    stopToStartTime: () => printed('stopTimeFromTouch') / printed('startTime'),
    reversalToStartTime: () => printed('reversalTime') / printed('startTime'),
    startHeatMultiple: () => {
      const run = simulate(startOf(bench.scenario, bench.direction));
      return heat(run, SYNCHRONOUS, J, 1 / torqueUnit) / stored;
    },
    plugHeatMultiple: () => {
      const run = simulate(plugStopOf(bench.scenario, bench.direction));
      const { zero } = run.operations.reversal!;
      return heat(run, -SYNCHRONOUS, J, 1 / torqueUnit, zero!) / stored;
    },
    reversalHeatMultiple: () => {
      const run = simulate(reversalOf(bench.scenario, bench.direction));
      return heat(run, -SYNCHRONOUS, J, 1 / torqueUnit) / stored;
    },
  };

  it.each(EVALUATED)('the formula of %s gives its printed value', (key) => {
    expect(html).toContain(predictedText(predictionOf(key), units));
    // Printed with three digits; a sum over a recorded speed is as good as the sheet says of it, for torque times slip speed leaves out
    // what the field of the machine takes up and gives back.
    const share = /Heat/u.test(key) ? QUANTITIES[key].share : 0.01;
    expect(Math.abs(formulas[key]!() / printed(key) - 1), key).toBeLessThan(share);
  });
});
