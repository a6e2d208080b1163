import type { RunResult } from '../measure/result.ts';
import { faultWords } from './faultWords.ts';
import { peakCurrentKey } from './keyNumbers.ts';

/** What is wrong with the installation in this run, as a sentence; '' when nothing is. */
export function faultSentence({ scenario, trajectory }: RunResult): string {
  // A short circuit through a welded pole is named with it.
  const named = trajectory.shortCircuit?.welded === true;
  const faults = (scenario.starter.faults ?? []).filter((fault) => !named || fault.kind !== 'weldedPole');
  if (faults.length === 0) return '';
  return `${faults.length === 1 ? 'Fault' : 'Faults'} in this run: ${faults.map(faultWords).join('; ')}.`;
}

/** Which way the model of the leakage makes the peaks err, as a sentence; '' in a run without current. */
export function saturationSentence({ scenario, metrics }: RunResult): string {
  if (peakCurrentKey(metrics) === null) return '';
  const { leakageSaturation } = scenario.machine;
  const saturates =
    leakageSaturation !== undefined &&
    [leakageSaturation.stator, ...leakageSaturation.cages].some((law) => law !== null);
  return saturates
    ? 'Leakage saturation is on: peaks are higher than those of the linear circuit.'
    : 'The circuit has no leakage saturation: real peaks are higher.';
}
