import { describe, expect, it } from 'vitest';
import { contradiction } from '../../../src/scenario/contradiction.ts';
import { readScenario } from '../../../src/scenario/readScenario.ts';
import { nameplateScenario, PLATE, READINGS, testsScenario } from './everyKey.ts';
import { codesOf, type Group, problemsOf } from './minimalScenario.ts';
import { FOUND, stubEstimator } from './stubEstimator.ts';

const RPM = Math.PI / 30;

function nameplateOf(nameplate: Group, machine: Group = {}) {
  const estimator = stubEstimator();
  const result = readScenario(nameplateScenario(nameplate, machine), {}, estimator);
  expect(estimator.nameplates).toEqual([result.nameplate]);
  return { ...result, plate: estimator.nameplates[0]! };
}

function readingsOf(tests: Group, machine: Group = {}) {
  const estimator = stubEstimator();
  const result = readScenario(testsScenario(tests, machine), {}, estimator);
  return { ...result, readings: estimator.readings[0]! };
}

/** The only problem of a nameplate, and its wording. */
function refusal(nameplate: Group, machine: Group = {}) {
  const scenario = nameplateScenario({ ...PLATE, ...nameplate }, machine);
  const [problem] = problemsOf(scenario);
  return { codes: codesOf(scenario), message: problem?.message ?? '', expected: problem?.expected ?? '' };
}

describe('a nameplate', () => {
  it('reaches the estimator in SI, and the circuit it finds is that of the machine', () => {
    const { plate, scenario, estimation } = nameplateOf(PLATE, { connection: 'delta' });
    expect(plate).toEqual({
      connection: 'delta',
      power: 6000,
      lineVoltage: 460,
      frequency: 60,
      poles: 4,
      speed: 1740 * RPM,
      current: 10,
      powerFactor: 0.85,
      efficiency: 0.9,
      lockedRotorCurrent: { kind: 'multiple', ofRated: 6.5 },
      lockedRotorTorque: 2.2,
      breakdownTorque: 2.8,
      design: 'B',
      inertia: null,
    });
    expect(scenario.machine).toEqual({ connection: 'delta', polePairs: 2, ...FOUND.circuit });
    expect(estimation).toBe(FOUND.estimation);
  });

  it('needs no more than a power and the number of poles; voltage and frequency are the supply’s', () => {
    const { plate } = nameplateOf({ power: '10 hp' }, { poles: 6 });
    expect(plate).toMatchObject({ lineVoltage: 460, frequency: 60, poles: 6, speed: null, current: null });
    expect(codesOf(nameplateScenario({ power: '10 hp' }))).toEqual(['missingKey machine.poles']);
  });

  it.each([
    ['1740 rpm', 4],
    ['3540 rpm', 2],
    ['1170 rpm', 6],
    ['885 rpm', 8],
  ])('of %s at 60 Hz has %d poles', (speed, poles) => {
    expect(nameplateOf({ power: '10 hp', speed }).plate.poles).toBe(poles);
  });

  it('may state its slip instead of its speed', () => {
    expect(nameplateOf({ power: '10 hp', slip: '4 %' }, { poles: 4 }).plate.speed).toBeCloseTo(
      1728 * RPM,
      12,
    );
  });

  it('takes amperes, a multiple or a code letter for the locked-rotor current', () => {
    const current = (nameplate: Group) =>
      nameplateOf({ power: '10 hp', speed: '1740 rpm', ...nameplate }).plate.lockedRotorCurrent;
    expect(current({ lockedRotorCurrent: '81 A' })).toEqual({ kind: 'amperes', amperes: 81 });
    expect(current({ lockedRotorCurrent: '650 %' })).toEqual({ kind: 'multiple', ofRated: 6.5 });
    expect(current({ lockedRotorCurrent: '6.5 x' })).toEqual({ kind: 'multiple', ofRated: 6.5 });
    expect(current({ codeLetter: 'H' })).toEqual({ kind: 'codeLetter', letter: 'H' });
    expect(current({ codeLetter: 'H', lockedRotorCurrent: '81 A' })).toEqual({
      kind: 'amperes',
      amperes: 81,
    });
    expect(current({})).toBe(null);
  });

  it('takes the inertia from either place', () => {
    expect(nameplateOf({ ...PLATE, inertia: '0.04 kg m^2' }).plate.inertia).toBe(0.04);
    expect(nameplateOf(PLATE, { inertia: '0.05 kg m^2' }).plate.inertia).toBe(0.05);
  });

  it('brings the notes of the estimator into the origins, once and with their source', () => {
    const { origins } = nameplateOf(PLATE);
    expect(origins).toContainEqual({
      path: 'machine.inertia',
      value: '0.03 kg m^2',
      origin: 'assumed',
      source: 'typical',
    });
    const given = nameplateOf(PLATE, { inertia: '0.05 kg m^2' }).origins;
    expect(given.filter(({ path }) => path === 'machine.inertia')).toEqual([
      { path: 'machine.inertia', value: '0.05 kg m^2', origin: 'given' },
    ]);
  });

  it('keeps what an estimation found of saturation and losses unless the scenario says otherwise', () => {
    const core = { R: 500, L: 0.1 };
    const mainSaturation = [
      { current: 1, flux: 0.3 },
      { current: 3, flux: 0.6 },
    ];
    const found = { ...FOUND, circuit: { ...FOUND.circuit, core, mainSaturation } };
    const read = (machine: Group) =>
      readScenario(nameplateScenario(PLATE, machine), {}, stubEstimator(found)).scenario.machine;
    expect(read({})).toMatchObject({ core, mainSaturation });
    expect('mainSaturation' in read({ saturation: { main: 'off' } })).toBe(false);
    expect(read({ ironLoss: { resistance: '900 ohm', inductance: '0.2 H' } }).core).toEqual({
      R: 900,
      L: 0.2,
    });
  });

  it('carries a remark where the scenario departs from the circuit that was found', () => {
    const { estimation } = nameplateOf(PLATE, { ironLoss: '100 W', saturation: { main: 'typical' } });
    expect(estimation?.remarks).toHaveLength(1);
    expect(estimation?.remarks[0]).toContain('states saturation, ironLoss');
  });

  it('reads a percentage as the decimal fraction it is', () => {
    expect(nameplateOf({ ...PLATE, efficiency: '92.1 %', power: '6.2 kW' }).plate.efficiency).toBe(0.921);
    expect(nameplateOf({ ...PLATE, efficiency: '9.21e1 %', power: '6.2 kW' }).plate.efficiency).toBe(0.921);
  });

  it('passes a refusal of the estimator on with the line it is about', () => {
    const lines = JSON.stringify(nameplateScenario(PLATE), null, 1);
    const estimator = {
      ...stubEstimator(),
      fromNameplate: () => {
        throw contradiction('machine.nameplate.current', '10 A', 'cannot be', 'another');
      },
    };
    const line = lines.split('\n').findIndex((text) => text.includes('"current": "10 A"')) + 1;
    expect(() => readScenario(lines, { fileName: 'p.json' }, estimator)).toThrow(`p.json:${line}:`);
  });
});

describe('a nameplate that contradicts itself is refused with the numbers', () => {
  it('power against efficiency, power factor, voltage and current', () => {
    // √3 · 460 V · 12 A · 0.9 · 0.85 = 7314 W by hand: 22 % above 6 kW.
    const { codes, message } = refusal({ current: '12 A' });
    expect(codes).toEqual(['conflict machine.nameplate.power']);
    expect(message).toContain(
      '6 kW contradicts efficiency 90 % × power factor 0.85 × √3 × 460 V × 12 A = 7.314 kW',
    );
  });

  it('the rounding of a nameplate is no contradiction: 4 % pass, 6 % do not', () => {
    // 6095 W over 1.04 and over 1.06.
    expect(() => refusal({ power: '5860 W' })).toThrow('accepted');
    expect(refusal({ power: '5750 W' }).codes).toEqual(['conflict machine.nameplate.power']);
  });

  it('a power that voltage and current cannot carry even without loss', () => {
    const unknown = { efficiency: undefined, powerFactor: undefined };
    // √3 · 460 V · 7 A = 5577 VA.
    expect(refusal({ ...unknown, current: '7 A' }).message).toContain('at most 5.577 kW');
    expect(() => refusal(unknown)).toThrow('accepted');
  });

  it.each<[string, Group, string, string]>([
    ['synchronous speed', { speed: '1800 rpm' }, 'speed', 'synchronous speed of 1800 rpm (4 poles, 60 Hz)'],
    ['speed above it', { speed: '1805 rpm' }, 'speed', 'is not below'],
    ['speed of another frequency', { speed: '2900 rpm' }, 'speed', 'is not below'],
  ])('%s with stated poles', (_, nameplate, key, words) => {
    const { codes, message } = refusal(nameplate, { poles: 4 });
    expect(codes).toEqual([`conflict machine.nameplate.${key}`]);
    expect(message).toContain(words);
  });

  it('a speed that does not tell the number of poles', () => {
    // 1500 rpm at 60 Hz: 17 % below the 1800 rpm of four poles.
    const { codes, expected } = refusal({ speed: '1500 rpm' });
    expect(codes).toEqual(['conflict machine.nameplate.speed']);
    expect(expected).toContain('6 poles turn at 1200 rpm');
  });

  it.each<[string, Group, Group, string]>([
    ['a slip of 40 %', { speed: undefined, slip: '40 %' }, { poles: 4 }, 'conflict machine.nameplate.slip'],
    [
      'a speed far below synchronous',
      { speed: '1000 rpm' },
      { poles: 4 },
      'conflict machine.nameplate.speed',
    ],
    ['slip beside speed', { slip: '3 %' }, {}, 'conflict machine.nameplate.slip'],
    [
      'breakdown at rated torque',
      { breakdownTorque: 1, lockedRotorTorque: 0.8 },
      {},
      'conflict machine.nameplate.breakdownTorque',
    ],
    [
      'breakdown below locked rotor',
      { breakdownTorque: 2 },
      {},
      'conflict machine.nameplate.breakdownTorque',
    ],
    [
      'locked-rotor amperes below rated',
      { lockedRotorCurrent: '9 A' },
      {},
      'conflict machine.nameplate.lockedRotorCurrent',
    ],
    [
      'a locked-rotor multiple below one',
      { lockedRotorCurrent: '0.9 times' },
      {},
      'outOfRange machine.nameplate.lockedRotorCurrent',
    ],
    [
      'a locked-rotor number alone',
      { lockedRotorCurrent: 6.5 },
      {},
      'missingUnit machine.nameplate.lockedRotorCurrent',
    ],
    ['design D with little slip', { design: 'D' }, {}, 'conflict machine.nameplate.design'],
    ['design B with much slip', { speed: '1600 rpm' }, { poles: 4 }, 'conflict machine.nameplate.design'],
    ['a star-delta design in star', { design: 'NY' }, {}, 'conflict machine.nameplate.design'],
    ['an unknown design', { design: 'X' }, {}, 'unknownWord machine.nameplate.design'],
    ['an efficiency of 0', { efficiency: 0 }, {}, 'outOfRange machine.nameplate.efficiency'],
    ['an efficiency of 101 %', { efficiency: '101 %' }, {}, 'outOfRange machine.nameplate.efficiency'],
    ['a power factor above 1', { powerFactor: 1.2 }, {}, 'outOfRange machine.nameplate.powerFactor'],
    ['a power factor in volts', { powerFactor: '1 V' }, {}, 'wrongUnit machine.nameplate.powerFactor'],
    [
      'an inertia in two places',
      { inertia: '1 kg m^2' },
      { inertia: '1 kg m^2' },
      'conflict machine.inertia',
    ],
    ['a rating of its own', {}, { rated: { power: '6 kW' } }, 'conflict machine.rated'],
    ['a circuit beside it', {}, { statorResistance: '1 ohm' }, 'conflict machine.statorResistance'],
    ['tests beside it', {}, { tests: READINGS }, 'conflict machine.tests'],
  ])('%s', (_, nameplate, machine, expected) => {
    expect(refusal(nameplate, machine).codes).toEqual([expected]);
  });

  it('designs that start with their greatest torque may break down below it', () => {
    expect(() => refusal({ breakdownTorque: 2, design: 'C' })).toThrow('accepted');
  });

  it.each(['I', 'O', 'Q', 'W', 'h'])('code letter %s does not exist', (codeLetter) => {
    expect(refusal({ codeLetter }).codes).toEqual(['unknownWord machine.nameplate.codeLetter']);
  });

  it('a code letter against the amperes', () => {
    // √3 · 460 V · 65 A = 51.79 kVA, over 8.046 hp = 6.437 kVA/hp: letter H, by hand.
    expect(() => refusal({ codeLetter: 'H' })).toThrow('accepted');
    const { codes, message, expected } = refusal({ codeLetter: 'L' });
    expect(codes).toEqual(['conflict machine.nameplate.codeLetter']);
    expect(message).toContain('6.436 kVA/hp');
    expect(expected).toContain('code letter H');
  });

  it('92.1 without its percent sign is answered with one', () => {
    expect(refusal({ efficiency: 92.1 }).expected).toContain('`92.1 %`');
  });

  it('with all its contradictions at once', () => {
    const { codes } = refusal({ current: '12 A', design: 'D', breakdownTorque: 2 });
    expect(codes).toEqual(['conflict machine.nameplate.power', 'conflict machine.nameplate.design']);
  });
});

describe('test readings', () => {
  it('reach the estimator in SI, three currents averaged, direct voltage over current between two terminals', () => {
    const { readings, scenario } = readingsOf(READINGS, { inertia: '0.05 kg m^2' });
    expect(readings).toEqual({
      connection: 'star',
      poles: 4,
      lineVoltage: 208,
      frequency: 60,
      terminalResistance: 13.6 / 28,
      noLoad: { voltage: 208, current: (8.12 + 8.2 + 8.18) / 3, power: 420, frequency: 60 },
      lockedRotor: { voltage: 25, current: (28.1 + 28 + 27.6) / 3, power: 920, frequency: 15 },
      statorLeakageShare: 0.5,
      design: 'A',
      inertia: 0.05,
    });
    expect(scenario.machine.rated).toEqual({ current: null, torque: null, power: null, speed: 1705 * RPM });
  });

  it('hold at rated frequency and voltage of the supply where they say nothing else', () => {
    const test = { voltage: '460 V', current: '5 A', power: '300 W' };
    const { readings } = readingsOf({
      noLoad: test,
      lockedRotor: { ...test, voltage: '80 V' },
      terminalResistance: '1 ohm',
    });
    expect(readings).toMatchObject({ lineVoltage: 460, frequency: 60, terminalResistance: 1 });
    expect(readings.noLoad).toEqual({ voltage: 460, current: 5, power: 300, frequency: 60 });
    expect(readings.statorLeakageShare).toBe(null);
  });

  it.each<[string, Group, Group, string]>([
    ['no stator resistance', { dc: undefined }, {}, 'conflict machine.tests'],
    ['two stator resistances', { terminalResistance: '0.486 ohm' }, {}, 'conflict machine.tests'],
    [
      'more power than volt-amperes',
      { noLoad: { voltage: '208 V', current: '8 A', power: '4 kW' } },
      {},
      'conflict machine.tests.noLoad.power',
    ],
    [
      'less power than copper loss',
      { lockedRotor: { voltage: '25 V', current: '28 A', power: '500 W' } },
      {},
      'conflict machine.tests.lockedRotor.power',
    ],
    [
      'a voltage of another machine',
      { noLoad: { voltage: '460 V', current: '8 A', power: '420 W' } },
      {},
      'conflict machine.tests.noLoad.voltage',
    ],
    [
      'two currents of three',
      { noLoad: { voltage: '208 V', current: ['8 A', '8 A'], power: '420 W' } },
      {},
      'outOfRange machine.tests.noLoad.current',
    ],
    ['no number of poles', {}, { poles: undefined }, 'missingKey machine.poles'],
    ['no rated output', {}, { rated: undefined }, 'missingKey machine.rated'],
  ])('with %s are refused', (_, tests, machine, expected) => {
    expect(codesOf(testsScenario({ ...READINGS, ...tests }, machine))).toEqual([expected]);
  });

  it('a power below the loss in the stator resistance is answered with that loss', () => {
    const lockedRotor = { voltage: '25 V', current: '28 A', power: '500 W' };
    // 1.5 · 0.4857 Ω · (28 A)² = 571.2 W.
    expect(problemsOf(testsScenario({ ...READINGS, lockedRotor }))[0]?.message).toContain('571.2 W');
  });
});

it('a machine that is given in no way at all lists the circuit and names the other ways', () => {
  const scenario = nameplateScenario({}, { nameplate: undefined });
  expect(codesOf(scenario)).toEqual(
    ['poles', 'statorResistance', 'statorLeakage', 'magnetising', 'cages', 'inertia', 'rated'].map(
      (key) => `missingKey machine.${key}`,
    ),
  );
  expect(problemsOf(scenario)[1]?.expected).toContain('`nameplate` or `tests`');
});
