import path from 'node:path';
import type { ReportFile } from '../report/buildReportFiles.ts';
import { renderWiring } from '../report/wiring/renderWiring.ts';
import { schemeStarter } from '../report/wiring/schemeStarter.ts';
import type { SymbolSet } from '../report/wiring/symbolSet.ts';
import { SCHEME_OF_WORD, SCHEME_WORDS } from '../scenario/controlWords.ts';
import type { StarterData } from '../scenario/scenario.ts';
import { circuitOfStarter } from '../starter/control/schemes.ts';
import { InputError } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** Options of the command as the command line gives them. */
export interface WiringCommandOptions {
  /** Folder for the drawings. */
  readonly out?: string;
  readonly symbols: SymbolSet;
}

/** Name of a scenario's drawing in its folder. */
const DRAWING = 'wiring.svg';
/** What the drawings of all schemes are filed under where no folder is named. */
const ALL_SCHEMES = 'wiring';

/**
 * Draws power and control circuit of a scenario's starter; without a file those of all schemes.
 *
 * @throws InputError when the scenario has no control circuit, or the drawing cannot be written
 */
export function wiringCommand(file: string | undefined, options: WiringCommandOptions, io: CliIo): ExitCode {
  const drawings = file === undefined ? schemeDrawings(options) : [scenarioDrawing(file, options, io)];
  const folder = options.out ?? reportFolder(file ?? ALL_SCHEMES);
  writeFiles(folder, drawings, io);
  for (const { name } of drawings) io.out(`Drawing: ${path.join(folder, name)}\n`);
  return EXIT.done;
}

function schemeDrawings(options: WiringCommandOptions): readonly ReportFile[] {
  return SCHEME_WORDS.flatMap((word) => {
    const content = drawing(schemeStarter(SCHEME_OF_WORD[word]), options);
    return content === null ? [] : [{ name: `${word.replaceAll(' ', '-')}.svg`, content }];
  });
}

function scenarioDrawing(file: string, options: WiringCommandOptions, io: CliIo): ReportFile {
  const { scenario } = readScenarioFile(file, io);
  const content = drawing(scenario.starter, options, scenario.title);
  if (content === null)
    throw new InputError(
      `${file}: the starter has no control circuit to draw; expected starter.control with a scheme (${SCHEME_WORDS.join(', ')})`,
    );
  return { name: DRAWING, content };
}

/** Null where the starter has no control circuit. */
function drawing(starter: StarterData, { symbols }: WiringCommandOptions, title?: string): string | null {
  const circuit = circuitOfStarter(starter);
  if (circuit === null) return null;
  return `${renderWiring(circuit, { starter, symbols, ...(title === undefined ? {} : { title }) })}\n`;
}
