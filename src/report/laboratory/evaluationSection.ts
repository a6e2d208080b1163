import type { LaboratorySheet, Prediction } from '../../survey/laboratory/laboratory.ts';
import type { QuantityKey } from '../../survey/laboratory/quantities.ts';
import { paragraph, table } from '../markup.ts';
import { energyText, inertiaSentence } from './formulaText.ts';
import type { LaboratoryOptions } from './laboratoryOptions.ts';
import { predictedText, rangeText, unitText } from './predictionText.ts';

/**
 * Heat in the rotor without friction and without what is lost in time constants, in stored energies: the field turns once past a rotor that
 * goes from standstill to its speed, and the slip is two at the beginning of a plug stop, so that the loss is 1 − 0, 4 − 1 and 4 − 0.
 * Any textbook on drives; from memory.
 */
const RULE: Partial<Readonly<Record<QuantityKey, number>>> = {
  startHeatMultiple: 1,
  plugHeatMultiple: 3,
  reversalHeatMultiple: 4,
};

/** What is worked out from the readings, and the comparison of heats; on a blank sheet the rule is left to be found. */
export function evaluationSection(
  sheet: Pick<LaboratorySheet, 'evaluation' | 'inertia' | 'storedEnergy'>,
  options: LaboratoryOptions,
): string {
  const heats = sheet.evaluation.filter(({ key }) => RULE[key] !== undefined);
  const others = sheet.evaluation.filter(({ key }) => RULE[key] === undefined);
  return `<section class="page">
<h2>Evaluation</h2>
${paragraph(inertiaSentence(sheet.inertia, options.units))}
${workedOut('Worked out from the readings', others, options, () => [])}
${heatComparison(heats, sheet, options)}
${'<span class="line"></span>'.repeat(ANSWER_LINES)}
</section>`;
}

function heatComparison(
  heats: readonly Prediction[],
  { storedEnergy }: Pick<LaboratorySheet, 'storedEnergy'>,
  options: LaboratoryOptions,
): string {
  const caption = 'Heat in the rotor, in stored energies';
  if (options.blank)
    return `<h2>Where the energy goes</h2>
${paragraph('The heat in the rotor is counted in the kinetic energy of the set at its running speed, ½·J·ω².')}
${workedOut(caption, heats, options, () => [])}
${paragraph(`Questions: ${BLANK_QUESTION} ${QUESTIONS}`)}`;
  return `<h2>Where the energy goes: 1 : 3 : 4</h2>
${paragraph(
  `Counted in the kinetic energy of the turning set, ½·J·ω² = ${energyText(storedEnergy, options.units)}, a rotor without friction takes 1 of it in a start, 3 in a plug stop and 4 in a full reversal, whatever its resistance: the slip runs from 1 to 0, from 2 to 1, and from 2 to 0, and the loss goes with the difference of its squares. Friction adds to a start and takes from a stop.`,
)}
${workedOut(caption, heats, options, ({ key }) => [String(RULE[key] ?? '')], ['Rule'])}
${paragraph(`Questions: ${QUESTION} ${QUESTIONS}`)}`;
}

const QUESTION = 'Why is the crest different in every plug stop while the time is not?';
/** The same without the answer to what is to be predicted. */
const BLANK_QUESTION =
  'Which readings differ from one plug stop to the next, which do not, and why? By what rule do the three heats stand to each other?';
const QUESTIONS =
  'Which reading would tell you that the leakage paths saturate? How many plug stops heat the rotor as much as ten starts?';

/** Lines to answer on. */
const ANSWER_LINES = 6;

function workedOut(
  caption: string,
  predictions: readonly Prediction[],
  { units, blank }: LaboratoryOptions,
  more: (prediction: Prediction) => readonly string[],
  moreHead: readonly string[] = [],
): string {
  if (predictions.length === 0) return '';
  const head = [
    'Quantity',
    'How',
    ...moreHead,
    ...(blank ? ['Own prediction'] : ['Expected', 'In order within']),
    'Own result',
  ];
  return table({
    caption,
    head: head.map((text) => ({ text })),
    rows: predictions.map((prediction) => [
      { text: prediction.words },
      { text: prediction.how },
      ...more(prediction).map((text) => ({ text })),
      ...(blank
        ? [{ text: '' }]
        : [
            { text: predictedText(prediction, units), className: 'at' as const },
            { text: rangeText(prediction, units), className: 'at' as const },
          ]),
      { text: `______ ${unitText(prediction, units)}`, className: 'at' },
    ]),
  });
}
