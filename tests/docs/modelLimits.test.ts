/**
 * The page on the model's limits says how much each effect moves the figures of one example. The numbers are made here, by
 * switching the effect on (or changing what nobody knows) and running again.
 */
import { describe, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../src/index.ts';
import { exampleText } from '../support/examples.ts';
import { expectSection } from '../support/generatedPages.ts';

const PAGE = 'examples/guides/the-model-and-its-limits.md';
const EXAMPLE = 'may-this-belt-be-plugged';
const FIGURES = ['plugPeakCurrent', 'plugMinimumTorque', 'stopTimeFromTouch', 'plugRotorHeat'] as const;

/** A piece of the example and what stands in its place. */
type Change = readonly [before: string, after: string];

/** What can be switched on, or lies within what is known of a plant: in words, and as a change of the file. */
const EFFECTS: readonly (readonly [words: string, ...changes: Change[]])[] = [
  [
    'saturation of leakage and main path, typical curves',
    ['machine:\n', 'machine:\n  saturation: { main: typical, leakage: typical }\n'],
  ],
  [
    'resistances at 20 °C, run at 120 °C',
    [
      'machine:\n',
      'machine:\n  temperature: { resistancesAt: 20 degC, winding: 120 degC, rotor: 120 degC, statorConductor: copper, rotorConductor: aluminium }\n',
    ],
  ],
  ['iron loss of 200 W', ['machine:\n', 'machine:\n  ironLoss: 200 W\n']],
  [
    'a weak supply: 1 MVA of short-circuit power',
    ['frequency: 50 Hz\n', 'frequency: 50 Hz\n  shortCircuitPower: 1 MVA\n'],
  ],
  ['a dead time 20 ms longer', ['changeoverDelay: 12 ms', 'changeoverDelay: 32 ms']],
  [
    'poles that touch 2 ms and 1 ms after the first',
    ['openingTime: 9 ms', 'closingScatter: [0 ms, 2 ms, 1 ms]\n  openingTime: 9 ms'],
  ],
  [
    'leakages 10 % smaller',
    ['statorLeakage: 1.25 ohm', 'statorLeakage: 1.125 ohm'],
    ['leakage: 1.45 ohm', 'leakage: 1.305 ohm'],
  ],
  ['rotor resistance 10 % larger', ['resistance: 0.52 ohm', 'resistance: 0.572 ohm']],
  ['inertia of the load 20 % larger', ['inertia: 0.05 kg m^2', 'inertia: 0.06 kg m^2']],
  ['friction a quarter smaller', ['torque: 12 N m', 'torque: 9 N m']],
];

const figuresOf = (...changes: readonly Change[]) => {
  let text = exampleText(EXAMPLE);
  for (const [before, after] of changes) {
    if (!text.includes(before)) throw new Error(`the example has no "${before}"`);
    text = text.replace(before, after);
  }
  const { metrics, usable } = simulate(parseScenario(text));
  expect(usable).toBe(true);
  return FIGURES.map((key) => metrics[key].value!);
};

const plain = figuresOf();
/** Half a period in steps of 15°: the other half gives the same with the other sign. */
const instants = Array.from({ length: 12 }, (_, k) => figuresOf(['angle: 30 deg', `angle: ${15 * k} deg`]));
const rows = EFFECTS.map(([words, ...changes]) => ({ words, values: figuresOf(...changes) }));

const percent = (value: number, base: number): string => {
  const share = 100 * (Math.abs(value) / Math.abs(base) - 1);
  if (Math.abs(share) < 0.05) return '0 %';
  const text = Math.abs(share) < 10 ? Math.abs(share).toFixed(1) : Math.abs(share).toFixed(0);
  return `${share > 0 ? '+' : '−'}${text} %`;
};

/** Least and most of a figure over the closing instants, by magnitude. */
const range = (k: number): string => {
  const sizes = instants.map((values) => Math.abs(values[k]!));
  return `${percent(Math.min(...sizes), plain[k]!)} to ${percent(Math.max(...sizes), plain[k]!)}`;
};

describe('how much what is left out, or not known, may matter', () => {
  it('stands on the page with today’s numbers', () => {
    const [current, torque, time, heat] = plain;
    const lines = [
      '',
      '| what changes | peak current | torque peak | touch to zero speed | rotor heat, command to zero speed |',
      '| --- | --- | --- | --- | --- |',
      `| as in the file | ${current!.toFixed(0)} A | ${torque!.toFixed(0).replace('-', '−')} N·m | ${time!.toFixed(3)} s | ${(heat! / 1000).toFixed(2)} kJ |`,
      `| the closing instant, anywhere in the period | ${FIGURES.map((_, k) => range(k)).join(' | ')} |`,
      ...rows.map(
        ({ words, values }) =>
          `| ${words} | ${values.map((value, k) => percent(value, plain[k]!)).join(' | ')} |`,
      ),
      '',
    ];
    expectSection(PAGE, 'how much', `${lines.join('\n')}\n`);
  });

  it('holds no effect that moves nothing: each changes one of the figures by a thousandth at least', () => {
    const idle = rows.filter(({ values }) =>
      values.every((value, k) => Math.abs(value / plain[k]! - 1) < 1e-3),
    );
    expect(idle.map(({ words }) => words)).toEqual([]);
  });
});
