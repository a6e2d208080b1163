import type { RunResult } from '../../measure/result.ts';
import type { Estimation } from '../../scenario/nameplate.ts';
import { findPlugging } from '../closings.ts';
import { controlSentences } from '../controlSentences.ts';
import { estimationLines } from '../estimationText.ts';
import { timedMarks } from '../eventMarks.ts';
import type { EventMark } from '../figureSpec.ts';
import { finding } from '../findings.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { keyNumbers } from '../keyNumbers.ts';
import { cleanText } from '../plainText.ts';
import { statusLine } from '../statusLine.ts';
import { type FigureOptions, timeFigure } from '../timeFigure.ts';
import { torqueSpeedFigure } from '../torqueSpeedFigure.ts';
import { filmOf } from './filmOf.ts';
import { numbersOf } from './numbersOf.ts';
import type { RunPictures, RunView } from './runView.ts';
import { stretchesOf } from './stretches.ts';

/** Of pictures that follow a moving hand: half of their time is the reading of samples. */
const DRAFT_PER_CYCLE = 12;

/** How much of the pictures is wanted. */
export interface PictureDetail {
  /** The hand still moves: what is seen is read densely, the rest is not. */
  readonly draft: boolean;
  /** Stretch that is seen, s; null: the whole run. */
  readonly span: readonly [number, number] | null;
}

/** Said of every estimated circuit. */
const LEFT_OPEN = 'Other circuits fit the same data: the report gives the range of each figure over them.';
const FULL: PictureDetail = { draft: false, span: null };

/**
 * Everything a page shows of a run but its verdict, which takes longer than all of this.
 *
 * @param estimation how the circuit was found; null: it was given
 */
export function runViewOf(
  result: RunResult,
  units: UnitSystem,
  detail: PictureDetail = FULL,
  estimation: Estimation | null = null,
): RunView {
  return {
    ...picturesOf(result, units, detail),
    scenario: result.scenario,
    units,
    usable: result.usable,
    finding: finding(result, units),
    alarms: alarmsOf(result, units),
    estimated: estimation === null ? [] : [...estimationLines(estimation, units), LEFT_OPEN],
    keyNumbers: keyNumbers(result, units),
    numbers: numbersOf(result, units),
    stretches: stretchesOf(result),
    focus: findPlugging(result.trajectory)?.touch ?? result.trajectory.tStart,
  };
}

/** What of a run is drawn. */
export function picturesOf(
  result: RunResult,
  units: UnitSystem,
  { draft, span }: PictureDetail,
): RunPictures {
  const options: FigureOptions = draft
    ? { units, density: { perCycle: DRAFT_PER_CYCLE, closeUp: span } }
    : { units };
  return {
    time: { ...timeFigure(result, { ...options, waveforms: true }), marks: marksOf(result) },
    plane: torqueSpeedFigure(result, options),
    film: filmOf(result, units, options.density),
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
