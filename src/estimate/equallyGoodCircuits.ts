import type { CircuitPart, EstimatedCircuit, Nameplate } from '../scenario/nameplate.ts';
import { type CompleteNameplate, completeNameplate } from './completeNameplate.ts';
import { fitCircuit, withSaturation } from './fitCircuit.ts';
import type { Known } from './known.ts';
import { AT, candidateOf, type Unknowns } from './parameters.ts';
import { type JudgedItem, reproducedItems } from './reproducedItems.ts';
import { relaxed, type Targets, targetsOf } from './targets.ts';
import { type Ties, usualTies } from './ties.ts';
import { circuitPartOf, unknownsOfPart } from './toMachine.ts';

/** A circuit that the nameplate allows as well as the one that was estimated. */
export interface CircuitVariant {
  /** What sets it apart, in words. */
  readonly label: string;
  /** unknown: same nameplate, other assumption; tolerance: the nameplate at an end of what it is allowed. */
  readonly kind: 'unknown' | 'tolerance';
  readonly circuit: CircuitPart;
}

/**
 * Largest miss of a stated item with which a variant still counts as fitting; the estimate's own misses come on top. The ends of
 * tolerances are met less closely: what matters of them is the direction, and few nameplates lie at one.
 */
const FITTING = { unknown: 0.02, tolerance: 0.2 } as const;
/** A miss beyond this stands in the label. */
const WORTH_SAYING = 0.015;
/** How far the assumptions are moved: about one and a half of the widths with which they hold. */
const SHARE = { low: 0.25, high: 0.6 } as const;
const CAGES = { alike: 2, apart: 9 } as const;
const STATOR_LOSS = { low: 0.75, high: 1.25 } as const;
/** Onset of saturation, times rated current, instead of the usual one. */
const KNEES = { early: 0.65, late: 1.5 } as const;

/**
 * Circuits that fit the data of a nameplate as well as the estimated one: with other assumptions about what no nameplate says,
 * and with the nameplate's items at the ends of their tolerances (of a code letter's band, or of the usual spread where the
 * item was filled in). Runs over all of them show what is not known about a result. The same list every time; a variant that
 * no circuit reaches is left out.
 *
 * @param estimated the estimate from this nameplate
 * @throws ScenarioError when the nameplate contradicts itself
 * @throws RangeError where the data are so far from any machine that a circuit gives no numbers for them
 */
export function equallyGoodCircuits(
  nameplate: Nameplate,
  estimated: EstimatedCircuit,
): readonly CircuitVariant[] {
  const complete = completeNameplate(nameplate);
  const ties = usualTies(complete.design.letter);
  const start = unknownsOfPart(estimated.circuit, complete);
  const targets = targetsOf(complete);
  const own = largestMiss(reproducedItems(estimated.circuit, complete));
  const variants: CircuitVariant[] = [];
  const add = (
    label: string,
    kind: CircuitVariant['kind'],
    plate: CompleteNameplate,
    aims: Targets,
    assumptions: Ties,
    from: Unknowns,
  ) => {
    const circuit = fitting(aims, assumptions, plate, from, own + FITTING[kind]);
    if (circuit === null) return;
    // The base of all multiples stays that of the estimate, so that variants can be compared.
    const reached = kind === 'tolerance' ? shortOf(reproducedItems(circuit, plate)) : '';
    variants.push({
      label: `${label}${reached}`,
      kind,
      circuit: { ...circuit, rated: estimated.circuit.rated },
    });
  };

  for (const [label, change] of assumptionsOf(ties))
    add(label, 'unknown', complete, targets, { ...ties, ...change }, start);
  if (start.length > AT.z)
    for (const [word, factor] of Object.entries(KNEES))
      add(
        `leakage saturates ${word === 'early' ? 'from a smaller' : 'only from a larger'} current on`,
        'unknown',
        complete,
        { ...targets, knee: targets.knee * factor },
        ties,
        start,
      );
  else add('leakage saturates with current', 'unknown', complete, targets, ties, withSaturation(start));
  for (const [label, plate] of cornersOf(complete))
    add(label, 'tolerance', plate, targetsOf(plate), ties, start);
  return variants;
}

/** The circuit nearest to the targets, linear if a linear one will do; null when it misses a stated item by more than allowed. */
function fitting(
  targets: Targets,
  ties: Ties,
  plate: CompleteNameplate,
  from: Unknowns,
  allowed: number,
): CircuitPart | null {
  const { x } = fitCircuit(from.length > AT.z ? relaxed(targets) : targets, ties, [from]);
  const circuit = circuitPartOf(candidateOf(x, targets.knee), plate);
  if (largestMiss(reproducedItems(circuit, plate)) <= allowed) return circuit;
  return from.length > AT.z ? null : fitting(targets, ties, plate, withSaturation(x), allowed);
}

/** Says of a corner of the tolerances which item its circuit does not quite reach. */
function shortOf(items: readonly JudgedItem[]): string {
  const missed = items
    .filter(({ binding, error }) => binding && error !== null && Math.abs(error) > WORTH_SAYING)
    .toSorted((a, b) => Math.abs(b.error!) - Math.abs(a.error!))[0];
  if (missed === undefined) return '';
  const share = Number(Math.abs(100 * missed.error!).toPrecision(2));
  return ` (its circuit has a ${missed.name} ${share} % ${missed.error! < 0 ? 'below' : 'above'} that)`;
}

function largestMiss(items: readonly JudgedItem[]): number {
  return Math.max(0, ...items.filter(({ binding }) => binding).map(({ error }) => Math.abs(error!)));
}

function assumptionsOf(ties: Ties): readonly (readonly [string, Partial<Ties>])[] {
  return [
    ['less of the leakage in the stator', { statorShare: Math.min(SHARE.low, ties.statorShare / 1.5) }],
    ['more of the leakage in the stator', { statorShare: SHARE.high }],
    ['cages more alike', { leakageRatio: CAGES.alike, resistanceRatio: CAGES.alike }],
    ['cages further apart', { leakageRatio: CAGES.apart, resistanceRatio: CAGES.apart }],
    ['less loss in the stator winding', { statorLossFactor: STATOR_LOSS.low }],
    ['more loss in the stator winding', { statorLossFactor: STATOR_LOSS.high }],
  ];
}

/** The nameplate with one item, or the two that make plugging most violent, at an end of its range. */
function cornersOf(complete: CompleteNameplate): readonly (readonly [string, CompleteNameplate])[] {
  const { lockedRotorCurrent, lockedRotorTorque, breakdownTorque, slip } = complete;
  // A motor that draws more at standstill leaks less, and its breakdown torque is larger by as much.
  const current = (end: 0 | 1) => ({
    lockedRotorCurrent: moved(lockedRotorCurrent, end),
    breakdownTorque: scaled(breakdownTorque, lockedRotorCurrent.range[end]),
  });
  const locked = (end: 0 | 1) => ({
    lockedRotorTorque: moved(lockedRotorTorque, end),
    // The breakdown torque is the largest from standstill on.
    breakdownTorque: atLeast(breakdownTorque, moved(lockedRotorTorque, end).value),
  });
  const corners: readonly (readonly [string, Known, 0 | 1, Partial<CompleteNameplate>])[] = [
    ['locked-rotor current', lockedRotorCurrent, 0, current(0)],
    ['locked-rotor current', lockedRotorCurrent, 1, current(1)],
    ['locked-rotor torque', lockedRotorTorque, 0, locked(0)],
    ['locked-rotor torque', lockedRotorTorque, 1, locked(1)],
    ['breakdown torque', breakdownTorque, 0, { breakdownTorque: moved(breakdownTorque, 0) }],
    ['breakdown torque', breakdownTorque, 1, { breakdownTorque: moved(breakdownTorque, 1) }],
    ['slip', slip, 0, { slip: moved(slip, 0) }],
    ['slip', slip, 1, { slip: moved(slip, 1) }],
  ];
  const single = corners
    .filter(([, known, end]) => known.range[end] !== 1 || known.kind !== 'value')
    .map(([name, known, end, change]) => {
      return [`${name} ${endInWords(known, end)}`, { ...complete, ...change }] as const;
    });
  const both = [lockedRotorCurrent, lockedRotorTorque].every(({ range }) => range[1] > 1);
  if (!both) return single;
  const label =
    `locked-rotor current ${endInWords(lockedRotorCurrent, 1)} and ` +
    `torque ${endInWords(lockedRotorTorque, 1)}`;
  const most = scaled(breakdownTorque, lockedRotorCurrent.range[1]);
  const violent = {
    ...current(1),
    ...locked(1),
    breakdownTorque: atLeast(most, locked(1).breakdownTorque.value),
  };
  return [...single, [label, { ...complete, ...violent }]];
}

/** An item at an end of its range, now to be met closely. */
function moved(known: Known, end: 0 | 1): Known {
  return { ...known, value: known.value * known.range[end], origin: 'given', kind: 'value', usual: null };
}

function scaled(known: Known, factor: number): Known {
  return {
    ...known,
    value: known.value * factor,
    usual: known.usual && { ...known.usual, value: known.usual.value * factor },
  };
}

function atLeast(known: Known, value: number): Known {
  return known.value >= value ? known : { ...known, value };
}

function endInWords({ range, kind }: Known, end: 0 | 1): string {
  const factor = range[end];
  const limit = kind === 'least' ? 'the least of its standard' : 'the most of its standard';
  if (factor === 1) return `at ${limit}`;
  const share = `${Number(Math.abs(100 * (factor - 1)).toPrecision(2))} %`;
  if (kind !== 'value') return `${share} ${factor > 1 ? 'above' : 'below'} ${limit}`;
  return `${share} ${factor > 1 ? 'higher' : 'lower'}`;
}
