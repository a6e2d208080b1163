import { raised } from '../../numeric/raised.ts';
import type { LoadTorque } from '../scenario.ts';
import type { ScenarioInput } from '../scenarioInput.ts';
import { synchronousSpeed } from '../synchronousSpeed.ts';
import type { Draft } from './draft.ts';
import { poleCount } from './poleCount.ts';
import { writeRounded } from './writeRounded.ts';

type Torque = ScenarioInput['load']['torque'];
type One = Exclude<Torque, 'none' | readonly unknown[]>;

/** Why the torque of such a load cannot be turned; null where it can. */
export function whyNotTorque(first: LoadTorque['kind'] | undefined): string | null {
  if (first === undefined) return 'the scenario states no load torque';
  return first === 'table' ? 'the load torque is a table of measured points' : null;
}

/**
 * Turns the first part of the load torque, in the way in which it is written.
 *
 * @param value of friction and gravity the torque, N·m; of fan and viscous loads the torque at the load's synchronous speed, N·m; of
 * constant power the power, W
 */
export function adjustLoadTorque(draft: Draft, value: number): string | null {
  const { torque } = draft.input.load;
  const first = firstOf(torque);
  const refusal = whyNotTorque(first?.kind);
  if (first === undefined || refusal !== null) return refusal;
  const path = Array.isArray(torque) ? ['load', 'torque', 0] : ['load', 'torque'];
  const torqueAt = (key: string, newtonMetres: number) =>
    draft.set([...path, key], writeRounded(newtonMetres, 'torque', draft.at(...path, key), 'N m'));
  switch (first.kind) {
    case 'friction':
      adjustFriction(draft, path, first, value);
      return null;
    case 'gravity':
      torqueAt('torque', value);
      return null;
    case 'constantPower':
      draft.set([...path, 'power'], writeRounded(value, 'power', draft.at(...path, 'power'), 'kW'));
      return null;
    case 'viscous':
    case 'fan':
      return adjustCoefficient(draft, path, first, value);
    case 'table':
      return null;
    default:
      return first satisfies never;
  }
}

function adjustFriction(
  draft: Draft,
  path: readonly (string | number)[],
  { torque, breakaway: before }: Extract<One, { readonly kind: 'friction' }>,
  value: number,
): void {
  const write = (key: string, newtonMetres: number) =>
    writeRounded(newtonMetres, 'torque', draft.at(...path, key), 'N m');
  const written = write('torque', value);
  // The torque that stands: the breakaway torque must not creep by rounding.
  if (written === draft.at(...path, 'torque')) return;
  draft.set([...path, 'torque'], written);
  if (before !== undefined)
    draft.set([...path, 'breakaway'], write('breakaway', breakaway(torque, before, value)));
}

/** Breakaway keeps its ratio to the torque; where there was none to keep, it holds at least what the torque holds. */
function breakaway(torque: number, before: number, value: number): number {
  return torque > 0 ? (before / torque) * value : Math.max(before, value);
}

function adjustCoefficient(
  draft: Draft,
  path: readonly (string | number)[],
  load: Extract<One, { readonly kind: 'viscous' | 'fan' }>,
  value: number,
): string | null {
  const { input } = draft;
  const poles = poleCount(input);
  if (poles === null) return 'the text states no number of poles';
  const reference = synchronousSpeed(input.supply.frequency, poles) / (input.load.gear?.ratio ?? 1);
  const power = load.kind === 'fan' ? 2 : 1;
  if (load.coefficient !== undefined) {
    const dimension = load.kind === 'fan' ? 'fanCoefficient' : 'viscousCoefficient';
    const unit = load.kind === 'fan' ? 'N m s^2/rad^2' : 'N m s/rad';
    const at = [...path, 'coefficient'];
    draft.set(at, writeRounded(value / raised(reference, power), dimension, draft.at(...at), unit));
    return null;
  }
  const torque = value * raised((load.atSpeed ?? reference) / reference, power);
  draft.set([...path, 'torque'], writeRounded(torque, 'torque', draft.at(...path, 'torque'), 'N m'));
  return null;
}

function firstOf(torque: Torque): One | undefined {
  if (torque === 'none') return undefined;
  return Array.isArray(torque) ? torque[0] : torque;
}
