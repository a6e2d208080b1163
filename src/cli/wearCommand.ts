import { contactWear } from '../assess/wear/contactWear.ts';
import { dateOfDay, dayOfDate } from '../numeric/calendarDay.ts';
import { logUntil } from '../recording/logUntil.ts';
import { type OperationLog, parseOperationLog } from '../recording/operationLog.ts';
import { wearOfLog } from '../recording/wearOfLog.ts';
import { renderWearJson } from '../report/renderWearJson.ts';
import { renderWearTerminal } from '../report/renderWearTerminal.ts';
import type { WearReport } from '../report/wearReport.ts';
import { openingInstants } from '../survey/openingInstants.ts';
import { InputError } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { bothOf } from './readBoth.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { readTextFile } from './readTextFile.ts';
import { VERSION } from './version.ts';

/** Options of `wear` as the command line gives them. */
export interface WearCommandOptions {
  /** Print the figures as JSON. */
  readonly json?: boolean;
  /** YYYY-MM-DD */
  readonly asOf?: string;
}

/** Bytes above which a log is refused unread. */
const LARGEST_LOG = 60_000_000;

const DATE_EXPECTED = 'expected year, month and day, such as 2026-03-31';

/**
 * Counts what the operations of a log have used up of the contacts of a scenario's contactors, and prints what is left.
 *
 * @throws InputError and ScenarioError with all that is wrong in both files
 */
export function wearCommand(file: string, logFile: string, options: WearCommandOptions, io: CliIo): ExitCode {
  const until = options.asOf === undefined ? null : dayOfDate(options.asOf);
  if (options.asOf !== undefined && until === null)
    throw new InputError(`--as-of ${options.asOf}: no date of the calendar; ${DATE_EXPECTED}`);
  const [scenarioFile, whole] = bothOf(
    () => readScenarioFile(file, io),
    () => readLog(logFile, io),
  );
  const { scenario } = scenarioFile;
  const { contactors, duty } = scenario;
  if (contactors === undefined)
    throw new InputError(
      `${file}: contactors is missing; expected the section contactors with ratedCurrentAc3 at least`,
    );
  const { means, sentence } = placed(scenarioFile, () => openingInstants(scenario));
  if (means === null) {
    io.err(`${file}: the wear of an operation is not known. ${sentence}\n`);
    return EXIT.runFailed;
  }
  const perOperation = contactWear(means, contactors, duty ?? null, scenario);
  const log = until === null ? whole : logUntil(whole, until);
  const wear = wearOfLog(log, perOperation, duty?.contactsChanged ?? null);
  const report: WearReport = {
    scenario,
    logName: logFile,
    asOf: until === null ? wear.last : dateOfDay(until),
    wear,
    basis: { forward: perOperation.forward.basis, reverse: perOperation.reverse.basis },
    method: sentence,
  };
  if (options.json === true) io.out(renderWearJson(report, { version: VERSION }));
  else io.out(renderWearTerminal(report, { colour: io.colour }));
  return EXIT.done;
}

function readLog(file: string, io: CliIo): OperationLog {
  const limits = { largest: LARGEST_LOG, what: 'log', expected: 'a log of operations (CSV)' };
  return parseOperationLog(readTextFile(file, limits, io), file);
}
