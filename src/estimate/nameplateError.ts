import { contradiction } from '../scenario/contradiction.ts';
import type { Nameplate } from '../scenario/nameplate.ts';
import type { ScenarioError } from '../scenario/scenarioError.ts';

/** The refusal of a nameplate: the item, what stands there, why it cannot be and what could. */
export function nameplateError(
  item: keyof Nameplate | 'codeLetter',
  found: string,
  message: string,
  expected: string,
): ScenarioError {
  return contradiction(`machine.nameplate.${item}`, found, message, expected);
}

/** A number for a message: three significant digits. */
export function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
