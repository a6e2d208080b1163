import { steadyState } from '../machine/steadyState.ts';
import { squared } from '../numeric/raised.ts';
import type { CircuitPart, Nameplate, NameplateItem } from '../scenario/nameplate.ts';
import type { CompleteNameplate } from './completeNameplate.ts';
import type { Known } from './known.ts';
import { breakdownSlip } from './perUnitCircuit.ts';
import { widthOf } from './tolerances.ts';
import { onRatedSupply } from './toMachine.ts';

/** An item of the nameplate, and how it is to be judged. */
export interface JudgedItem extends NameplateItem {
  readonly key: keyof Nameplate;
  /** Stated, or following from what is stated alone: a miss then counts. */
  readonly binding: boolean;
  /** Largest share by which the machine may miss it. */
  readonly allowed: number;
}

/**
 * Largest share by which a fit may miss the locked-rotor current. The standard lets a motor draw up to 20 % more than declared; a
 * circuit that draws less understates every plugging peak by as much.
 */
const CURRENT_ALLOWED = 0.1;
/** Power at rated speed: torque is proportional to slip there, and this is the tolerance of the slip. */
const SHAFT_POWER_ALLOWED = 0.2;

/** Every item of the nameplate beside what the circuit gives by the machine room's equations. */
export function reproducedItems(part: CircuitPart, complete: CompleteNameplate): readonly JudgedItem[] {
  const { machine, supply } = onRatedSupply(part, complete);
  const speed = (1 - complete.slip.value) * complete.synchronousSpeed;
  const rated = steadyState(machine, supply, complete.slip.value);
  const locked = steadyState(machine, supply, 1);
  const strongest = steadyState(
    machine,
    supply,
    breakdownSlip((slip) => steadyState(machine, supply, slip).torque),
  );
  const { friction, windage } = part.mechanicalLoss ?? { friction: 0, windage: 0 };
  const shaftPower = (rated.torque - friction - windage * squared(speed)) * speed;
  const ratedTorque = complete.power / speed;
  const powerAtSpeed: Known = {
    ...complete.slip,
    value: complete.power,
    source:
      complete.slip.origin === 'given'
        ? 'given, at the stated speed'
        : `given, at a speed that is ${complete.slip.source}`,
  };
  return [
    item('rated current', 'current', 'A', complete.current, rated.current),
    item('power factor', 'powerFactor', '1', complete.powerFactor, rated.powerFactor),
    item('efficiency', 'efficiency', '1', complete.efficiency, shaftPower / rated.inputPower),
    { ...item('power at rated speed', 'speed', 'W', powerAtSpeed, shaftPower), allowed: SHAFT_POWER_ALLOWED },
    item('locked-rotor current', 'lockedRotorCurrent', 'A', complete.lockedRotorCurrent, locked.current),
    item(
      'locked-rotor torque over rated torque',
      'lockedRotorTorque',
      '1',
      complete.lockedRotorTorque,
      locked.torque / ratedTorque,
    ),
    item(
      'breakdown torque over rated torque',
      'breakdownTorque',
      '1',
      complete.breakdownTorque,
      strongest.torque / ratedTorque,
    ),
  ];
}

function item(
  name: string,
  key: keyof Nameplate,
  unit: string,
  known: Known,
  reproduced: number,
): JudgedItem {
  const error = reproduced / known.value - 1;
  const binding = known.origin === 'given' || known.origin === 'derived';
  const kept = (known.kind === 'least' && error >= 0) || (known.kind === 'most' && error <= 0);
  return {
    name,
    key,
    unit,
    target: known.value,
    reproduced,
    kind: known.kind,
    error: kept && !binding ? null : error,
    source: known.source + aimOf(known),
    binding,
    allowed:
      key === 'lockedRotorCurrent' ? Math.min(widthOf(known.range), CURRENT_ALLOWED) : widthOf(known.range),
  };
}

/** Where the fit aims beside a limit of a standard: at what catalogues usually state. */
function aimOf({ usual, value }: Known): string {
  if (usual === null) return '';
  return `; aimed at ${Number((usual.value / value).toPrecision(2))} times that (common practice)`;
}
