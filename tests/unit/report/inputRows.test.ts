import { describe, expect, it } from 'vitest';
import { inputGroups } from '../../../src/report/inputRows.ts';
import type {
  Action,
  ControlData,
  Scenario,
  StarterData,
  StarterFault,
} from '../../../src/scenario/scenario.ts';
import { PLAIN_CONTROL } from '../../support/scenarios.ts';
import { fullScenario } from './fakeElements.ts';
import { fakeScenario } from './fakeRun.ts';

const rowsOf = (scenario: Parameters<typeof inputGroups>[0], units: 'SI' | 'us' = 'SI') =>
  inputGroups(scenario, units).flatMap((group) => group.rows);
const full = rowsOf(fullScenario());
const valueAt = (label: string) => full.find((row) => row.label === label)?.value;

describe('the inputs', () => {
  it('have no row for an element that is not in the scenario', () => {
    const plain = rowsOf(fakeScenario());
    expect(plain.map((row) => row.label).join('; ')).not.toMatch(
      /cable|saturat|curve|iron|windage|bearing|slip-ring|gear|coupling|line resistors|bypass|delta|fault/iu,
    );
    expect(full.length).toBeGreaterThan(plain.length);
  });

  it.each([
    ['Cable resistance per conductor', '0.0120 Ω'],
    ['Cable inductance per conductor', '0.0300 mH'],
    ['Magnetising curve, crest current: crest flux', '12.0 A: 0.700 Wb; 30.0 A: 1.10 Wb'],
    ['Stator leakage saturates', 'around 220 A crest, down to 60.0 % of the inductance'],
    ['Rotor leakage saturates', 'linear'],
    ['Iron loss: resistance of the core branch', '95.0 Ω'],
    ['Iron loss: inductance of the core branch', '12.0 mH'],
    ['Bearing friction of the motor, dry', '1.20 N·m'],
    ['Slip-ring resistors per phase while starting', '0.500 Ω for 0.600 s, 0.200 Ω for 0.400 s, then none'],
    ['Slip-ring resistors per phase while plugging', '0.900 Ω'],
    // 12 kg·m² behind a ratio of 4: a sixteenth of it.
    ['The same, seen from the motor', '0.750 kg·m²'],
    ['Gear ratio, motor speed over load speed', '4.00'],
    ['Gear efficiency while the motor drives', '96.0 %'],
    ['Gear efficiency while the load drives', '94.0 %'],
    ['Coupling stiffness, at the motor shaft', '25\u202F000 N·m/rad'],
    ['Coupling damping', '14.0 N·m·s/rad'],
    ['Free play of the coupling, flank to flank', '0.286°'],
    // 6000 W at 20 rad/s.
    ['Constant power, against motion', '6.00 kW above 191 r/min; below that speed 300 N·m'],
    ['Table of torque, against motion in both directions', '0 r/min: 10.0 N·m; 286 r/min: 40.0 N·m'],
    ['Line resistors while plugging, per phase', '0.700 Ω'],
    ['Bypass of the line resistors', 'its coil is energised 0.250 s after the reversing coil'],
    ['Windings while plugging', 'in star'],
    ['Delta winding A lies between terminals', 'A and C'],
  ])('%s: %s', (label, value) => {
    expect(valueAt(label)).toBe(value);
  });

  it('name each fault', () => {
    expect(full.filter((row) => row.label === 'Fault').map((row) => row.value)).toEqual([
      'supply phase A is lost from 0.8000 s on',
      'pole B of the forward contactor is welded: once closed it does not part',
      'pole C of the reverse contactor is dead: it never touches',
    ]);
  });

  it('say where the values of a load behind a gear hold', () => {
    const titles = (scenario: Parameters<typeof inputGroups>[0]) =>
      inputGroups(scenario, 'SI').map((group) => group.title);
    expect(titles(fullScenario())).toContain("Load (values at the load's own shaft, behind the gear)");
    expect(titles(fakeScenario())).toContain('Load');
  });

  it('do not mix units', () => {
    const text = rowsOf(fullScenario(), 'us')
      .map((row) => row.value)
      .join('; ');
    expect(text).not.toMatch(/N·m|kW|kg/u);
    // 25 000 N·m/rad over 1.35582 N·m per lbf·ft.
    expect(text).toContain('18\u202F439 lbf·ft/rad');
  });
});

describe('the inputs of a control circuit', () => {
  const plain = fakeScenario();
  const starterOf = (starter: Partial<StarterData>, actions: readonly Action[] = []): Scenario => ({
    ...plain,
    starter: { ...plain.starter, ...starter },
    actions,
  });
  const shown = (scenario: Scenario) =>
    Object.fromEntries(rowsOf(scenario).map(({ label, value }) => [label, value]));

  it('are few where the circuit is plain, and the delay between the coils is not among them', () => {
    const rows = shown(starterOf({ control: PLAIN_CONTROL }));
    expect(rows).toMatchObject({
      'Control circuit': 'Reversing only through stop',
      'Emergency stop': 'category 0 of IEC 60204-1: both coils drop at once',
      'Mechanical interlock': 'between the contactors',
      'Auxiliary relays, coil to contacts': '10.0 ms',
      Control: 'wired',
      Coils: 'whatever the voltage, as long as it is there',
      'Overload relay': 'its heating is not simulated',
    });
    for (const label of [
      'Change-over delay between the coils',
      'Change-over timer',
      'Braking by reverse current',
      'Memory relay',
      'Ready relay',
    ])
      expect(rows).not.toHaveProperty([label]);
    expect(shown(plain)).toHaveProperty(['Change-over delay between the coils']);
    expect(shown(plain)).not.toHaveProperty(['Control circuit']);
  });

  it('say all of a full one, with the reservation of the standard', () => {
    const control: ControlData = {
      scheme: 'plugStop',
      memoryRelay: true,
      readyRelay: true,
      emergencyStop: { category: 1, limit: 2 },
      changeoverTimer: 0.1,
      mechanicalInterlock: false,
      relayTime: 0.012,
      scanTime: 0.008,
      coilVoltage: { pickUp: 0.8, dropOut: 0.55 },
      overload: { setting: 14.6, tripClass: '10A', start: 'warm', memory: 'lost' },
    };
    expect(shown(starterOf({ control }))).toMatchObject({
      'Control circuit': 'Plug to stop, one direction',
      'Braking by reverse current':
        'IEC 60204-1: must not start the machine the other way; a device working only on time is not permitted; turning the shaft by hand must not start it',
      'Memory relay': 'braking only after a contactor has driven the machine',
      'Ready relay': 'starting only after the reset button; drops with the supply',
      'Emergency stop':
        'category 1 of IEC 60204-1: brakes until the zero-speed switch opens, at most 2.00 s; then both coils are dead',
      'Change-over timer': '100 ms',
      'Mechanical interlock': 'none',
      'Auxiliary relays, coil to contacts': '12.0 ms',
      Control: 'a program that scans every 8.00 ms',
      Coils: 'pick up above 80.0 %, drop out below 55.0 % of rated control voltage',
      'Overload relay': 'set to 14.6 A, class 10A, warm at t = 0, memory lost without supply',
    });
  });

  it('say how the zero-speed switch differs in reverse, and its lockout', () => {
    const rpm = Math.PI / 30;
    const zeroSpeedSwitch = {
      dropOutSpeed: 60 * rpm,
      pickUpSpeed: 120 * rpm,
      reverse: { dropOutSpeed: 70 * rpm, pickUpSpeed: 140 * rpm },
      lockout: true as const,
      delay: 0.005,
    };
    expect(shown(starterOf({ zeroSpeedSwitch, control: PLAIN_CONTROL }))['Zero-speed switch']).toBe(
      'drops out below 60.0 r/min, picks up above 120 r/min, in reverse drops out below 70.0 r/min, picks up above 140 r/min, delay 5.00 ms, with a lockout solenoid',
    );
  });

  it.each<[Action, string]>([
    [{ at: 0, do: 'press', button: 'forward' }, 'forward button pressed'],
    [{ at: 0, do: 'release', button: 'reverse' }, 'reverse button released'],
    [{ at: 0, do: 'press', button: 'stop' }, 'stop button pressed'],
    [{ at: 0, do: 'press', button: 'reset' }, 'reset button pressed'],
    [{ at: 0, do: 'release', button: 'emergencyStop' }, 'emergency stop released'],
    [{ at: 0, do: 'press', button: 'overloadTest' }, 'test button of the overload relay pressed'],
    [{ at: 0, do: 'press', button: 'overloadReset' }, 'reset button of the overload relay pressed'],
    [{ at: 0, do: 'startForward' }, 'start forward'],
  ])('%j is shown as %s', (action, words) => {
    expect(rowsOf(starterOf({}, [action])).at(-5)?.value).toBe(words);
  });

  it.each<[StarterFault, string]>([
    [
      { kind: 'weldedContactor', contactor: 'forward' },
      'the forward contactor is welded: once closed poles and armature stay in',
    ],
    [
      { kind: 'zeroSpeedSwitch', mode: 'stuckClosed' },
      'the zero-speed switch is stuck closed: once actuated its contacts stay so',
    ],
    [
      { kind: 'zeroSpeedSwitch', mode: 'stuckOpen' },
      'the zero-speed switch is stuck open: its make contacts never close',
    ],
    [
      { kind: 'zeroSpeedSwitch', mode: 'doesNotPickUp' },
      'the zero-speed switch does not pick up: nothing ever actuates its contacts',
    ],
    [
      { kind: 'auxiliaryContact', contactor: 'forward', contact: 'holdIn', stuck: 'open' },
      'the hold-in contact of the forward contactor is stuck open',
    ],
    [
      { kind: 'auxiliaryContact', contactor: 'reverse', contact: 'interlock', stuck: 'closed' },
      'the interlock contact of the reverse contactor is stuck closed',
    ],
    [{ kind: 'overloadNeverTrips' }, 'the overload relay never trips, however hot'],
    [{ kind: 'supplyLost', from: 1, until: 1.5 }, 'the supply is lost from 1.0000 s to 1.5000 s'],
    [{ kind: 'supplyLost', from: 1, until: null }, 'the supply is lost from 1.0000 s on'],
    [
      { kind: 'mechanicalInterlockMissing' },
      'the mechanical interlock is missing: both contactors can be in at once',
    ],
  ])('%j is shown as a fault: %s', (fault, words) => {
    expect(shown(starterOf({ faults: [fault] })).Fault).toBe(words);
  });
});

describe('brake and direct current among the inputs', () => {
  const base = fakeScenario();
  const rows = rowsOf({
    ...base,
    starter: {
      ...base.starter,
      brake: { torque: 80, delay: 0.06, sets: 'afterPlugging' },
      injection: { voltage: 24, resistance: 0.1, delay: 0.5, closingTime: 0.018, duration: 2 },
    },
  });
  it.each([
    [
      'Mechanical brake at the motor shaft',
      '80.0 N·m, 60.0 ms after its coil is released, on command and after plugging',
    ],
    ['Direct current into terminals B and C', '24.0 V behind 0.100 Ω'],
    ['Direct current: command to coil, coil to contacts touch', '500 ms, 18.0 ms'],
    ['Direct current flows', 'for 2.00 s'],
  ])('%s: %s', (label, value) => {
    expect(rows.find((row) => row.label === label)?.value).toBe(value);
  });
});
