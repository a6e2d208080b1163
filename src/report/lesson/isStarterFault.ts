import type { StarterFault } from '../../scenario/scenario.ts';

type Check = (value: unknown) => boolean;

const oneOf =
  (...words: readonly string[]): Check =>
  (value) =>
    words.some((word) => word === value);
const instant: Check = (value) => typeof value === 'number' && Number.isFinite(value) && value >= 0;
const phase = oneOf('A', 'B', 'C');
const contactor = oneOf('forward', 'reverse');

/** Fields of every kind beside the kind itself. */
const FIELDS: Readonly<Record<StarterFault['kind'], Readonly<Record<string, Check>>>> = {
  lostPhase: { phase, from: instant },
  weldedPole: { contactor, pole: phase },
  deadPole: { contactor, pole: phase },
  weldedContactor: { contactor },
  zeroSpeedSwitch: { mode: oneOf('stuckClosed', 'stuckOpen', 'doesNotPickUp') },
  auxiliaryContact: { contactor, contact: oneOf('holdIn', 'interlock'), stuck: oneOf('open', 'closed') },
  overloadNeverTrips: {},
  supplyLost: { from: instant, until: (value) => value === null || instant(value) },
  mechanicalInterlockMissing: {},
};

/** Names of all kinds of fault, in the order of the scenario format. */
export const FAULT_KINDS = Object.keys(FIELDS) as StarterFault['kind'][];

/** True where a value from outside has the shape of a fault; the scenario's own rules judge it further. */
export function isStarterFault(value: unknown): value is StarterFault {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const fields: Readonly<Record<string, unknown>> = { ...value };
  const { kind } = fields;
  if (typeof kind !== 'string' || !Object.hasOwn(FIELDS, kind)) return false;
  const checks: [string, Check][] = Object.entries(FIELDS[kind as StarterFault['kind']]);
  return (
    Object.keys(fields).length === checks.length + 1 &&
    checks.every(([name, check]) => Object.hasOwn(fields, name) && check(fields[name]))
  );
}
