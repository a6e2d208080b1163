import { dateOfDay } from '../numeric/calendarDay.ts';
import type { MaintenancePlan, PlannedPart, PlannedStarter } from '../survey/plan/plan.ts';
import { cutToWidth } from './displayWidth.ts';
import { formatQuantity, type UnitSystem } from './formatQuantity.ts';
import { htmlHead } from './htmlHead.ts';
import { list, paragraph, table } from './markup.ts';
import { cleanText, escapeMarkup } from './plainText.ts';
import {
  beyondText,
  dayText,
  dominantText,
  isOverdue,
  KITS_NOTE,
  operationsText,
  otherParts,
  PLAN_CAUTIONS,
  PLAN_METHOD,
  type PlanDayOrigin,
  planSentences,
  quarterText,
  shareText,
} from './planText.ts';
import { reportStyle } from './reportStyle.ts';

/** How the plan is written. */
export interface PlanOptions extends PlanDayOrigin {
  readonly units: UnitSystem;
  /** Version of the program. */
  readonly version: string;
  /** Name of the table. */
  readonly title: string;
}

/** Longest title in the footer of a printed page, columns. */
const FOOTER_TITLE = 60;

/** The maintenance plan as one HTML file that needs nothing else and prints on A4 or Letter. */
export function renderPlanHtml(plan: MaintenancePlan, options: PlanOptions): string {
  const title = escapeMarkup(options.title);
  const version = `countertorque ${options.version}`;
  const footer = `${cutToWidth(cleanText(options.title), FOOTER_TITLE)} · maintenance plan as of ${dateOfDay(plan.asOf)} · ${version}`;
  return `${htmlHead({ title: `${options.title}: maintenance plan`, program: version, style: reportStyle(footer) })}
<body>
<header>
<p class="kind">Maintenance plan as of ${dateOfDay(plan.asOf)}</p>
<h1>${title}</h1>
</header>
<main>
${planSentences(plan, options)
  .map((text, k) => paragraph(text, k === 0 ? 'finding' : undefined))
  .join('\n')}
<div class="cautions">${list(PLAN_CAUTIONS)}</div>
${dueSection(plan)}
${lackingSection(plan)}
${impossibleSection(plan)}
${sparesSection(plan)}
${groundsSection(plan, options.units)}
<section><h2>How the dates are found</h2>
${PLAN_METHOD.map((text) => paragraph(text)).join('\n')}
</section>
</main>
<footer class="screen"><p>${title} · ${escapeMarkup(version)}</p></footer>
</body>
</html>
`;
}

function dueSection({ starters, asOf }: MaintenancePlan): string {
  if (starters.length === 0) return '';
  const head = ['Starter', 'Part', 'Expected', 'Earliest', 'Latest', 'Assumption that moves it most'];
  const row = (name: string, part: PlannedPart) => [
    { text: name },
    { text: part.words },
    {
      text: `${isOverdue(part, asOf) ? 'overdue: ' : ''}${dayText(part.expected, asOf)}`,
      className: 'at' as const,
    },
    { text: dayText(part.earliest, asOf), className: 'at' as const },
    { text: dayText(part.latest, asOf), className: 'at' as const },
    { text: dominantText(part, asOf) },
  ];
  const rows = starters.flatMap((starter) => [
    row(named(starter), starter.parts[0]),
    ...otherParts(starter, asOf).shown.map((part) => row(also(starter), part)),
  ]);
  return `<section><h2>What is due when</h2>
${table({ caption: 'By expected date of the part that is due first; under it the other parts', head: head.map((text) => ({ text })), rows })}
</section>`;
}

function lackingSection({ lacking }: MaintenancePlan): string {
  if (lacking.length === 0) return '';
  const rows = lacking.map(({ tag, missing }) => [{ text: tag }, { text: missing.join('; ') }]);
  return `<section><h2>Not planned for lack of data</h2>
${table({ caption: 'In the order of the table', head: [{ text: 'Starter' }, { text: 'What is missing (column)' }], rows })}
</section>`;
}

function impossibleSection({ impossible }: MaintenancePlan): string {
  if (impossible.length === 0) return '';
  const rows = impossible.map(({ tag, reasons }) => [{ text: tag }, { text: reasons.join('; ') }]);
  return `<section><h2>Cannot be planned</h2>
${table({ caption: 'In the order of the table', head: [{ text: 'Starter' }, { text: 'Why' }], rows })}
</section>`;
}

function sparesSection({ kits }: MaintenancePlan): string {
  if (kits.length === 0) return '';
  const head = [
    { text: 'Quarter' },
    { text: 'Spare' },
    { text: 'Expected', className: 'number' as const },
    { text: 'for' },
    { text: 'By the earliest date', className: 'number' as const },
    { text: 'for' },
  ];
  const rows = kits.map((kit) => [
    { text: quarterText(kit) },
    { text: kit.kit },
    { text: String(kit.expected.length), className: 'number' as const },
    { text: kit.expected.join(', ') },
    { text: String(kit.earliest.length), className: 'number' as const },
    { text: kit.earliest.join(', ') },
  ]);
  return `<section><h2>Spares per quarter</h2>
${paragraph(KITS_NOTE)}
${table({ caption: 'Calendar quarters', head, rows })}
</section>`;
}

function groundsSection({ starters, asOf }: MaintenancePlan, units: UnitSystem): string {
  if (starters.length === 0) return '';
  const head = [
    'Starter',
    'Motor',
    'Operations a day',
    'Plugged',
    'Life, operations',
    'Used up',
    'Stands on',
  ];
  const number = (text: string) => ({ text, className: 'number' as const });
  const rows = starters.flatMap((starter) => [
    [
      { text: starter.tag },
      number(formatQuantity(starter.motorPower, 'W', { system: units })),
      number(operationsText(starter.operationsPerDay)),
      number(shareText(starter.pluggingShare)),
      number(operationsText(starter.parts[0].life)),
      number(shareText(starter.parts[0].used)),
      { text: grounds(starter, asOf) },
    ],
    ...otherParts(starter, asOf).shown.map((part) => [
      { text: also(starter) },
      number(''),
      number(''),
      number(''),
      number(operationsText(part.life)),
      number(shareText(part.used)),
      { text: lifeText(part) },
    ]),
  ]);
  return `<section><h2>What each date stands on</h2>
${table({ caption: `Life of each part, that due first on top; used up on ${dateOfDay(asOf)}`, head: head.map((text) => ({ text })), rows })}
</section>`;
}

function grounds(starter: PlannedStarter, asOf: number): string {
  const { parts, inspection, doubts, remarks } = starter;
  const beyond = beyondText(starter, asOf);
  return [
    ...doubts,
    lifeText(parts[0]),
    ...(inspection === null ? [] : [`Inspection: ${inspection}.`]),
    ...remarks,
    ...(beyond === null ? [] : [`Due ${beyond}.`]),
  ].join(' ');
}

function lifeText({ words, lifeOrigin }: PlannedPart): string {
  return `Life of ${words}: ${lifeOrigin}.`;
}

/** Head of a line with another part of a starter. */
function also({ tag }: PlannedStarter): string {
  return `${tag}, also`;
}

function named({ tag, description }: PlannedStarter): string {
  return description === null ? tag : `${tag}, ${description}`;
}
