import path from 'node:path';
import { buildMotorSheet } from '../report/buildMotorSheet.ts';
import { motorCurveTable } from '../report/motorCurveTable.ts';
import { motorFigure } from '../report/motorFigure.ts';
import { renderMotorJson } from '../report/renderMotorJson.ts';
import { renderMotorTerminal } from '../report/renderMotorTerminal.ts';
import { renderSvg } from '../report/renderSvg.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import type { SimulateOptions } from './simulateCommand.ts';
import { VERSION } from './version.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** Name of the drawing in its folder. */
const DRAWING = 'motor.svg';

/** Prints circuit, points and curves of the motor of a scenario, and draws the curves. */
export function motorCommand(file: string, options: SimulateOptions, io: CliIo): ExitCode {
  const scenarioFile = readScenarioFile(file, io);
  const sheet = placed(scenarioFile, () => buildMotorSheet(scenarioFile.scenario, scenarioFile.estimation));
  const units = options.units === 'us' ? 'us' : 'SI';
  const ascii = options.ascii === true;
  if (options.json === true) io.out(renderMotorJson(sheet, { version: VERSION }));
  else {
    io.out(renderMotorTerminal(sheet, { units, colour: io.colour, ascii }));
    io.out(`\n${motorCurveTable(sheet, { units, ascii })}`);
  }
  if (options.json !== true || options.out !== undefined) {
    const folder = options.out ?? reportFolder(file);
    const content = `${renderSvg(motorFigure(sheet, { units }), { theme: 'light' })}\n`;
    writeFiles(folder, [{ name: DRAWING, content }], io);
    const drawing = `Drawing: ${path.join(folder, DRAWING)}\n`;
    if (options.json === true) io.err(drawing);
    else io.out(`\n${drawing}`);
  }
  return EXIT.done;
}
