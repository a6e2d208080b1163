import type { LaboratorySheet } from '../../survey/laboratory/laboratory.ts';
import { CAUTIONS } from '../cautions.ts';
import { wrapToWidth } from '../displayWidth.ts';
import { rowLines } from '../terminalRows.ts';
import { titleLines } from '../titleLines.ts';
import type { LaboratoryOptions } from './laboratoryOptions.ts';
import { pauseSentences } from './laboratoryText.ts';
import { limitSentence } from './limitText.ts';
import { predictedText, rangeText } from './predictionText.ts';
import { timeSentences } from './timeText.ts';

/** How the sheet is written in the terminal. */
export interface LaboratoryTerminalOptions extends Pick<LaboratoryOptions, 'units' | 'blank'> {
  /** Bold by escape sequences. */
  readonly colour: boolean;
}

const WIDTH = 80;
const LABEL = 36;
const VALUE = 14;

/** The procedure in short: pauses, and every reading with what it should be. */
export function renderLaboratoryTerminal(sheet: LaboratorySheet, options: LaboratoryTerminalOptions): string {
  const { units, blank, colour } = options;
  const strong = (text: string) => (colour ? `\u001B[1m${text}\u001B[0m` : text);
  const wrap = (text: string) => wrapToWidth(text, WIDTH);
  const steps = sheet.steps.flatMap((step, k) => [
    '',
    ...wrap(`Step ${k + 1}: ${step.title}`).map(strong),
    ...step.limits.flatMap((limit) => wrap(limitSentence(limit, { units, blank }))),
    ...(blank ? [] : rows(step.readings, units)),
  ]);
  const lines = [
    ...titleLines(sheet.scenario).flatMap(wrap).map(strong),
    ...[...pauseSentences(sheet, units), ...timeSentences(sheet, options)].flatMap(wrap),
    ...steps,
    ...(blank || sheet.evaluation.length === 0
      ? []
      : ['', strong('Worked out from the readings'), ...rows(sheet.evaluation, units)]),
    ...(sheet.leftOut.length === 0 ? [] : ['', ...sheet.leftOut.flatMap(wrap)]),
    '',
    ...wrap(`Caution: ${CAUTIONS.join(' ')}`),
  ];
  return `${lines.join('\n')}\n`;
}

function rows(predictions: LaboratorySheet['evaluation'], units: LaboratoryOptions['units']): string[] {
  const list = predictions.map((prediction) => ({
    label: prediction.words,
    value: predictedText(prediction, units),
    note: rangeText(prediction, units),
  }));
  return list.flatMap((row) => {
    // A label too long for its column stands on lines of its own.
    const short = row.label.length < LABEL;
    const above = short ? [] : wrapToWidth(row.label, WIDTH);
    const line = { ...row, label: short ? row.label : '' };
    return [
      ...above,
      ...rowLines([line], LABEL, VALUE, WIDTH).map(({ head, note }) => (head + note).trimEnd()),
    ];
  });
}
