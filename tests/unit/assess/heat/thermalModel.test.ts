import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { HeatPulse } from '../../../../src/assess/heat/heat.ts';
import { thermalModel } from '../../../../src/assess/heat/thermalModel.ts';
import { heatPerNode } from '../../../../src/assess/heat/thermalModes.ts';
import type { Cooling, ThermalModel } from '../../../../src/assess/heat/thermalNetwork.ts';
import { ratedPoint } from '../../../../src/machine/ratedPoint.ts';
import { steadyState } from '../../../../src/machine/steadyState.ts';
import { magnitude } from '../../../../src/numeric/complex.ts';
import type { ThermalData } from '../../../../src/scenario/scenario.ts';
import { scenarioOf } from '../../../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE, type TextbookMachine } from '../../../support/textbookMachines.ts';
import { NO_THERMAL } from '../../../support/thermalModels.ts';
import { expectAllWithin, expectWithin } from '../../../support/tolerance.ts';

const CLOSE = { relative: 1e-9 };

function made(textbook: TextbookMachine, thermal?: Partial<ThermalData>, fitted = false): ThermalModel {
  const model = refusedOrMade(textbook, thermal, fitted);
  if (typeof model === 'string') throw new Error(model);
  return model;
}

function refusedOrMade(
  textbook: TextbookMachine,
  thermal?: Partial<ThermalData>,
  fitted = false,
): ThermalModel | string {
  const scenario = {
    ...scenarioOf(textbook),
    ...(thermal && { thermal: { ...NO_THERMAL, ...thermal } }),
  };
  return thermalModel(scenario, ratedPoint(scenario.machine, scenario.supply), fitted);
}

/** Losses at a slip from the equivalent circuit, W. */
function losses({ machine, supply }: TextbookMachine, slip: number): { winding: number; cages: number[] } {
  const { current, rotorCurrents } = steadyState(machine, supply, slip);
  return {
    winding: 3 * current ** 2 * machine.Rs,
    cages: machine.cages.map(({ Rr }, j) => 3 * magnitude(rotorCurrents[j]!) ** 2 * Rr),
  };
}

function ratedSlip({ machine, supply }: TextbookMachine): number {
  const { slip } = ratedPoint(machine, supply);
  if (slip === null) throw new Error('no rated slip');
  return slip;
}

/** C⁻¹·K, 1/s, from the model's links. */
function rateMatrix(model: ThermalModel, cooling: Cooling): Matrix {
  const index = (name: string) => model.nodes.findIndex((node) => node.name === name);
  const a = Matrix.zeros(model.nodes.length, model.nodes.length);
  const add = (i: number, j: number, g: number) =>
    a.set(i, j, a.get(i, j) + g / model.nodes[i]!.heatCapacity);
  for (const { from, to, [cooling]: g } of model.links) {
    add(index(from), index(from), g);
    if (to === 'ambient') continue;
    add(index(to), index(to), g);
    add(index(from), index(to), -g);
    add(index(to), index(from), -g);
  }
  return a;
}

/** Steady rises under constant losses, K. */
function steadyRises(model: ThermalModel, loss: HeatPulse): number[] {
  const inflow = heatPerNode(model, loss).map((watts, i) => watts / model.nodes[i]!.heatCapacity);
  return inverse(rateMatrix(model, 'running')).mmul(Matrix.columnVector(inflow)).getColumn(0);
}

/** Slowest time constant by inverse iteration, s. */
function slowest(model: ThermalModel): number {
  const back = inverse(rateMatrix(model, 'running'));
  let x = Matrix.columnVector(model.nodes.map(() => 1));
  let grown = 0;
  for (let i = 0; i < 200; i++) {
    const next = back.mmul(x);
    grown = next.max();
    x = next.div(grown);
  }
  return grown;
}

const capacity = (model: ThermalModel, name: string) =>
  model.nodes.find((node) => node.name === name)?.heatCapacity;
const parameter = (model: ThermalModel, name: RegExp) =>
  model.parameters.filter((candidate) => name.test(candidate.name));

describe('steady operation at rated load', () => {
  it('gives the stated rises of winding and cage, and half the winding’s in the frame', () => {
    const model = made(KRAUSE.hp50, { ratedRise: 72, cageRatedTemperature: 150 });
    const { winding, cages } = losses(KRAUSE.hp50, ratedSlip(KRAUSE.hp50));
    const rises = steadyRises(model, { winding, cage: cages[0]!, outerCage: 0, frame: 0, duration: 1 });
    // 150 °C at 40 °C: 110 K
    expectAllWithin(rises, [72, 110, 36], CLOSE, 'rises');
  });

  it('gives them with the outer cage as a body of its own', () => {
    const model = made(DOUBLE_CAGE, { ratedRise: 72, cageRatedTemperature: 150, outerCageShare: 0.4 });
    const { winding, cages } = losses(DOUBLE_CAGE, ratedSlip(DOUBLE_CAGE));
    // The first cage of that machine has more resistance and less leakage: it is the outer one.
    const rises = steadyRises(model, {
      winding,
      cage: cages[1]!,
      outerCage: cages[0]!,
      frame: 0,
      duration: 1,
    });
    expectAllWithin(rises, [72, 110, 110, 36], CLOSE, 'rises');
  });

  it('counts iron loss and bearings in the frame', () => {
    const textbook: TextbookMachine = {
      ...KRAUSE.hp50,
      machine: { ...KRAUSE.hp50.machine, mechanicalLoss: { friction: 2, windage: 0 } },
    };
    const model = made(textbook);
    const slip = ratedSlip(textbook);
    const friction = 2 * (1 - slip) * textbook.synchronousSpeed;
    const [of] = parameter(model, /core and bearings/);
    expectWithin(of?.value, friction, CLOSE, 'loss in the frame');
    const { winding, cages } = losses(textbook, slip);
    const rises = steadyRises(model, {
      winding,
      cage: cages[0]!,
      outerCage: 0,
      frame: friction,
      duration: 1,
    });
    expectWithin(rises[0], 80, CLOSE, 'rise of the winding');
  });
});

describe('the slowest time constant', () => {
  it.each([
    ['one cage', KRAUSE.hp50, {}],
    ['an outer cage of its own', DOUBLE_CAGE, { outerCageShare: 0.4 }],
  ] as const)('is the stated one with %s', (_name, textbook, thermal) => {
    const model = made(textbook, { coolingTimeConstant: 2700, ...thermal });
    expectWithin(slowest(model), 2700, CLOSE, 'time constant');
  });

  it('gives way to a stated heat capacity of the frame', () => {
    expect(capacity(made(KRAUSE.hp50, { frameHeatCapacity: 54_321 }), 'frame')).toBe(54_321);
  });

  it('that is too short for winding and cage is refused', () => {
    expect(refusedOrMade(KRAUSE.hp50, { coolingTimeConstant: 5 })).toMatch(
      /too short for the heat capacities/,
    );
  });
});

describe('the heat capacity of the cage', () => {
  const [atRest] = losses(KRAUSE.hp50, 1).cages;

  it('follows from the hot time, from the rated temperature up to the limit', () => {
    const model = made(KRAUSE.hp50, {
      lockedRotorTimeHot: 10,
      cageLimit: 280,
      cageRatedTemperature: 130,
    });
    expectWithin(capacity(model, 'cage'), (atRest! * 10) / 150, CLOSE, 'J/K');
  });

  it('follows from the cold time, from 40 °C whatever the cooling air', () => {
    const model = made(KRAUSE.hp50, { lockedRotorTimeCold: 20, cageLimit: 280, ambient: 20 });
    expectWithin(capacity(model, 'cage'), (atRest! * 20) / 240, CLOSE, 'J/K');
  });

  it('follows from both, which give the temperature at rated load too', () => {
    const model = made(KRAUSE.hp50, { lockedRotorTimeCold: 24, lockedRotorTimeHot: 14, cageLimit: 280 });
    expectWithin(capacity(model, 'cage'), (atRest! * 24) / 240, CLOSE, 'J/K');
    // 280 − 240·14/24 = 140 °C, a rise of 100 K
    expectWithin(model.nodes[1]?.ratedRise, 100, CLOSE, 'rise of the cage');
    expect(parameter(model, /temperature of the cage/)[0]?.origin).toBe('derived');
  });

  it('is the smaller of two that contradict a stated temperature, and the report says what they give', () => {
    const model = made(KRAUSE.hp50, {
      lockedRotorTimeCold: 24,
      lockedRotorTimeHot: 14,
      cageLimit: 280,
      cageRatedTemperature: 110,
    });
    // cold: 24/240 = 0.1; hot: 14/170 = 0.0824
    expectWithin(capacity(model, 'cage'), (atRest! * 14) / 170, CLOSE, 'J/K');
    expect(parameter(model, /temperature of the cage/)[0]?.source).toBe(
      'scenario; the two locked-rotor times give 140 °C',
    );
  });

  it('does not take a temperature below the frame’s from two times that lie too close', () => {
    const model = made(KRAUSE.hp50, { lockedRotorTimeCold: 24, lockedRotorTimeHot: 23, cageLimit: 280 });
    const [cage] = parameter(model, /temperature of the cage/);
    // The typical one: winding 40 + 80, and 20 K more
    expect(cage?.value).toBe(140);
    expect(cage?.source).toMatch(/give 50 °C, which cannot be/);
  });

  it('follows from 12 s from hot, marked as the standard’s, where nothing is stated', () => {
    const model = made(KRAUSE.hp50);
    // 40 + 80 + 20 = 140 °C up to 300 °C
    expectWithin(capacity(model, 'cage'), (atRest! * 12) / 160, CLOSE, 'J/K');
    const [time] = parameter(model, /locked rotor withstood/);
    expect(time?.origin).toBe('standard');
    expect(time?.source).toMatch(/NEMA MG 1-12.49/);
  });

  it('is the stated one', () => {
    const model = made(KRAUSE.hp50, { cageHeatCapacity: 4321, lockedRotorTimeHot: 10 });
    expect(capacity(model, 'cage')).toBe(4321);
    expect(parameter(model, /heat capacity of the cage/)[0]?.origin).toBe('given');
  });

  it('heats the hotter of two bodies to the limit in that time', () => {
    const model = made(DOUBLE_CAGE, {
      lockedRotorTimeHot: 10,
      cageLimit: 280,
      cageRatedTemperature: 130,
      outerCageShare: 0.4,
    });
    const [outer, inner] = losses(DOUBLE_CAGE, 1).cages;
    const rises = [(inner! * 10) / capacity(model, 'cage')!, (outer! * 10) / capacity(model, 'outerCage')!];
    expectWithin(Math.max(...rises), 150, CLOSE, 'rise of the hotter one');
    expectWithin(
      capacity(model, 'outerCage')! / (capacity(model, 'cage')! + capacity(model, 'outerCage')!),
      0.4,
      CLOSE,
      'share',
    );
  });
});

describe('a double cage is one body', () => {
  it.each([
    ['without a share', undefined, false],
    ['fitted to a nameplate', 0.4, true],
  ] as const)('%s', (_name, outerCageShare, fitted) => {
    const model = made(DOUBLE_CAGE, outerCageShare === undefined ? {} : { outerCageShare }, fitted);
    expect(model.nodes.map(({ name }) => name)).toEqual(['winding', 'cage', 'frame']);
    const [outer, inner] = losses(DOUBLE_CAGE, 1).cages;
    expectWithin(capacity(model, 'cage'), ((outer! + inner!) * 12) / 160, CLOSE, 'J/K');
  });
});

describe('the winding', () => {
  it('of copper at 5.5 A/mm² and 120 °C takes its rated loss in copper alone', () => {
    // By hand: 1.7241e-8·(355/255)·(5.5e6)²/3.44e6 = 0.21107 K/s
    const { winding } = losses(KRAUSE.hp50, ratedSlip(KRAUSE.hp50));
    expectWithin(capacity(made(KRAUSE.hp50), 'winding'), winding / 0.21107, { relative: 1e-4 }, 'J/K');
  });

  it('has the limit of its class in the cooling air at its altitude', () => {
    const model = made(KRAUSE.hp50, { insulationClass: '155', ambient: 30, altitude: 2000 });
    // (105 + 10)·0.9 = 103.5 K over 30 °C
    expectWithin(model.nodes[0]?.limit, 133.5, CLOSE, 'limit');
  });

  it.each([
    ['without a class', {}, /the insulation class is missing/],
    ['in air of 70 °C', { insulationClass: '155', ambient: 70 }, /by agreement/],
  ] as const)('has no limit %s, and it is said why', (_name, thermal, why) => {
    const [winding] = made(KRAUSE.hp50, thermal).nodes;
    expect(winding?.limit).toBe(null);
    expect(winding?.limitSource).toMatch(why);
  });
});

describe('what makes no model is refused with its reason', () => {
  it.each([
    [{ lockedRotorTimeCold: 10, lockedRotorTimeHot: 10 }, /lockedRotorTimeHot \(10 s\) is not below/],
    [{ cageRatedTemperature: 70 }, /cageRatedTemperature \(70 °C\) is not above that of the frame, 80 °C/],
    [{ cageLimit: 130 }, /limit of the cage, 130 °C, is not above/],
  ])('%o', (thermal, why) => {
    expect(refusedOrMade(KRAUSE.hp50, thermal)).toMatch(why);
  });
});

it('cooling at standstill is worse only from the frame to the air', () => {
  const model = made(KRAUSE.hp50, { standstillCooling: 0.25 });
  const ratios = model.links.map(({ running, standstill }) => standstill / running);
  expectAllWithin(ratios, [1, 1, 0.25], CLOSE, 'standstill over running');
});

it('every assumed value is marked and says that it has no source', () => {
  const assumed = made(DOUBLE_CAGE, { outerCageShare: 0.4 }).parameters.filter(
    ({ origin }) => origin === 'assumed',
  );
  expect(assumed.map(({ name }) => name).sort()).toEqual([
    'cooling at standstill over that while running',
    'equalising of the two cages',
    'heat capacity of the winding',
    'limit of the cage',
    'rise of core and frame at rated load',
    'rise of the winding at rated load',
    'slowest time constant while running',
    'temperature of the cage at rated load and 40 °C',
  ]);
  for (const { source } of assumed) expect(source).toMatch(/assumed: .*no source/);
});
