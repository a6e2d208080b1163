import { CYCLE_OF_WORD } from './cycleWords.ts';
import type { DutyData } from './judgementData.ts';
import { derivedValue, type Note } from './origin.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/**
 * Fills in the duty.
 *
 * @param input as stated, in SI
 * @param note takes down what was not given
 */
export function resolveDuty(input: NonNullable<ScenarioInput['duty']>, note: Note): DutyData {
  const cycle = CYCLE_OF_WORD[input.cycle ?? 'start and plug stop'];
  const inchingShare = input.inchingShare ?? 0;
  const pluggingShare = input.pluggingShare ?? (cycle === 'startPlugStop' ? 1 - inchingShare : 0);
  if (input.cycle === undefined) note('cycle', 'start and plug stop', 'default');
  if (input.pluggingShare === undefined)
    note('pluggingShare', derivedValue(100 * pluggingShare, '%'), 'default', 'by cycle and inchingShare');
  if (input.inchingShare === undefined) note('inchingShare', '0 %', 'default');
  return {
    cycle,
    operationsPerHour: input.operationsPerHour ?? null,
    operationsPerDay: input.operationsPerDay ?? null,
    runningTime: input.runningTime ?? null,
    cyclicDurationFactor: input.cyclicDurationFactor ?? null,
    pluggingShare,
    inchingShare,
    contactsChanged: input.contactsChanged ?? null,
    operationsSince: input.operationsSince ?? null,
  };
}
