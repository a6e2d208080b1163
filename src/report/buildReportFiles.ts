import type { RunResult } from '../measure/result.ts';
import { energyFigure } from './energyFigure.ts';
import { type ReportOptions, renderReportHtml } from './renderReportHtml.ts';
import { renderSummaryJson } from './renderSummaryJson.ts';
import { renderSvg } from './renderSvg.ts';
import { renderTraceCsv, type TraceOptions } from './renderTraceCsv.ts';
import { sequenceFigures } from './sequenceFigure.ts';
import { switchingFigures } from './switchingFigures.ts';
import { timeFigure } from './timeFigure.ts';
import { torqueSpeedFigure } from './torqueSpeedFigure.ts';
import { hasControl, wiringDrawing } from './wiringOfRun.ts';

/** One file of the report folder, as text. */
export interface ReportFile {
  /** Path inside the report folder, with forward slashes. */
  readonly name: string;
  /** Text of the file. */
  readonly content: string;
}

/** All files of a report folder: the report, its figures as SVG in light colours, the trace and the summary. */
export function buildReportFiles(result: RunResult, options: ReportOptions & TraceOptions): ReportFile[] {
  const figures = [
    timeFigure(result, options),
    ...(hasControl(result) ? sequenceFigures(result, options) : []),
    ...switchingFigures(result, options),
    torqueSpeedFigure(result, options),
    energyFigure(result, options),
  ];
  return [
    { name: 'report.html', content: renderReportHtml(result, options) },
    ...figures.map((spec) => ({
      name: `figures/${spec.id}.svg`,
      content: `${renderSvg(spec, { theme: 'light' })}\n`,
    })),
    ...wiringFiles(result),
    { name: 'trace.csv', content: renderTraceCsv(result, options) },
    { name: 'summary.json', content: renderSummaryJson(result, options) },
  ];
}

/** The starter's drawing, where it has a control circuit. */
function wiringFiles(result: RunResult): ReportFile[] {
  const drawing = wiringDrawing(result);
  return drawing === null ? [] : [{ name: 'figures/wiring.svg', content: `${drawing}\n` }];
}
