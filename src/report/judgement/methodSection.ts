import type { Scenario } from '../../scenario/scenario.ts';
import { list, paragraph } from '../markup.ts';
import { leftOut, methodOf } from '../reportText.ts';
import { JUDGEMENT_LEFT_OUT, JUDGEMENT_METHOD } from './judgementText.ts';

/** How the judgement and the run it stands on come about, and what both leave out. */
export function methodSection(scenario: Scenario): string {
  return `<section><h2>Method</h2>
${[...JUDGEMENT_METHOD, ...methodOf(scenario)].map((text) => paragraph(text)).join('\n')}
<h3>What is left out</h3>
${list([...JUDGEMENT_LEFT_OUT, ...leftOut(scenario)])}
</section>`;
}
