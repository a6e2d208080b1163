import type { ReportFile } from './buildReportFiles.ts';
import type { FigureSpec } from './figureSpec.ts';
import type { JudgedRun } from './judgedRun.ts';
import type { JudgementOptions } from './judgement/judgementOptions.ts';
import { timeCurrentFigure } from './judgement/timeCurrentFigure.ts';
import { waysToStopFigure } from './judgement/waysToStopFigure.ts';
import { renderCriteriaCsv } from './renderCriteriaCsv.ts';
import { renderSuitabilityHtml } from './renderSuitabilityHtml.ts';
import { renderSvg } from './renderSvg.ts';

/** All files of a judgement's folder: the note, its figures as SVG in light colours, and the criteria as a table. */
export function buildSuitabilityFiles(judged: JudgedRun, options: JudgementOptions): ReportFile[] {
  const figures: readonly (FigureSpec | null)[] = [
    timeCurrentFigure(judged.suitability.timeCurrent, options.units),
    waysToStopFigure(judged.alternatives, options.units),
  ];
  return [
    { name: 'suitability.html', content: renderSuitabilityHtml(judged, options) },
    ...figures
      .filter((spec) => spec !== null)
      .map((spec) => ({
        name: `figures/${spec.id}.svg`,
        content: `${renderSvg(spec, { theme: 'light' })}\n`,
      })),
    { name: 'criteria.csv', content: renderCriteriaCsv(judged.suitability.criteria) },
  ];
}
