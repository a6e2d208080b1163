import { steadyState } from '../machine/steadyState.ts';
import { exponential } from '../numeric/exponential.ts';
import { leastSquares } from '../numeric/leastSquares.ts';
import { logarithm } from '../numeric/logarithm.ts';
import { raised, squared } from '../numeric/raised.ts';
import { contradiction } from '../scenario/contradiction.ts';
import { assumedFrictionShare, coreXOverR } from '../scenario/defaults.ts';
import type {
  CircuitPart,
  EstimatedCircuit,
  NameplateItem,
  TestReading,
  TestReadings,
} from '../scenario/nameplate.ts';
import { circuitNotes } from './circuitNotes.ts';
import { assumed, given } from './known.ts';
import { short } from './nameplateError.ts';
import { impedanceOf, testShortcut } from './testShortcut.ts';
import { statorLeakageShare } from './ties.ts';
import { onRatedSupply } from './toMachine.ts';
import { typicalRotorInertia } from './typicalMotor.ts';

/**
 * Share of the iron in the loss at no load beside the stator's: one reading cannot tell them apart. Common practice, no source.
 */
const IRON_SHARE = 0.5;
/** Share of the leakage where nothing is known: IEC 60034-28, X1/X2' = 0.67 (from memory, medium confidence). */
const UNKNOWN_DESIGN = 'N';
/** Test frequency over rated above which deep bars show in the rotor resistance. */
const NEAR_RATED = 0.6;
/** Sum of squared logarithms above which the readings are not met. */
const SOLVED = 1e-16;
/** Rated current over no-load current and active share of it, to guess a rated power: common practice, no source. */
const GUESS = { currentRatio: 2.5, activeShare: 0.75 } as const;

/**
 * Single-cage circuit with iron and mechanical loss that gives the readings of the three tests exactly: nothing is neglected,
 * the magnetising branch at standstill, the stator at no load and the small slip there included.
 *
 * @throws ScenarioError when the readings contradict each other
 * @remarks Tests and leakage shares: IEEE Std 112, IEC 60034-28 (from memory).
 */
export function circuitFromTests(readings: TestReadings): EstimatedCircuit {
  checkReadings(readings);
  const design = readings.design ?? UNKNOWN_DESIGN;
  const share = readings.statorLeakageShare ?? statorLeakageShare(design);
  const shortcut = testShortcut(readings, share);
  const start = [
    shortcut.R2,
    shortcut.X1 + shortcut.X2,
    Math.max(shortcut.XM, shortcut.X1),
    (squared(readings.noLoad.voltage) / (IRON_SHARE * shortcut.rotationalLoss)) * 0.95,
    noLoadSlip(shortcut.R2, readings.noLoad, (1 - IRON_SHARE) * shortcut.rotationalLoss),
  ].map((value) => logarithm(value));
  const { x, cost } = leastSquares(
    { residuals: (unknowns) => differences(partOf(unknowns, readings, share), unknowns, readings) },
    start,
  );
  const part = partOf(x, readings, share);
  if (cost > SOLVED)
    throw contradiction(
      'machine.tests',
      `no-load ${short(readings.noLoad.current)} A, locked rotor ${short(readings.lockedRotor.current)} A`,
      'no circuit gives these readings together',
      'readings of one machine, per line: voltage between lines, line current, power of all three phases',
    );
  const items = testItems(part, exponential(x[4]!), readings);
  const inertia = inertiaOf(readings);
  return {
    circuit: { ...part, inertia: inertia.value },
    estimation: {
      from: 'tests',
      items,
      misfit: Math.sqrt(items.reduce((sum, { error }) => sum + squared(error!), 0) / items.length),
      remarks: remarksOn(readings),
    },
    notes: [
      ...(readings.statorLeakageShare === null
        ? [
            {
              path: 'tests.statorLeakageShare',
              value: String(share),
              origin: 'standard' as const,
              source:
                readings.design === null
                  ? 'IEC 60034-28 where the design is not known'
                  : `IEEE Std 112 and IEC 60034-28, design ${design}`,
            },
          ]
        : []),
      ...(inertia.origin === 'given'
        ? []
        : [
            {
              path: 'inertia',
              value: `${short(inertia.value)} kg m^2`,
              origin: inertia.origin,
              source: inertia.source,
            },
          ]),
      ...circuitNotes(part, readings.frequency, 'fitted to the test readings'),
    ],
  };
}

/** Unknowns: logarithms of R2, X1 + X2, XM, core resistance, slip at no load. */
function partOf(x: readonly number[], readings: TestReadings, share: number): CircuitPart {
  const [R2, X, XM, Rc, slip] = x.map((value) => exponential(value)) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const omega = 2 * Math.PI * readings.frequency;
  const speed = ((1 - slip) * 4 * Math.PI * readings.noLoad.frequency) / readings.poles;
  const bare: CircuitPart = {
    Rs: readings.terminalResistance / 2,
    Lls: (share * X) / omega,
    Lm: XM / omega,
    cages: [{ Rr: R2, Llr: ((1 - share) * X) / omega }],
    inertia: 0,
    rated: { current: null, torque: null, power: null, speed: null },
    core: { R: Rc, L: (coreXOverR * Rc) / omega },
  };
  const loss = (1 - slip) * at(readings, readings.noLoad, bare, slip).airGapPower;
  return {
    ...bare,
    mechanicalLoss: {
      friction: (assumedFrictionShare * loss) / speed,
      windage: ((1 - assumedFrictionShare) * loss) / raised(speed, 3),
    },
  };
}

function at(readings: TestReadings, reading: TestReading, part: CircuitPart, slip: number) {
  const { machine, supply } = onRatedSupply(part, {
    ...readings,
    lineVoltage: reading.voltage,
    frequency: reading.frequency,
  });
  return steadyState(machine, supply, slip);
}

/** Logarithms of what the circuit gives over what was read, and of iron over mechanical loss over their assumed ratio. */
function differences(part: CircuitPart, x: readonly number[], readings: TestReadings): number[] {
  const slip = exponential(x[4]!);
  const idle = at(readings, readings.noLoad, part, slip);
  const locked = at(readings, readings.lockedRotor, part, 1);
  const statorLoss = 3 * squared(idle.current) * part.Rs;
  const ironLoss = idle.inputPower - statorLoss - idle.airGapPower;
  const mechanicalLoss = (1 - slip) * idle.airGapPower;
  return [
    logarithm(locked.current / readings.lockedRotor.current),
    logarithm(locked.inputPower / readings.lockedRotor.power),
    logarithm(idle.current / readings.noLoad.current),
    logarithm(idle.inputPower / readings.noLoad.power),
    logarithm(ironLoss / mechanicalLoss / (IRON_SHARE / (1 - IRON_SHARE))),
  ];
}

/** Slip that carries the mechanical loss while nothing else acts: s ≈ P·R2/V². */
function noLoadSlip(R2: number, { voltage }: TestReading, loss: number): number {
  return (loss * R2) / squared(voltage);
}

function testItems(part: CircuitPart, slip: number, readings: TestReadings): readonly NameplateItem[] {
  const tests = [
    ['no-load', readings.noLoad, slip],
    ['locked-rotor', readings.lockedRotor, 1],
  ] as const;
  return tests.flatMap(([name, reading, s]) => {
    const state = at(readings, reading, part, s);
    const where = `read at ${short(reading.voltage)} V, ${short(reading.frequency)} Hz`;
    const item = (what: string, unit: string, target: number, reproduced: number): NameplateItem => {
      return {
        name: `${name} ${what}`,
        unit,
        target,
        reproduced,
        kind: 'value',
        error: reproduced / target - 1,
        source: where,
      };
    };
    return [
      item('current', 'A', reading.current, state.current),
      item('power', 'W', reading.power, state.inputPower),
    ];
  });
}

function inertiaOf({ inertia, lineVoltage, noLoad, frequency, poles }: TestReadings) {
  if (inertia !== null) return given(inertia, [0.9, 1.1]);
  const power = Math.sqrt(3) * lineVoltage * noLoad.current * GUESS.currentRatio * GUESS.activeShare;
  return assumed(
    typicalRotorInertia(power, frequency, poles),
    `typical rotor of a motor with this no-load current, about ${short(power / 1000)} kW`,
    [0.4, 2.5],
  );
}

function remarksOn(readings: TestReadings): readonly string[] {
  const { lockedRotor, frequency, lineVoltage } = readings;
  const fullCurrent =
    (lockedRotor.current * lineVoltage * lockedRotor.frequency) / (lockedRotor.voltage * frequency);
  const remarks = [
    'One no-load reading cannot tell iron from bearings and windage: each is taken to have half of what the stator leaves.',
    'The resistances are those of the winding temperature during the tests.',
  ];
  if (lockedRotor.frequency > NEAR_RATED * frequency)
    remarks.push(
      'The locked rotor was read near rated frequency: the rotor resistance is the one at standstill, and deep bars have less of it at rated speed.',
    );
  if (fullCurrent > 2 * lockedRotor.current)
    remarks.push(
      `The locked rotor was read at ${short(lockedRotor.current)} A; at rated voltage its leakage paths saturate and the current is larger than this circuit gives.`,
    );
  return remarks;
}

function checkReadings(readings: TestReadings): void {
  const R1 = readings.terminalResistance / 2;
  for (const name of ['noLoad', 'lockedRotor'] as const) {
    const reading = readings[name];
    const { size, resistance } = impedanceOf(reading);
    if (!(resistance < size))
      throw contradiction(
        `machine.tests.${name}.power`,
        `${short(reading.power)} W`,
        'is not below √3 × voltage × current',
        `less than ${short(Math.sqrt(3) * reading.voltage * reading.current)} W: the power of all three phases`,
      );
    if (!(resistance > R1))
      throw contradiction(
        `machine.tests.${name}.power`,
        `${short(reading.power)} W`,
        `is not above the loss in the stator winding, ${short(3 * squared(reading.current) * R1)} W`,
        'more than that: the power of all three phases, and the resistance between two terminals',
      );
  }
}
