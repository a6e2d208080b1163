import path from 'node:path';
import { dateOfDay, dayOfDate, yearOfDay } from '../numeric/calendarDay.ts';
import { dayAfter, latestDay, planTable } from '../recording/planTable.ts';
import { TABLE_YEARS } from '../recording/tableYears.ts';
import { renderPlanCalendar } from '../report/renderPlanCalendar.ts';
import { renderPlanCsv } from '../report/renderPlanCsv.ts';
import { renderPlanHtml } from '../report/renderPlanHtml.ts';
import { renderPlanTerminal } from '../report/renderPlanTerminal.ts';
import type { PlanRow } from '../survey/plan/planRow.ts';
import { planStarters } from '../survey/plan/planStarters.ts';
import { simulatedWear } from '../survey/plan/simulatedWear.ts';
import { InputError } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { readTextFile } from './readTextFile.ts';
import { VERSION } from './version.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** Options of the command as the command line gives them. */
export interface PlanCommandOptions {
  /** Folder for the plan. */
  readonly out?: string;
  /** YYYY-MM-DD */
  readonly asOf?: string;
  readonly units: 'si' | 'us';
}

/** Names of the files in their folder. */
const FILES = { table: 'plan.csv', report: 'plan.html', calendar: 'plan.ics' } as const;

/** Bytes above which a table is refused unread. */
const LARGEST_TABLE = 2_000_000;

/**
 * Plans the replacement of contacts of all starters in a table and writes list, report and calendar.
 *
 * @throws InputError when the table cannot be read or has no day to plan from; ScenarioError with all that is wrong in it
 */
export function planCommand(file: string, options: PlanCommandOptions, io: CliIo): ExitCode {
  const text = readTextFile(
    file,
    { largest: LARGEST_TABLE, what: 'table of starters', expected: 'a table of starters (CSV)' },
    io,
  );
  const rows = planTable(text, file);
  const plan = planStarters(rows, dayOfPlan(file, rows, options.asOf), simulatedWear);
  const title = path.parse(file).name;
  const folder = options.out ?? reportFolder(file);
  const calendar = renderPlanCalendar(plan, { version: VERSION });
  const units = options.units === 'us' ? 'us' : 'SI';
  const origin = { latestInTable: options.asOf === undefined };
  writeFiles(
    folder,
    [
      { name: FILES.table, content: renderPlanCsv(plan) },
      { name: FILES.report, content: renderPlanHtml(plan, { units, version: VERSION, title, ...origin }) },
      ...(calendar === null ? [] : [{ name: FILES.calendar, content: calendar }]),
    ],
    io,
  );
  io.out(renderPlanTerminal(plan, origin));
  const at = (name: string) => path.join(folder, name);
  const events = calendar === null ? 'none: nothing is due within the horizon' : at(FILES.calendar);
  io.out(`\nReport: ${at(FILES.report)}\nList: ${at(FILES.table)}\nCalendar: ${events}\n`);
  return EXIT.done;
}

/** Never the clock's: the same table gives the same plan. */
function dayOfPlan(file: string, rows: readonly PlanRow[], asOf: string | undefined): number {
  if (asOf === undefined) {
    const latest = latestDay(rows);
    if (latest === null)
      throw new InputError(`${file}: no row has a date to plan from; expected one, or --as-of YYYY-MM-DD`);
    return latest;
  }
  const day = dayOfDate(asOf);
  if (day === null)
    throw new InputError(
      `--as-of ${asOf}: no date of the calendar; expected year, month and day, such as 2026-03-31`,
    );
  const { first, last } = TABLE_YEARS;
  if (yearOfDay(day) < first || yearOfDay(day) > last)
    throw new InputError(
      `--as-of ${asOf}: out of range; expected a date from ${first} to ${last}, as in the table`,
    );
  const later = dayAfter(rows, day);
  if (later !== null)
    throw new InputError(
      `--as-of ${dateOfDay(day)}: ${file} has a later date, ${later}; expected that day or a later one`,
    );
  return day;
}
