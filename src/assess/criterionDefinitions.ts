import type { LimitKey } from './againstLimit.ts';
import type { CriterionKey } from './criterion.ts';

/** What a criterion asks, in words that stand without a run. */
export interface CriterionDefinition {
  /** What is found in the run, without a full stop. */
  readonly value: string;
  /** most: the value must not exceed the limit; least: it must not fall below. */
  readonly limitIs: 'most' | 'least';
  /** What it is compared with, and where that comes from. */
  readonly limit: string;
  /** What of the scenario it cannot do without. */
  readonly needs: string;
  /** Whether "suitable" is barred while it is not judged; words where that depends. */
  readonly required:
    | 'always'
    | 'never'
    | {
        /** The condition, in words. */
        readonly when: string;
      };
  /** Limits that must all be `none` for the criterion to count as waived; empty: it cannot be waived. */
  readonly waivedBy: readonly LimitKey[];
  /** When the question does not arise; it then passes without a value. */
  readonly doesNotApply?: string;
}

const REVERSED = 'to a full reversal';
const DUTY = 'rated power or speed, a run whose heat can be followed';
const MOVES_THE_LOAD =
  'mean deceleration of the load at `limits.decelerationRadius` over the worst supply period from the reversing command on, in either direction, at the closing angle with the largest torque';

/** Every criterion of the judgement. */
export const CRITERION_DEFINITIONS: Readonly<Record<CriterionKey, CriterionDefinition>> = {
  comesToRest: {
    value:
      'speed left when the stop is over, 0 where the shaft stands or will coast to rest; after a full reversal, what is missing to 95 % of the steady speed the other way',
    limitIs: 'most',
    limit: '0, by definition: a stop ends at rest, a reversal in steady motion the other way',
    needs: 'a plug or reversal, and a run that is not cut off before its end',
    required: 'always',
    waivedBy: [],
  },
  staysAtRest: {
    value: 'torque with which the load pulls at the standing shaft',
    limitIs: 'most',
    limit:
      'what holds it at the motor shaft: friction of load, bearings and gear, and a brake that sets by itself after plugging, as given',
    needs: 'load and brake as described; nothing more',
    required: 'always',
    waivedBy: [],
    doesNotApply: REVERSED,
  },
  endedBySwitch: {
    value: 'plug stops that something other than the zero-speed switch ends, 0 or 1',
    limitIs: 'most',
    limit: '0: reservation of IEC 60204-1 about reverse-current braking (from memory)',
    needs: 'a plug, and a run long enough for the switch to open',
    required: 'always',
    waivedBy: [],
    doesNotApply: `${REVERSED}, unless the duty states plug stops`,
  },
  stopTime: {
    value: 'time from the reversing command to zero speed',
    limitIs: 'most',
    limit: '`limits.stopTime`',
    needs: 'that limit; a run that reaches zero speed',
    required: 'never',
    waivedBy: ['stopTime'],
  },
  stopAngle: {
    value: 'angle the motor shaft turns from the reversing command to zero speed',
    limitIs: 'most',
    limit: '`limits.stopAngle`',
    needs: 'that limit; a run that reaches zero speed',
    required: 'never',
    waivedBy: ['stopAngle'],
  },
  reverseCreep: {
    value: 'angle the motor shaft turns against its original direction after zero speed',
    limitIs: 'most',
    limit: '`limits.reverseCreep`',
    needs: 'that limit; a run that reaches zero speed',
    required: 'never',
    waivedBy: ['reverseCreep'],
    doesNotApply: REVERSED,
  },
  deadTimeMargin: {
    value:
      "time from the outgoing contactor's last arc to the touch of the incoming one, on the same terminal",
    limitIs: 'least',
    limit:
      'the largest of 0 (below it: a line-to-line short circuit), what the arc of this run lacks to the longest one, half a period, and `limits.deadTimeMargin`',
    needs: 'a change-over',
    required: 'always',
    waivedBy: [],
  },
  windingTemperature: {
    value: 'highest temperature of the stator winding in the periodic steady state of the duty',
    limitIs: 'most',
    limit:
      'cooling air plus the rise of the insulation class by resistance (IEC 60034-1), corrected for air and altitude',
    needs: `\`thermal.insulationClass\`, \`duty.operationsPerHour\`, a running time; ${DUTY}`,
    required: 'always',
    waivedBy: [],
  },
  cageTemperature: {
    value: 'highest temperature of the cage (of the hotter of two) in the periodic steady state of the duty',
    limitIs: 'most',
    limit:
      '`thermal.cageLimit`; else 300 °C for an aluminium cage (assumed), or the temperature of the insulation class for a wound rotor',
    needs: `\`duty.operationsPerHour\`, a running time; ${DUTY}`,
    required: 'always',
    waivedBy: [],
  },
  operationsPerHour: {
    value:
      "operations per hour that the thermal model permits; those by the maker's starts without load where they are fewer",
    limitIs: 'least',
    limit: '`duty.operationsPerHour`',
    needs: `\`duty.operationsPerHour\`, a running time, \`thermal.insulationClass\`; ${DUTY}`,
    required: { when: 'the operations per hour are stated, or the heat of the run cannot be followed' },
    waivedBy: [],
  },
  lockedRotorWithstand: {
    value: 'I²t of start and stop together, over that of the locked rotor for the time it is withstood',
    limitIs: 'most',
    limit:
      '1; the time is `thermal.lockedRotorTimeHot`, else `lockedRotorTimeCold`, else 12 s from hot, the least that NEMA MG 1 demands (from memory)',
    needs: DUTY,
    required: 'always',
    waivedBy: [],
  },
  overloadRelay: {
    value: 'highest heat of the overload relay in the rhythm of the duty, over its trip level, from cold',
    limitIs: 'most',
    limit: '1: thermal memory of first order (IEC 60255-149)',
    needs: `an overload relay in \`starter.control\` or \`protection\`, \`duty.operationsPerHour\`, a running time; ${DUTY}`,
    required: { when: 'an overload relay is described' },
    waivedBy: [],
  },
  makingCapacity: {
    value:
      'current that either contactor makes: the highest crest over the closing angles, or the alternating current without offset, whichever is nearer to its limit',
    limitIs: 'most',
    limit:
      '`makingCapacity`, else the multiples of IEC 60947-4-1 for AC-3 and AC-4; for the crest that of its making test',
    needs: '`contactors`; a run that ends well',
    required: 'always',
    waivedBy: [],
  },
  breakingCapacity: {
    value:
      'r.m.s. value of the sine whose crest is the largest current at parting, of any pole, contactor and closing angle',
    limitIs: 'most',
    limit: '`breakingCapacity`, else the multiples of IEC 60947-4-1 for AC-3 and AC-4',
    needs: '`contactors`; a run that ends well and breaks a current',
    required: 'always',
    waivedBy: [],
  },
  contactorOperationsPerHour: {
    value: 'closings an hour of the contactor that is nearer to its limit',
    limitIs: 'most',
    limit: '`operationsPerHourAc3` or `operationsPerHourAc4`, by the category its duty comes to',
    needs: '`contactors` with that number, `duty.operationsPerHour`; a run that ends well',
    required: 'never',
    waivedBy: [],
  },
  contactLife: {
    value: 'operations of the duty until the contacts that wear first are to be replaced',
    limitIs: 'least',
    limit: '`limits.contactLife`',
    needs: '`contactors`, `duty`, that limit; a run that ends well',
    required: { when: 'it is not waived' },
    waivedBy: ['contactLife'],
  },
  instantaneousTrip: {
    value: 'highest crest of any phase current of start and plug, at the worst of the closing angles',
    limitIs: 'most',
    limit: '√2 × `limits.instantaneousTrip`: the trip must not act',
    needs: 'that limit',
    required: 'never',
    waivedBy: ['instantaneousTrip'],
  },
  voltageDip: {
    value: 'deepest dip of the voltage at the motor in start and plug, a drop across line resistors included',
    limitIs: 'most',
    limit: '`limits.voltageDip`',
    needs: 'that limit; an impedance of the supply, such as `supply.shortCircuitPower`',
    required: 'never',
    waivedBy: ['voltageDip'],
  },
  shaftTorque: {
    value:
      'largest torque between motor and load in start and plug, at the closing angle with the largest torque; without a described coupling twice what a rigid shaft carries',
    limitIs: 'most',
    limit:
      'the smallest of `limits.couplingTorque`, `gearboxTorque`, `keyTorque` and `brakeTorque` that is given',
    needs:
      'one of these limits; `load.coupling` where a rigid shaft keeps the limit and twice its torque does not',
    required: { when: 'it is not waived' },
    waivedBy: ['couplingTorque', 'gearboxTorque', 'keyTorque', 'brakeTorque'],
  },
  deceleration: {
    value: MOVES_THE_LOAD,
    limitIs: 'most',
    limit: '`limits.deceleration`',
    needs: 'that limit and `limits.decelerationRadius`; a plug or reversal',
    required: 'never',
    waivedBy: ['deceleration'],
  },
  tipping: {
    value: MOVES_THE_LOAD,
    limitIs: 'most',
    limit: 'standard gravity over `limits.tippingRatio`',
    needs: 'that limit and `limits.decelerationRadius`; a plug or reversal',
    required: 'never',
    waivedBy: ['tippingRatio'],
  },
  sliding: {
    value: MOVES_THE_LOAD,
    limitIs: 'most',
    limit: 'standard gravity times `limits.slidingFriction`',
    needs: 'that limit and `limits.decelerationRadius`; a plug or reversal',
    required: 'never',
    waivedBy: ['slidingFriction'],
  },
};
