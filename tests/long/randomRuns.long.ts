import { writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { METRIC_KEYS, simulate } from '../../src/index.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { runPhaseVariableModel } from '../independent/phaseVariableModel.ts';
import { compareRuns } from '../support/compareRuns.ts';
import { anyHandling, expectControlLaws } from '../support/controlLaws.ts';
import { type Difference, type Floors, SMALL_MACHINE_FLOORS } from '../support/disagreements.ts';
import { withElements } from './randomElements.ts';
import { randomScenario, TIGHT } from './randomScenario.ts';
import { shapeOf } from './shapeOf.ts';

const SEED = 20_240;
const RUNS = 200;
const COMPARED = 20;
const WITH_ELEMENTS = 40;
const HANDLED = 300;

/** Of a run that comes to its end there are some thousands. */
const MOST_STEPS = 20_000;

/** Largest residual of the energy ledger, share of the throughput. */
const LEDGER = 1e-6;

const STATUSES = [
  'finished',
  'endTimeReached',
  'switchNeverOpened',
  'notSettled',
  'overspeed',
  'lineToLineShortCircuit',
  'nonFiniteValue',
  'stepLimit',
];

const result: string[] = [];

afterAll(() => {
  const text = [
    '# Random runs',
    '',
    'Written by `npm run test:long`.',
    '',
    ...result.map((line) => `- ${line}`),
    '',
  ];
  writeFileSync(new URL('result.md', import.meta.url), text.join('\n'));
});

it.each([
  { which: 'random run', source: randomScenario([0.05, 2], 'auto') },
  { which: 'random run with elements', source: withElements(randomScenario([0.05, 2], 'auto')) },
])('every $which closes its ledger, ends with a known status and measures no NaN', ({ which, source }) => {
  const counts = new Map<string, number>();
  const wrong: string[] = [];
  let worst = 0;
  fc.sample(source, { seed: SEED, numRuns: RUNS }).forEach((scenario, index) => {
    // A machine that stalls against its load goes on for two minutes; with iron loss that takes many short steps.
    const { status, metrics, ledger } = simulate({
      ...scenario,
      solver: { ...scenario.solver, maxSteps: MOST_STEPS },
    });
    counts.set(status.code, (counts.get(status.code) ?? 0) + 1);
    worst = Math.max(worst, ledger.residual);
    if (!STATUSES.includes(status.code)) wrong.push(`run ${index}: status ${status.code}`);
    if (!(ledger.residual < LEDGER)) wrong.push(`run ${index}: ledger residual ${ledger.residual}`);
    for (const key of METRIC_KEYS) {
      const { value, time, multiple } = metrics[key];
      const numbers = [value, time, multiple?.value].filter((n) => n !== null && n !== undefined);
      if (!numbers.every(Number.isFinite)) wrong.push(`run ${index}: ${key} ${numbers.join(', ')}`);
    }
  });
  result.push(
    `${RUNS} times a ${which}, seed ${SEED}, default tolerance, automatic end`,
    ...STATUSES.map((code) => `${code}: ${counts.get(code) ?? 0}`),
    `worst ledger residual: ${worst.toExponential(0)} of the throughput (allowed ${LEDGER})`,
  );
  expect(wrong).toEqual([]);
  // The scenarios are plausible: nearly all of them must come to their end.
  expect(counts.get('finished')).toBeGreaterThan(0.75 * RUNS);
});

/** Floors for a machine of any size. */
function floorsOf({ machine }: Scenario): Floors {
  const { current, torque } = machine.rated;
  return {
    ...SMALL_MACHINE_FLOORS,
    A: (SMALL_MACHINE_FLOORS.A! * current!) / 6,
    N·m: (SMALL_MACHINE_FLOORS.N·m! * torque!) / 12,
    A·s: (SMALL_MACHINE_FLOORS.A·s! * current!) / 6,
  };
}

it('random runs agree with the phase-variable model in every metric', () => {
  const found: Difference[] = fc
    .sample(randomScenario([0.6, 1.2], 1), { seed: SEED, numRuns: COMPARED })
    .flatMap((scenario, index) =>
      compareRuns(
        scenario,
        simulate(scenario).metrics,
        runPhaseVariableModel(shapeOf(scenario)).metrics,
        floorsOf(scenario),
      ).map(({ words, excess }) => ({ words: `run ${index}, ${words}`, excess })),
    );
  const worst = found.reduce((a, b) => (b.excess > a.excess ? b : a));
  result.push(
    `${COMPARED} runs compared with the phase-variable model, seed ${SEED}, tolerance ${TIGHT}`,
    `${found.length} values, times and phases compared; worst error: ${worst.excess.toPrecision(1)} of what is allowed`,
  );
  expect(found.filter(({ excess }) => excess > 1).map(({ words }) => words)).toEqual([]);
});

/**
 * Currents and charges of poles are those at an instant that the two models find to a microsecond; a voltage that falls to next to
 * nothing is judged by the supply's.
 */
function instantFloors({ machine, supply }: Scenario): Floors {
  const crest = 10 * Math.SQRT2 * machine.rated.current!;
  return {
    A: INSTANT * 2 * Math.PI * supply.frequency * crest,
    C: INSTANT * crest,
    V: 1e-5 * supply.lineVoltage,
  };
}

/** To which the models agree in instants, s. */
const INSTANT = 1e-6;

/** What is nothing in any run: a creep of 1e-7 turns, the I²t of a pole that never touches. */
const SMALL_FLOORS: Floors = { '1': 1e-7, 'A²·s': 1e-9 };

it('random runs with elements of the real machine agree with the phase-variable model in every metric', () => {
  const scenarios = fc.sample(withElements(randomScenario([0.5, 1], 0.8)), {
    seed: SEED,
    numRuns: WITH_ELEMENTS,
  });
  let without = 0;
  let shorts = 0;
  const found: Difference[] = scenarios.flatMap((scenario, index) => {
    const { status, metrics, operations } = simulate(scenario);
    const compared = () => runPhaseVariableModel(shapeOf(scenario)).metrics;
    if (status.code === 'lineToLineShortCircuit') {
      shorts++;
      expect(compared, `run ${index}`).toThrow('line-to-line short circuit');
      return [];
    }
    // A machine that a fault keeps from starting, or a plug that comes to nothing, has no figures to compare.
    if (operations.reversal === null) {
      without++;
      return [];
    }
    const floors = { ...floorsOf(scenario), ...SMALL_FLOORS, ...instantFloors(scenario) };
    return compareRuns(scenario, metrics, compared(), floors).map(({ words, excess }) => ({
      words: `run ${index}, ${words}`,
      excess,
    }));
  });
  const worst = found.reduce((a, b) => (b.excess > a.excess ? b : a));
  result.push(
    `${WITH_ELEMENTS} runs with random elements: ${WITH_ELEMENTS - without - shorts} compared with the phase-variable model, ${shorts} short circuits found by both, ${without} without a reversal`,
    `${found.length} values, times and phases compared; worst error: ${worst.excess.toPrecision(1)} of what is allowed`,
  );
  expect(without + shorts).toBeLessThan(0.5 * WITH_ELEMENTS);
  expect(found.filter(({ excess }) => excess > 1).map(({ words }) => words)).toEqual([]);
});

it('whatever hands do to a starter without a fault, its laws hold', () => {
  fc.assert(fc.property(anyHandling, expectControlLaws), { seed: SEED, numRuns: HANDLED });
  result.push(
    `${HANDLED} random handlings of all schemes by push buttons: coils exclude each other, emergency stop and trip drop them at once, no short circuit, ledgers below ${LEDGER}.`,
  );
});
