import { ratedPoint } from '../machine/ratedPoint.ts';
import { cleanText } from '../report/plainText.ts';
import { shaftOf } from '../shaft/shaft.ts';
import { initialRunState } from '../simulate/runState.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { readScenarioFile } from './readScenarioFile.ts';

/** Checks a scenario file without running it: also what shows only when circuit, rating and load are solved. */
export function checkCommand(file: string, io: CliIo): ExitCode {
  const scenarioFile = readScenarioFile(file, io);
  const { scenario } = scenarioFile;
  placed(scenarioFile, () => {
    ratedPoint(scenario.machine, scenario.supply);
    initialRunState(scenario, shaftOf(scenario));
  });
  io.out(`${file}: in order (${cleanText(scenario.title)})\n`);
  return EXIT.done;
}
