import type { Scenario } from '../../index.ts';
import { unhide } from '../../report/lesson/hiddenFault.ts';
import type { HiddenFault } from './protocol.ts';

/** The scenario with a fault that its text does not tell. */
export function withHidden(scenario: Scenario, hidden: HiddenFault | null): Scenario {
  const faults = hidden === null ? null : unhide(hidden.fault);
  return faults === null ? scenario : { ...scenario, starter: { ...scenario.starter, faults } };
}
