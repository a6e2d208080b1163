import { csvText } from '../../recording/csvText.ts';
import type { LaboratorySheet, Prediction } from '../../survey/laboratory/laboratory.ts';
import { asciiText } from '../asciiText.ts';
import type { LaboratoryOptions } from './laboratoryOptions.ts';

const HEAD = [
  'step',
  'quantity',
  'reading',
  'trial',
  'unit',
  'expected',
  'low',
  'high',
  'scatter_low',
  'scatter_high',
  'measured',
  'remark',
] as const;

/**
 * The readings as RFC 4180 text, SI, a line for every trial, with an empty column to write into. What is worked out afterwards has the
 * step "evaluation".
 *
 * @param options whether the predictions are left out
 */
export function renderLaboratoryCsv(
  sheet: LaboratorySheet,
  options: Pick<LaboratoryOptions, 'blank'>,
): string {
  const { blank } = options;
  const rows = [
    ...sheet.steps.flatMap((step, k) => step.readings.flatMap((one) => lines(String(k + 1), one, blank))),
    ...sheet.evaluation.flatMap((one) => lines('evaluation', one, blank)),
  ];
  return [HEAD, ...rows].map((fields) => `${fields.join(',')}\r\n`).join('');
}

function lines(step: string, prediction: Prediction, blank: boolean): string[][] {
  const { predicted, low, high, scatter } = prediction;
  const numbers = [predicted, low, high, scatter.low, scatter.high].map((value) =>
    blank ? '' : String(value),
  );
  return Array.from({ length: prediction.repeats }, (_, k) => [
    step,
    prediction.key,
    csvText(asciiText(prediction.words)),
    String(k + 1),
    csvText(asciiText(prediction.unit)),
    ...numbers,
    '',
    '',
  ]);
}
