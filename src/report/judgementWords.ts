import { type Criterion, type CriterionKey, type Outcome, WAIVED } from '../assess/criterion.ts';
import type { StopName } from '../survey/alternatives/alternative.ts';
import type { ExtremeName } from '../survey/inverse/extreme.ts';

/** Names of the criteria where there is little room; a criterion's own name says it in full. */
export const CRITERION_LABELS: Readonly<Record<CriterionKey, string>> = {
  comesToRest: 'Speed left at the end',
  staysAtRest: 'Pull on the standing shaft',
  endedBySwitch: 'Stops not ended by switch',
  stopTime: 'Time to zero speed',
  stopAngle: 'Turned until zero speed',
  reverseCreep: 'Reverse creep',
  deadTimeMargin: 'Dead-time margin',
  windingTemperature: 'Winding temperature',
  cageTemperature: 'Cage temperature',
  operationsPerHour: 'Permissible operations',
  lockedRotorWithstand: 'Locked-rotor withstand used',
  overloadRelay: 'Heat of the overload relay',
  makingCapacity: 'Making current',
  breakingCapacity: 'Breaking current',
  contactorOperationsPerHour: 'Contactor operations',
  contactLife: 'Life of the contacts',
  instantaneousTrip: 'Crest and instantaneous trip',
  voltageDip: 'Voltage dip',
  shaftTorque: 'Torque of the shaft',
  deceleration: 'Deceleration of the load',
  tipping: 'Tipping of the load',
  sliding: 'Sliding of the load',
};

const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  pass: 'pass',
  close: 'close to limit',
  fail: 'FAIL',
  notJudged: 'not judged',
};

/** What came of a criterion, in words: a pass without a question is told apart from one. */
export function outcomeWords({ outcome, source, value, limit }: Criterion): string {
  if (outcome === 'pass' && source === WAIVED) return 'waived';
  if (outcome === 'pass' && value === null && limit === null) return 'does not apply';
  return OUTCOME_WORDS[outcome];
}

/** Ways to stop where there is little room. */
export const STOP_LABELS: Readonly<Record<StopName, string>> = {
  plug: 'plugging',
  coast: 'coasting',
  mechanicalBrake: 'mechanical brake',
  directCurrent: 'd.c. injection',
  lineResistors: 'line resistors',
  starPlugging: 'plugging in star',
  longerDeadTime: 'longer dead time',
  throughStop: 'through stop',
};

/** Inverse questions where there is little room. */
export const EXTREME_LABELS: Readonly<Record<ExtremeName, string>> = {
  largestInertia: 'Largest load inertia',
  mostOperations: 'Most operations per hour',
  smallestResistor: 'Smallest line resistor',
  shortestDeadTime: 'Shortest dead time',
  longestDeadTime: 'Longest dead time',
  dropOutForLeastCreep: 'Drop-out speed, least creep',
};
