import type { ControlData, StarterData, StarterFault } from '../../scenario/scenario.ts';
import type { ControlCircuit } from '../control/controlCircuit.ts';
import { circuitOfStarter } from '../control/schemes.ts';
import type { Counterexample } from './describePath.ts';
import { exploreControl } from './exploreControl.ts';
import { faultsOfCircuit } from './faultsOfCircuit.ts';
import { type ExploreOptions, exploreOptions } from './options.ts';
import { PROPERTIES, type PropertyId, whyNotApplicable } from './property.ts';

/**
 * What the check says of a property.
 *
 * - holds: no sequence breaks it.
 * - dependsOnSpeed: none breaks it while the speed takes longer from drop-out to pick-up than the devices take to settle.
 * - broken: the counterexample breaks it; none is shorter.
 * - doesNotApply: it says nothing about this starter; `why` is in words.
 */
export type Verdict =
  | { readonly kind: 'holds' }
  | { readonly kind: 'dependsOnSpeed'; readonly counterexample: Counterexample }
  | { readonly kind: 'broken'; readonly counterexample: Counterexample }
  | { readonly kind: 'doesNotApply'; readonly why: string };

/** A property and its verdict. */
export interface PropertyVerdict {
  readonly property: PropertyId;
  readonly verdict: Verdict;
}

/** A device fault and what it breaks that holds in the healthy starter. */
export interface FaultVerdict {
  readonly fault: StarterFault;
  /** One for each property that it breaks; empty: none. */
  readonly breaks: readonly Counterexample[];
  /** Number of states explored with this fault. */
  readonly states: number;
}

/** The exhaustive check of a starter's control circuit. */
export interface InterlockReport {
  /** The circuit's title. */
  readonly title: string;
  readonly control: ControlData;
  /** The zero-speed switch has a lockout solenoid. */
  readonly lockout: boolean;
  /** The healthy starter; every property in order. */
  readonly verdicts: readonly PropertyVerdict[];
  readonly faults: readonly FaultVerdict[];
  /** States explored in the healthy starter, and in all: with every fault and at every speed. */
  readonly states: { readonly healthy: number; readonly all: number };
}

/** Checks the control circuit of a starter, its own faults left out; null where it has no control circuit. */
export function checkInterlocks(starter: StarterData): InterlockReport | null {
  const circuit = circuitOfStarter(starter);
  if (circuit === null || starter.control === undefined) return null;
  return checkCircuit(circuit, starter.control, starter.zeroSpeedSwitch?.lockout === true);
}

/**
 * Checks a control circuit.
 *
 * @param circuit as `controlCircuit` makes it of `control` and `lockout`, or a changed one
 */
export function checkCircuit(
  circuit: ControlCircuit,
  control: ControlData,
  lockout: boolean,
): InterlockReport {
  const options = exploreOptions(control);
  const healthy = exploreControl(circuit, options);
  const fast = exploreControl(circuit, { ...options, speed: 'any' });
  const held = options.properties.filter((id) => healthy.broken.every(({ property }) => property !== id));
  const faults = faultsOfCircuit(circuit, options).map((fault) => withFault(circuit, options, held, fault));
  const verdictOf = (id: PropertyId): Verdict => {
    const why = whyNotApplicable(id, control);
    if (why !== null) return { kind: 'doesNotApply', why };
    const is = ({ property }: Counterexample) => property === id;
    const broken = healthy.broken.find(is);
    if (broken !== undefined) return { kind: 'broken', counterexample: broken };
    const atSpeed = fast.broken.find(is);
    return atSpeed === undefined ? { kind: 'holds' } : { kind: 'dependsOnSpeed', counterexample: atSpeed };
  };
  return {
    title: circuit.title,
    control,
    lockout,
    verdicts: PROPERTIES.map(({ id }) => ({ property: id, verdict: verdictOf(id) })),
    faults,
    states: {
      healthy: healthy.states,
      all: faults.reduce((sum, { states }) => sum + states, healthy.states + fast.states),
    },
  };
}

/** True when no property that applies is broken in the healthy starter. */
export function everyPropertyHolds({ verdicts }: InterlockReport): boolean {
  return verdicts.every(({ verdict }) => verdict.kind !== 'broken');
}

function withFault(
  circuit: ControlCircuit,
  options: ExploreOptions,
  held: readonly PropertyId[],
  fault: StarterFault,
): FaultVerdict {
  // A relay that never trips proves nothing about what happens when it trips.
  const judged = fault.kind === 'overloadNeverTrips' ? held.filter((id) => id !== 'overloadDropsBoth') : held;
  const { broken, states } = exploreControl(circuit, { ...options, properties: judged, faults: [fault] });
  return { fault, breaks: broken, states };
}
