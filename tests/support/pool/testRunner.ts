import { existsSync, writeFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
import type { Runner } from '../../../src/survey/runs/runner.ts';
import type { Survey, SurveyRow } from '../../../src/survey/spec/survey.ts';
import type { RunOrders } from './testSurvey.ts';

/** Makes rows by simple arithmetic, and misbehaves as the survey's description says. */
export function runner(survey: Survey): Runner {
  const orders = JSON.parse(survey.description) as RunOrders;
  if (orders.brokenInThread === true && !isMainThread) throw new Error('no such thread');
  if (orders.broken === true) throw new Error('no such motor');
  return (run, values) => {
    if (orders.slow !== undefined) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, orders.slow);
    if (orders.throws?.includes(run)) throw new Error(`run ${run} has no answer`);
    if (orders.dies?.includes(run)) process.exit(7);
    if (orders.exhausts === run) for (const kept: unknown[] = []; ; ) kept.push(new Array(1000).fill(run));
    if (orders.diesOnce?.run === run && !existsSync(orders.diesOnce.mark)) {
      writeFileSync(orders.diesOnce.mark, '');
      process.exit(7);
    }
    if (orders.endless?.includes(run)) return { ...good(run, values), metrics: [Number.NaN, null] };
    if (orders.nonsense?.includes(run)) return NONSENSE[run % NONSENSE.length]!(good(run, values));
    if (orders.thrown?.includes(run)) throw THROWN[run % THROWN.length]!();
    if (orders.foreign?.includes(run)) return good(run + 1, values);
    return good(run, values);
  };
}

function good(run: number, values: readonly number[]) {
  const sum = values.reduce((a, b) => a + b, 0);
  const metrics = [Math.sqrt(sum + 1) / 3, run % 3 === 0 ? null : -0];
  return { run, values, status: 'good' as const, reason: null, metrics, verdict: null };
}

/** What is no row, by the number of the run modulo their number. */
export const NONSENSE: readonly ((row: SurveyRow) => SurveyRow)[] = (
  [
    () => undefined,
    () => ({}),
    (row) => ({ ...row, verdict: undefined }),
    (row) => ({ ...row, metrics: 7n }),
    () => Promise.reject(new Error('later')),
    (row) => ({ ...row, values: [0.3] }),
    () => new Proxy({}, { get: () => fail(), ownKeys: () => fail() }),
    () => 'x'.repeat(100_000),
  ] as ((row: SurveyRow) => unknown)[]
).map((make) => make as (row: SurveyRow) => SurveyRow);

/** What is no error, by the number of the run modulo their number. */
export const THROWN: readonly (() => unknown)[] = [
  () => Object.defineProperty(new Error('a'), 'message', { get: () => fail() }),
  () => Object.assign(new Error('a'), { message: { text: 3 } }),
  () => Object.create(null),
  () => undefined,
  () => 'in words',
  () => Symbol('sign'),
  () => ({ [Symbol.toPrimitive]: () => fail(), [Symbol.for('nodejs.util.inspect.custom')]: () => fail() }),
  () => ({ message: 'of no class' }),
];

function fail(): never {
  throw new Error('nobody looks at this');
}
