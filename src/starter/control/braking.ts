import type { ControlData } from '../../scenario/scenario.ts';
import { coil, contact, either, follow, make, turnsForward, turnsReverse } from './contacts.ts';
import type { Branch, CoilCircuit } from './controlCircuit.ts';

/** Remembers that a contactor has driven the machine: without it a shaft turned by hand cannot close the braking circuit. */
export function memoryRelays({ memoryRelay }: ControlData): readonly CoilCircuit[] {
  if (!memoryRelay) return [];
  return [
    coil(
      'forwardMemory',
      [contact('reverseMemory', 'break', '21-22')],
      [
        follow(
          turnsForward('23-24'),
          either(make('forwardContactor', '33-34'), make('forwardMemory', '13-14')),
        ),
      ],
    ),
    coil(
      'reverseMemory',
      [contact('forwardMemory', 'break', '21-22')],
      [
        follow(
          turnsReverse('43-44'),
          either(make('reverseContactor', '33-34'), make('reverseMemory', '13-14')),
        ),
      ],
    ),
  ];
}

/** The reverse contactor brakes forward rotation until the zero-speed switch opens. */
export function brakeForward({ memoryRelay }: ControlData): Branch {
  const memory = memoryRelay ? [make('forwardMemory', '33-34')] : [];
  return { purpose: 'brake', network: { series: [turnsForward('13-14'), ...memory] } };
}

/** The forward contactor brakes reverse rotation likewise. */
export function brakeReverse({ memoryRelay }: ControlData): Branch {
  const memory = memoryRelay ? [make('reverseMemory', '33-34')] : [];
  return { purpose: 'brake', network: { series: [turnsReverse('33-34'), ...memory] } };
}
