import { hypotenuse } from '../../numeric/hypotenuse.ts';
import { squared } from '../../numeric/raised.ts';
import { type Bounds, bounds } from '../bounds.ts';
import { brakes } from '../controlWords.ts';
import type { Dimension } from '../dimension.ts';
import type { Scenario } from '../scenario.ts';
import { whyNotTorque } from './adjustLoadTorque.ts';
import type { AdjustableKey } from './edit.ts';
import {
  lockedRotorReactance,
  niceRange,
  ratedTorque,
  synchronousSpeedOfLoad,
  synchronousSpeedOfMotor,
} from './handRanges.ts';

/** Between which values a slider runs, SI. */
export interface HandRange {
  readonly min: number;
  readonly max: number;
  /** Equal steps of the hand are equal ratios. */
  readonly log: boolean;
}

/** A quantity that a hand can turn, as it is in one scenario. */
export interface Adjustable {
  readonly dimension: (scenario: Scenario) => Dimension;
  /** SI unit as figures are labelled. */
  readonly unit: (scenario: Scenario) => string;
  readonly label: (scenario: Scenario) => string;
  /** SI; null: the element is not there. */
  readonly read: (scenario: Scenario) => number | null;
  /** Depends on the machine, not on the value, so that a thumb stays under the hand. */
  readonly range: (scenario: Scenario) => HandRange;
  /** What a scenario may state, SI: wider than what a slider reaches. */
  readonly allowed: (scenario: Scenario) => Pick<Bounds, 'min' | 'max' | 'aboveMin'>;
  /** What it is called when the element is not there; null: it always is. */
  readonly absentWords: string | null;
  /** Why it cannot be turned; null: it can. */
  readonly whyNot: (scenario: Scenario) => string | null;
  /** Why the element cannot be taken out, null: it can; of no meaning where it is always there. */
  readonly whyNeeded: (scenario: Scenario) => string | null;
}

const always = () => null;

/** s; residual flux of ordinary machines has gone by then. */
const LONGEST_DEAD_TIME = 0.5;

/** Every adjustable quantity, in the order of a column of sliders. */
export const ADJUSTABLES: Readonly<Record<AdjustableKey, Adjustable>> = {
  loadInertia: {
    dimension: () => 'inertia',
    unit: () => 'kg·m²',
    label: ({ load }) => (load.gear === undefined ? 'Load inertia' : "Inertia at the load's shaft"),
    read: ({ load }) => load.inertia,
    range: ({ machine, load }) => {
      const ratio = load.gear?.ratio ?? 1;
      const rotor = machine.inertia > 0 ? machine.inertia * squared(ratio) : load.inertia;
      return niceRange(0.1 * rotor, 200 * rotor, true);
    },
    allowed: () => bounds.inertia,
    absentWords: null,
    whyNot: always,
    whyNeeded: always,
  },
  loadTorque: {
    dimension: (scenario) => (isPower(scenario) ? 'power' : 'torque'),
    unit: (scenario) => (isPower(scenario) ? 'W' : 'N·m'),
    label: torqueLabel,
    read: readTorque,
    range: (scenario) => {
      const torque = ratedTorque(scenario) * (scenario.load.gear?.ratio ?? 1);
      const { max } = niceRange(
        0,
        2 * torque * (isPower(scenario) ? synchronousSpeedOfLoad(scenario) : 1),
        false,
      );
      return { min: scenario.load.torques[0]?.kind === 'gravity' ? -max : 0, max, log: false };
    },
    allowed: ({ load }) => {
      const kind = load.torques[0]?.kind;
      if (kind === 'constantPower') return bounds.loadPower;
      return kind === 'gravity' ? bounds.gravityTorque : bounds.loadTorque;
    },
    absentWords: null,
    whyNot: ({ load }) => whyNotTorque(load.torques[0]?.kind),
    whyNeeded: always,
  },
  deadTime: {
    dimension: () => 'time',
    unit: () => 's',
    label: ({ starter }) =>
      starter.control === undefined ? 'Dead time of the contacts' : 'Change-over timer',
    read: ({ starter }) =>
      starter.control?.changeoverTimer ?? starter.changeoverDelay + starter.closingTime - starter.openingTime,
    range: ({ starter }) => ({
      min: shortestDeadTime(starter),
      max: LONGEST_DEAD_TIME,
      log: false,
    }),
    allowed: ({ starter }) => ({ ...bounds.changeover, min: shortestDeadTime(starter) }),
    absentWords: null,
    whyNot: always,
    whyNeeded: always,
  },
  closingAngle: {
    dimension: () => 'angle',
    unit: () => 'rad',
    label: () => 'Supply angle at t = 0',
    read: ({ supply }) => supply.angle - 2 * Math.PI * Math.floor(supply.angle / (2 * Math.PI)),
    range: () => ({ min: 0, max: 2 * Math.PI, log: false }),
    allowed: () => bounds.angle,
    absentWords: null,
    whyNot: always,
    whyNeeded: always,
  },
  lineResistance: {
    dimension: () => 'resistance',
    unit: () => 'Ω',
    label: () => 'Line resistors while plugging, each',
    read: ({ starter }) => starter.lineResistors?.resistance ?? null,
    range: (scenario) => {
      const reactance = lockedRotorReactance(scenario);
      return niceRange(0.05 * reactance, 10 * reactance, true);
    },
    allowed: () => bounds.resistor,
    absentWords: 'no resistors',
    whyNot: always,
    whyNeeded: always,
  },
  dropOutSpeed: {
    dimension: () => 'speed',
    unit: () => 'rad/s',
    label: () => 'Zero-speed switch drops out at',
    read: ({ starter }) => starter.zeroSpeedSwitch?.dropOutSpeed ?? null,
    range: (scenario) => {
      const synchronous = synchronousSpeedOfMotor(scenario);
      return { min: 0.004 * synchronous, max: 0.4 * synchronous, log: true };
    },
    allowed: (scenario) => ({ ...bounds.speed, max: synchronousSpeedOfMotor(scenario) }),
    absentWords: 'no switch',
    whyNot: always,
    whyNeeded: ({ starter }) => {
      const scheme = starter.control?.scheme;
      if (scheme !== undefined && (brakes(scheme) || scheme === 'antiPlugging'))
        return 'the control scheme needs it';
      if (starter.injection !== undefined && starter.injection.duration === null)
        return 'direct current lasts until it opens';
      return starter.faults?.some(({ kind }) => kind === 'zeroSpeedSwitch') === true
        ? 'a fault of it is chosen'
        : null;
    },
  },
  sourcePower: {
    dimension: () => 'apparentPower',
    unit: () => 'VA',
    label: () => 'Short-circuit power of the source',
    read: ({ supply }) => {
      const reactance = 2 * Math.PI * supply.frequency * supply.sourceInductance;
      const impedance = hypotenuse(supply.sourceResistance, reactance);
      return impedance > 0 ? squared(supply.lineVoltage) / impedance : null;
    },
    range: (scenario) => {
      const lockedRotor = squared(scenario.supply.lineVoltage) / lockedRotorReactance(scenario);
      return niceRange(2 * lockedRotor, 1000 * lockedRotor, true);
    },
    allowed: () => bounds.shortCircuitPower,
    absentWords: 'infinitely strong',
    whyNot: always,
    whyNeeded: always,
  },
};

/** What the contactors leave as dead time at least; a timer has no such limit. s */
function shortestDeadTime({ control, closingTime, openingTime }: Scenario['starter']): number {
  return control === undefined ? Math.max(0, closingTime - openingTime) : 0;
}

function isPower({ load }: Scenario): boolean {
  return load.torques[0]?.kind === 'constantPower';
}

const TORQUE_LABELS = {
  friction: 'Friction torque',
  gravity: 'Torque of gravity',
  viscous: 'Load torque at synchronous speed (∝ speed)',
  fan: 'Load torque at synchronous speed (∝ speed²)',
  constantPower: 'Power of the load',
  table: 'Load torque',
} as const;

function torqueLabel({ load }: Scenario): string {
  const [first] = load.torques;
  if (first === undefined) return TORQUE_LABELS.table;
  return load.torques.length > 1
    ? `${TORQUE_LABELS[first.kind]}, first part of the load`
    : TORQUE_LABELS[first.kind];
}

/** As `adjustLoadTorque` counts it. */
function readTorque(scenario: Scenario): number | null {
  const [first] = scenario.load.torques;
  switch (first?.kind) {
    case undefined:
    case 'table':
      return null;
    case 'friction':
    case 'gravity':
      return first.torque;
    case 'constantPower':
      return first.power;
    case 'viscous':
      return first.coefficient * synchronousSpeedOfLoad(scenario);
    case 'fan':
      return first.coefficient * squared(synchronousSpeedOfLoad(scenario));
    default:
      return first satisfies never;
  }
}
