import type { ControlCircuit } from '../../starter/control/controlCircuit.ts';
import type { PlacedText } from './drawing.ts';
import type { ControlLayout } from './layoutControl.ts';
import { placeCoil, referencesBelow } from './placeCoil.ts';
import { placeContact } from './placeContact.ts';
import { textReach } from './textBox.ts';

/** Clear space between what stands in neighbouring paths, px. */
const GAP = 8;
/** How far any symbol reaches from its conductor: to the left with what moves it, to the right without. */
const SYMBOL_LEFT = 30;
const SYMBOL_RIGHT = 10;
/** A length of slot that does not matter here, px. */
const HALF = 29;

/** How far things reach from a path's conductor, px. */
interface Reach {
  readonly left: number;
  readonly right: number;
}

/**
 * Distances of the paths of an IEC drawing from the first one, px, as narrow as their texts allow. Contacts stand beside
 * contacts, coils and what is written under them beside their like.
 */
export function pathOffsets(circuit: ControlCircuit, layout: ControlLayout): readonly number[] {
  const offsets: number[] = [0];
  const reaches = layout.paths.map((v) => ({
    contacts: reachOf(
      layout.contacts
        .filter((one) => one.v === v)
        .flatMap(({ contact }) => placeContact(contact, { x: 0, y: 0 }, HALF, circuit, 'iec').texts),
    ),
    coil: reachOf(
      layout.coils
        .filter((one) => one.v === v)
        .flatMap((one) => [
          ...placeCoil(one.circuit, { x: 0, y: 0 }, HALF, 'iec').texts,
          ...referencesBelow(one.circuit, layout, 0, 0).texts,
        ]),
    ),
  }));
  for (const [i, here] of reaches.slice(1).entries()) {
    const before = reaches[i]!;
    const apart = Math.max(before.contacts.right + here.contacts.left, before.coil.right + here.coil.left);
    offsets.push(offsets[i]! + Math.ceil(apart + GAP));
  }
  return offsets;
}

function reachOf(texts: readonly PlacedText[]): Reach {
  if (texts.length === 0) return { left: 0, right: 0 };
  const reaches = texts.map(textReach);
  return {
    left: Math.max(SYMBOL_LEFT, ...reaches.map(([from]) => -from)),
    right: Math.max(SYMBOL_RIGHT, ...reaches.map(([, to]) => to)),
  };
}
