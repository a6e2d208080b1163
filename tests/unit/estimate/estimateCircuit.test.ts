import { describe, expect, it } from 'vitest';
import { estimateCircuit } from '../../../src/estimate/estimateCircuit.ts';
import { LEAST_REMAINING } from '../../../src/estimate/parameters.ts';
import { onRatedSupply } from '../../../src/estimate/toMachine.ts';
import { ratedPoint } from '../../../src/machine/ratedPoint.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import type { NameplateItem } from '../../../src/scenario/nameplate.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import { nameplateOf } from '../../support/arbitraryNameplate.ts';
import { BARE_PLATE, FULL_PLATE } from '../../support/ratedMotor.ts';
import { DOUBLE_CAGE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const errorOf = (items: readonly NameplateItem[], name: string) =>
  items.find((item) => item.name.startsWith(name))!.error!;

describe('estimateCircuit', () => {
  const exact = nameplateOf(DOUBLE_CAGE, 'delta', 2.6);

  it('reproduces the exact nameplate of a linear double-cage machine with a linear circuit', () => {
    const { circuit, estimation, notes } = estimateCircuit(exact);
    // The promise.
    for (const { error, name } of estimation.items) expectWithin(error, 0, { absolute: 0.01 }, name);
    expect(circuit.leakageSaturation).toBe(undefined);
    expect(estimation.from).toBe('nameplate');
    expect(estimation.misfit).toBeLessThan(0.02);
    expect(
      notes.some(({ path, origin }) => path === 'equivalentStar.cages.1.leakage' && origin === 'estimated'),
    ).toBe(true);
  });

  it('makes the outer cage more resistive and the inner more leaky, and every value positive', () => {
    for (const plate of [exact, FULL_PLATE, BARE_PLATE]) {
      const { cages, Rs, Lls, Lm, core, mechanicalLoss } = estimateCircuit(plate).circuit;
      const [outer, inner] = cages;
      expect(outer!.Rr).toBeGreaterThan(inner!.Rr);
      expect(inner!.Llr).toBeGreaterThan(outer!.Llr);
      for (const value of [Rs, Lls, Lm, inner!.Rr, outer!.Llr, core!.R, mechanicalLoss!.friction])
        expect(value).toBeGreaterThan(0);
    }
  });

  it('brings out the rated shaft power at rated speed, iron and mechanical loss included', () => {
    const { circuit } = estimateCircuit(FULL_PLATE);
    const { machine, supply } = onRatedSupply(circuit, FULL_PLATE);
    const speed = FULL_PLATE.speed!;
    const { torque, inputPower } = steadyState(machine, supply, 1 - speed / (50 * Math.PI));
    const { friction, windage } = circuit.mechanicalLoss!;
    const shaft = (torque - friction - windage * speed ** 2) * speed;
    expectWithin(shaft, 11e3, { relative: 1e-3 }, 'shaft power');
    // What the plate leaves of the input; its own numbers disagree by 0.2 %.
    expectWithin(inputPower, 11e3 / 0.89, { relative: 5e-3 }, 'input power');
  });

  it('gives the multiples of a run their base: the nameplate’s current and torque', () => {
    const { circuit } = estimateCircuit(FULL_PLATE);
    const { machine, supply } = onRatedSupply(circuit, FULL_PLATE);
    const point = ratedPoint(machine, supply);
    expect([point.current, point.currentOrigin]).toEqual([21.5, 'given']);
    expectWithin(point.torque, 11e3 / FULL_PLATE.speed!, { relative: 1e-12 }, 'torque');
    expectWithin(point.speed, FULL_PLATE.speed!, { relative: 1e-4 }, 'speed at rated power');
  });

  it('leaves open in the rating what nobody stated, so that a run names the circuit as its base', () => {
    const { circuit } = estimateCircuit(BARE_PLATE);
    expect(circuit.rated).toEqual({ power: BARE_PLATE.power, speed: null, torque: null, current: null });
    const { machine, supply } = onRatedSupply(circuit, BARE_PLATE);
    expect(ratedPoint(machine, supply).currentOrigin).toBe('circuitAtRatedPower');
  });

  it('lets leakage saturate where constant leakages cannot give the locked-rotor current, and says so', () => {
    const { circuit, estimation } = estimateCircuit(FULL_PLATE);
    const { stator, cages } = circuit.leakageSaturation!;
    expect(stator!.remaining).toBeLessThan(0.9);
    expect(stator!.remaining).toBeGreaterThanOrEqual(LEAST_REMAINING);
    expect(cages).toEqual([stator, null]);
    const [saturation, ...others] = estimation.remarks;
    expect(saturation).toMatch(/constant leakages.*locked-rotor current.*saturate/u);
    // The law of saturation is a guess: met to a few per cent, and not at the price of losses that no motor has.
    for (const name of ['locked-rotor current', 'locked-rotor torque', 'breakdown torque'])
      expectWithin(errorOf(estimation.items, name), 0, { absolute: 0.03 }, name);
    expect(others.filter((remark) => remark.includes('unusual loss'))).toEqual([]);
  });

  it('says from which table each item comes, and keeps within the table', () => {
    const { items } = estimateCircuit({ ...BARE_PLATE, power: 30e3 }).estimation;
    const item = (name: string) => items.find((one) => one.name.startsWith(name))!;
    expect(item('locked-rotor current').source).toBe(
      'IEC 60034-12, design N: at most; aimed at 0.8 times that (common practice)',
    );
    expect(item('breakdown torque').source).toBe(
      'IEC 60034-12, design N: at least; aimed at 1.4 times that (common practice)',
    );
    for (const [name, kind, sense] of [
      ['locked-rotor current', 'most', -1],
      ['locked-rotor torque', 'least', 1],
      ['breakdown torque', 'least', 1],
    ] as const) {
      const { reproduced, target, error, kind: own } = item(name);
      expect(own).toBe(kind);
      expect(sense * (reproduced - target!)).toBeGreaterThan(0);
      // A limit that is kept has no error.
      expect(error).toBeNull();
    }
  });

  it('remarks an item that is missed by more than 1 % within its tolerance', () => {
    // Still more locked-rotor current beside the same breakdown torque: leakage cannot saturate that far.
    const { items, remarks } = estimateCircuit({
      ...FULL_PLATE,
      lockedRotorCurrent: { kind: 'multiple', ofRated: 7.8 },
    }).estimation;
    const error = errorOf(items, 'locked-rotor current');
    expect(Math.abs(error)).toBeGreaterThan(0.01);
    expect(Math.abs(error)).toBeLessThan(0.2);
    expect(remarks.join(' ')).toMatch(/misses the locked-rotor current \(given\)/u);
  });

  it('says that currents come out low where the locked-rotor current does', () => {
    const more = { ...FULL_PLATE, lockedRotorCurrent: { kind: 'multiple', ofRated: 7.8 } } as const;
    const { remarks } = estimateCircuit(more).estimation;
    expect(remarks.join(' ')).toMatch(/misses the locked-rotor current .*−.*higher by about as much/u);
  });

  it('asks whether the design letter is right where a stated current is above its table', () => {
    // 20 hp, 460 V: at most 145 A (half of 290 A at 230 V, NEMA MG 1 12.35, as in tests/published); letter H means about 168 A.
    const plate = { ...BARE_PLATE, power: 20 * 745.7, frequency: 60, lineVoltage: 460, design: 'B' } as const;
    const of = (letter: string) =>
      estimateCircuit({
        ...plate,
        lockedRotorCurrent: { kind: 'codeLetter', letter },
      }).estimation.remarks.join(' ');
    expect(of('H')).toMatch(/locked-rotor current of 168 A is above the 145 A of NEMA MG 1.*design letter/u);
    expect(of('G')).not.toMatch(/design letter/u);
  });

  it('asks whether the design letter is right where a stated torque is below its table', () => {
    // Design B, 4 poles, 50 hp: at least 140 % locked-rotor and 200 % breakdown torque (NEMA MG 1, as in tests/published).
    const plate = { ...BARE_PLATE, power: 50 * 745.7, frequency: 60, lineVoltage: 460, design: 'B' } as const;
    const of = (change: Partial<typeof FULL_PLATE>) =>
      estimateCircuit({ ...plate, ...change }).estimation.remarks.join(' ');
    expect(of({ lockedRotorTorque: 1.2 })).toMatch(
      /locked-rotor torque of 1.2 times .* below the 1.4 of NEMA MG 1.*design letter/u,
    );
    expect(of({ breakdownTorque: 1.9 })).toMatch(/breakdown torque of 1.9 times .* below the 2 of NEMA/u);
    expect(of({ lockedRotorTorque: 1.5, breakdownTorque: 2.1 })).not.toMatch(/design letter/u);
  });

  it.each([
    // Twice the rated current is 2·21.5 A·√3·400 V = 29.8 kVA; 4.2 times rated torque are 47.3 kW across the air gap.
    [
      'more torque than the locked rotor’s whole apparent power',
      { lockedRotorCurrent: { kind: 'multiple', ofRated: 2 }, lockedRotorTorque: 4.2, breakdownTorque: 4.3 },
    ],
    // With X from the locked rotor the crest is below V²/(2X): 1.6 times rated torque at 2.5 times the current.
    [
      'a breakdown torque far beyond what the locked-rotor impedance lets through',
      { lockedRotorCurrent: { kind: 'multiple', ofRated: 2.5 }, breakdownTorque: 4 },
    ],
  ] as const)('refuses %s and says what the nearest circuit gives', (_name, change) => {
    let refusal: unknown;
    try {
      estimateCircuit({ ...FULL_PLATE, ...change });
    } catch (error) {
      refusal = error;
    }
    if (!(refusal instanceof ScenarioError)) throw new Error('not refused');
    const { path, message } = refusal.problems[0]!;
    expect(path).toMatch(/^machine\.nameplate\.(lockedRotorCurrent|lockedRotorTorque|breakdownTorque)$/u);
    expect(message).toMatch(/cannot be had together with .*nearest .*circuit gives/u);
  });

  it('gives the same circuit every time', () => {
    expect(estimateCircuit(FULL_PLATE)).toEqual(estimateCircuit(FULL_PLATE));
  });

  it('does not depend on the scale of voltage: the same motor wound for 690 V has the impedances scaled', () => {
    const scale = 690 / 400;
    const at690 = estimateCircuit({ ...FULL_PLATE, lineVoltage: 690, current: 21.5 / scale }).circuit;
    const at400 = estimateCircuit(FULL_PLATE).circuit;
    // Limited by where the search stops along what the nameplate leaves open.
    for (const key of ['Rs', 'Lls', 'Lm'] as const)
      expectWithin(at690[key], at400[key] * scale ** 2, { relative: 1e-3 }, key);
  });
});
