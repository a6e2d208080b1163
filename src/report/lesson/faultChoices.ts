import type { StarterFault } from '../../scenario/scenario.ts';
import { faultWords } from '../faultWords.ts';
import { FAULT_KINDS } from './isStarterFault.ts';

/** What a student may answer: a kind of fault, or that nothing is wrong. */
export type FaultChoice = StarterFault['kind'] | 'none';

/** The answers in words, in the order of a list. */
export const FAULT_CHOICES: Readonly<Record<FaultChoice, string>> = {
  none: 'No fault',
  lostPhase: 'A supply phase is lost',
  supplyLost: 'The whole supply is lost for a while or for good',
  weldedPole: 'A pole of a contactor is welded: it does not part',
  deadPole: 'A pole of a contactor is dead: it never touches',
  weldedContactor: 'A contactor is welded: poles and armature stay in',
  zeroSpeedSwitch: 'The zero-speed switch fails',
  auxiliaryContact: 'An auxiliary contact of a contactor is stuck',
  overloadNeverTrips: 'The overload relay never trips',
  mechanicalInterlockMissing: 'The mechanical interlock is missing',
};

/** True for the name of an answer. */
export function isFaultChoice(value: unknown): value is FaultChoice {
  return value === 'none' || FAULT_KINDS.some((kind) => kind === value);
}

/** What an answer was worth. */
export interface FaultJudgement {
  readonly right: boolean;
  /** One sentence that names what was really wrong. */
  readonly words: string;
}

/** Compares a student's answer with what is wrong, in words. */
export function judgeFault(answer: FaultChoice, faults: readonly StarterFault[]): FaultJudgement {
  const truth = faultsInWords(faults);
  if (faults.length === 0)
    return { right: answer === 'none', words: `${answer === 'none' ? 'Right' : 'Not so'}: ${truth}.` };
  const right = faults.some((fault) => fault.kind === answer);
  const others = faults.length > 1 && right ? `, one of ${faults.length}` : '';
  return { right, words: `${right ? 'Right' : 'Not so'}${others}: ${truth}.` };
}

/** What is wrong, in words without a full stop. */
export function faultsInWords(faults: readonly StarterFault[]): string {
  return faults.length === 0 ? 'nothing is wrong with this starter' : faults.map(faultWords).join('; ');
}
