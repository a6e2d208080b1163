import type { Contact, ControlCircuit, Device } from '../../starter/control/controlCircuit.ts';
import type { ControlLayout } from './layoutControl.ts';

/** Where a contact stands. */
export interface CrossReference {
  readonly kind: Contact['kind'];
  readonly terminals: string;
  /** Number of its path or line. */
  readonly path: number;
}

/** Number of the path or line a place of the layout belongs to, from 1 on. */
export function pathNumber(layout: ControlLayout, v: number): number {
  return layout.paths.indexOf(v) + 1;
}

/** A device's contacts and the paths they stand in, in the order of their terminals. */
export function crossReferences(layout: ControlLayout, device: Device): readonly CrossReference[] {
  return layout.contacts
    .filter(({ contact }) => contact.device === device)
    .map(({ contact: { kind, terminals }, v }) => ({ kind, terminals, path: pathNumber(layout, v) }))
    .sort((a, b) => Number.parseInt(a.terminals, 10) - Number.parseInt(b.terminals, 10) || a.path - b.path);
}

/** True for a contactor in the motor's lines, which has main contacts too. */
export function hasMainContacts(device: ControlCircuit['coils'][number]['coil']): boolean {
  return device === 'forwardContactor' || device === 'reverseContactor';
}
