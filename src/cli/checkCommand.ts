import { estimationLines } from '../report/estimationText.ts';
import { cleanText } from '../report/plainText.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { assertSolvable } from './solvable.ts';

/** Checks a scenario file without running it: also what shows only when circuit, rating and load are solved. */
export function checkCommand(file: string, io: CliIo): ExitCode {
  const scenarioFile = readScenarioFile(file, io);
  const { scenario, estimation } = scenarioFile;
  placed(scenarioFile, () => assertSolvable(scenario));
  io.out(`${file}: in order (${cleanText(scenario.title)})\n`);
  if (estimation !== null)
    for (const line of estimationLines(estimation, 'SI')) io.out(`${cleanText(line)}\n`);
  return EXIT.done;
}
