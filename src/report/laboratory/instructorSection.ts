import type { LaboratorySheet } from '../../survey/laboratory/laboratory.ts';
import { list, table } from '../markup.ts';
import type { LaboratoryOptions } from './laboratoryOptions.ts';
import { methodSentences } from './laboratoryText.ts';
import { partsText, predictedText, rangeText } from './predictionText.ts';

/** For the instructor: every prediction at a glance, why its range is as wide, and how it was made. */
export function instructorSection(sheet: LaboratorySheet, { units }: LaboratoryOptions): string {
  const all = [...sheet.steps.flatMap(({ readings }) => readings), ...sheet.evaluation];
  return `<section class="page instructor">
<h2>For the instructor: why the ranges are as wide as they are</h2>
${table({
  caption: 'Every prediction, and what makes its range wide: the largest parts, in the unit of the reading',
  head: ['Reading', 'Expected', 'In order within', 'Below / above what is expected'].map((text) => ({
    text,
  })),
  rows: all.map((prediction) => [
    { text: prediction.words },
    { text: predictedText(prediction, units), className: 'at' },
    { text: rangeText(prediction, units), className: 'at' },
    { text: partsText(prediction, units) },
  ]),
})}
<h3>How the ranges were made</h3>
${list(methodSentences(sheet))}
</section>`;
}
