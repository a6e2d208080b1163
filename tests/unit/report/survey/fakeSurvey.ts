import type { MetricKey } from '../../../../src/measure/metric.ts';
import { sensitivityLayout } from '../../../../src/survey/draws/sensitivityLayout.ts';
import type { Survey, SurveyRow, SurveyTask, VariedField } from '../../../../src/survey/spec/survey.ts';
import type { RowSource } from '../../../../src/survey/spread/rowSource.ts';

export const ANGLE: VariedField = {
  path: 'supply.angle',
  unit: 'deg',
  spread: { kind: 'uniform', from: 0, to: 360 },
};
export const INERTIA: VariedField = {
  path: 'load.inertia',
  unit: 'kg m^2',
  spread: { kind: 'normal', mean: 0.05, deviation: 0.005, from: 0.035, to: 0.065 },
};
export const CLOSING: VariedField = {
  path: 'starter.closingTime',
  unit: 'ms',
  spread: { kind: 'values', values: [18, 20, 24] },
};
/** Two grids: inertia in equal ratios, friction in equal steps. */
export const INERTIA_GRID: VariedField = {
  path: 'load.inertia',
  unit: 'kg m^2',
  spread: { kind: 'grid', from: 0.1, to: 10, count: 11, spacing: 'logarithmic' },
};
export const TORQUE_GRID: VariedField = {
  path: 'load.torque.0.torque',
  unit: 'N m',
  spread: { kind: 'grid', from: 0, to: 40, count: 9, spacing: 'linear' },
};

export const METRICS: readonly MetricKey[] = ['plugMinimumTorque', 'plugPeakCurrent', 'stopTimeFromTouch'];

export function fakeSurvey(parts: Partial<Survey> = {}): Survey {
  return {
    title: 'What the instant of closing does',
    description: 'A belt is stopped at any instant of the supply.',
    base: { fileName: 'belt.yaml', text: 'title: Tea-withering belt, 7.5 kW\n' },
    fields: [ANGLE, INERTIA, CLOSING],
    metrics: METRICS,
    verdict: false,
    seed: 7,
    task: { kind: 'random', runs: 2000, sequence: 'quasi' },
    ...parts,
  };
}

/** Value of a field for a share of 0 … 1 of its spread. */
function drawn({ spread }: VariedField, share: number): number {
  switch (spread.kind) {
    case 'values':
      return spread.values[Math.min(spread.values.length - 1, Math.floor(share * spread.values.length))]!;
    case 'normal':
      return spread.mean + spread.deviation * 0.55 * Math.log((0.02 + share) / (1.02 - share));
    default:
      return spread.from + share * (spread.to - spread.from);
  }
}

/** Numbers of 0 … 1 that fill it evenly: multiples of an irrational number. */
const SHARES = [0.6180339887, 0.7548776662, 0.569840291, 0.8191725134] as const;

/** Torque, current and time that follow the fields; every 97th run fails, every 201st is refused, every 50th never stops. */
export function drawnRows(survey: Survey, count: number): SurveyRow[] {
  return Array.from({ length: count }, (_, run) => {
    const values = survey.fields.map((field, k) => drawn(field, (0.5 + (run + 1) * SHARES[k]!) % 1));
    return run % 97 === 96
      ? badRow(
          run,
          values,
          survey,
          'failed',
          `The speed left its bounds at t = ${(1 + run / 1000).toFixed(3)} s.`,
        )
      : run % 201 === 200
        ? badRow(run, values, survey, 'refused', 'dropOutSpeed lies above pickUpSpeed.')
        : goodRow(run, values, survey, run % 50 === 49);
  });
}

function goodRow(run: number, values: number[], survey: Survey, endless: boolean): SurveyRow {
  const [angle = 0, inertia = 0.05, closing = 20] = values;
  const wave = Math.cos((2 * angle * Math.PI) / 180 + closing / 3);
  const all: Record<string, number | null> = {
    plugMinimumTorque: -180 - 40 * wave - 300 * (inertia - 0.05),
    plugPeakCurrent: 190 + 25 * Math.sin((angle * Math.PI) / 180) ** 2 + closing / 4,
    stopTimeFromTouch: endless ? null : 0.12 + 1.9 * inertia + 0.004 * wave,
  };
  return {
    run,
    values,
    status: 'good',
    reason: null,
    metrics: survey.metrics.map((key) => all[key] ?? null),
    verdict: survey.verdict
      ? { outcome: wave > 0.9 ? 'notSuitable' : 'suitable', decisive: 'shaftTorque' }
      : null,
  };
}

export function badRow(
  run: number,
  values: readonly number[],
  survey: Survey,
  status: 'failed' | 'refused' | 'unbalanced',
  reason: string,
): SurveyRow {
  return { run, values, status, reason, metrics: survey.metrics.map(() => null), verdict: null };
}

/** Numbers of a grid. */
export function gridValues({ spread }: VariedField): number[] {
  if (spread.kind === 'values') return [...spread.values];
  if (spread.kind !== 'grid') throw new Error('no grid');
  const { from, to, count, spacing } = spread;
  return Array.from({ length: count }, (_, k) =>
    spacing === 'linear' ? from + ((to - from) * k) / (count - 1) : from * (to / from) ** (k / (count - 1)),
  );
}

/** Every cell of two grids: time to stop grows with inertia and falls with friction; suitable below 1.5 s, refused in a corner. */
export function gridRows(survey: Survey): SurveyRow[] {
  const [first, second] = survey.fields.map(gridValues);
  return first!.flatMap((inertia, i) =>
    second!.map((torque, j) => {
      const run = i * second!.length + j;
      const values = [inertia, torque];
      if (i === 10 && j === 0) return badRow(run, values, survey, 'failed', 'The run took too many steps.');
      const time = (2 * (inertia + 0.05)) / (1 + torque / 10);
      const outcome = time > 1.5 ? 'notSuitable' : i === 0 && j === 8 ? 'notJudged' : 'suitable';
      return {
        run,
        values,
        status: 'good',
        reason: null,
        metrics: survey.metrics.map((key) =>
          key === 'stopTimeFromTouch' ? time : key === 'plugMinimumTorque' ? -150 - 20 * torque : 200,
        ),
        verdict:
          survey.verdict || survey.task.kind === 'limitMap'
            ? { outcome, decisive: time > 6 ? 'windingTemperature stopTime' : 'stopTime' }
            : null,
      };
    }),
  );
}

export const source =
  (rows: readonly SurveyRow[]): RowSource =>
  () =>
    rows;

export const WORST: SurveyTask = { kind: 'worst', metric: 'plugMinimumTorque', seek: 'smallest', runs: 300 };

/** Value of a field for a share of its spread, for the layout of a sensitivity survey with three fields. */
export function sensitivityRows(survey: Survey, samples: number): SurveyRow[] {
  const layout = sensitivityLayout(survey.fields.length, samples);
  const shareOf = (sample: number, k: number, second: boolean) =>
    (0.5 + (sample + 1) * (SHARES[k]! + (second ? 0.4142135624 : 0))) % 1;
  return Array.from({ length: layout.count }, (_, run) => {
    const role = layout.roleOf(run);
    const values = survey.fields.map((field, k) => {
      if (role.kind === 'median') return drawn(field, 0.5);
      if (role.kind === 'low' || role.kind === 'high')
        return drawn(field, role.field !== k ? 0.5 : role.kind === 'low' ? 0.1 : 0.9);
      const exchanged = role.kind === 'exchanged' ? role.field === k : role.kind === 'b';
      return 'sample' in role ? drawn(field, shareOf(role.sample, k, exchanged)) : drawn(field, 0.5);
    });
    return goodRow(run, values, survey, false);
  });
}
