import type { ElectricalModel } from '../machine/electricalModel.ts';
import type { CoilVoltageData, ZeroSpeedSwitchData } from '../scenario/scenario.ts';
import { type Shaft, shaftSize } from '../shaft/shaft.ts';
import { type ShaftEventFunction, shaftEventFunctions } from '../shaft/shaftEvents.ts';
import type { ShaftMode } from '../shaft/shaftMode.ts';
import { type Clearable, clearableArcs } from '../starter/conduction.ts';
import type { VoltageLevel } from '../starter/control/controlState.ts';
import type { Direction, StarterState } from '../starter/starter.ts';
import { readState, stateBuffer } from './segment.ts';
import type { Step } from './step.ts';
import { aboveTripLevel, type ThermalMemory } from './thermalMemory.ts';

/** Scratch of the event functions, each of which fills it anew: a run has hundreds of segments. */
const y = stateBuffer();
const unused = stateBuffer();

/** What an event function means when it crosses zero. */
export type Condition =
  | { readonly kind: 'currentZero'; readonly arc: Clearable }
  | { readonly kind: 'threshold'; readonly direction: Direction; readonly up: boolean }
  | { readonly kind: 'shaft'; readonly event: ShaftEventFunction }
  | { readonly kind: 'nearSpeed' }
  | { readonly kind: 'fluxGone' }
  | { readonly kind: 'overspeed' }
  | { readonly kind: 'overload' }
  | { readonly kind: 'controlVoltage'; readonly level: VoltageLevel };

/** An event function of a segment. It fires on a strict sign change in its direction, never at its own root. */
export interface Watch {
  readonly condition: Condition;
  readonly crossing: 'rising' | 'falling' | 'either';
  /** electrical functions swing with the supply and are probed more densely than speed. */
  readonly probing: 'electrical' | 'speed';
  /** Component of the state that `g` moves as fast as and no faster; left out: there is none such. */
  readonly follows?: number;
  readonly g: (step: Step, t: number) => number;
}

/** Event functions of the starter in one segment. */
export function starterWatches(
  state: StarterState,
  model: ElectricalModel,
  zeroSpeedSwitch: ZeroSpeedSwitchData | null,
): Watch[] {
  const speed = (step: Step, t: number) => step.value(model.size, t);
  const watches: Watch[] = clearableArcs(state).map((arc) => {
    const terminal = arc.kind === 'pole' ? arc.pole : arc.terminal;
    return {
      condition: { kind: 'currentZero', arc },
      crossing: 'either',
      probing: 'electrical',
      g: (step, t) => {
        readState(step, t, 0, model.size, y);
        return model.terminalCurrent(t, y, terminal);
      },
    };
  });
  if (zeroSpeedSwitch !== null)
    for (const direction of ['forward', 'reverse'] as const) {
      const sign = direction === 'forward' ? 1 : -1;
      const up = !state.pickedUp[direction];
      const speeds = direction === 'reverse' ? (zeroSpeedSwitch.reverse ?? zeroSpeedSwitch) : zeroSpeedSwitch;
      const threshold = up ? speeds.pickUpSpeed : speeds.dropOutSpeed;
      watches.push({
        condition: { kind: 'threshold', direction, up },
        crossing: up ? 'rising' : 'falling',
        probing: 'speed',
        follows: model.size,
        g: (step, t) => sign * speed(step, t) - threshold,
      });
    }
  return watches;
}

/** Event function of the overload relay: the heat of the hottest phase rising through the trip level. */
export function overloadWatch(thermal: ThermalMemory): Watch {
  return {
    condition: { kind: 'overload' },
    crossing: 'rising',
    probing: 'speed',
    g: (step, t) => aboveTripLevel(thermal.at(step, t)),
  };
}

/**
 * Event functions of the voltage at the coils: each of the two limits that it can pass from where it is.
 *
 * @param share reads the voltage as a share of the supply's
 */
export function voltageWatches(
  level: VoltageLevel,
  limits: CoilVoltageData,
  share: (step: Step, t: number) => number,
): Watch[] {
  const watch = (limit: number, crossing: 'rising' | 'falling', then: VoltageLevel): Watch => ({
    condition: { kind: 'controlVoltage', level: then },
    crossing,
    probing: 'electrical',
    g: (step, t) => share(step, t) - limit,
  });
  return [
    level === 'high' ? watch(limits.pickUp, 'falling', 'between') : watch(limits.pickUp, 'rising', 'high'),
    level === 'low' ? watch(limits.dropOut, 'rising', 'between') : watch(limits.dropOut, 'falling', 'low'),
  ];
}

/** Event functions of the shaft: standstill, breaking away, and what gears, couplings and loads add. */
export function shaftWatches(model: ElectricalModel, shaft: Shaft, mode: ShaftMode): Watch[] {
  const at = model.size;
  const end = at + shaftSize(shaft);
  return shaftEventFunctions(shaft, mode).map((event) => ({
    condition: { kind: 'shaft', event },
    crossing: event.crossing,
    probing: event.probing,
    ...(event.follows !== undefined && { follows: at + event.follows }),
    g: (step, t) => {
      if (event.probing === 'speed') {
        readState(step, t, at, end, y);
        return event.g(y, at, 0);
      }
      readState(step, t, 0, end, y);
      return event.g(y, at, model.derivatives(t, y, y[at]!, unused));
    },
  }));
}

/** Event function for a shaft that runs away: magnitude of speed rising through a limit, rad/s. */
export function overspeedWatch(model: ElectricalModel, limit: number): Watch {
  return {
    condition: { kind: 'overspeed' },
    crossing: 'rising',
    probing: 'speed',
    follows: model.size,
    g: (step, t) => Math.abs(step.value(model.size, t)) - limit,
  };
}

/** Event function for residual fluxes that have all fallen below a limit, Wb. */
export function fluxGoneWatch(model: ElectricalModel, limit: number): Watch {
  return {
    condition: { kind: 'fluxGone' },
    crossing: 'falling',
    probing: 'speed',
    g: (step, t) => {
      let largest = 0;
      for (let c = 0; c < model.size; c++) largest = Math.max(largest, Math.abs(step.value(c, t)));
      return largest - limit;
    },
  };
}

/** Event function for a speed coming within `band` of a target, rad/s. */
export function nearSpeedWatch(model: ElectricalModel, target: number, band: number): Watch {
  return {
    condition: { kind: 'nearSpeed' },
    crossing: 'falling',
    probing: 'speed',
    follows: model.size,
    g: (step, t) => Math.abs(step.value(model.size, t) - target) - band,
  };
}
