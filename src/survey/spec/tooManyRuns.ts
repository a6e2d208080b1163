import type { Path } from '../../scenario/place.ts';
import type { Fault } from '../../scenario/problem.ts';
import type { Spread, SurveyTask } from './survey.ts';
import { costWords, MOST_RUNS, surveyCost } from './surveyCost.ts';

/**
 * Says where a survey asks for more runs than anybody would wait for, and what they would cost.
 *
 * @param spreads of all fields; null where one is not known
 * @returns the path to blame and the fault; null where the number of runs is possible
 */
export function tooManyRuns(
  task: SurveyTask,
  spreads: readonly (Spread | null)[],
  verdict: boolean,
): { readonly path: Path; readonly fault: Fault } | null {
  const { count, path, expected } = askedRuns(task, spreads);
  if (count <= MOST_RUNS) return null;
  const cost = surveyCost(count, verdict);
  const each = `${Number(((1000 * cost.seconds) / count).toPrecision(2))} ms`;
  const message = `comes to ${count} runs: at about ${each} a run that is ${costWords(cost)}`;
  return { path: [path], fault: { code: 'outOfRange', message, expected } };
}

function askedRuns(
  task: SurveyTask,
  spreads: readonly (Spread | null)[],
): { readonly count: number; readonly path: string; readonly expected: string } {
  switch (task.kind) {
    case 'random':
    case 'worst':
      return { count: task.runs, path: 'runs', expected: `a whole number from 1 to ${MOST_RUNS}` };
    case 'sensitivity': {
      const each = spreads.length + 2;
      const most = Math.floor(MOST_RUNS / each);
      const expected = `a whole number from 2 to ${most} (each sample costs ${each} runs)`;
      return { count: task.samples * each, path: 'samples', expected };
    }
    default: {
      const count = spreads.reduce((product, spread) => product * lengthOf(spread), 1);
      return {
        count,
        path: 'vary',
        expected: `fields whose counts of values multiply to at most ${MOST_RUNS}`,
      };
    }
  }
}

function lengthOf(spread: Spread | null): number {
  if (spread === null) return 1;
  if (spread.kind === 'values') return spread.values.length;
  return spread.kind === 'grid' ? spread.count : 1;
}
