import { judgement, parseScenarioWithOrigins } from '../../index.ts';
import { type JudgedView, judgedViewOf } from '../../report/live/judgedView.ts';
import type { FilesOrder } from './protocol.ts';
import { withHidden } from './withHidden.ts';

/**
 * Judges a scenario over many closing angles, with the other ways to stop: a second or more.
 *
 * @throws ScenarioError when the text is no scenario
 */
export function judgeText({ text, fileName, units, hidden }: FilesOrder): JudgedView {
  const { scenario, estimation } = parseScenarioWithOrigins(text, { fileName });
  return judgedViewOf(
    judgement(withHidden(scenario, hidden), { cageIsFitted: estimation !== null, extremes: false }),
    units,
  );
}
