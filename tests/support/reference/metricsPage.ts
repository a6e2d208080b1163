import { CLOSE_MARGIN, CRITERION_KEYS } from '../../../src/assess/criterion.ts';
import { CRITERION_DEFINITIONS } from '../../../src/assess/criterionDefinitions.ts';
import { DEFINITIONS } from '../../../src/measure/definitions.ts';
import { CRITERION_LABELS } from '../../../src/report/judgementWords.ts';
import { METRIC_GROUPS } from '../../../src/report/metricLabels.ts';
import { capital, code, GENERATED, markdownTable, paragraph } from './markdownTable.ts';
import { OTHER_QUANTITIES } from './otherQuantities.ts';

const INTRO = `${GENERATED}
# Metrics and criteria

What every figure of a report means, and what every criterion of the judgement compares with what. Units are those of the
data files, SI throughout; reports show some in handier units. A figure that a run does not contain is missing, and the
report says why: it is never set to zero.

Words that return: a **touch** is the instant contacts meet, **parting** the instant they leave each other; **air-gap
torque** is what the field exerts on the rotor; **crest** is the highest instantaneous value. The **worst of the closing
angles** is looked for where the instant of closing moves a figure.

`;

/** The page of metrics, criteria and the other figures of reports. */
export function metricsPage(): string {
  return [
    INTRO,
    '## Metrics\n\n',
    paragraph(
      'One entry each in `summary.json` and one row each in the report; a survey may ask for any of them by its key.',
    ),
    ...METRIC_GROUPS.map(
      ({ title, rows }) =>
        `\n### ${title}\n\n${markdownTable(
          ['key', 'in the report', 'unit', 'definition'],
          rows.map(({ key, label }) => [
            code(key),
            label,
            DEFINITIONS[key].unit,
            DEFINITIONS[key].definition,
          ]),
        )}`,
    ),
    criteriaSection(),
    '\n## Other figures of reports\n\n',
    paragraph(
      'Figures of the calculation note, of comparisons and of plans, under the names they have in the data files.',
    ),
    ...OTHER_QUANTITIES.map(
      ({ title, intro, rows }) =>
        `\n### ${title}\n\n${paragraph(intro)}\n${markdownTable(
          ['name', 'unit', 'meaning'],
          Object.entries(rows).map(([name, [unit, meaning]]) => [code(name), unit, meaning]),
        )}`,
    ),
  ].join('');
}

function criteriaSection(): string {
  const rules = [
    `**Pass, close, fail.** A value beyond its limit fails. One that keeps it with less than ${100 * CLOSE_MARGIN} % of the limit left is called close (common practice, no source); limits of zero know no close. The life of contacts is also close where its range reaches below the limit.`,
    '**Required.** While a required criterion is not judged, the answer is never "suitable". The others may be left open; the verdict names them.',
    '**Not judged.** Value or limit is missing; the remark says what. Where the figures of a run must not be used at all, nothing is judged.',
    '**Waived.** A limit that the file states as `none` does not apply: the criterion passes without a value, and the note says that it was waived. Only the criteria with an entry under *waived by* can be; leaving a limit out waives nothing.',
    '**Temperatures** are compared in °C; what is left is told in K.',
  ];
  const first = CRITERION_KEYS.map((key) => {
    const { value, limitIs, limit } = CRITERION_DEFINITIONS[key];
    return [
      code(key),
      CRITERION_LABELS[key],
      capital(value),
      limitIs === 'most' ? 'at most' : 'at least',
      limit,
    ];
  });
  const second = CRITERION_KEYS.map((key) => {
    const { needs, required, waivedBy, doesNotApply } = CRITERION_DEFINITIONS[key];
    return [
      code(key),
      needs,
      requiredWords(required),
      waivedBy.map(limitCode).join(', '),
      doesNotApply ?? '',
    ];
  });
  return [
    '\n## Criteria\n\n',
    paragraph(
      'The questions that `suitability` and `compare` answer. The verdict is "not suitable" where one of them fails, or where the run shows by itself what speaks against plugging, such as a short circuit or a tripped relay.',
    ),
    `\n${rules.map((rule) => `- ${paragraph(rule).replaceAll('\n', '\n  ').trimEnd()}\n`).join('')}`,
    '\n### What is compared with what\n\n',
    markdownTable(['key', 'in the report', 'value', '', 'limit'], first),
    '\n### What each needs\n\n',
    markdownTable(['key', 'needs', 'required', 'waived by `none` in', 'does not apply'], second),
  ].join('');
}

function limitCode(key: string): string {
  return code(`limits.${key}`);
}

function requiredWords(required: 'always' | 'never' | { readonly when: string }): string {
  if (typeof required === 'object') return `when ${required.when}`;
  return required === 'always' ? 'yes' : 'no';
}
