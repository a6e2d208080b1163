import { tableFromIPC } from 'apache-arrow';
import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import Papa from 'papaparse';
import { readParquet } from 'parquet-wasm';
import { describe, expect, it } from 'vitest';
import { surveyCsv } from '../../../src/recording/surveyCsv.ts';
import { surveyParquet } from '../../../src/recording/surveyParquet.ts';
import type { Survey, SurveyRow } from '../../../src/survey/spec/survey.ts';
import { CLOSING, drawnRows, fakeSurvey, INERTIA, source } from '../report/survey/fakeSurvey.ts';

const SURVEY = fakeSurvey({ fields: [INERTIA, CLOSING], verdict: true });
/** Numbers whose bits are easily lost: neighbours, both noughts, ends of the range, 17 digits. */
const NUMBERS = [
  0.1 + 0.2,
  0.3,
  -0,
  0,
  Number.MIN_VALUE,
  -Number.MAX_VALUE,
  1 / 3,
  5e-324,
  123456789.12345679,
  1e21,
];

function trickyRows(): SurveyRow[] {
  return NUMBERS.map((value, run) => ({
    run: 3 * run,
    values: [value, -value],
    status: 'good',
    reason: null,
    metrics: [run % 3 === 0 ? null : value, value, null],
    verdict: run % 2 === 0 ? null : { outcome: 'notJudged', decisive: 'stopTime shaftTorque' },
  }));
}

const FAILED: SurveyRow = {
  run: 99,
  values: [0.05, 20],
  status: 'failed',
  reason: '=SUM(A1), "quoted",\nand a second line é Ω 電',
  metrics: [null, null, null],
  verdict: null,
};

const bytesOf = (survey: Survey, rows: readonly SurveyRow[]) =>
  Buffer.concat([...surveyParquet(survey, source(rows))]);
const bits = (value: unknown) => {
  if (typeof value !== 'number') return value ?? null;
  return new BigUint64Array(new Float64Array([value]).buffer)[0];
};

describe('survey.csv', () => {
  const parsed = (rows: readonly SurveyRow[], survey = SURVEY) =>
    Papa.parse<string[]>([...surveyCsv(survey, source(rows))].join('').trimEnd(), { newline: '\r\n' });

  it('names every column with its unit', () => {
    expect(parsed([]).data[0]).toEqual([
      'run',
      'load.inertia [kg m^2]',
      'starter.closingTime [ms]',
      'status',
      'reason',
      'plugMinimumTorque [N·m]',
      'plugPeakCurrent [A]',
      'stopTimeFromTouch [s]',
      'verdict',
      'decisive',
    ]);
    expect(parsed([], fakeSurvey()).data[0]).not.toContain('verdict');
  });

  it('read by another program gives every number back', () => {
    const { data, errors } = parsed(trickyRows());
    expect(errors).toEqual([]);
    for (const [k, row] of trickyRows().entries()) {
      const cells = data[k + 1]!;
      expect(cells).toHaveLength(10);
      expect(cells[0]).toBe(String(row.run));
      expect(
        cells
          .slice(1, 3)
          .map(Number)
          .map((x) => x + 0),
      ).toEqual(row.values.map((x) => x + 0));
      expect(cells.slice(5, 8).map((text) => (text === '' ? null : Number(text) + 0))).toEqual(
        row.metrics.map((x) => (x === null ? null : x + 0)),
      );
      expect(cells[8]).toBe(row.verdict?.outcome ?? '');
      expect(cells[9]).toBe(row.verdict?.decisive ?? '');
    }
  });

  it('keeps quotes and line ends within their field, and gives a spreadsheet no formula', () => {
    const { data, errors } = parsed([FAILED]);
    expect(errors).toEqual([]);
    expect(data).toHaveLength(2);
    expect(data[1]![4]).toBe(`'${FAILED.reason}`);
    expect(data[1]!.slice(5, 8)).toEqual(['', '', '']);
  });

  it('comes in pieces, a row each, as they are asked for', () => {
    let taken = 0;
    const rows = drawnRows(SURVEY, 100);
    const counted = function* () {
      for (const row of rows) {
        taken++;
        yield row;
      }
    };
    const pieces = surveyCsv(SURVEY, counted)[Symbol.iterator]();
    pieces.next();
    expect(pieces.next().value).toMatch(/^0,.*\r\n$/u);
    expect(taken).toBe(1);
  });
});

/** Rows of a group. */
const GROUP = 50;

describe('survey.parquet', () => {
  const rows = [...trickyRows(), FAILED];
  const bytes = bytesOf(SURVEY, rows);
  const expected = rows.map((row) => [
    row.run,
    ...row.values,
    row.status,
    row.reason,
    ...row.metrics,
    row.verdict?.outcome ?? null,
    row.verdict?.decisive ?? null,
  ]);

  it('read by the library’s own reader has every value, every bit of it', async () => {
    const file = Uint8Array.from(bytes).buffer;
    const objects = await parquetReadObjects({ file });
    expect(objects.map((object) => Object.values(object).map(bits))).toEqual(
      expected.map((row) => row.map(bits)),
    );
    expect(Object.keys(objects[0]!)).toEqual([
      'run',
      'load.inertia',
      'starter.closingTime',
      'status',
      'reason',
      'plugMinimumTorque',
      'plugPeakCurrent',
      'stopTimeFromTouch',
      'verdict',
      'decisive',
    ]);
  });

  it('read by an independent reader (the Rust implementation of Apache Arrow) has every value, every bit of it', () => {
    const table = tableFromIPC(readParquet(bytes).intoIPCStream());
    const read = table.toArray().map((row) => Object.values(row.toJSON()).map(bits));
    expect(read).toEqual(expected.map((row) => row.map(bits)));
    expect(table.schema.fields.map(({ type, nullable }) => [String(type), nullable])).toEqual([
      ['Int32', false],
      ['Float64', false],
      ['Float64', false],
      ['Utf8', false],
      ['Utf8', true],
      ['Float64', true],
      ['Float64', true],
      ['Float64', true],
      ['Utf8', true],
      ['Utf8', true],
    ]);
  });

  it('says what it holds: title, seed, units and meanings', () => {
    const { metadata } = tableFromIPC(readParquet(bytes).intoIPCStream()).schema;
    expect(metadata.get('title')).toBe(SURVEY.title);
    expect(metadata.get('seed')).toBe('7');
    expect(metadata.get('scenario')).toBe('belt.yaml');
    expect(metadata.get('load.inertia.unit')).toBe('kg m^2');
    expect(metadata.get('plugMinimumTorque.unit')).toBe('N·m');
    expect(metadata.get('plugMinimumTorque.description')).toMatch(/Most negative air-gap torque/u);
  });

  it('has the same bytes each time and is put out a group of rows at a time', () => {
    expect(bytesOf(SURVEY, rows).equals(bytes)).toBe(true);
    const survey = fakeSurvey({ fields: [CLOSING], metrics: ['plugPeakCurrent'] });
    const many = drawnRows(survey, GROUP + 5);
    let taken = 0;
    const counted = function* () {
      for (const row of many) {
        taken++;
        yield row;
      }
    };
    const pieces = surveyParquet(survey, counted, GROUP)[Symbol.iterator]();
    const first = pieces.next().value!;
    expect(taken).toBe(GROUP);
    const whole = [first];
    for (let piece = pieces.next(); piece.done !== true; piece = pieces.next()) whole.push(piece.value);
    const file = Buffer.concat(whole);
    expect(
      parquetMetadata(Uint8Array.from(file).buffer).row_groups.map((group) => Number(group.num_rows)),
    ).toEqual([GROUP, 5]);
    const table = tableFromIPC(readParquet(file).intoIPCStream());
    expect(table.numRows).toBe(many.length);
    const column = table.getChild('plugPeakCurrent')!;
    many.forEach((row, k) => {
      if (!Object.is(column.get(k), row.metrics[0])) throw new Error(`row ${k} differs`);
    });
  });

  it('tells 0 from −0 where both come again and again', () => {
    const many = Array.from({ length: 200 }, (_, run) => ({
      ...trickyRows()[1]!,
      run,
      values: [run % 2 === 0 ? 0 : -0, 20],
    }));
    const column = tableFromIPC(readParquet(bytesOf(SURVEY, many)).intoIPCStream()).getChild('load.inertia')!;
    expect(many.every((row, k) => Object.is(column.get(k), row.values[0]))).toBe(true);
  });

  it('is not made of no rows', () => {
    expect(() => bytesOf(SURVEY, [])).toThrow(RangeError);
  });
});
