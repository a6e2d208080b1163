import type { Criterion } from '../../assess/criterion.ts';
import { CAUTIONS } from '../cautions.ts';
import { genericLifeCautions } from '../contactLives.ts';
import type { JudgedRun } from '../judgedRun.ts';
import { CRITERION_LABELS } from '../judgementWords.ts';
import { keyNumberList } from '../keyNumberList.ts';
import { keyNumbers } from '../keyNumbers.ts';
import { paragraph } from '../markup.ts';
import { escapeMarkup } from '../plainText.ts';
import { statusLine } from '../statusLine.ts';
import type { JudgementOptions } from './judgementOptions.ts';
import { outcomeMark } from './outcomeMark.ts';
import { printedCriteria } from './printedCriteria.ts';
import { signatureLines, titleBlock } from './titleBlock.ts';

/** A longer title is set smaller, characters. */
const LONG_TITLE = 90;

/** What the note answers. */
export const QUESTION =
  'Does plugging suit this load, how often may it be done, and how long will the contacts last?';

/** What the signature stands under. */
export const SCOPE =
  'This note judges by the criteria of its table and by nothing else; nothing in it replaces local codes, the makers’ instructions or licensed practice.';

const VERDICT_FORM = { suitable: 'pass', notSuitable: 'fail', notJudged: 'open' } as const;

/** The page that stands alone: title block, question, verdict, numbers, criteria, cautions, signatures. */
export function firstPage(judged: JudgedRun, { units }: JudgementOptions): string {
  const { result, suitability, bands } = judged;
  const { scenario } = result;
  const { verdict, criteria } = suitability;
  const ranges =
    bands == null
      ? []
      : [`In brackets: the range over ${bands.members} circuits that the data allow. ${bands.sentence}`];
  const remarks = [
    ...genericLifeCautions(suitability),
    ...ranges,
    ...leftOpenSentences(criteria),
    ...verdict.reservations,
  ];
  return `<section class="first judged">
<header style="padding-inline:0">
${result.usable ? '' : `<p class="alarm" role="alert">${escapeMarkup(statusLine(result))}</p>`}
<p class="kind">Calculation note: suitability of plugging, ${scenario.machine.rotorResistors === undefined ? 'cage' : 'slip-ring'} induction motor</p>
<h1${scenario.title.length > LONG_TITLE ? ' class="long"' : ''}>${escapeMarkup(scenario.title)}</h1>
</header>
${titleBlock(scenario.titleBlock)}
${paragraph(QUESTION, 'question')}
<p class="finding verdict">${outcomeMark(VERDICT_FORM[verdict.outcome])}<span>${escapeMarkup(verdict.sentence)}</span></p>
${keyNumberList(keyNumbers(result, units, bands, judged.worst ?? null))}
${printedCriteria(suitability, units)}
${paragraph(remarks.join(' '), 'small')}
${paragraph(`${CAUTIONS.join(' ')} ${SCOPE}`, 'cautions small')}
${signatureLines()}
</section>`;
}

/** Criteria without which the verdict stands nevertheless. */
function leftOpenSentences(criteria: readonly Criterion[]): string[] {
  const names = criteria
    .filter(({ outcome, required }) => outcome === 'notJudged' && !required)
    .map(({ key }) => CRITERION_LABELS[key].toLowerCase());
  return names.length === 0 ? [] : [`Not judged, and not needed for the verdict: ${names.join('; ')}.`];
}
