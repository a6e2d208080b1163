/**
 * What the trade says of starting and plugging currents and of contactor times, beside what comes out here. Sources as far as
 * known: several public trade pages and data sheets, not one authority; where none is named, common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { estimateCircuit } from '../../src/estimate/estimateCircuit.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { simulate } from '../../src/measure/simulate.ts';
import { defaultClosingTime, defaultOpeningTime } from '../../src/scenario/defaults.ts';
import type { Nameplate } from '../../src/scenario/nameplate.ts';
import { publishedSource } from '../support/published.ts';
import { exchangeAtOnce, startAtOnce } from '../support/scenarios.ts';
import { HORSEPOWER, KRAUSE } from '../support/textbookMachines.ts';

const { compare, listedInGuide } = publishedSource(
  'rulesOfThumb',
  'What the trade says of plugging: a current slightly above that of the locked rotor in the steady ' +
    'state, and in theory twice the peak of a start at the worst instant (a manufacturer’s text). The ' +
    'other rows are numbers of an independent computation for machines of Krause’s table. Its ranges for ' +
    'locked-rotor current (five motors of design B) and contactor times are demanded too, but have no ' +
    'single number to show.',
  'computed independently',
);

describe('locked-rotor current of an ordinary motor', () => {
  it.each([10, 25, 50, 100, 200])(
    'is about six to eight times rated current (trade pages; design B 600 to 700 %%), %d hp',
    (hp) => {
      const plate: Nameplate = {
        connection: 'star',
        power: hp * HORSEPOWER,
        lineVoltage: 460,
        frequency: 60,
        poles: 4,
        speed: null,
        current: null,
        powerFactor: null,
        efficiency: null,
        lockedRotorCurrent: null,
        lockedRotorTorque: null,
        breakdownTorque: null,
        design: 'B',
        inertia: null,
      };
      const { items } = estimateCircuit(plate).estimation;
      const of = (name: string) => items.find((item) => item.name.startsWith(name))!.reproduced;
      const multiple = of('locked-rotor current') / of('rated current');
      expect(multiple).toBeGreaterThan(5);
      expect(multiple).toBeLessThan(8);
    },
  );
});

describe('plugging current at full speed', () => {
  it.each([
    ['3 hp', KRAUSE.hp3, 1.134],
    ['50 hp', KRAUSE.hp50, 1.0705],
    ['500 hp', KRAUSE.hp500, 1.006],
  ] as const)(
    'is slightly above the locked-rotor current in the steady state: %s',
    (name, textbook, ratio) => {
      const at = (slip: number) => steadyState(textbook.machine, textbook.supply, slip).current;
      // Half a unit of the last printed digit.
      compare(
        at(2) / at(1),
        ratio,
        { absolute: 5e-4 },
        `steady current at slip 2 over that at slip 1, ${name}`,
        '',
      );
    },
  );

  it('can in theory reach twice the peak of a start and, for a machine without saturation, some more: 50 hp', () => {
    const start = simulate(startAtOnce(KRAUSE.hp50, 0.2, { supply: { angle: Math.PI / 2 } })).metrics;
    const plug = run(exchangeAtOnce(KRAUSE.hp50, 0, 0.2));
    const longest = start.startPeakCurrent.value!;
    // 1602 A and 695 A are the longest current vectors; a phase current nearly reaches the vector.
    expect(plug / longest).toBeGreaterThan(2);
    compare(
      plug / longest,
      2,
      { relative: 0.15 }, // a rule in one digit, for any motor
      'peak current of plugging over that of starting, as the trade says; ours 50 hp',
      '',
      'looked up',
    );
    compare(
      plug / longest,
      2.31,
      { relative: 0.03 },
      'the same, 50 hp, by a second program: of current vectors, which no phase current need reach; ours of phase currents',
      '',
    );
  });
});

function run(scenario: Parameters<typeof simulate>[0]): number {
  return simulate(scenario).metrics.plugPeakCurrent.value!;
}

it('operating times taken by default lie among those of contactors (data sheets: 80 A 20 to 35 ms and 6 to 30 ms)', () => {
  expect(defaultClosingTime).toBeGreaterThanOrEqual(0.02);
  expect(defaultClosingTime).toBeLessThanOrEqual(0.035);
  expect(defaultOpeningTime).toBeGreaterThanOrEqual(0.006);
  expect(defaultOpeningTime).toBeLessThanOrEqual(0.03);
});

listedInGuide();
