import { asReverse } from './asReverse.ts';
import type { ContactorData, ContactorsData } from './judgementData.ts';
import type { Note } from './origin.ts';
import type { ScenarioInput } from './scenarioInput.ts';

type Input = NonNullable<ScenarioInput['contactors']>;

/** A contactor whose rated current may not be stated. */
type Device = Omit<ContactorData, 'ratedCurrentAc3'> & { readonly ratedCurrentAc3: number | null };

/**
 * Fills in the data of both contactors.
 *
 * @param input as stated, in SI
 * @param note takes down what was not given
 */
export function resolveContactors(input: Input, note: Note): ContactorsData {
  const { ratedCurrentAc3, reverse } = input;
  const forward: ContactorData = { ...deviceOf(input), ratedCurrentAc3 };
  if (reverse === undefined) note('reverse', 'as the forward contactor', 'default');
  const second: Device = reverse === undefined ? forward : asReverse<Device>(forward, deviceOf(reverse));
  return {
    forward,
    // Its own current makes it a device of its own; else it has that of the forward contactor.
    reverse: { ...second, ratedCurrentAc3: reverse?.ratedCurrentAc3 ?? ratedCurrentAc3 },
    interlockMechanicalLife: input.interlockMechanicalLife ?? null,
    switchMechanicalLife: input.switchMechanicalLife ?? null,
  };
}

function deviceOf(
  input: Omit<Input, 'reverse' | 'ratedCurrentAc3'> & { ratedCurrentAc3?: number | undefined },
): Device {
  return {
    ratedVoltage: input.ratedVoltage ?? null,
    ratedCurrentAc3: input.ratedCurrentAc3 ?? null,
    ratedCurrentAc4: input.ratedCurrentAc4 ?? null,
    lifeAc3: input.lifeAc3 ?? null,
    lifeAc4: input.lifeAc4 ?? null,
    lifeTable: input.lifeTable ?? null,
    mechanicalLife: input.mechanicalLife ?? null,
    makingCapacity: input.makingCapacity ?? null,
    breakingCapacity: input.breakingCapacity ?? null,
    bounceTime: input.bounceTime ?? null,
    operationsPerHourAc3: input.operationsPerHourAc3 ?? null,
    operationsPerHourAc4: input.operationsPerHourAc4 ?? null,
  };
}
