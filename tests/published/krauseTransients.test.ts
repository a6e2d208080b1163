/**
 * Machines: Krause et al. (see the helper that holds them). The book shows free acceleration as figures; the numbers here are
 * computed with two independent formulations and 25 µs samples, good to 1e-5 of the value and 1e-5 s.
 * Tighter reference: fixtures/krauseTransients, a phase-variable model integrated by DOP853 at 1e-10 (script beside it).
 */
import { describe, it } from 'vitest';
import reference from '../fixtures/krauseTransients/krauseTransients.json' with { type: 'json' };
import { type Readings, run } from '../support/readings.ts';
import { exchangeAtOnce, startAtOnce } from '../support/scenarios.ts';
import { KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

/** Six digits tabulated, of values good to 1e-5. */
const TABLE = { relative: 2e-5 };
/** Tabulated to a microsecond or to 1 µs of a 25 µs grid. */
const TIME = { absolute: 1e-5 };
/** Both sides integrate to 1e-9 or better over about a hundred periods. */
const REFERENCE = { relative: 1e-6 };
/** An extremum is flat: its time is known to the square root of its value's accuracy, times 1/ω. */
const PEAK_TIME = { absolute: 1e-6 };
const PHASES = ['iA', 'iB', 'iC'] as const;
/** Start and exchange peaks lie within the first 150 ms. */
const EARLY = 0.15;

describe.each([
  ['3 hp', 'hp3', 132.06, 0.01049, -22.078, 0.01925, 97.126, 104.981, 104.984, 0.156779, 0.333954, 1.08575],
  [
    '50 hp',
    'hp50',
    1654.628,
    0.010935,
    -569.6,
    0.01973,
    607.913,
    694.774,
    694.779,
    0.278349,
    0.508365,
    1.13026,
  ],
] as const)(
  'free acceleration of the %s machine',
  (_name, key, maximum, tMaximum, minimum, tMinimum, peak0, peak90, vector, half, full, heat) => {
    const textbook = KRAUSE[key];
    const end = 1.2;
    const start = run(startAtOnce(textbook, end));
    const kinetic = 0.5 * textbook.machine.inertia * textbook.synchronousSpeed ** 2;

    it('has the tabulated torque peaks', () => {
      const high = start.extreme('torque', 'max');
      const low = start.extreme('torque', 'min');
      expectWithin(high.value, maximum, TABLE, 'maximum torque');
      expectWithin(high.time, tMaximum, TIME, 'time of maximum torque');
      // The least tabulated digit, 0.01 N·m of 569.60, is 2e-5 too.
      expectWithin(low.value, minimum, { relative: 3e-5 }, 'minimum torque');
      expectWithin(low.time, tMinimum, TIME, 'time of minimum torque');
    });

    it('has the tabulated current peaks at both supply angles', () => {
      expectWithin(start.extreme('iA', 'magnitude').value, peak0, TABLE, 'peak of phase A, φ = 0');
      const turned = run(startAtOnce(textbook, 0.1, { supply: { angle: Math.PI / 2 } }));
      expectWithin(turned.extreme('iA', 'magnitude').value, peak90, TABLE, 'peak of phase A, φ = 90°');
      expectWithin(start.largestVector(0, EARLY, 15001), vector, TABLE, 'largest current vector');
    });

    it('reaches half and 95 % of synchronous speed at the tabulated times, without overshoot', () => {
      expectWithin(
        start.passes('speed', 0.5 * textbook.synchronousSpeed),
        half,
        { absolute: 1e-6 },
        'half speed',
      );
      expectWithin(start.passes('speed', 0.95 * textbook.synchronousSpeed), full, { absolute: 1e-6 }, '95 %');
      expectWithin(
        start.extreme('speed', 'max').value / textbook.synchronousSpeed,
        1,
        { absolute: 5e-5 },
        'highest speed',
      );
    });

    it('heats the rotor by the tabulated multiple of the kinetic energy', () => {
      expectWithin(start.integral('cage1Loss', 0, end) / kinetic, heat, { absolute: 6e-6 }, 'rotor heat');
    });

    it('agrees with the phase-variable reference', () => {
      const exact = reference[key].freeAcceleration0;
      expectPeaks(start, exact);
      expectWithin(
        start.passes('speed', 0.5 * textbook.synchronousSpeed),
        exact.halfSpeed,
        REFERENCE,
        'half speed',
      );
      expectWithin(
        start.passes('speed', 0.95 * textbook.synchronousSpeed),
        exact.fullSpeed,
        REFERENCE,
        '95 %',
      );
      expectWithin(start.integral('cage1Loss', 0, exact.end), exact.rotorHeat, REFERENCE, 'rotor heat');
      expectWithin(start.integral('statorLoss', 0, exact.end), exact.statorHeat, REFERENCE, 'stator heat');
    });
  },
);

/** Table of the instant exchange of B and C, columns as tabulated. */
const EXCHANGE = [
  {
    key: 'hp3',
    phi: 0,
    min: [-394.95, 0.006558],
    max: [9.548, 0.01453],
    peaks: [125.501, 172.504, 237.534],
    vector: 241.881,
    zero: 0.334854,
    reversed: 0.656714,
    heat: 2.65011,
    fullHeat: 3.66283,
    statorHeat: 2363.82,
  },
  {
    key: 'hp50',
    phi: 0,
    min: [-4866.63, 0.006518],
    max: [13.593, 0.01597],
    peaks: [702.597, 1164.771, 1560.303],
    vector: 1602.367,
    zero: 0.6884,
    reversed: 1.165505,
    heat: 2.7457,
    fullHeat: 3.75629,
    statorHeat: 32370.87,
  },
  {
    key: 'hp3',
    phi: 90,
    min: [-123.323, 0.001917],
    max: [20.973, 0.006117],
    peaks: [113.421, 112.123, 137.807],
    vector: null,
    zero: 0.394593,
    reversed: 0.716453,
    heat: 2.95508,
    fullHeat: 3.9678,
    statorHeat: null,
  },
  {
    key: 'hp50',
    phi: 90,
    min: [-1513.29, 0.002006],
    max: [413.71, 0.006154],
    peaks: [599.712, 688.131, 785.456],
    vector: null,
    zero: 0.786378,
    reversed: 1.263483,
    heat: 2.9759,
    fullHeat: 3.98649,
    statorHeat: null,
  },
] as const;

describe.each(EXCHANGE)('instant exchange of B and C, $key machine, φ = $phi°', (row) => {
  const textbook = KRAUSE[row.key];
  const end = 1.9;
  const stop = run(exchangeAtOnce(textbook, (row.phi * Math.PI) / 180, end));
  const kinetic = 0.5 * textbook.machine.inertia * textbook.synchronousSpeed ** 2;

  it('has the tabulated torque peaks', () => {
    const low = stop.extreme('torque', 'min', 0, EARLY);
    const high = stop.extreme('torque', 'max', 0, EARLY);
    expectWithin(low.value, row.min[0], TABLE, 'minimum torque');
    expectWithin(low.time, row.min[1], TIME, 'time of minimum torque');
    // 9.548 and 13.593 N·m are a thousandth of the swing: their last digit, 5e-4 N·m.
    expectWithin(high.value, row.max[0], { relative: 6e-5 }, 'maximum torque');
    expectWithin(high.time, row.max[1], TIME, 'time of maximum torque');
  });

  it('has the tabulated peak of each phase current', () => {
    for (const [k, phase] of PHASES.entries())
      expectWithin(stop.extreme(phase, 'magnitude').value, row.peaks[k]!, TABLE, `peak of ${phase}`);
    if (row.vector !== null)
      expectWithin(stop.largestVector(0, EARLY, 15001), row.vector, TABLE, 'largest vector');
  });

  it('passes zero and −95 % of synchronous speed at the tabulated times', () => {
    expectWithin(stop.zeroSpeed(), row.zero, { absolute: 1e-6 }, 'zero speed');
    const reversed = stop.passes('speed', -0.95 * textbook.synchronousSpeed);
    expectWithin(reversed, row.reversed, { absolute: 1e-6 }, '−95 %');
  });

  it('heats rotor and stator as tabulated', () => {
    expectWithin(
      stop.integral('cage1Loss', 0, stop.zeroSpeed()) / kinetic,
      row.heat,
      { absolute: 6e-6 },
      'to stop',
    );
    expectWithin(
      stop.integral('cage1Loss', 0, end) / kinetic,
      row.fullHeat,
      { absolute: 6e-6 },
      'full reversal',
    );
    if (row.statorHeat !== null)
      expectWithin(stop.integral('statorLoss', 0, stop.zeroSpeed()), row.statorHeat, TABLE, 'stator heat');
  });
});

describe.each([
  ['hp3', 0, 'exchange0'],
  ['hp3', 40, 'exchange40'],
  ['hp3', 90, 'exchange90'],
  ['hp50', 0, 'exchange0'],
  ['hp50', 40, 'exchange40'],
  ['hp50', 90, 'exchange90'],
] as const)('instant exchange against the phase-variable reference, %s, φ = %d°', (key, phi, name) => {
  it('agrees in peaks, times and heats', () => {
    const exact = reference[key][name];
    const textbook = KRAUSE[key];
    const stop = run(exchangeAtOnce(textbook, (phi * Math.PI) / 180, 1.3));
    expectPeaks(stop, exact);
    expectWithin(stop.zeroSpeed(), exact.zeroSpeed, REFERENCE, 'zero speed');
    expectWithin(stop.passes('speed', -0.95 * textbook.synchronousSpeed), exact.reversed, REFERENCE, '−95 %');
    expectWithin(
      stop.integral('cage1Loss', 0, exact.zeroSpeed),
      exact.rotorHeatToZero,
      REFERENCE,
      'rotor heat',
    );
    expectWithin(
      stop.integral('statorLoss', 0, exact.zeroSpeed),
      exact.statorHeatToZero,
      REFERENCE,
      'stator heat',
    );
  });
});

interface ReferencePeaks {
  readonly maximumTorque: { readonly value: number; readonly time: number };
  readonly minimumTorque: { readonly value: number; readonly time: number };
  readonly peakCurrent: readonly { readonly value: number; readonly time: number }[];
}

function expectPeaks(readings: Readings, exact: ReferencePeaks): void {
  const swing = Math.max(exact.maximumTorque.value, -exact.minimumTorque.value);
  const allowed = { absolute: 1e-7 * swing };
  const low = readings.extreme('torque', 'min', 0, EARLY);
  const high = readings.extreme('torque', 'max', 0, EARLY);
  expectWithin(low.value, exact.minimumTorque.value, allowed, 'minimum torque');
  expectWithin(low.time, exact.minimumTorque.time, PEAK_TIME, 'time of minimum torque');
  expectWithin(high.value, exact.maximumTorque.value, allowed, 'maximum torque');
  expectWithin(high.time, exact.maximumTorque.time, PEAK_TIME, 'time of maximum torque');
  for (const [k, phase] of PHASES.entries()) {
    const peak = readings.extreme(phase, 'magnitude', 0, EARLY);
    expectWithin(peak.value, exact.peakCurrent[k]!.value, { relative: 1e-7 }, `peak of ${phase}`);
    expectWithin(peak.time, exact.peakCurrent[k]!.time, PEAK_TIME, `time of the peak of ${phase}`);
  }
}
