import { cutToWidth } from './displayWidth.ts';
import { estimationSection } from './estimationSection.ts';
import type { JudgedRun } from './judgedRun.ts';
import { alternativesSection } from './judgement/alternativesSection.ts';
import { consequencesSection } from './judgement/consequencesSection.ts';
import { extremesSection } from './judgement/extremesSection.ts';
import { firstPage } from './judgement/firstPage.ts';
import { heatingSection } from './judgement/heatingSection.ts';
import { inputsSection } from './judgement/inputsSection.ts';
import type { JudgementOptions } from './judgement/judgementOptions.ts';
import { methodSection } from './judgement/methodSection.ts';
import { notePage } from './judgement/notePage.ts';
import { protectionSection } from './judgement/protectionSection.ts';
import { relaySection } from './judgement/relaySection.ts';
import { remarksSection } from './judgement/remarksSection.ts';
import { sourcesSection } from './judgement/sourcesSection.ts';
import { wearSection } from './judgement/wearSection.ts';
import { cleanText } from './plainText.ts';

/** Longest title in the footer of a printed page, columns: it shares the line with the page number. */
const FOOTER_TITLE = 60;

/**
 * The judgement as one HTML file that needs nothing else: the calculation note an engineer signs under. Its first page stands
 * alone.
 */
export function renderSuitabilityHtml(judged: JudgedRun, options: JudgementOptions): string {
  const { result, suitability, alternatives, extremes } = judged;
  const { scenario, rated } = result;
  const { units } = options;
  return notePage({
    title: `${scenario.title}: suitability of plugging`,
    footer: `${cutToWidth(cleanText(scenario.title), FOOTER_TITLE)} · suitability of plugging`,
    version: options.version,
    body: [
      firstPage(judged, options),
      remarksSection(suitability.criteria),
      alternativesSection(alternatives, suitability.wear, rated, units),
      extremesSection(extremes, units),
      heatingSection(suitability.heating, units),
      relaySection(suitability.heating, units),
      wearSection(suitability.wear, scenario.contactors, judged.instants?.sentence ?? '', units),
      protectionSection(suitability.timeCurrent, units),
      consequencesSection(suitability.consequences),
      inputsSection(result, options),
      estimationSection(result, judged, units),
      methodSection(scenario),
      sourcesSection(scenario, suitability),
    ],
  });
}
