import type { CycleName, Scenario } from '../../scenario/scenario.ts';
import { shaftOf } from '../../shaft/shaft.ts';

/** Duty type of IEC 60034-1 (types and what they state from memory). */
export interface DutyType {
  readonly type: 'S4' | 'S5' | 'S7';
  readonly words: string;
  /** Share of the cycle in which the motor is on; null: not known, or without meaning (S7 has no rest). */
  readonly cyclicDurationFactor: number | null;
  /** Moment of inertia of the motor, kg·m². */
  readonly motorInertia: number;
  /** Moment of inertia of what the motor drives, at the motor's shaft, kg·m². */
  readonly loadInertia: number;
  /** Factor of inertia FI = (J_M + J_ext)/J_M. */
  readonly factorOfInertia: number;
  /** Short form: "S5, 40 %, FI 2.4". */
  readonly designation: string;
}

const TYPES: Readonly<Record<CycleName, readonly [DutyType['type'], string]>> = {
  startCoast: ['S4', 'intermittent periodic duty with starting'],
  startPlugStop: ['S5', 'intermittent periodic duty with electric braking'],
  fullReversal: ['S7', 'continuous-operation periodic duty with electric braking'],
};

/** Duty type of a cycle. */
export function dutyType(
  scenario: Pick<Scenario, 'machine' | 'load' | 'supply'>,
  kind: CycleName,
  cyclicDurationFactor: number | null,
): DutyType {
  const { motorInertia, loadInertia } = shaftOf(scenario);
  const [type, words] = TYPES[kind];
  const factorOfInertia = (motorInertia + loadInertia) / motorInertia;
  const factor = type === 'S7' ? null : cyclicDurationFactor;
  const parts = [
    type,
    ...(factor === null ? [] : [`${Math.round(100 * factor)} %`]),
    `FI ${factorOfInertia.toPrecision(2)}`,
  ];
  return {
    type,
    words,
    cyclicDurationFactor: factor,
    motorInertia,
    loadInertia,
    factorOfInertia,
    designation: parts.join(', '),
  };
}
