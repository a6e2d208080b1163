import { type Contact, type ControlCircuit, DESIGNATIONS } from '../../starter/control/controlCircuit.ts';
import { type Operation, operationOf, terminalMarks } from './contactTraits.ts';
import type { Drawing, PlacedText, Point } from './drawing.ts';
import { iecContact } from './iecContact.ts';
import { designationText, FONT, type SymbolSet } from './symbolSet.ts';
import { usContact } from './usContact.ts';

/**
 * A contact with its designation and terminal marks. IEC: in a path downwards; North America: in a line to the right.
 *
 * @param half half the length of its slot, px
 */
export function placeContact(
  contact: Contact,
  at: Point,
  half: number,
  circuit: ControlCircuit,
  symbols: SymbolSet,
): Drawing {
  const operation = operationOf(contact, circuit);
  const iec = symbols === 'iec';
  const ends = iec
    ? [
        { x: at.x, y: at.y - half },
        { x: at.x, y: at.y + half },
      ]
    : [
        { x: at.x - half, y: at.y },
        { x: at.x + half, y: at.y },
      ];
  return {
    wires: [],
    symbols: [
      {
        art: iec ? iecContact(contact.kind, operation, half) : usContact(contact.kind, operation, half),
        at,
        ends,
        data: {
          symbol: 'contact',
          device: contact.device,
          kind: contact.kind,
          terminals: contact.terminals,
          operation,
        },
        power: false,
      },
    ],
    texts: iec ? iecTexts(contact, operation, at) : usTexts(contact, operation, at),
  };
}

function iecTexts(contact: Contact, operation: Operation, { x, y }: Point): readonly PlacedText[] {
  const [first, second] = terminalMarks(contact);
  const above = operation !== 'coil';
  const mark = { x: x + 5, size: FONT.mark, anchor: 'start' } as const;
  const small = { size: FONT.mark, anchor: 'end' } as const;
  return [
    {
      text: designationText(DESIGNATIONS[contact.device], 'iec'),
      x: x - 14,
      y: above ? y - 11 : y + 4,
      size: FONT.designation,
      anchor: 'end',
    },
    { text: first, y: y - 17, ...mark },
    { text: second, y: y + 23, ...mark },
    ...(operation === 'speed'
      ? [
          { text: 'n>', x: x - 22, y: y + 4, size: FONT.mark, anchor: 'middle' } as const,
          { text: contact.device === 'switchForward' ? 'fwd' : 'rev', x: x - 14, y: y + 19, ...small },
        ]
      : []),
  ];
}

/** Clear height above the conductor that a symbol of the North American set needs, px. */
const RISE: Readonly<Record<Operation, number>> = {
  coil: 14,
  overload: 14,
  speed: 16,
  pushButton: 18,
  emergencyStop: 24,
  onDelay: 8,
  offDelay: 8,
};

function usTexts(contact: Contact, operation: Operation, { x, y }: Point): readonly PlacedText[] {
  const [first, second] = terminalMarks(contact);
  const word =
    operation === 'overload'
      ? ' OL'
      : operation === 'speed'
        ? contact.device === 'switchForward'
          ? ' F'
          : ' R'
        : '';
  return [
    {
      text: `${designationText(DESIGNATIONS[contact.device], 'us')}${word}`,
      x,
      y: y - RISE[operation],
      size: FONT.designation,
      anchor: 'middle',
    },
    { text: first, x: x - 17, y: y + 13, size: FONT.mark, anchor: 'end' },
    { text: second, x: x + 17, y: y + 13, size: FONT.mark, anchor: 'start' },
  ];
}
