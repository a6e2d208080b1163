/**
 * With every optional element absent, runs come out as they did before those elements existed. The stored figures were
 * written by the program as it was then (fixtures/plainRuns), when its elementary functions became its own (current at a
 * parting moved by 9e-7, everything else by less than 1e-7), and when the Runge–Kutta method of order 8 took odex's place: charges of arcs and
 * currents at parting moved by up to 3e-6, a flat crest by 0.7 ms in time, all else by less than 1e-6, and energy balances closed some
 * hundred times better.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import { PLAIN_RUNS } from '../../fixtures/plainRuns/plainRuns.ts';

interface Stored {
  readonly status: string;
  readonly evaluations: number;
  readonly steps: number;
  readonly values: Readonly<Record<string, readonly [number, number | null]>>;
  readonly ledger: Readonly<Record<string, number | readonly number[]>>;
  readonly point: Readonly<Record<string, number>>;
  readonly events: readonly (readonly [number, string])[];
}

const stored = JSON.parse(
  readFileSync(new URL('../../fixtures/plainRuns/plainRuns.json', import.meta.url), 'utf8'),
) as { readonly runs: Readonly<Record<string, Stored>> };

function expectSame(value: unknown, before: unknown, what: string): void {
  // JSON knows no negative zero.
  if (typeof value !== 'number' || typeof before !== 'number') expect(value, what).toEqual(before);
  else expect(value + 0, what).toBe(before);
}

describe('with every element switched off', () => {
  it.each(Object.entries(PLAIN_RUNS))('%s comes out as before, bit for bit', (name, scenario) => {
    const before = stored.runs[name]!;
    const { metrics, ledger, trajectory, status } = simulate(scenario());
    expect(status.code).toBe(before.status);
    expect(trajectory.stats.evaluations).toBe(before.evaluations);
    expect(trajectory.stats.steps).toBe(before.steps);
    for (const [key, [value, time]] of Object.entries(before.values)) {
      const metric = Object.entries(metrics).find(([other]) => other === key)?.[1];
      expectSame(metric?.value, value, key);
      expectSame(metric?.time ?? null, time, `time of ${key}`);
    }
    for (const [key, value] of Object.entries(before.ledger))
      expectSame(Reflect.get(ledger, key), value, `ledger ${key}`);
    const last = trajectory.at(trajectory.tEnd);
    for (const [key, value] of Object.entries(before.point)) expectSame(Reflect.get(last, key), value, key);
    expect(trajectory.events.map(({ kind }) => kind)).toEqual(before.events.map(([, kind]) => kind));
    for (const [index, [time]] of before.events.entries())
      expectSame(trajectory.events[index]!.t, time, `event ${index}`);
  });
});
