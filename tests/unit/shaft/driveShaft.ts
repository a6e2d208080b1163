import type { LoadData, MechanicalLossData } from '../../../src/scenario/scenario.ts';
import { afterShaftEvent } from '../../../src/shaft/afterShaftEvent.ts';
import { initialShaft } from '../../../src/shaft/initialShaft.ts';
import { reviewShaft, type ShaftNote } from '../../../src/shaft/reviewShaft.ts';
import { type Shaft, shaftOf } from '../../../src/shaft/shaft.ts';
import { shaftEventFunctions } from '../../../src/shaft/shaftEvents.ts';
import type { ShaftMode } from '../../../src/shaft/shaftMode.ts';
import { shaftRates } from '../../../src/shaft/shaftRates.ts';
import { scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';

/** A shaft with a motor inertia of 0.1 kg·m² unless said otherwise. */
export function shaftWith(
  load: Partial<LoadData>,
  motor: { inertia?: number; loss?: MechanicalLossData } = {},
): Shaft {
  const scenario = scenarioOf(KRAUSE.hp3, { load, inertia: motor.inertia ?? 0.1 });
  return shaftOf(
    motor.loss === undefined
      ? scenario
      : { ...scenario, machine: { ...scenario.machine, mechanicalLoss: motor.loss } },
  );
}

/** One instant of a driven shaft. */
export interface Moment {
  readonly t: number;
  readonly y: readonly number[];
  readonly mode: ShaftMode;
}

/** A shaft driven by a given torque from t = 0: moments after every step, events, notes. */
export interface Drive {
  readonly moments: readonly Moment[];
  readonly events: readonly { readonly t: number; readonly kind: string; readonly mass?: number }[];
  readonly notes: readonly (ShaftNote & { readonly t: number })[];
  readonly end: Moment;
}

/** Width to which events are located, s. */
const WIDTH = 1e-13;
/** More events than any of these drives can have. */
const MOST_EVENTS = 500;

/**
 * Integrates a shaft with a given air-gap torque, by the classical fourth-order method with fixed steps and bisection for
 * events, independent of the program's own stepper; the sign tests are strict at the left.
 */
export function driveShaft(
  shaft: Shaft,
  torque: (t: number) => number,
  end: number,
  step: number,
  start: { state: readonly number[]; mode: ShaftMode } = initialShaft(shaft, 0),
): Drive {
  let t = 0;
  let y = [...start.state];
  let mode = reviewShaft(shaft, start.mode, y, torque(0)).mode;
  const moments: Moment[] = [{ t, y, mode }];
  const events: { t: number; kind: string; mass?: number }[] = [];
  const notes: (ShaftNote & { t: number })[] = [];
  while (t < end - WIDTH) {
    const h = Math.min(step, end - t);
    const advance = (dt: number) => rungeKutta(shaftRates(shaft, mode), torque, t, y, dt);
    const after = advance(h);
    const fired = shaftEventFunctions(shaft, mode).flatMap((event) => {
      const at = (dt: number) => event.g(advance(dt), 0, torque(t + dt));
      const a = event.g(y, 0, torque(t));
      const crossed = (b: number) =>
        (event.crossing !== 'falling' && a < 0 && b >= 0) || (event.crossing !== 'rising' && a > 0 && b <= 0);
      if (!crossed(at(h))) return [];
      let low = 0;
      let high = h;
      while (high - low > WIDTH) {
        const middle = (low + high) / 2;
        if (crossed(at(middle))) high = middle;
        else low = middle;
      }
      return [{ event, dt: high }];
    });
    const first = fired.sort((p, q) => p.dt - q.dt)[0];
    if (first === undefined) {
      t += h;
      y = after;
    } else {
      y = advance(first.dt);
      t += first.dt;
      const { kind, mass } = first.event;
      events.push({ t, kind, ...(mass !== undefined && { mass }) });
      if (events.length > MOST_EVENTS) throw new Error(`the shaft chatters: ${kind} at ${t} s`);
      const next = afterShaftEvent(shaft, mode, first.event, y, torque(t));
      y = next.state;
      mode = next.mode;
      notes.push(...next.notes.map((note) => ({ ...note, t })));
    }
    moments.push({ t, y, mode });
  }
  return { moments, events, notes, end: moments.at(-1)! };
}

function rungeKutta(
  rates: ReturnType<typeof shaftRates>,
  torque: (t: number) => number,
  t: number,
  y: readonly number[],
  h: number,
): number[] {
  const slope = (time: number, at: readonly number[]) => {
    const out = new Array<number>(at.length).fill(0);
    rates(at, 0, torque(time), out);
    return out;
  };
  const ahead = (k: readonly number[], dt: number) => y.map((value, i) => value + dt * k[i]!);
  const k1 = slope(t, y);
  const k2 = slope(t + h / 2, ahead(k1, h / 2));
  const k3 = slope(t + h / 2, ahead(k2, h / 2));
  const k4 = slope(t + h, ahead(k3, h));
  return y.map((value, i) => value + (h / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!));
}
