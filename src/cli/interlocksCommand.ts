import { renderInterlocks } from '../report/renderInterlocks.ts';
import { renderInterlocksJson } from '../report/renderInterlocksJson.ts';
import { controlCircuit } from '../starter/control/schemes.ts';
import {
  checkCircuit,
  checkInterlocks,
  everyPropertyHolds,
  type InterlockReport,
} from '../starter/interlocks/checkInterlocks.ts';
import { IMPROVED_CONTROLS, PLAIN_CONTROLS } from '../starter/interlocks/plainAndImproved.ts';
import { InputError } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { VERSION } from './version.ts';

/** Options of `interlocks`. */
export interface InterlocksOptions {
  readonly json?: boolean;
}

/**
 * Explores every reachable state of control circuits and prints which properties hold.
 *
 * @param file a scenario, whose starter is checked; undefined: every scheme, plain and improved
 */
export function interlocksCommand(file: string | undefined, options: InterlocksOptions, io: CliIo): ExitCode {
  if (file === undefined) {
    const controls = [...PLAIN_CONTROLS, ...IMPROVED_CONTROLS];
    print(
      controls.map((control) => checkCircuit(controlCircuit(control, false), control, false)),
      options,
      io,
    );
    return EXIT.done;
  }
  const { scenario } = readScenarioFile(file, io);
  const report = checkInterlocks(scenario.starter);
  if (report === null)
    throw new InputError(
      `${file}: its starter has no control circuit to check; expected starter: control: { scheme: … }`,
    );
  if ((scenario.starter.faults ?? []).length > 0)
    io.err('The faults of the scenario are left out: the check begins with the healthy starter.\n');
  print([report], options, io, true);
  return everyPropertyHolds(report) ? EXIT.done : EXIT.notSuitable;
}

function print(
  reports: readonly InterlockReport[],
  options: InterlocksOptions,
  io: CliIo,
  longSteps = false,
): void {
  if (options.json === true) io.out(renderInterlocksJson(reports, { version: VERSION }));
  else io.out(renderInterlocks(reports, { colour: io.colour, longSteps }));
}
