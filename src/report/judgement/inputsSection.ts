import type { RunResult } from '../../measure/result.ts';
import { paragraph } from '../markup.ts';
import { inputTables, originTable, ratedTable } from '../reportTables.ts';
import type { JudgementOptions } from './judgementOptions.ts';

/** What the judgement was computed with, and where each input comes from. */
export function inputsSection(result: RunResult, { units, origins }: JudgementOptions): string {
  const { description } = result.scenario;
  return `<section><h2>Inputs</h2>
${description === '' ? '' : paragraph(description)}
${inputTables(result, units)}
${ratedTable(result, units)}
${origins === undefined ? paragraph('Where each input comes from was not recorded in this run.', 'muted') : originTable(origins)}
</section>`;
}
