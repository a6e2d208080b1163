import type { ElectricalModel } from '../machine/electricalModel.ts';
import type { ZeroSpeedSwitchData } from '../scenario/scenario.ts';
import type { Shaft } from '../shaft/shaft.ts';
import { clearablePoles } from '../starter/conduction.ts';
import type { ContactorName, Direction, StarterState } from '../starter/starter.ts';
import type { Step } from './odexAdapter.ts';
import { readState } from './segment.ts';

/** What an event function means when it crosses zero. */
export type Condition =
  | { readonly kind: 'currentZero'; readonly contactor: ContactorName; readonly pole: number }
  | { readonly kind: 'threshold'; readonly direction: Direction; readonly up: boolean }
  | { readonly kind: 'zeroSpeed' }
  | { readonly kind: 'breakaway' }
  | { readonly kind: 'nearSpeed' }
  | { readonly kind: 'overspeed' };

/** An event function of a segment. It fires on a strict sign change in its direction, never at its own root. */
export interface Watch {
  readonly condition: Condition;
  readonly crossing: 'rising' | 'falling' | 'either';
  /** electrical functions swing with the supply and are probed more densely than speed. */
  readonly probing: 'electrical' | 'speed';
  readonly g: (step: Step, t: number) => number;
}

/** Event functions of the starter and of standstill in one segment. */
export function starterWatches(
  state: StarterState,
  model: ElectricalModel,
  zeroSpeedSwitch: ZeroSpeedSwitchData | null,
): Watch[] {
  const y: number[] = [];
  const speed = (step: Step, t: number) => step.value(model.size, t);
  const watches: Watch[] = clearablePoles(state).map(({ contactor, pole }) => ({
    condition: { kind: 'currentZero', contactor, pole },
    crossing: 'either',
    probing: 'electrical',
    g: (step, t) => {
      readState(model, step, t, y);
      return model.terminalCurrent(t, y, pole);
    },
  }));
  if (zeroSpeedSwitch !== null)
    for (const direction of ['forward', 'reverse'] as const) {
      const sign = direction === 'forward' ? 1 : -1;
      const up = !state.pickedUp[direction];
      const threshold = up ? zeroSpeedSwitch.pickUpSpeed : zeroSpeedSwitch.dropOutSpeed;
      watches.push({
        condition: { kind: 'threshold', direction, up },
        crossing: up ? 'rising' : 'falling',
        probing: 'speed',
        g: (step, t) => sign * speed(step, t) - threshold,
      });
    }
  return watches;
}

/** Event function of a turning shaft: standstill; of a held one: breaking away. */
export function shaftWatch(model: ElectricalModel, shaft: Shaft, held: boolean): Watch {
  if (!held)
    return {
      condition: { kind: 'zeroSpeed' },
      crossing: 'either',
      probing: 'speed',
      g: (step, t) => step.value(model.size, t),
    };
  const y: number[] = [];
  const unused: number[] = [];
  return {
    condition: { kind: 'breakaway' },
    crossing: 'rising',
    probing: 'electrical',
    g: (step, t) => {
      readState(model, step, t, y);
      return Math.abs(model.derivatives(t, y, 0, unused) - shaft.gravity) - shaft.breakaway;
    },
  };
}

/** Event function for a shaft that runs away: magnitude of speed rising through a limit, rad/s. */
export function overspeedWatch(model: ElectricalModel, limit: number): Watch {
  return {
    condition: { kind: 'overspeed' },
    crossing: 'rising',
    probing: 'speed',
    g: (step, t) => Math.abs(step.value(model.size, t)) - limit,
  };
}

/** Event function for a speed coming within `band` of a target, rad/s. */
export function nearSpeedWatch(model: ElectricalModel, target: number, band: number): Watch {
  return {
    condition: { kind: 'nearSpeed' },
    crossing: 'falling',
    probing: 'speed',
    g: (step, t) => Math.abs(step.value(model.size, t) - target) - band,
  };
}
