import type { LaboratorySheet, LaboratoryStep, Prediction } from '../../survey/laboratory/laboratory.ts';
import { formatQuantity } from '../formatQuantity.ts';
import { list, paragraph, table } from '../markup.ts';
import { escapeMarkup } from '../plainText.ts';
import type { LaboratoryOptions } from './laboratoryOptions.ts';
import { limitSentence } from './limitText.ts';
import { predictedText, rangeText, scatterText, unitText } from './predictionText.ts';

/** A step of the procedure with room for its readings. */
export function stepSection(
  step: LaboratoryStep,
  number: number,
  sheet: LaboratorySheet,
  options: LaboratoryOptions,
): string {
  const repeated = step.readings.filter(({ repeats }) => repeats > 1);
  return `<section class="step">
<div class="together">
<h2><span class="no">Step ${number}</span> ${escapeMarkup(step.title)}</h2>
${step.cautions.length === 0 ? '' : `<div class="note cautions">${step.cautions.map((text) => paragraph(text)).join('\n')}</div>`}
${step.limits.map((limit) => `<p class="alarm">${escapeMarkup(limitSentence(limit, options))}</p>`).join('\n')}
<ol>${step.doing.map((text) => `<li>${escapeMarkup(text)}</li>`).join('\n')}</ol>
${step.readings.length === 0 ? paragraph('Done and in order', 'tick') : readings(step.readings, options)}
</div>
${step.key === 'creep' ? lateTable(sheet, options) : ''}
${repeated.length === 0 ? '' : trials(repeated, options)}
</section>`;
}

/** Reading by reading: expected, within which limits, and what to write. */
function readings(predictions: readonly Prediction[], { units, blank }: LaboratoryOptions): string {
  const head = blank
    ? ['Reading', 'Own prediction', 'Read']
    : ['Reading', 'Expected', 'In order within', 'Read'];
  const rows = predictions.map((prediction) => {
    const name = `<th scope="row">${escapeMarkup(prediction.words)} <span class="how">(${escapeMarkup(prediction.how)})</span></th>`;
    const cell = (text: string) => `<td>${escapeMarkup(text)}</td>`;
    const write = `<td class="write">${escapeMarkup(blankUnit(prediction, units))}</td>`;
    if (blank) return `<tr>${name}${write}${write}</tr>`;
    const open = prediction.open === null ? '' : ` ${prediction.open}`;
    return `<tr class="reading">${name}${cell(predictedText(prediction, units))}${cell(rangeText(prediction, units))}${write}</tr>
<tr class="outside"><td colspan="${head.length}" class="outside">Outside: ${escapeMarkup(prediction.outside + open)}</td></tr>`;
  });
  return `<div class="scroll"><table class="readings"><thead><tr>${head.map((text) => `<th scope="col">${escapeMarkup(text)}</th>`).join('')}</tr></thead>
<tbody>
${rows.join('\n')}
</tbody></table></div>`;
}

/** What to write the number in front of. */
function blankUnit(prediction: Prediction, units: LaboratoryOptions['units']): string {
  return `_______ ${unitText(prediction, units)}`;
}

/** A line for each repetition, then mean and ends, and what they should be. */
function trials(predictions: readonly Prediction[], { units, blank }: LaboratoryOptions): string {
  const count = Math.max(...predictions.map(({ repeats }) => repeats));
  const head = predictions.map(
    (prediction) =>
      `<th scope="col">${escapeMarkup(`${prediction.words}${unitText(prediction, units) === '' ? '' : `, ${unitText(prediction, units)}`}`)}</th>`,
  );
  const empty = (label: string) =>
    `<tr><th scope="row">${label}</th>${predictions.map(() => '<td></td>').join('')}</tr>`;
  const stated = (label: string, text: (prediction: Prediction) => string) =>
    `<tr class="stated"><th scope="row">${label}</th>${predictions.map((prediction) => `<td>${escapeMarkup(text(prediction))}</td>`).join('')}</tr>`;
  const lines = [
    ...Array.from({ length: count }, (_, k) => empty(`Trial ${k + 1}`)),
    ...['Mean', 'Lowest', 'Highest'].map(empty),
    ...(blank
      ? []
      : [
          stated('Mean expected', (prediction) => predictedText(prediction, units)),
          stated('Scatter expected', (prediction) => scatterText(prediction, units) || 'too little to read'),
        ]),
  ];
  return `<div class="scroll"><table class="trials"><caption>${count} trials</caption><thead><tr><th scope="col"></th>${head.join('')}</tr></thead>
<tbody>
${lines.join('\n')}
</tbody></table></div>`;
}

/** The delays to set; what they lead to only where predictions are told. */
function lateTable({ lateSwitch }: LaboratorySheet, { units, blank }: LaboratoryOptions): string {
  const late = lateSwitch.filter(({ later }) => later > 0);
  if (late.length === 0) return '';
  const show = (value: number, unit: string) => formatQuantity(value, unit, { system: units });
  return `${table({
    caption: 'If the switch opens later than it is set',
    head: (blank
      ? ['Later by', 'Own prediction: turned backwards', 'Read']
      : ['Later by', 'Highest speed backwards', 'Turned backwards', 'Read']
    ).map((text) => ({ text })),
    rows: late.map(({ later, speed, angle }) => [
      { text: formatQuantity(later, 's', { system: units, milli: true }) },
      ...(blank
        ? [{ text: '' }]
        : [
            { text: show(speed, 'rad/s') },
            {
              text:
                angle > 2 * Math.PI
                  ? `${formatQuantity(angle / (2 * Math.PI), '1', { system: units })} rev`
                  : show(angle, 'rad'),
            },
          ]),
      { text: '' },
    ]),
  })}
${list(['A delay that never ends would be a full reversal: this is why the switch is tried before the first plug stop.'])}`;
}
