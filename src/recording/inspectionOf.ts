import type { Inspection } from '../survey/plan/planRow.ts';
import type { PlanColumnName } from './planColumns.ts';
import type { CellConflict, PlanCells } from './planRowOf.ts';

/** Millimetres in a metre. */
const MM = 1e3;

/** What was measured, each with its three columns. */
const MEASURED = ['contact thickness', 'over-travel'] as const;

/** What the cells of an inspection come to: a reading, a contradiction, or what the reading lacks. */
export interface InspectionCells {
  readonly inspection: Inspection | null;
  readonly conflict: CellConflict | null;
  /** In words; null where nothing is missing, or nothing was read. */
  readonly gap: string | null;
}

const NOTHING: InspectionCells = { inspection: null, conflict: null, gap: null };

/**
 * Reads the inspection of one row. Worn is (new − now)/(new − limit) of the over-travel, else of the thickness of the contacts, else
 * as stated: what the over-travel has lost is what the contacts of both sides have lost together.
 */
export function inspectionOf(cells: PlanCells): InspectionCells {
  const measured = MEASURED.filter((name) => cells[`${name} now`] !== undefined);
  const stated = cells['contact worn'];
  if (measured.length + (stated === undefined ? 0 : 1) > 1)
    return {
      ...NOTHING,
      conflict: {
        column: 'inspected',
        message: 'more than one reading is stated',
        expected: 'one of contact worn, contact thickness now, over-travel now',
      },
    };
  const day = cells.inspected;
  const [name] = measured;
  if (name === undefined && stated === undefined)
    return day === undefined
      ? NOTHING
      : {
          ...NOTHING,
          gap: 'the reading of the inspection (contact worn, contact thickness now or over-travel now)',
        };
  if (day === undefined) return { ...NOTHING, gap: 'the day of the inspection (inspected)' };
  if (name === undefined)
    return {
      ...NOTHING,
      inspection: { day, worn: stated!, reading: `contacts ${Math.round(100 * stated!)} % worn` },
    };
  return measuredWear(name, day, cells);
}

function measuredWear(name: (typeof MEASURED)[number], day: number, cells: PlanCells): InspectionCells {
  const now = cells[`${name} now`]!;
  const fresh = cells[`${name} new`];
  const limit = cells[`${name} limit`];
  if (fresh === undefined || limit === undefined) {
    const lacks = [fresh === undefined ? `${name} new` : '', limit === undefined ? `${name} limit` : ''];
    return { ...NOTHING, gap: `what the reading is compared with (${lacks.filter(Boolean).join(', ')})` };
  }
  const conflict = (column: PlanColumnName, message: string, expected: string): InspectionCells => ({
    ...NOTHING,
    conflict: { column, message, expected },
  });
  if (limit >= fresh)
    return conflict(
      `${name} limit`,
      `${mm(limit)} is not below the value when new`,
      `less than ${mm(fresh)}`,
    );
  if (now > fresh) return conflict(`${name} now`, `${mm(now)} is more than when new`, `at most ${mm(fresh)}`);
  const reading = `${name} ${mm(now)}, of ${mm(fresh)} when new and ${mm(limit)} at the limit`;
  return { ...NOTHING, inspection: { day, worn: (fresh - now) / (fresh - limit), reading } };
}

function mm(value: number): string {
  return `${Number((value * MM).toPrecision(6))} mm`;
}
