import type { StarterFault } from '../scenario/scenario.ts';
import { formatInstant } from './formatQuantity.ts';

/** A fault of the installation in words. */
export function faultWords(fault: StarterFault): string {
  switch (fault.kind) {
    case 'lostPhase':
      return `supply phase ${fault.phase} is lost from ${formatInstant(fault.from)} on`;
    case 'weldedPole':
      return `pole ${fault.pole} of the ${fault.contactor} contactor is welded: once closed it does not part`;
    case 'deadPole':
      return `pole ${fault.pole} of the ${fault.contactor} contactor is dead: it never touches`;
    default:
      return fault satisfies never;
  }
}
