import { ByteWriter, ParquetWriter, type SchemaElement } from 'hyparquet-writer';
import type { Survey, SurveyRow } from '../survey/spec/survey.ts';
import type { RowSource } from '../survey/spread/rowSource.ts';
import {
  DECISIVE_COLUMN,
  fieldColumns,
  metricColumns,
  REASON_COLUMN,
  RUN_COLUMN,
  STATUS_COLUMN,
  type SurveyColumn,
  VERDICT_COLUMN,
} from './surveyColumns.ts';

/** Rows of one group: a few MB with a dozen columns. Chosen. */
const ROWS_PER_GROUP = 20_000;

/** A column of the file with the way from a row to its value. */
interface FileColumn extends SurveyColumn {
  readonly type: 'INT32' | 'DOUBLE' | 'STRING';
  /** Every row has a value. */
  readonly required: boolean;
  readonly valueIn: (row: SurveyRow) => number | string | null;
}

/**
 * The rows of a survey as an Apache Parquet file in pieces, a group of rows each: fields in the units of the survey,
 * metrics in SI, null where there is no value. The file's key-value metadata hold title, description, scenario, question
 * and seed, and of every column its unit and meaning under `name.unit` and `name.description`. Same rows, same bytes.
 *
 * @param rowsPerGroup number of rows that are held in memory at a time
 * @throws RangeError where there is no row: the library's file without any is not read by every reader
 */
export function* surveyParquet(
  survey: Survey,
  rows: RowSource,
  rowsPerGroup = ROWS_PER_GROUP,
): Iterable<Uint8Array> {
  const columns = fileColumns(survey);
  const writer = new ByteWriter();
  const file = new ParquetWriter({
    writer,
    schema: [{ name: 'survey', num_children: columns.length }, ...columns.map(schemaElement)],
    kvMetadata: metadata(survey, columns),
    createdBy: 'countertorque',
  });
  let group: SurveyRow[] = [];
  const writeGroup = () => {
    file.write({
      columnData: columns.map((column) => columnData(column, group)),
      rowGroupSize: group.length,
    });
    group = [];
    return taken(writer);
  };
  for (const row of rows()) {
    group.push(row);
    if (group.length === rowsPerGroup) yield writeGroup();
  }
  if (group.length > 0) yield writeGroup();
  if (file.num_rows === 0n) throw new RangeError('a Parquet file needs at least one row');
  file.finish();
  yield taken(writer);
}

/** What the writer holds, which it need not hold any longer; it goes on counting from there. */
function taken(writer: ByteWriter): Uint8Array {
  const bytes = writer.getBytes().slice();
  writer.index = 0;
  return bytes;
}

function fileColumns(survey: Survey): FileColumn[] {
  const text = { type: 'STRING', required: false } as const;
  const verdict: readonly FileColumn[] = [
    { ...VERDICT_COLUMN, ...text, valueIn: (row) => row.verdict?.outcome ?? null },
    { ...DECISIVE_COLUMN, ...text, valueIn: (row) => row.verdict?.decisive ?? null },
  ];
  return [
    { ...RUN_COLUMN, type: 'INT32', required: true, valueIn: ({ run }) => run },
    ...fieldColumns(survey).map(
      (column, k): FileColumn => ({
        ...column,
        type: 'DOUBLE',
        required: true,
        valueIn: ({ values }) => values[k]!,
      }),
    ),
    { ...STATUS_COLUMN, type: 'STRING', required: true, valueIn: ({ status }) => status },
    { ...REASON_COLUMN, ...text, valueIn: ({ reason }) => reason },
    ...metricColumns(survey).map(
      (column, k): FileColumn => ({
        ...column,
        type: 'DOUBLE',
        required: false,
        valueIn: ({ metrics }) => metrics[k] ?? null,
      }),
    ),
    ...(survey.verdict ? verdict : []),
  ];
}

function schemaElement({ name, type, required }: FileColumn): SchemaElement {
  return {
    name,
    repetition_type: required ? 'REQUIRED' : 'OPTIONAL',
    ...(type === 'STRING' ? { type: 'BYTE_ARRAY', converted_type: 'UTF8' } : { type }),
  };
}

function columnData({ name, type, valueIn }: FileColumn, group: readonly SurveyRow[]) {
  const data = group.map(valueIn);
  // A dictionary would make one of 0 and −0.
  return type === 'DOUBLE' ? { name, data, encoding: 'PLAIN' as const } : { name, data };
}

function metadata(survey: Survey, columns: readonly FileColumn[]): { key: string; value: string }[] {
  return [
    { key: 'title', value: survey.title },
    { key: 'description', value: survey.description },
    { key: 'scenario', value: survey.base.fileName },
    { key: 'ask', value: survey.task.kind },
    { key: 'seed', value: String(survey.seed) },
    ...columns.flatMap(({ name, unit, description }) => [
      { key: `${name}.unit`, value: unit },
      { key: `${name}.description`, value: description },
    ]),
  ];
}
