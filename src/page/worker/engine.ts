import type { Scenario } from '../../index.ts';
import {
  assertScenario,
  parseScenarioWithOrigins,
  placeProblems,
  type RunResult,
  ScenarioError,
  simulate,
} from '../../index.ts';
import type { UnitSystem } from '../../report/formatQuantity.ts';
import { concealed, concealedPictures } from '../../report/lesson/concealed.ts';
import { exactFrame } from '../../report/live/frameOfPoint.ts';
import { liveVerdict } from '../../report/live/liveVerdict.ts';
import { type PictureDetail, picturesOf, runViewOf } from '../../report/live/runViewOf.ts';
import { textEditor } from '../../scenario/edit/applyEdits.ts';
import type { Edit } from '../../scenario/edit/edit.ts';
import { judgedAsRun } from '../../survey/judgedAsRun.ts';
import type { Engine, HiddenFault } from './protocol.ts';
import { withHidden } from './withHidden.ts';

/** What an engine needs and does not hold. */
export interface Outside {
  /** Of the program. */
  readonly version: string;
  /** Text of the plotting library's script, for the report. */
  plotlySource(): Promise<string>;
}

/** A run and what is needed to answer for it. */
interface Run {
  readonly serial: number;
  readonly result: RunResult;
  readonly units: UnitSystem;
  /** The double cage was fitted to a nameplate. */
  readonly cageIsFitted: boolean;
  /** It hides a fault that nothing may tell. */
  readonly conceals: boolean;
  /** Of the pictures that have been made. */
  readonly detail: PictureDetail;
}

/** The engine that runs in a worker: it keeps the last run, to be asked about its verdict and single instants. */
export function newEngine(outside: Outside): Engine {
  const edit = textEditor();
  let serial = 0;
  let last: Run | null = null;
  const lastRun = (): Run => {
    if (last === null) throw new Error('no run has been made yet');
    return last;
  };
  return {
    async run({ text, fileName, edits, units, hidden, detail }) {
      if (hidden !== null && !hidden.told && edits.some(mayTell))
        return { kind: 'notChanged', text, reason: NOT_FOR_TASK };
      // Without edits the text is run as it stands, whatever it is: what is wrong with it has line and column.
      const edited = edits.length === 0 ? { text, applied: true, refusal: null } : edit(text, edits);
      if (!edited.applied) return { kind: 'notChanged', text, reason: edited.refusal ?? '' };
      try {
        const { scenario, estimation } = parseScenarioWithOrigins(edited.text, { fileName });
        const conceals = hidden !== null && !hidden.told;
        const result = conceals
          ? simulateConcealed(scenario, hidden)
          : simulate(withHidden(scenario, hidden));
        if (result === null) {
          // What would be said of the text would be said of the fault too.
          if (edits.length > 0) return { kind: 'notChanged', text, reason: NOT_FOR_TASK };
          return { kind: 'notChanged', text, reason: TASK_DOES_NOT_FIT };
        }
        serial++;
        last = { serial, result, units, cageIsFitted: estimation !== null, conceals, detail };
        const view = runViewOf(result, units, detail, estimation);
        return { kind: 'run', serial, text: edited.text, view: conceals ? concealed(view) : view };
      } catch (error) {
        if (!(error instanceof ScenarioError)) throw error;
        const { problems } = error.problems.some(({ line }) => line === null)
          ? placeProblems(error, edited.text, fileName)
          : error;
        return { kind: 'refused', text, problems };
      }
    },
    async settle() {
      const run = lastRun();
      const { result, units, conceals, detail } = run;
      const verdict = conceals ? null : liveVerdict(judgedAsRun(result, run.cageIsFitted), units);
      const pictures = detail.draft ? picturesOf(result, units, { ...detail, draft: false }) : null;
      last = { ...run, detail: { ...detail, draft: false } };
      const shown = pictures !== null && conceals ? concealedPictures(pictures) : pictures;
      return { serial: run.serial, verdict, pictures: shown };
    },
    async withoutFaults(text) {
      return edit(text, [{ kind: 'faults', faults: [] }]);
    },
    async frame(t, units) {
      return exactFrame(lastRun().result.trajectory, units, t);
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

const NOT_FOR_TASK = 'This cannot be changed while the task is set; it was taken back.';
const TASK_DOES_NOT_FIT = 'The task of this link does not fit its scenario: ask for a new link.';

/** A change that one hidden fault does not go with and another does: all of them are closed, so that none tells which it is. */
function mayTell(edit: Edit): boolean {
  if (edit.kind === 'scheme') return edit.scheme === null;
  if (edit.kind === 'adjust') return edit.key === 'dropOutSpeed' && edit.value === null;
  if (edit.kind !== 'control') return false;
  return edit.option.key === 'mechanicalInterlock' || edit.option.key === 'overload';
}

/** The run with the hidden fault; null where the two do not go together though the scenario by itself is sound. */
function simulateConcealed(scenario: Scenario, hidden: HiddenFault): RunResult | null {
  try {
    return simulate(withHidden(scenario, hidden));
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    assertScenario(scenario);
    return null;
  }
}
