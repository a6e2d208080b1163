import { describe, expect, it } from 'vitest';
import { inputGroups } from '../../../src/report/inputRows.ts';
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
