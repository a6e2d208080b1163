import { describe, expect, it } from 'vitest';
import { type CharacteristicCurve, characteristicCurve } from '../../../src/machine/characteristicCurve.ts';
import { NOTHING_INSERTED } from '../../../src/machine/inserted.ts';
import { DOUBLE_CAGE, KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** Values of the T-circuit, computed outside this project in double precision and printed with six digits. */
const PRINTED = { relative: 1e-5 };

function expectRise(curve: CharacteristicCurve): void {
  const speeds = curve.points.map(({ speed }) => speed);
  expect(speeds.every((speed, i) => i === 0 || speed > speeds[i - 1]!)).toBe(true);
}

describe('the curve of a textbook machine (3 hp and 50 hp)', () => {
  const { machine, supply } = KRAUSE.hp50;
  const { marks, points, synchronousSpeed } = characteristicCurve(machine, supply);

  it('has its currents and torques where the circuit has them', () => {
    expectWithin(marks.lockedRotor.current, 394.177, PRINTED, 'locked-rotor current');
    expectWithin(marks.lockedRotor.torque, 538.499, PRINTED, 'locked-rotor torque');
    expectWithin(marks.lockedRotor.powerFactor, 0.4523, { absolute: 5e-5 }, 'locked-rotor power factor');
    expectWithin(marks.breakdown.torque, 780.984, PRINTED, 'pull-out torque');
    expectWithin(marks.breakdown.slip, 0.37781, PRINTED, 'pull-out slip');
    expectWithin(marks.reverseSynchronous.current, 421.974, PRINTED, 'current at slip 2');
    expectWithin(marks.reverseSynchronous.torque, 308.63, PRINTED, 'torque at slip 2');
    expectWithin(marks.synchronous.current, 19.846, { relative: 5e-5 }, 'no-load current');
    const small = characteristicCurve(KRAUSE.hp3.machine, KRAUSE.hp3.supply).marks;
    expectWithin(small.lockedRotor.current, 65.739, PRINTED, 'locked-rotor current, 3 hp');
    expectWithin(small.breakdown.torque, 61.87, PRINTED, 'pull-out torque, 3 hp');
  });

  it('reaches from synchronous speed backwards to synchronous speed in rising order, and takes no torque there', () => {
    expectRise({ marks, points, synchronousSpeed });
    expect(points[0]).toEqual(marks.reverseSynchronous);
    expect(points.at(-1)).toEqual(marks.synchronous);
    expect(points[0]!.speed).toBe(-synchronousSpeed);
    expect(points.at(-1)!.torque).toBe(0);
  });

  it('passes through every named point', () => {
    for (const mark of Object.values(marks)) if (mark !== null) expect(points).toContainEqual(mark);
  });

  it('lies below its breakdown torque everywhere', () => {
    expect(Math.max(...points.map(({ torque }) => torque))).toBe(marks.breakdown.torque);
  });

  it('plugs from rated speed at the slip 2 less the rated one', () => {
    // The rated slip is where the circuit delivers 50 hp at the shaft: (1 − s)·Pδ.
    const { rated, pluggingFromRated } = marks;
    expectWithin(rated!.torque * rated!.speed, 50 * 745.7, { relative: 1e-9 }, 'rated power');
    expectWithin(pluggingFromRated!.speed, -rated!.speed, { relative: 1e-12 }, 'speed');
  });
});

describe('the sag of the curve', () => {
  it('is absent where torque rises from rest to breakdown', () => {
    expect(characteristicCurve(KRAUSE.hp50.machine, KRAUSE.hp50.supply).marks.pullUp).toBe(null);
  });

  it('is the lowest point between rest and breakdown of a double cage', () => {
    const cages = [
      { Rr: 2.5, Llr: DOUBLE_CAGE.machine.cages[0]!.Llr },
      { Rr: 0.06, Llr: 2 * DOUBLE_CAGE.machine.cages[1]!.Llr },
    ];
    const { marks, points } = characteristicCurve({ ...DOUBLE_CAGE.machine, cages }, DOUBLE_CAGE.supply);
    const { pullUp, lockedRotor, breakdown } = marks;
    const between = points.filter(({ slip }) => slip <= 1 && slip >= breakdown.slip);
    // Braking torques are larger still: they are no breakdown torque.
    expect(marks.reverseSynchronous.torque).toBeGreaterThan(breakdown.torque);
    expect(breakdown.slip).toBeLessThan(1);
    expect(pullUp!.torque).toBe(Math.min(...between.map(({ torque }) => torque)));
    expect(pullUp!.torque).toBeLessThan(lockedRotor.torque);
    expect(pullUp!.slip).toBeLessThan(1);
    expect(pullUp!.slip).toBeGreaterThan(breakdown.slip);
  });

  it('is absent where the machine breaks down below rest', () => {
    const { machine, supply } = KRAUSE.hp3;
    const cages = [{ ...machine.cages[0]!, Rr: 2 }];
    const { marks } = characteristicCurve({ ...machine, cages }, supply);
    expect(marks.breakdown.slip).toBeGreaterThan(1);
    expect(marks.pullUp).toBe(null);
  });
});

it('an external rotor resistance stretches the curve along the slip (proportional curves of a wound rotor)', () => {
  const { machine, supply } = KRAUSE.hp50;
  const plain = characteristicCurve(machine, supply).marks;
  const Rr = machine.cages[0]!.Rr;
  const inserted = { ...NOTHING_INSERTED, rotorResistance: Rr };
  const stretched = characteristicCurve(machine, supply, { inserted }).marks;
  expectWithin(stretched.breakdown.torque, plain.breakdown.torque, { relative: 1e-9 }, 'torque');
  expectWithin(stretched.breakdown.slip, 2 * plain.breakdown.slip, { relative: 1e-6 }, 'slip');
});

it('a large machine has its bend before synchronous speed drawn', () => {
  const { machine, supply } = KRAUSE.hp2250;
  const { points, marks } = characteristicCurve(machine, supply);
  expect(marks.breakdown.slip).toBeLessThan(0.1);
  expect(points.filter(({ slip }) => slip < marks.breakdown.slip).length).toBeGreaterThan(100);
});
