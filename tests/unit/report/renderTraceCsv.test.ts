import { describe, expect, it } from 'vitest';
import { renderTraceCsv, traceStep } from '../../../src/report/renderTraceCsv.ts';
import { elasticRun } from './fakeElements.ts';
import { fakeRun, REVERSE, TOUCH } from './fakeRun.ts';

const run = fakeRun();
const csv = renderTraceCsv(run);
const lines = csv.split('\r\n');
const rows = lines.slice(1, -1).map((line) => line.split(','));
const column = (name: string) => {
  const at = lines[0]!.split(',').indexOf(name);
  return rows.map((row) => Number(row[at]));
};

describe('trace.csv', () => {
  it('has a header whose names carry the units', () => {
    expect(lines[0]).toBe(
      'time_s,current_a_A,current_b_A,current_c_A,electromagnetic_torque_Nm,load_torque_Nm,speed_radps,speed_rpm,' +
        'position_rev,terminal_voltage_ab_V,terminal_voltage_bc_V,terminal_voltage_ca_V,stator_flux_alpha_Wb,' +
        'stator_flux_beta_Wb,rotor_flux_alpha_Wb,rotor_flux_beta_Wb,terminals_conducting',
    );
  });

  it('ends every line with CR LF and gives every row the same number of fields (RFC 4180)', () => {
    expect(csv.endsWith('\r\n')).toBe(true);
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n"]/u);
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([17]));
  });

  it('holds both sides of a switching instant, the values before it first', () => {
    for (const [instant, before, after] of [
      [TOUCH, 0, 3],
      [REVERSE, 0, 3],
    ] as const) {
      const at = column('time_s').flatMap((t, i) => (t === instant ? [i] : []));
      expect(at).toHaveLength(2);
      expect(at.map((i) => column('terminals_conducting')[i])).toEqual([before, after]);
    }
  });

  it('has times that never run backwards, evenly spaced by index between switchings', () => {
    const times = column('time_s');
    for (let i = 1; i < times.length; i += 1) expect(times[i]!).toBeGreaterThanOrEqual(times[i - 1]!);
    expect(times).toContain(1000 * traceStep(run));
  });

  it('writes numbers that read back as the same', () => {
    const i = column('time_s').indexOf(0.5);
    expect(column('current_a_A')[i]).toBe(run.trajectory.at(0.5).iA);
  });

  it('has line voltages that add to zero', () => {
    const [ab, bc, ca] = ['ab', 'bc', 'ca'].map((pair) => column(`terminal_voltage_${pair}_V`));
    // 1e-9 V: rounding of sums of some hundred volts.
    for (let i = 0; i < rows.length; i += 50)
      expect(Math.abs(ab![i]! + bc![i]! + ca![i]!)).toBeLessThan(1e-9);
  });

  it('has the torque of an elastic coupling and the speed behind it, before the last column, where there is one', () => {
    const elastic = renderTraceCsv(elasticRun()).split('\r\n');
    const names = elastic[0]!.split(',');
    expect(names.slice(-3)).toEqual(['coupling_torque_Nm', 'load_speed_radps', 'terminals_conducting']);
    const row = elastic.find((line) => line.startsWith('0.5,'))!.split(',');
    expect(Number(row.at(-3))).toBe(run.trajectory.at(0.5).couplingTorque);
    expect(Number(row.at(-2))).toBe(run.trajectory.at(0.5).loadSpeed);
  });

  it('has a longer step, and says so, where the run would have too many rows', () => {
    const long = fakeRun();
    const trajectory = { ...long.trajectory, tEnd: 1000 };
    expect(traceStep({ ...long, trajectory })).toBe(0.01);
  });
});
