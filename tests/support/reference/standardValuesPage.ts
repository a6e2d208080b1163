import { TYPICAL_THERMAL } from '../../../src/assess/heat/typicalThermal.ts';
import { type SourcedValue, STANDARD_LIMITS } from '../../../src/assess/standardLimits.ts';
import { ROOMS, type SourceFile } from '../sourceRules.ts';
import { GROUP_OF_LIMIT, LIMIT_GROUPS } from './limitGroups.ts';
import { code, GENERATED, markdownTable, paragraph } from './markdownTable.ts';
import { type SourceNote, sourceNotes } from './sourceRegister.ts';
import { tradeTables } from './standardTables.ts';

const INTRO = `${GENERATED}
# Standard values and their sources

Every number that comes from a standard, a table of the trade or common practice, with where it comes from and how sure that is.
What the words mean: a name of a standard says where the number belongs, not that it was read there. Where it was seen at second
hand the words say so (*as cited in*, *looked up on a page of*, a manual, data sheet or handbook); *from memory* says that it was
read nowhere for this; a name with nothing behind it says no more than the name. *Common practice, no source* is a usual figure nobody
need agree with; *assumed* says that something had to be taken. How sure the compared numbers are stands in
[how it was verified](how-it-was-verified.md).

None of these replaces the standard itself, the maker's data or the rules that hold where the machine stands. A value stated in
the scenario always goes before one from here.

`;

/** What the table of rises does not hold. */
const SMALL_MOTORS = `\n${paragraph(
  'The rises hold for ordinary windings of machines from 600 W. Below 600 W, and for motors without a fan or with encapsulated windings, IEC 60034-1 grants 85 K, 110 K and 130 K (from memory); the judgement keeps to the smaller ones.',
)}`;

/** The page of values from outside. */
export function standardValuesPage(files: readonly SourceFile[]): string {
  const notes = sourceNotes(files);
  return [
    INTRO,
    '## Limits of the judgement\n\n',
    paragraph(
      'One table of the code holds them all. A calculation note lists those that it stands on. "Used in" names the files below `src/`.',
    ),
    ...Object.entries(LIMIT_GROUPS).map(
      ([group, title]) => limitTable(group, title, files) + (group === 'heat' ? SMALL_MOTORS : ''),
    ),
    '\n## The thermal model where the scenario is silent\n\n',
    sourcedTable(Object.entries(TYPICAL_THERMAL).map(([name, value]) => [name, value])),
    '\n## Tables of the trade\n\n',
    paragraph(
      'Torques stand as locked rotor / breakdown (NEMA) and locked rotor / pull-up / breakdown (IEC), of rated torque; a dash says that the table has no such motor. What a nameplate does not say is taken from these.',
    ),
    ...tradeTables(notes).map(
      ({ title, source, table }) => `\n### ${title}\n\n${paragraph(source)}\n${table}`,
    ),
    '\n## Every note in the code\n\n',
    paragraph(
      'What the comments of the code say of sources, file by file: constants that stand alone, formulas, and words. Where the number is no single one the file holds it.',
    ),
    ...ROOMS.map((room) => roomTable(room, notes)),
  ].join('');
}

function limitTable(group: string, title: string, files: readonly SourceFile[]): string {
  const rows = Object.entries(STANDARD_LIMITS).filter(
    ([name]) => Object.entries(GROUP_OF_LIMIT).find(([key]) => key === name)?.[1] === group,
  );
  return `\n### ${title}\n\n${markdownTable(
    ['name', 'value', 'unit', 'source', 'used in'],
    rows.map(([name, { value, unit, source }]) => [
      code(name),
      `${value}`,
      unit,
      source,
      usedIn(name, files).map(code).join(', '),
    ]),
  )}`;
}

/** Files that take a limit from the table by its name; the list of sources of a note names all and uses none. */
function usedIn(name: string, files: readonly SourceFile[]): string[] {
  const word = new RegExp(`\\b${name}\\b`, 'u');
  return files
    .filter(({ path, text }) => text.includes('STANDARD_LIMITS') && word.test(text) && !NOT_USERS.test(path))
    .map(({ path }) => path);
}

const NOT_USERS = /standardLimits\.ts$|usedLimits\.ts$|^index\.ts$/u;

function sourcedTable(rows: readonly (readonly [string, SourcedValue])[]): string {
  return markdownTable(
    ['name', 'value', 'unit', 'source'],
    rows.map(([name, { value, unit, source }]) => [code(name), `${value}`, unit, source]),
  );
}

function roomTable(room: string, notes: readonly SourceNote[]): string {
  const own = notes.filter(({ file }) => file.startsWith(`${room}/`));
  if (own.length === 0) return '';
  return `\n### ${room}\n\n${markdownTable(
    ['file', 'at', 'value', 'what the code says'],
    own.map(({ file, name, value, words }) => [code(file.slice(room.length + 1)), code(name), value, words]),
  )}`;
}
