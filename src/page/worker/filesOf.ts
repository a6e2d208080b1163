import {
  buildReportFiles,
  buildSuitabilityFiles,
  commissioningSheet,
  judgement,
  parseScenarioWithOrigins,
  plugBands,
  type ReportFile,
  renderSheetCsv,
  renderSheetHtml,
  renderSuitabilityJson,
  simulate,
} from '../../index.ts';
import type { Outside } from './engine.ts';
import type { FileKind, FilesOrder } from './protocol.ts';
import { withHidden } from './withHidden.ts';

/**
 * Files of a scenario by the functions that the command line writes its folders with.
 *
 * @throws ScenarioError when the text is no scenario; Error when the scenario has no control circuit to make a sheet of
 */
export async function filesOf(
  { text, fileName, units, hidden }: FilesOrder,
  kind: FileKind,
  outside: Outside,
): Promise<readonly ReportFile[]> {
  const { scenario: written, origins, estimation, nameplate } = parseScenarioWithOrigins(text, { fileName });
  const scenario = withHidden(written, hidden);
  const { version } = outside;
  switch (kind) {
    case 'sheet': {
      if (scenario.starter.control === undefined)
        throw new Error('The starter has no control circuit to test: choose a scheme first.');
      const sheet = commissioningSheet(scenario);
      return [
        { name: 'sheet.html', content: renderSheetHtml(sheet, { units, version }) },
        { name: 'sheet.csv', content: renderSheetCsv(sheet, { units }) },
      ];
    }
    case 'note': {
      const found = judgement(scenario, { cageIsFitted: estimation !== null, extremes: false });
      const bands = nameplate === null ? null : plugBands(scenario, nameplate);
      const judged = { ...found, estimation, nameplate, bands };
      return [
        ...buildSuitabilityFiles(judged, { units, version, origins }),
        { name: 'suitability.json', content: renderSuitabilityJson(judged, { version }) },
      ];
    }
    case 'report': {
      const bands = nameplate === null ? null : plugBands(scenario, nameplate);
      const plotlySource = await outside.plotlySource();
      const background = { estimation, nameplate, bands };
      return buildReportFiles(simulate(scenario), { units, version, plotlySource, origins, ...background });
    }
    default:
      return kind satisfies never;
  }
}
