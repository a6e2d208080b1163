import type { Scenario } from '../../index.ts';
import {
  parseScenarioWithOrigins,
  placeProblems,
  type RunResult,
  ScenarioError,
  simulate,
} from '../../index.ts';
import { concealed } from '../../report/lesson/concealed.ts';
import { unhide } from '../../report/lesson/hiddenFault.ts';
import { exactFrame } from '../../report/live/frameOfPoint.ts';
import { runViewOf } from '../../report/live/runViewOf.ts';
import { textEditor } from '../../scenario/edit/applyEdits.ts';
import { judgedAsRun } from '../../survey/judgedAsRun.ts';
import type { Engine, HiddenFault, RunAnswer, RunOrder } from './protocol.ts';

/** What an engine needs and does not hold. */
export interface Outside {
  /** Of the program. */
  readonly version: string;
  /** Text of the plotting library's script, for the report. */
  plotlySource(): Promise<string>;
}

/** The engine that runs in a worker: it keeps the last run, to be asked about single instants of it. */
export function newEngine(outside: Outside): Engine {
  let last: RunResult | null = null;
  const edit = textEditor();
  return {
    async run(order) {
      const { answer, result } = runOrder(order, edit);
      last = result ?? last;
      return answer;
    },
    async frame(t, units) {
      if (last === null) throw new Error('no run has been made yet');
      return exactFrame(last.trajectory, units, t);
    },
    // What writes files and judges is loaded when it is asked for: the first run does not wait for it.
    async files(order, kind) {
      const { filesOf } = await import('./filesOf.ts');
      return filesOf(order, kind, outside);
    },
    async judge(order) {
      const { judgeText } = await import('./judgeText.ts');
      return judgeText(order);
    },
  };
}

function runOrder(
  { text, fileName, edits, units, hidden }: RunOrder,
  edit: ReturnType<typeof textEditor>,
): { answer: RunAnswer; result?: RunResult } {
  // Without edits the text is run as it stands, whatever it is: what is wrong with it has line and column.
  const edited = edits.length === 0 ? { text, applied: true, refusal: null } : edit(text, edits);
  if (!edited.applied) return { answer: { kind: 'notChanged', text, reason: edited.refusal ?? '' } };
  try {
    const { scenario, estimation } = parseScenarioWithOrigins(edited.text, { fileName });
    const result = simulate(withHidden(scenario, hidden));
    const view = runViewOf(result, judgedAsRun(result, estimation !== null), units);
    const shown = hidden === null || hidden.told ? view : concealed(view);
    return { answer: { kind: 'run', text: edited.text, view: shown }, result };
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    const { problems } = error.problems.some(({ line }) => line === null)
      ? placeProblems(error, edited.text, fileName)
      : error;
    return { answer: { kind: 'refused', text, problems } };
  }
}

/** The scenario with a fault that its text does not tell. */
function withHidden(scenario: Scenario, hidden: HiddenFault | null): Scenario {
  const faults = hidden === null ? null : unhide(hidden.fault);
  return faults === null ? scenario : { ...scenario, starter: { ...scenario.starter, faults } };
}
