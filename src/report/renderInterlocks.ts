import type { InterlockReport, PropertyVerdict } from '../starter/interlocks/checkInterlocks.ts';
import type { Counterexample } from '../starter/interlocks/describePath.ts';
import { displayWidth, padToWidth, wrapToWidth } from './displayWidth.ts';
import {
  ASSUMPTIONS,
  counterexampleOf,
  faultBreaks,
  faultTitle,
  formWords,
  outcomeSentence,
  propertyTitle,
  remarksOn,
  VERDICT_WORDS,
} from './interlocksTable.ts';

/** How the check is written in the terminal. */
export interface InterlocksTerminalOptions {
  /** Columns no line exceeds; 80 by default. */
  readonly width?: number;
  /** Bold by escape sequences. */
  readonly colour: boolean;
  /** Each step of a counterexample on a line of its own. */
  readonly longSteps: boolean;
}

/** The exhaustive check of one or more starters as plain text. */
export function renderInterlocks(
  reports: readonly InterlockReport[],
  options: InterlocksTerminalOptions,
): string {
  const width = options.width ?? 80;
  const strong = (text: string) => (options.colour ? `\u001B[1m${text}\u001B[0m` : text);
  const all = reports.reduce((sum, { states }) => sum + states.all, 0);
  const remarks = [...new Set(reports.flatMap(remarksOn))];
  const lines = [
    ...reports.flatMap((report) => [...oneReport(report, width, strong, options.longSteps), '']),
    strong('How to read this'),
    ...[...ASSUMPTIONS, ...remarks].flatMap((text) => item(text, '- ', width)),
    ...item(`States explored in all: ${all}.`, '- ', width),
  ];
  return `${lines.join('\n')}\n`;
}

function oneReport(
  report: InterlockReport,
  width: number,
  strong: (text: string) => string,
  longSteps: boolean,
): string[] {
  const { healthy } = report.states;
  const breaking = report.faults.filter((fault) => faultBreaks(fault).length > 0);
  const harmless = report.faults.filter((fault) => faultBreaks(fault).length === 0);
  return [
    ...wrapToWidth(report.title, width).map(strong),
    ...wrapToWidth(formWords(report), width),
    ...wrapToWidth(outcomeSentence(report), width),
    '',
    strong('Healthy starter'),
    ...report.verdicts.flatMap((row) => propertyLines(row, width, longSteps)),
    `  States explored: ${healthy}`,
    '',
    strong('What a fault breaks besides'),
    ...breaking.flatMap((fault) => [
      ...item(faultTitle(fault), '  ', width),
      ...faultBreaks(fault).flatMap((text) => item(text, '    - ', width)),
    ]),
    ...(harmless.length === 0 ? [] : ['  Nothing else is broken by:']),
    ...harmless.flatMap((fault) => item(faultTitle(fault), '    - ', width)),
    `  States explored with faults, and at any speed: ${report.states.all - healthy}`,
  ];
}

function propertyLines({ property, verdict }: PropertyVerdict, width: number, longSteps: boolean): string[] {
  const words = VERDICT_WORDS[verdict.kind];
  const title = propertyTitle(property);
  const column = Math.max(...Object.values(VERDICT_WORDS).map(displayWidth));
  const head = wrapToWidth(title, width - 2 - column - 2);
  const lines = head.map((line, i) =>
    `  ${i === 0 ? padToWidth(words, column) : ' '.repeat(column)}  ${line}`.trimEnd(),
  );
  const indent = ' '.repeat(2 + column + 2);
  if (verdict.kind === 'doesNotApply') return [...lines, ...item(verdict.why, indent, width)];
  const counterexample = counterexampleOf(verdict);
  return counterexample === null
    ? lines
    : [...lines, ...exampleLines(counterexample, indent, width, longSteps)];
}

function exampleLines(
  { steps, outcome }: Counterexample,
  indent: string,
  width: number,
  longSteps: boolean,
): string[] {
  const number = (i: number) => `${String(i + 1).padStart(2)} `;
  const result = `then ${outcome}`;
  if (!longSteps) return item(`${steps.join('; ')}; ${result}.`, indent, width);
  return [
    ...steps.flatMap((step, i) => item(step, indent + number(i), width)),
    ...item(result, `${indent}   `, width),
  ];
}

/** A text behind a mark, its further lines indented to it. */
function item(text: string, mark: string, width: number): string[] {
  return wrapToWidth(text, width - mark.length).map((line, i) =>
    i === 0 ? mark + line : ' '.repeat(mark.length) + line,
  );
}
