import { METRIC_KEYS } from '../../../src/measure/metric.ts';
import { code, GENERATED, markdownTable, paragraph } from './markdownTable.ts';
import { keysOf, type SchemaKey, type SchemaNode } from './schemaKeys.ts';

/** Groups with so many keys of their own get a heading of their own. */
const LARGE = 4;

const ALL_METRICS = METRIC_KEYS.map((key) => `\`${key}\``).join(', ');

const COLUMNS = `- **write**: what stands after the key. A number with a unit is one piece of text, such as \`400 V\`; a number that needs a
  unit is refused without one. Shares may be written as \`40 %\` or as \`0.4\`.
- **left out**: \`needed\`, or what holds where the key is left out. Where the column is empty the meaning says what holds;
  where it does not, that part is switched off or counts as not known, and what depends on it is not judged.
- **example**: a value the parser takes for that key. It is no advice.
`;

/** The page of the keys of a scenario. */
export function scenarioPage(schema: SchemaNode, complete: string): string {
  const keys = keysOf(schema, '');
  const sections = keys.filter(({ path, isGroup }) => isGroup && /^\w+$/u.test(path));
  const single = keys.filter(({ path, isGroup }) => !isGroup && /^\w+$/u.test(path));
  return [
    `${GENERATED}\n# Scenario reference\n\n`,
    paragraph(
      'Every key of a scenario file: what is written, what it means, what holds without it. Files are YAML or JSON. A key that is not listed here is an error, and so is a unit that does not fit; `check` lists all of them with line and column.',
    ),
    '\nAn editor that is given the JSON Schema (`npm start --silent -- schema`) shows the same while one writes.\n\n',
    COLUMNS,
    '\nThe smallest complete file has four sections beside its title:\n\n',
    `\`\`\`yaml\n${complete}\`\`\`\n`,
    `\n## The file\n\n${table([...single, ...sections])}`,
    ...sections.map((section) => sectionText(section, keys)),
  ].join('');
}

function sectionText(section: SchemaKey, keys: readonly SchemaKey[]): string {
  const below = keys.filter(({ path }) => isBelow(path, section.path));
  const large = below.filter(
    (key) =>
      key.isGroup &&
      depth(key.path) === 2 &&
      below.filter(({ path }) => isBelow(path, key.path)).length >= LARGE,
  );
  const isElsewhere = ({ path }: SchemaKey) => large.some((group) => isBelow(path, group.path));
  return [
    `\n## ${section.path}\n\n${paragraph(section.meaning)}\n`,
    table(below.filter((key) => !isElsewhere(key))),
    ...large.map(
      (group) =>
        `\n### ${group.path}\n\n${paragraph(group.meaning)}\n${table(below.filter(({ path }) => isBelow(path, group.path)))}`,
    ),
  ].join('');
}

function isBelow(path: string, group: string): boolean {
  return path.startsWith(group) && /^(?:\.|\[\]\.| \()/u.test(path.slice(group.length));
}

function depth(path: string): number {
  return path.split('.').length;
}

function table(keys: readonly SchemaKey[]): string {
  return markdownTable(
    ['key', 'write', 'meaning', 'left out', 'example'],
    keys.map(({ path, what, meaning, leftOut, example }) => [
      code(path),
      what === ALL_METRICS || what === `list: ${ALL_METRICS}`
        ? `${what === ALL_METRICS ? 'a metric' : 'list of metrics'} by [its key](metrics-and-criteria.md#metrics)`
        : what,
      meaning,
      leftOut === 'needed' ? leftOut : code(leftOut),
      code(example),
    ]),
  );
}

/** One thing a survey can ask: its schema and a file that asks it. */
export interface SurveyForm {
  readonly ask: string;
  readonly schema: SchemaNode;
  /** YAML. */
  readonly file: string;
}

/** The page of the keys of a survey. */
export function surveyPage(forms: readonly SurveyForm[]): string {
  const keys = forms.map(({ schema }) => keysOf(schema, ''));
  const isCommon = (key: SchemaKey) =>
    keys.every((others) => others.some((other) => JSON.stringify(other) === JSON.stringify(key)));
  return [
    `${GENERATED}\n# Survey reference\n\n`,
    paragraph(
      'Every key of a survey file: many runs of one scenario with varied fields. The key `ask` says what is wanted of them; which other keys there are depends on it.',
    ),
    '\n',
    COLUMNS,
    '\nA field may be given in `times` of what the scenario says: `1.2 times` is 20 % more.\n',
    `\n## In every survey\n\n${table(keys[0]!.filter(isCommon))}`,
    ...forms.map(
      ({ ask, schema, file }, i) =>
        `\n## ask: ${ask}\n\n${paragraph(String(schema.description))}\n${table(
          keys[i]!.filter((key) => !isCommon(key)),
        )}\n\`\`\`yaml\n${file}\`\`\`\n`,
    ),
  ].join('');
}
