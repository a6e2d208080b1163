import { dateOfDay } from '../numeric/calendarDay.ts';
import type { MaintenancePlan, PlannedStarter } from '../survey/plan/plan.ts';
import { PLAN_HORIZON, spareOf } from '../survey/plan/planStarters.ts';
import { cleanText } from './plainText.ts';
import {
  contactsOf,
  dayText,
  dominantText,
  isOverdue,
  partDatesText,
  rangeText,
  shareText,
} from './planText.ts';
import { sha256Base64 } from './sha256.ts';

/** Octets of a line, its end not counted. RFC 5545, section 3.1. */
const LONGEST_LINE = 75;

/**
 * The plan as an iCalendar object (RFC 5545): an event of a whole day for each starter on the expected day of the part that
 * governs, what is overdue on the day of the plan. The same table gives the same text; a later plan of the same tags takes
 * the place of an earlier one.
 *
 * @param options `version` of the program, for the object's own head
 * @returns null where nothing falls within the horizon: a calendar without events is none
 */
export function renderPlanCalendar(
  plan: MaintenancePlan,
  options: { readonly version: string },
): string | null {
  const events = plan.starters.filter(({ expected }) => expected - plan.asOf <= PLAN_HORIZON);
  if (events.length === 0) return null;
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:-//countertorque//${escapeText(`countertorque ${options.version}`)}//EN`,
    'CALSCALE:GREGORIAN',
    ...events.flatMap((starter) => eventLines(starter, plan.asOf)),
    'END:VCALENDAR',
  ]
    .map((line) => `${foldLine(line)}\r\n`)
    .join('');
}

function eventLines(starter: PlannedStarter, asOf: number): string[] {
  const day = Math.max(asOf, Math.floor(starter.expected));
  const overdue = isOverdue(starter, asOf);
  const [part] = starter.parts;
  const contacts = contactsOf(starter);
  const about = [
    `${starter.tag}${starter.description === null ? '' : `, ${starter.description}`}: ${part.words}.`,
    ...(overdue ? [`Overdue since ${dayText(starter.expected, asOf)}.`] : []),
    `Range: ${rangeText(part, asOf)}.`,
    `Hangs most on: ${dominantText(part, asOf)}.`,
    `Used up on ${dateOfDay(asOf)}: ${shareText(part.used)} of the life. Spare: ${spareOf(part.part, starter.spareKit)}.`,
    ...(part === contacts
      ? []
      : [
          `Its contacts have a date of their own: ${partDatesText(contacts, asOf)}. Spare: ${spareOf('contacts', starter.spareKit)}.`,
        ]),
    ...(starter.inspection === null ? [] : [`Inspection: ${starter.inspection}.`]),
    'An estimate: inspect before the date.',
  ];
  return [
    'BEGIN:VEVENT',
    `UID:${uidOf(starter.tag)}`,
    `DTSTAMP:${basicDate(asOf)}T000000Z`,
    // Grows with the day of the plan: a calendar keeps the newer of two.
    `SEQUENCE:${Math.max(0, asOf)}`,
    `DTSTART;VALUE=DATE:${basicDate(day)}`,
    `DTEND;VALUE=DATE:${basicDate(day + 1)}`,
    `SUMMARY:${escapeText(`${starter.tag}: ${overdue ? 'OVERDUE, ' : ''}replace ${part.words}`)}`,
    `DESCRIPTION:${about.map(escapeText).join('\\n')}`,
    'CATEGORIES:MAINTENANCE',
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** The same for the same tag, whatever characters it has. */
function uidOf(tag: string): string {
  const hash = sha256Base64(tag)
    .replace(/[^A-Za-z0-9]/gu, '')
    .slice(0, 32);
  return `starter-${hash}@countertorque`;
}

function basicDate(day: number): string {
  return dateOfDay(day).replaceAll('-', '');
}

/** Escapes a text value: backslash, semicolon, comma; RFC 5545, section 3.3.11. Line breaks have become blanks. */
function escapeText(text: string): string {
  return cleanText(text).replace(/[\\;,]/gu, (mark) => `\\${mark}`);
}

/** Folds a content line so that no line has more than 75 octets, and no character is cut; RFC 5545, section 3.1. */
export function foldLine(line: string): string {
  const encoder = new TextEncoder();
  let folded = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > LONGEST_LINE) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += character;
    octets += size;
  }
  return folded;
}
