import type { Suitability } from '../../assess/suitability.ts';
import type { RunResult } from '../../measure/result.ts';
import { findPlugging } from '../closings.ts';
import { controlSentences } from '../controlSentences.ts';
import { timedMarks } from '../eventMarks.ts';
import type { EventMark } from '../figureSpec.ts';
import { finding } from '../findings.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { keyNumbers } from '../keyNumbers.ts';
import { cleanText } from '../plainText.ts';
import { statusLine } from '../statusLine.ts';
import { timeFigure } from '../timeFigure.ts';
import { torqueSpeedFigure } from '../torqueSpeedFigure.ts';
import { filmOf } from './filmOf.ts';
import { liveVerdict } from './liveVerdict.ts';
import { numbersOf } from './numbersOf.ts';
import type { RunView } from './runView.ts';
import { stretchesOf } from './stretches.ts';

/**
 * Everything a page shows of a run.
 *
 * @param suitability of this run alone (`judgedAsRun`)
 */
export function runViewOf(result: RunResult, suitability: Suitability, units: UnitSystem): RunView {
  return {
    scenario: result.scenario,
    units,
    usable: result.usable,
    finding: finding(result, units),
    alarms: alarmsOf(result, units),
    keyNumbers: keyNumbers(result, units),
    numbers: numbersOf(result, units),
    time: { ...timeFigure(result, { units, waveforms: true }), marks: marksOf(result) },
    plane: torqueSpeedFigure(result, { units }),
    stretches: stretchesOf(result),
    focus: findPlugging(result.trajectory)?.touch ?? result.trajectory.tStart,
    film: filmOf(result, units),
    verdict: liveVerdict(suitability, units),
  };
}

/** Every instant worth a word: a picture that can be enlarged separates milliseconds. */
function marksOf({ trajectory }: RunResult): readonly EventMark[] {
  const { tStart, tEnd } = trajectory;
  return timedMarks(trajectory, tStart, tEnd, 'all').map(({ t, label }) => ({ x: t, label }));
}

/** What a reader must know before any number. */
function alarmsOf(result: RunResult, units: UnitSystem): readonly string[] {
  return [
    ...(result.usable ? [] : [statusLine(result)]),
    controlSentences(result, units),
    ...result.warnings.map(cleanText),
  ].filter((sentence) => sentence !== '');
}
