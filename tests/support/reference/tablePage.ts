import { WEAR_EVENTS } from '../../../src/assess/wear/contactWearTypes.ts';
import { LOG_COLUMNS, LOG_OPERATIONS } from '../../../src/recording/logColumns.ts';
import {
  type CellKind,
  PLAN_COLUMN_NAMES,
  PLAN_COLUMNS,
  type PlanColumn,
} from '../../../src/recording/planColumns.ts';
import { PLAN_COLUMN_WORDS } from '../../../src/recording/planColumnWords.ts';
import { TABLE_YEARS } from '../../../src/recording/tableYears.ts';
import { dimensions } from '../../../src/scenario/dimension.ts';
import { COUNTER_DISAGREES } from '../../../src/survey/plan/uncertainty.ts';
import { code, GENERATED, markdownTable, paragraph } from './markdownTable.ts';

/** The cells that an example stands for: some columns show two ways of writing. */
export function cellsOf({ example }: Pick<PlanColumn, 'example'>): readonly string[] {
  return example.split('` or `');
}

/** The page of the columns of tables: those of a plan, and of a log of operations. */
export function tablePage(): string {
  return [
    `${GENERATED}\n# Table reference\n\n`,
    paragraph(
      'Every column of the two tables the program reads: starters for `plan`, a log of operations for `wear`. Both are CSV text in UTF-8 with a header line; commas, semicolons or tabs stand between the cells, and a cell that holds one of them stands in quotes. What is wrong is listed with line and column.',
    ),
    '\n## Starters: `plan`\n\n',
    paragraph(
      'One row a starter, in any order of rows and columns. Capitals, hyphens and underscores in the names of columns do not count; a column that is not listed here is an error. Columns may be left out altogether. An empty cell, `-` or `?` means not known. Every quantity has its unit in the cell. A row that lacks what is needed is listed as not planned, and the rest is planned.',
    ),
    '\n',
    paragraph(
      '**A counter must be one since the last change of contacts.** Most counters run since the contactors were new and are never set back. Then write under `counter` the reading less that on the day of the change, and the reading itself under `operations since new`. Where the reading on that day is not known, leave `counter` and `counter date` empty and state `operations per day` and `contacts changed`: a reading since new taken for one since the change brings the date of the contacts too early, and beside an inspection, whose wear is then spread over too many operations, too late.',
    ),
    '\n',
    paragraph(
      `Where a row has both, the counter counts up to its date and \`operations per day\` from then on. Where they differ by more than a factor of ${COUNTER_DISAGREES} (common practice, no source) list, report and terminal say so. The ranges of dates that follow from what is not known: [metrics and criteria](metrics-and-criteria.md).`,
    ),
    `\n- **without it**: \`needed\`, or what holds where the cell is empty.
- **example**: a cell the parser takes. It is no advice.\n\n`,
    markdownTable(
      ['column', 'write', 'meaning', 'without it', 'example'],
      PLAN_COLUMN_NAMES.map((name) => {
        const { meaning, leftOut } = PLAN_COLUMN_WORDS[name];
        const column: PlanColumn = PLAN_COLUMNS[name];
        return [code(name), whatIs(column.kind), meaning, leftOut, cellsOf(column).map(code).join(' or ')];
      }),
    ),
    '\nA whole table: [when-are-the-contacts-due.csv](../maintenance-planner/when-are-the-contacts-due.csv).\n',
    '\n## A log of operations: `wear`\n\n',
    paragraph(
      'One line an operation of one starter. Both columns are needed; others are left alone. Lines out of order are sorted; a line that repeats another to the second counts once, while operations of a day alone all count.',
    ),
    '\n',
    markdownTable(
      ['column', 'or', 'meaning', 'example'],
      Object.values(LOG_COLUMNS).map(({ names: [best, ...others], meaning, examples }) => [
        code(best),
        others.map(code).join(', '),
        meaning,
        examples.map(code).join(', '),
      ]),
    ),
    '\n',
    markdownTable(
      ['operation', 'or', 'what one line counts'],
      WEAR_EVENTS.map((event) => {
        const { words, meaning } = LOG_OPERATIONS[event];
        const [best, ...others] = words;
        return [code(best), others.map(code).join(', '), meaning];
      }),
    ),
    '\nA whole log: [what-has-the-log-used-up.csv](../maintenance-planner/what-has-the-log-used-up.csv).\n',
  ].join('');
}

/** What may stand in a cell. */
function whatIs(kind: CellKind): string {
  switch (kind.is) {
    case 'text':
      return 'text';
    case 'quantity': {
      const { dimension, min, max, aboveMin } = kind.bounds;
      const { spellings, si } = dimensions[dimension];
      return `number with unit (${spellings.join(', ')}), ${aboveMin === true ? 'above' : 'from'} ${min} ${si} to ${max} ${si}`;
    }
    case 'number': {
      const whole = kind.whole === 'even' ? 'even whole number' : 'plain number';
      return `${whole}, ${kind.aboveMin === true ? 'above' : 'from'} ${kind.min} to ${kind.max}`;
    }
    case 'share':
      return `percentage, or plain number up to 1, ${kind.aboveMin === true ? 'above' : 'from'} 0 % to 100 %`;
    case 'multiple':
      return 'multiple of the rated one: number with times or %, or plain number';
    case 'lockedRotorCurrent':
      return 'multiple of rated current (times or %), or current (A, kA, mA)';
    case 'date':
      return `day as YYYY-MM-DD, from ${TABLE_YEARS.first} to ${TABLE_YEARS.last}`;
    case 'word':
      return kind.words.map(code).join(', ');
  }
}
