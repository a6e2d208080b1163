import { dayOfDate } from '../numeric/calendarDay.ts';
import type { ContactorName } from '../starter/starter.ts';
import { WEAR_VERSION, type WearFile, type WearFileContactor } from './wearFile.ts';
import type { WearReport } from './wearReport.ts';

/** The wear of a log as JSON text, ending in a line break; the format is documented at `WearFile`. */
export function renderWearJson(report: WearReport, options: { readonly version: string }): string {
  const { scenario, logName, asOf, wear, method } = report;
  const file: WearFile = {
    wearVersion: WEAR_VERSION,
    program: { name: 'countertorque', version: options.version },
    title: scenario.title,
    log: logName,
    asOf,
    counts: wear.counts,
    first: wear.first,
    last: wear.last,
    contactors: { forward: contactorOf(report, 'forward'), reverse: contactorOf(report, 'reverse') },
    remarks: wear.remarks,
    method,
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

function contactorOf({ wear, basis, asOf }: WearReport, name: ContactorName): WearFileContactor {
  const { used, left, replacement, missing } = wear.contactors[name];
  const { generic, origin } = basis[name];
  return {
    used,
    left,
    replacement,
    daysLeft: daysBetween(asOf, replacement?.value ?? null),
    generic,
    basis: origin,
    missing,
  };
}

/** Days from one date to another; null where one is not known. */
export function daysBetween(from: string | null, to: string | null): number | null {
  const [start, end] = [from, to].map((date) => (date === null ? null : dayOfDate(date)));
  return start == null || end == null ? null : end - start;
}
