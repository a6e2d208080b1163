import type { PlanRow } from './planRow.ts';

/**
 * What a row lacks to be planned, each in words with the column that would state it.
 *
 * @returns empty when it can be planned
 */
export function missingOf({ motor, load, contactor, duty, inspection, gaps }: PlanRow): readonly string[] {
  const missing: string[] = [];
  const need = (isThere: boolean, words: string) => {
    if (!isThere) missing.push(words);
  };
  need(motor.power !== null, 'rated power (power)');
  need(motor.lineVoltage !== null, 'rated voltage (voltage)');
  need(motor.frequency !== null, 'frequency (frequency)');
  need(motor.speed !== null || motor.poles !== null, 'rated speed or number of poles (speed, poles)');
  need(contactor.ratedCurrentAc3 !== null, 'rated current of the contactor (contactor current AC-3)');
  need(load.kind !== null || load.torque === null, 'kind of the load torque (load kind)');
  need(load.kind === null || load.kind === 'none' || load.torque !== null, 'load torque (load torque)');
  need(
    duty.stopBy !== null || duty.pluggingShare !== null,
    'how it is stopped (stop by, or share of plugging)',
  );
  need(duty.counter === null || duty.counterDay !== null, 'day of the counter reading (counter date)');
  need(duty.counterDay === null || duty.counter !== null, 'the counter reading (counter)');
  need(
    duty.operationsPerDay !== null || countedPerDay(duty) !== null,
    'how often it works (operations per day; or counter, counter date and contacts changed)',
  );
  need(
    duty.contactsChanged !== null ||
      (duty.counter !== null && duty.counterDay !== null) ||
      inspection !== null,
    'how far the contacts are worn (contacts changed, or a counter, or an inspection)',
  );
  return [...missing, ...gaps];
}

/** Operations per day as a counter shows them since the contacts were changed; null where it does not. */
export function countedPerDay({ counter, counterDay, contactsChanged }: PlanRow['duty']): number | null {
  if (counter === null || counterDay === null || contactsChanged === null) return null;
  const days = counterDay - contactsChanged;
  return days > 0 && counter > 0 ? counter / days : null;
}
