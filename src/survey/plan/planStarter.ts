import { stated } from '../../scenario/stated.ts';
import { doubtsOf } from './doubtsOf.ts';
import { type DueInputs, type DuePart, dueParts, LEAST_WORN_TO_SCALE } from './dueDay.ts';
import { countedPerDay } from './missingOf.ts';
import { percentText } from './percentText.ts';
import type { PlannedStarter } from './plan.ts';
import { plannedParts } from './plannedParts.ts';
import type { PlanRow } from './planRow.ts';
import { isWear, type StarterWear, type WearOfStarter, type WearOutcome } from './starterWear.ts';
import { unknownsOf } from './unknownsOf.ts';

/**
 * Plans one starter.
 *
 * @param row that lacks nothing
 * @param asOf days since 1970-01-01
 */
export function planStarter(
  row: PlanRow,
  asOf: number,
  wearOf: WearOfStarter,
): PlannedStarter | Exclude<WearOutcome, StarterWear> {
  const wear = wearOf(row, 1);
  if (!isWear(wear)) return wear;
  const counted = countedPerDay(row.duty);
  const inchingShare = row.duty.inchingShare ?? 0;
  const inputs: DueInputs = {
    wear,
    lifeAt: 'expected',
    pluggingShare: row.duty.pluggingShare ?? (row.duty.stopBy === 'plug' ? 1 - inchingShare : 0),
    inchingShare,
    operationsPerDay: stated(row.duty.operationsPerDay ?? counted ?? undefined, 'operations per day'),
    readingOffset: 0,
  };
  const remarks = [...wear.remarks, ...notCounted(row, inputs)];
  const [contacts] = dueParts(row, inputs);
  const unknowns = unknownsOf(row, inputs, contacts.contactor ?? 'forward', wearOf, remarks);
  const parts = plannedParts(row, inputs, unknowns, asOf);
  return {
    tag: row.tag,
    description: row.description,
    spareKit: row.spareKit,
    motorPower: row.motor.power,
    parts,
    expected: parts[0].expected,
    earliest: Math.min(...parts.map(({ earliest }) => earliest)),
    latest: Math.min(...parts.map(({ latest }) => latest)),
    operationsPerDay: inputs.operationsPerDay,
    pluggingShare: inputs.pluggingShare,
    inspection: inspectionWords(row, contacts),
    doubts: doubtsOf(row.duty),
    remarks,
  };
}

/** What the due day leaves out, or takes for something that nobody stated. */
function notCounted({ contactor, duty }: PlanRow, { pluggingShare }: DueInputs): string[] {
  const lives = [
    ['contactor', contactor.mechanicalLife, true],
    ['interlock', contactor.interlockMechanicalLife, pluggingShare > 0],
    ['zero-speed switch', contactor.switchMechanicalLife, pluggingShare > 0],
  ] as const;
  const unknown = lives.filter(([, life, matters]) => life === null && matters).map(([name]) => name);
  const known = lives.some(([, life]) => life !== null);
  return [
    ...(unknown.length > 0
      ? [`Not counted, because not stated: mechanical life of ${unknown.join(', ')}.`]
      : []),
    ...(known && duty.operationsSinceNew === null
      ? [
          'Mechanical life is counted from the last change of contacts: the operations since new are not stated.',
        ]
      : []),
  ];
}

function inspectionWords({ inspection }: PlanRow, { reading }: DuePart): string | null {
  if (inspection === null) return null;
  const read = `${inspection.reading}: ${percentText(inspection.worn)} worn`;
  if (reading === 'scales')
    return `${read}; it takes the place of the computed wear and scales its rate by measured over computed`;
  const why =
    inspection.worn < LEAST_WORN_TO_SCALE
      ? `below ${percentText(LEAST_WORN_TO_SCALE)} it does not scale the rate`
      : 'no count of operations before it is known that could scale the rate';
  return `${read}; it takes the place of the computed wear; ${why}`;
}
