import type { RunResult } from '../measure/result.ts';
import type { Origin } from '../scenario/origin.ts';
import { CAUTIONS } from './cautions.ts';
import { cutToWidth } from './displayWidth.ts';
import { energyFigure } from './energyFigure.ts';
import { estimationSection } from './estimationSection.ts';
import type { FigureSpec } from './figureSpec.ts';
import { finding, question } from './findings.ts';
import { formatNumber, type UnitSystem } from './formatQuantity.ts';
import { htmlHead } from './htmlHead.ts';
import { interactiveFigure } from './interactiveFigure.ts';
import { keyNumberList } from './keyNumberList.ts';
import { keyNumbers } from './keyNumbers.ts';
import { mechanicalBalance } from './ledgerRows.ts';
import { list, paragraph } from './markup.ts';
import { cleanText, escapeMarkup, jsonForScript } from './plainText.ts';
import { renderSvg } from './renderSvg.ts';
import { traceStep } from './renderTraceCsv.ts';
import type { ReportBackground } from './reportBackground.ts';
import { REPORT_SCRIPT } from './reportScript.ts';
import { reportStyle } from './reportStyle.ts';
import {
  accuracyTable,
  eventTable,
  inputTables,
  ledgerTable,
  metricTables,
  originTable,
  ratedTable,
} from './reportTables.ts';
import { leftOut, methodOf, SOURCES } from './reportText.ts';
import { sequenceFigure, sequenceFigures } from './sequenceFigure.ts';
import { sha256Base64 } from './sha256.ts';
import { statusLine } from './statusLine.ts';
import { switchingFigures } from './switchingFigures.ts';
import { overviewFigure, timeFigure } from './timeFigure.ts';
import { torqueSpeedFigure } from './torqueSpeedFigure.ts';
import { hasControl, wiringDrawing } from './wiringOfRun.ts';

/** How the report is written. */
export interface ReportOptions extends ReportBackground {
  readonly units: UnitSystem;
  /** Version of the program. */
  readonly version: string;
  /** Text of the plotting library's script; without it the report has the static figures alone. */
  readonly plotlySource?: string;
  /** Where each input comes from. */
  readonly origins?: readonly Origin[];
}

/** Largest residual of the energy ledger that passes without a warning, share of the throughput. */
const LEDGER_LIMIT = 1e-6;
/** Longest title in the footer of a printed page, columns: it shares the line with the page number. */
const FOOTER_TITLE = 60;
/** Width of the drawing for telephones, px. */
const NARROW_WIDTH = 400;
/** Heights of the first page's two figures: both fit with the text on a Letter page. */
const OVERVIEW_SCALE = 0.8;
const TORQUE_SPEED_SCALE = 0.64;
/** Heights of the figures of the results: an A4 page holds the first two, and another those of two switchings. */
const TIME_SCALE = 0.84;
const SWITCHING_SCALE = 0.74;
/** A longer title is set smaller, so that the first page still holds its section, characters. */
const LONG_TITLE = 90;
/** With more text on the first page its figures are set smaller in print, characters. */
const DENSE_TEXT = 420;
/** A longer description stands with the inputs, characters. */
const SHORT_DESCRIPTION = 240;

/**
 * The report as one HTML file that needs nothing else: a calculation note with static figures, which print, and plots
 * to zoom into, which do not. A content security policy forbids every request and every script but its own two.
 */
export function renderReportHtml(result: RunResult, options: ReportOptions): string {
  const { scenario } = result;
  const title = escapeMarkup(scenario.title);
  const version = `countertorque ${options.version}`;
  const scripts = interactiveScripts(result, options);
  const hashes = scripts.code.map((code) => `'sha256-${sha256Base64(code)}'`).join(' ') || "'none'";
  return `${htmlHead({ title: `${scenario.title}: plugging calculation`, program: version, style: reportStyle(`${cutToWidth(cleanText(scenario.title), FOOTER_TITLE)} · ${version}`), allowed: `img-src data: blob:; script-src ${hashes}` })}
<body>
<main>
${firstPage(result, options)}
${inputsSection(result, options)}
${estimationSection(result, options, options.units)}
${methodSection(result)}
${resultsSection(result, options)}
${checksSection(result, options)}
<section><h2>Sources</h2>${list(SOURCES)}</section>
${scripts.section}
</main>
<footer class="screen"><p>${title} · ${escapeMarkup(version)}</p></footer>
${scripts.data}
${scripts.code.map((code) => `<script>${code}</script>`).join('\n')}
</body>
</html>
`;
}

function firstPage(result: RunResult, options: ReportOptions): string {
  const { scenario } = result;
  const numbers = keyNumberList(keyNumbers(result, options.units, options.bands));
  const found = finding(result, options.units);
  const dense = options.bands != null || found.length + warningTexts(result).join('').length > DENSE_TEXT;
  return `<section class="first${dense ? ' dense' : ''}">
<header style="padding-inline:0">
${result.usable ? '' : `<p class="alarm" role="alert">${escapeMarkup(statusLine(result))}</p>`}
<p class="kind">Calculation note: plugging of a ${scenario.machine.rotorResistors === undefined ? 'cage' : 'slip-ring'} induction motor</p>
<h1${scenario.title.length > LONG_TITLE ? ' class="long"' : ''}>${escapeMarkup(scenario.title)}</h1>
${isShort(scenario.description) ? paragraph(scenario.description, 'muted') : ''}
</header>
${paragraph(question(result), 'question')}
${paragraph(found, 'finding')}
${numbers}
${rangeNote(options)}
${warnings(result)}
${paragraph(CAUTIONS.join(' '), 'cautions')}
${judgementNote(result)}
<p class="screen" id="interactive-link" hidden><a href="#interactive">Plots to zoom into</a></p>
${figure(overviewFigure(result, options), OVERVIEW_SCALE)}
${figure({ ...torqueSpeedFigure(result, options), note: '' }, TORQUE_SPEED_SCALE)}
</section>`;
}

/** Sections of a scenario that are there to be judged by. */
const JUDGEMENT_SECTIONS = ['thermal', 'duty', 'contactors', 'limits', 'protection', 'alternatives'] as const;

/** Says who judges, where the scenario has what it takes to judge by. */
function judgementNote({ scenario }: RunResult): string {
  return JUDGEMENT_SECTIONS.some((section) => scenario[section] !== undefined)
    ? paragraph(
        'This report does not judge; the command suitability does, by the limits of the scenario.',
        'muted',
      )
    : '';
}

/** What the ranges beside the four numbers are. */
function rangeNote({ bands }: ReportOptions): string {
  if (bands == null) return '';
  return paragraph(
    `In brackets: the range over ${bands.members} circuits that the data allow. ${bands.sentence}`,
    'muted',
  );
}

function isShort(description: string): boolean {
  return description !== '' && description.length <= SHORT_DESCRIPTION;
}

function warnings(result: RunResult): string {
  return warningTexts(result)
    .map((warning) => paragraph(warning, 'note'))
    .join('\n');
}

function warningTexts(result: RunResult): string[] {
  const { residual } = result.ledger;
  const ledger =
    residual < LEDGER_LIMIT
      ? []
      : [
          `The energy ledger does not close: its residual is ${formatNumber(residual)} of the throughput. Do not use these figures.`,
        ];
  return [...ledger, ...result.warnings];
}

/** Power and control circuit; the drawing is black on white whatever the theme, as it prints. */
function wiringFigure(result: RunResult): string {
  const drawing = wiringDrawing(result);
  return drawing === null ? '' : `<figure class="drawing">${drawing}</figure>`;
}

function inputsSection(result: RunResult, options: ReportOptions): string {
  const origins =
    options.origins === undefined
      ? paragraph('Where each input comes from was not recorded in this run.', 'muted')
      : originTable(options.origins);
  const { description } = result.scenario;
  return `<section><h2>Inputs</h2>
${description === '' || isShort(description) ? '' : paragraph(description)}
${inputTables(result, options.units)}
${ratedTable(result, options.units)}
${wiringFigure(result)}
${origins}
</section>`;
}

function methodSection({ scenario }: RunResult): string {
  return `<section><h2>Method</h2>
${methodOf(scenario)
  .map((text) => paragraph(text))
  .join('\n')}
<h3>What is left out</h3>
${list(leftOut(scenario))}
</section>`;
}

function resultsSection(result: RunResult, options: ReportOptions): string {
  const figures = [
    figure(timeFigure(result, options), TIME_SCALE),
    ...(hasControl(result) ? sequenceFigures(result, options) : []).map((spec) => figure(spec, TIME_SCALE)),
    figure(energyFigure(result, options)),
    ...switchingFigures(result, options).map((spec) => figure(spec, SWITCHING_SCALE)),
  ];
  return `<section><h2>Results</h2>
${figures.join('\n')}
${metricTables(result, options.units)}
${eventTable(result, options.units)}
</section>`;
}

function checksSection(result: RunResult, options: ReportOptions): string {
  return `<section><h2>Checks</h2>
${paragraph(`Every term of the energy ledger is integrated on its own; none is a remainder. The two balances: electrical energy in = heats + change of magnetic energy + work at the air gap; ${mechanicalBalance(result)}.`)}
${ledgerTable(result, options.units)}
${accuracyTable(result)}
${paragraph(`trace.csv has a sample every ${formatNumber(1e3 * traceStep(result))} ms and both sides of every switching instant. summary.json repeats every figure in SI units.`)}
</section>`;
}

/** The static figure for wide pages and print, and the one for telephones; a page shows one of them. */
function figure(spec: FigureSpec, heightScale = 1): string {
  const wide = renderSvg(spec, { theme: 'css', heightScale });
  const narrow = renderSvg(spec, { theme: 'css', width: NARROW_WIDTH, idSuffix: '-narrow' });
  return `<figure><div class="wide">${wide}</div><div class="narrow">${narrow}</div></figure>`;
}

interface Scripts {
  readonly section: string;
  readonly data: string;
  readonly code: readonly string[];
}

function interactiveScripts(result: RunResult, options: ReportOptions): Scripts {
  if (options.plotlySource === undefined) return { section: '', data: '', code: [] };
  const specs = [
    timeFigure(result, { ...options, waveforms: true }),
    ...(hasControl(result) ? [sequenceFigure(result, { ...options, waveforms: true })] : []),
    torqueSpeedFigure(result, options),
    energyFigure(result, options),
  ];
  const plots = specs
    .map((spec) => `<h3>${escapeMarkup(spec.title)}</h3>\n<div class="plot" id="plot-${spec.id}"></div>`)
    .join('\n');
  const section = `<section id="interactive" class="screen" hidden><h2>Plots to zoom into</h2>
${paragraph('Drag across a plot to enlarge a stretch of time in all its panels; double-click, or double-tap, to see the whole again. Point at a curve to read it.', 'muted')}
${plots}
</section>`;
  const data = `<script type="application/json" id="figure-data">${jsonForScript(specs.map(interactiveFigure))}</script>`;
  return { section, data, code: [scriptText(options.plotlySource), scriptText(REPORT_SCRIPT)] };
}

/** Code as an HTML parser hands it on, so that its hash is the one a browser computes; nothing in it ends the element. */
function scriptText(code: string): string {
  return code
    .replace(/\r\n?/gu, '\n')
    .replace(/<\/script/giu, '<\\/script')
    .replaceAll('<!--', '<\\!--');
}
