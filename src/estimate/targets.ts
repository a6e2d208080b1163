import type { CompleteNameplate } from './completeNameplate.ts';
import type { Known } from './known.ts';
import { divideLosses, type Losses } from './losses.ts';
import { widthOf } from './tolerances.ts';

/** One thing that the circuit is to give, as a pure number. */
export interface Target {
  readonly value: number;
  /** Standard deviation of its logarithm. */
  readonly scatter: number;
  /** Side that the value should not pass. */
  readonly limit: { readonly kind: 'least' | 'most'; readonly value: number } | null;
}

/** What a circuit is to give, in multiples of rated power and of the current rated power/(√3·line voltage). */
export interface Targets {
  readonly slip: number;
  readonly current: Target;
  readonly powerFactor: Target;
  /** Power at the shaft at the rated slip. */
  readonly shaftPower: Target;
  /** Only where current, power factor and efficiency are all stated; they then share their disagreement. */
  readonly efficiency: Target | null;
  readonly lockedRotorCurrent: Target;
  /** Torques as air-gap power at synchronous speed. */
  readonly lockedRotorTorque: Target;
  readonly breakdownTorque: Target;
  readonly losses: Losses;
  /** Current around which leakage saturates, where it does. */
  readonly knee: number;
}

/** Share of its tolerance to which a stated item is aimed: far closer than it is judged, so that ties hardly pull it off. */
const STRICT = 0.003;
/** Logarithmic scatter allowed to a value that only stands in. */
const LOOSE = 0.1;
/** Logarithmic scatter with which a limit of a standard may be passed. */
export const LIMIT_SCATTER = 0.03;
/** Rated power must come out at rated speed. */
const SHAFT_POWER = 0.0001;
/** Where current, power factor and efficiency disagree: what rounding leaves to each, two orders below it. */
const ROUNDING = { powerFactor: 0.0004, efficiency: 0.0006 } as const;

/** Leakage paths begin to saturate at about twice the rated current: common practice, no source. */
const KNEE = 2;

/** What the fit aims at, from a complete nameplate. */
export function targetsOf(complete: CompleteNameplate): Targets {
  const { power, lineVoltage } = complete;
  const slip = complete.slip.value;
  const base = power / (Math.sqrt(3) * lineVoltage);
  const ratedTorque = 1 / (1 - slip);
  const allGiven = [complete.current, complete.powerFactor, complete.efficiency].every(
    ({ origin }) => origin === 'given',
  );
  const takenUp = power / (Math.sqrt(3) * lineVoltage * complete.current.value * complete.powerFactor.value);
  return {
    slip,
    current: strict(complete.current, complete.current.value / base),
    powerFactor: even(complete.powerFactor.value, ROUNDING.powerFactor),
    shaftPower: even(1, SHAFT_POWER),
    efficiency: allGiven ? even(complete.efficiency.value, ROUNDING.efficiency) : null,
    lockedRotorCurrent: starting(complete.lockedRotorCurrent, complete.lockedRotorCurrent.value / base),
    lockedRotorTorque: starting(complete.lockedRotorTorque, complete.lockedRotorTorque.value * ratedTorque),
    breakdownTorque: starting(complete.breakdownTorque, complete.breakdownTorque.value * ratedTorque),
    knee: KNEE * (complete.current.value / base),
    losses: divideLosses(
      allGiven ? (complete.efficiency.value + Math.min(takenUp, 0.99)) / 2 : takenUp,
      slip,
    ),
  };
}

/** The rated point can always be met: aimed at closely wherever it comes from. */
function strict(known: Known, value: number): Target {
  return even(value, STRICT * widthOf(known.range));
}

/**
 * The same targets for a circuit whose leakage saturates: its law is a guess, so that starting current and torques are aimed at
 * to a per cent, and no longer at the price of losses that no motor has.
 */
export function relaxed(targets: Targets): Targets {
  const wider = (target: Target): Target => ({ ...target, scatter: Math.max(target.scatter, RELAXED) });
  return {
    ...targets,
    lockedRotorCurrent: wider(targets.lockedRotorCurrent),
    lockedRotorTorque: wider(targets.lockedRotorTorque),
    breakdownTorque: wider(targets.breakdownTorque),
  };
}

/** Logarithmic scatter of the starting items of a saturating circuit. */
const RELAXED = 0.004;

function starting(known: Known, value: number): Target {
  const scale = value / known.value;
  if (known.kind !== 'value' && known.usual !== null) {
    const { value: usual, scatter } = known.usual;
    return { value: usual * scale, scatter, limit: { kind: known.kind, value } };
  }
  return known.origin === 'given' || known.origin === 'derived' ? strict(known, value) : even(value, LOOSE);
}

function even(value: number, scatter: number): Target {
  return { value, scatter, limit: null };
}
