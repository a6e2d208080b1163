import { logarithm } from '../numeric/logarithm.ts';
import type { EstimatedCircuit, Nameplate } from '../scenario/nameplate.ts';
import { circuitNotes } from './circuitNotes.ts';
import { type CompleteNameplate, completeNameplate, notesOf } from './completeNameplate.ts';
import { fitCircuit, withSaturation } from './fitCircuit.ts';
import { nameplateError, short } from './nameplateError.ts';
import { type Candidate, candidateOf } from './parameters.ts';
import { perUnitState } from './perUnitCircuit.ts';
import { type JudgedItem, reproducedItems } from './reproducedItems.ts';
import { relaxed, type Targets, targetsOf } from './targets.ts';
import { usualTies } from './ties.ts';
import { circuitPartOf } from './toMachine.ts';

/** Rounding of a multiple or of a code letter's band, beyond which a current is above its table. */
const ABOVE_TABLE = 1.05;
/** A stated item that is missed by more than this is remarked, and a linear circuit that does so is given up. */
const NOTABLE = 0.01;
/** A saturating circuit is taken where it misses by less than this share of what the linear one misses by. */
const CLEARLY_BETTER = 0.7;
/** A loss that comes out so many times larger or smaller than usual is remarked. */
const ODD_LOSS = 2.5;

/**
 * Estimates a double-cage circuit with iron and mechanical loss from a nameplate.
 *
 * The circuit is linear where a linear one reproduces all that is stated within 1 %: its leakages are then effective values,
 * right at standstill and while plugging. Catalogue data often cannot be had that way (more locked-rotor current than constant
 * leakages allow beside the breakdown torque, because real leakage paths saturate); then the leakages of stator and
 * outer cage saturate with current, as little as that takes.
 *
 * @throws ScenarioError when the nameplate contradicts itself, or no circuit comes within the tolerances of what it states
 */
export function estimateCircuit(nameplate: Nameplate): EstimatedCircuit {
  const complete = completeNameplate(nameplate);
  const targets = targetsOf(complete);
  const ties = usualTies(complete.design.letter);
  const judge = (x: readonly number[]) => {
    const candidate = candidateOf(x, targets.knee);
    const circuit = circuitPartOf(candidate, complete);
    return { candidate, circuit, items: reproducedItems(circuit, complete) };
  };
  const linear = fitCircuit(targets, ties);
  let found = judge(linear.x);
  const missed = worst(found.items.filter(isStarting));
  const remarks: string[] = [];
  if (missed !== null && Math.abs(missed.error!) > NOTABLE) {
    const saturated = judge(fitCircuit(relaxed(targets), ties, [withSaturation(linear.x)]).x);
    if (missOf(saturated.items) < CLEARLY_BETTER * missOf(found.items)) {
      found = saturated;
      remarks.push(
        `No circuit with constant leakages gives these values (the nearest misses the ${missed.name} by ` +
          `${percent(missed.error!)}); the leakages of stator and outer cage saturate with current to ` +
          `${short(100 * found.candidate.circuit.saturation!.remaining)} % of their values at small current.`,
      );
    }
  }
  refuseIfMissed(found.items, remarks.length > 0, nameplate);
  for (const { key, name, error, binding, source } of found.items)
    if (binding && Math.abs(error!) > NOTABLE)
      remarks.push(
        `The circuit misses the ${name} (${source}) by ${percent(error!)}` +
          (key === 'lockedRotorCurrent' && error! < 0
            ? ': expect the currents of starting and plugging to be higher by about as much.'
            : '.'),
      );
  for (const { name, kind, target, error, source, binding } of found.items)
    if (kind !== 'value' && error !== null && !binding)
      remarks.push(
        `The circuit does not keep the ${name} of ${kind === 'least' ? 'at least' : 'at most'} ${short(target!)} (${source}): ` +
          `${percent(error)}. Do the stated values belong to a motor of this design?`,
      );
  remarks.push(...belowTheTable(nameplate), ...aboveTheTable(nameplate, complete));
  remarks.push(...oddLosses(found.candidate, targets));
  return {
    circuit: found.circuit,
    estimation: {
      from: 'nameplate',
      items: found.items.map(({ name, unit, target, reproduced, kind, error, source }) => {
        return { name, unit, target, reproduced, kind, error, source };
      }),
      misfit: misfit(found.items),
      remarks,
    },
    notes: [
      ...notesOf(complete),
      ...circuitNotes(found.circuit, complete.frequency, 'fitted to the nameplate'),
    ],
  };
}

/** A stated locked-rotor current beyond what the stated design is allowed. */
function aboveTheTable(nameplate: Nameplate, complete: CompleteNameplate): readonly string[] {
  if (nameplate.design === null || nameplate.lockedRotorCurrent === null) return [];
  const { kind, value, source } = completeNameplate({
    ...nameplate,
    lockedRotorCurrent: null,
  }).lockedRotorCurrent;
  const stated = complete.lockedRotorCurrent.value;
  if (kind !== 'most' || stated <= ABOVE_TABLE * value) return [];
  return [
    `The locked-rotor current of ${short(stated)} A is above the ${short(value)} A of ${source.replace(/^assumed: /, '').replace(/: at most$/, '')}: ` +
      'is the design letter right?',
  ];
}

/** Stated torques below the minima that the stated design has in its standard. */
function belowTheTable(nameplate: Nameplate): readonly string[] {
  const { design, lockedRotorTorque, breakdownTorque } = nameplate;
  if (design === null || (lockedRotorTorque === null && breakdownTorque === null)) return [];
  const table = completeNameplate({ ...nameplate, lockedRotorTorque: null, breakdownTorque: null });
  return (
    [
      ['locked-rotor torque', lockedRotorTorque, table.lockedRotorTorque],
      ['breakdown torque', breakdownTorque, table.breakdownTorque],
    ] as const
  ).flatMap(([name, stated, { kind, value, source }]) =>
    stated !== null && kind === 'least' && stated < value
      ? [
          `The stated ${name} of ${short(stated)} times rated torque is below the ${short(value)} of ${source.replace(/: at least$/, '')}: ` +
            'is the design letter right?',
        ]
      : [],
  );
}

/** Root mean square of the errors of binding items, each over what it is allowed. */
function misfit(items: readonly JudgedItem[]): number {
  const shares = items.filter(({ binding }) => binding).map(({ error, allowed }) => error! / allowed);
  return Math.sqrt(shares.reduce((sum, share) => sum + share * share, 0) / Math.max(shares.length, 1));
}

function worst(items: readonly JudgedItem[]): JudgedItem | null {
  const share = ({ error, allowed }: JudgedItem) => Math.abs(error!) / allowed;
  const binding = items.filter((item) => item.binding);
  return binding.toSorted((a, b) => share(b) - share(a))[0] ?? null;
}

/** Largest miss of a binding item over what it is allowed. */
function missOf(items: readonly JudgedItem[]): number {
  const item = worst(items);
  return item === null ? 0 : Math.abs(item.error!) / item.allowed;
}

function isStarting({ key }: JudgedItem): boolean {
  return key === 'lockedRotorCurrent' || key === 'lockedRotorTorque' || key === 'breakdownTorque';
}

function refuseIfMissed(
  items: readonly JudgedItem[],
  saturates: boolean,
  { lockedRotorCurrent }: Nameplate,
): void {
  const item = worst(items);
  if (item === null || Math.abs(item.error!) <= item.allowed) return;
  const unit = item.unit === '1' ? '' : ` ${item.unit}`;
  const others = items
    .filter(({ key, binding }) => binding && key !== item.key)
    .map(({ name }) => name)
    .join(', ');
  const isLetter = item.key === 'lockedRotorCurrent' && lockedRotorCurrent?.kind === 'codeLetter';
  throw nameplateError(
    isLetter ? 'codeLetter' : item.key,
    `${short(item.target!)}${unit}`,
    `cannot be had together with ${others}: the nearest ${saturates ? '' : 'linear '}circuit gives ` +
      `${short(item.reproduced)}${unit} (${percent(item.error!)})`,
    `values of one motor: ${item.name} within ${short(100 * item.allowed)} % of what a circuit can give beside the others; one of those ` +
      'named here is wrong',
  );
}

function oddLosses({ circuit, mechanicalLoss }: Candidate, { slip, losses }: Targets): readonly string[] {
  const { statorLoss, ironLoss } = perUnitState(circuit, slip);
  const found = [
    ['stator winding', statorLoss, losses.stator],
    ['iron', ironLoss, losses.iron],
    ['bearings and windage', mechanicalLoss, losses.mechanical],
  ] as const;
  return found
    .filter(([, loss, usual]) => Math.abs(logarithm(loss / usual)) > logarithm(ODD_LOSS))
    .map(
      ([name, loss, usual]) =>
        `The values ask for an unusual loss of the ${name}: ${short(100 * loss)} % of rated power where ` +
        `${short(100 * usual)} % are usual.`,
    );
}

function percent(share: number): string {
  return `${share > 0 ? '+' : '−'}${short(100 * Math.abs(share))} %`;
}
