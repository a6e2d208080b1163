import type { RunList, Survey, VariedField } from '../spec/survey.ts';
import { combinations, MOST_RUNS } from './combinations.ts';
import { quantileOf } from './quantileOf.ts';
import { randomStream } from './randomStream.ts';
import { HIGH_QUANTILE, LOW_QUANTILE, MEDIAN_QUANTILE, sensitivityLayout } from './sensitivityLayout.ts';
import { MOST_SOBOL_DIMENSIONS, MOST_SOBOL_POINTS, sobolPoint } from './sobol.ts';

/** Numbers between 0 and 1, those of draw number `draw`. */
type Draw = (draw: number) => number[];

/**
 * The runs of a survey whose list is known beforehand. Nothing is stored: the values of a run are computed
 * from its number, the fields and the seed alone, so that it does not matter who makes which runs in what
 * order.
 *
 * Source: quasi-random draws are Sobol points with the direction numbers of Joe and Kuo (2008), scrambled as Owen
 * (1995); the draws of a sensitivity survey are laid out as Saltelli and others, Computer Physics Communications 181
 * (2010) 259.
 *
 * @throws TypeError for a worst case, which is a search, and where a sweep's field has no list
 * @throws RangeError for more runs, or for quasi-random draws of more fields, than can be numbered; by
 *   `valuesOf` for a run not in the list
 */
export function runList(survey: Survey): RunList {
  const { count, valuesOf } = listOf(survey);
  if (count > MOST_RUNS) throw new RangeError(`${count} runs: up to ${MOST_RUNS} would be right`);
  return {
    count,
    valuesOf: (run) => {
      if (!(Number.isInteger(run) && run >= 0 && run < count))
        throw new RangeError(`run ${run}: this survey has runs 0 to ${count - 1}`);
      return valuesOf(run);
    },
  };
}

/** The list without the check of the run's number. */
function listOf({ fields, seed, task }: Survey): RunList {
  switch (task.kind) {
    case 'sweep':
    case 'limitMap':
      return combinations(fields);
    case 'random': {
      assertDrawable(fields);
      const draw = drawOf(task.sequence, task.runs, fields.length, seed);
      return { count: task.runs, valuesOf: (run) => quantilesOf(fields, draw(run)) };
    }
    case 'sensitivity':
      assertDrawable(fields);
      return sensitivityRuns(
        fields,
        task.samples,
        drawOf(task.sequence, task.samples, 2 * fields.length, seed),
      );
    case 'worst':
      throw new TypeError(
        'a worst case is a search: its runs depend on the runs before, there is no list of them',
      );
  }
}

/** Draws of `size` numbers each. */
function drawOf(sequence: 'quasi' | 'pseudo', draws: number, size: number, seed: number): Draw {
  if (sequence === 'pseudo')
    return (draw) => {
      const next = randomStream(seed, draw);
      return Array.from({ length: size }, next);
    };
  if (size > MOST_SOBOL_DIMENSIONS)
    throw new RangeError(
      `quasi-random draws of ${size} numbers: up to ${MOST_SOBOL_DIMENSIONS}, or pseudo, would be right`,
    );
  if (draws > MOST_SOBOL_POINTS)
    throw new RangeError(
      `${draws} quasi-random draws: up to ${MOST_SOBOL_POINTS}, or pseudo, would be right`,
    );
  return (draw) => sobolPoint(draw, size, seed);
}

/** Refuses at once a field that no run could be given a value of. */
function assertDrawable(fields: readonly VariedField[]): void {
  for (const { path, spread } of fields)
    try {
      quantileOf(spread, MEDIAN_QUANTILE);
    } catch (error) {
      throw new RangeError(`${path}: ${error instanceof Error ? error.message : error}`);
    }
}

/** Value of each field at its own probability. */
function quantilesOf(fields: readonly VariedField[], probabilities: readonly number[]): number[] {
  return fields.map(({ spread }, field) => quantileOf(spread, probabilities[field]!));
}

/** The runs in the order of `sensitivityLayout`; the first half of each draw is A, the second B. */
function sensitivityRuns(fields: readonly VariedField[], samples: number, draw: Draw): RunList {
  const layout = sensitivityLayout(fields.length, samples);
  const medians = fields.map(() => MEDIAN_QUANTILE);
  const probabilitiesOf = (run: number): readonly number[] => {
    const role = layout.roleOf(run);
    switch (role.kind) {
      case 'median':
        return medians;
      case 'low':
        return medians.with(role.field, LOW_QUANTILE);
      case 'high':
        return medians.with(role.field, HIGH_QUANTILE);
      case 'a':
        return draw(role.sample).slice(0, fields.length);
      case 'b':
        return draw(role.sample).slice(fields.length);
      case 'exchanged': {
        const both = draw(role.sample);
        return both.slice(0, fields.length).with(role.field, both[fields.length + role.field]!);
      }
    }
  };
  return { count: layout.count, valuesOf: (run) => quantilesOf(fields, probabilitiesOf(run)) };
}
