import type { Contact, ControlCircuit, Device } from '../../starter/control/controlCircuit.ts';

/** What moves a contact, as far as its symbol shows it. */
export type Operation =
  | 'pushButton'
  | 'emergencyStop'
  | 'overload'
  | 'speed'
  /** A coil, at once. */
  | 'coil'
  | 'onDelay'
  | 'offDelay';

const INPUTS: Readonly<Partial<Record<Device, Operation>>> = {
  stopButton: 'pushButton',
  forwardButton: 'pushButton',
  reverseButton: 'pushButton',
  resetButton: 'pushButton',
  emergencyStop: 'emergencyStop',
  overload: 'overload',
  switchForward: 'speed',
  switchReverse: 'speed',
};

/** What moves a contact. A timer's contacts are all late. */
export function operationOf(contact: Contact, circuit: ControlCircuit): Operation {
  const coil = circuit.coils.find((one) => one.coil === contact.device);
  return INPUTS[contact.device] ?? coil?.delay?.kind ?? 'coil';
}

/** The two marks of a contact: "13-14" gives "13" and "14". */
export function terminalMarks(contact: Pick<Contact, 'terminals'>): readonly [string, string] {
  const [first = '', second = ''] = contact.terminals.split('-');
  return [first, second];
}
