import { type ElectricalModel, newObservation, type Observation } from '../machine/electricalModel.ts';
import type { Connection } from '../machine/supplyVector.ts';
import { hypotenuse } from '../numeric/hypotenuse.ts';
import { squared } from '../numeric/raised.ts';
import { cosine, sine } from '../numeric/sineCosine.ts';
import type { CoilVoltageData, Scenario } from '../scenario/scenario.ts';
import { conduction } from '../starter/conduction.ts';
import type { VoltageLevel } from '../starter/control/controlState.ts';
import type { StarterState } from '../starter/starter.ts';
import type { RunState } from './runState.ts';
import { readState, stateBuffer } from './segment.ts';
import type { Step } from './step.ts';

/**
 * Voltage that feeds the control transformer, as a share of the supply's own: the magnitude of the space vector at the line
 * side of the contactors, which of a balanced voltage is its r.m.s. value at every instant.
 *
 * While all phases are there it is the source less the drop ahead of the contactors. Once all are lost a motor that is still connected
 * feeds the control with its residual voltage. With one phase lost the magnitude pulsates and is no measure: the control, fed
 * from A and B, then counts as dead when one of these is lost (what a turning motor induces there is left out) and as
 * undisturbed when C is. A coil's own magnetic inertia is what its opening time stands
 * for.
 */
export function controlVoltage(scenario: Scenario, starter: StarterState, at: Observation): number {
  const crest = Math.sqrt(2 / 3) * scenario.supply.lineVoltage;
  const there = starter.lines.filter((line) => line === 'closed').length;
  const poles = conduction(starter);
  if (there === 0) {
    const connected = CONTACTORS.some((contactor) =>
      starter.poles[contactor].every((pole) => pole === 'closed'),
    );
    return connected ? hypotenuse(at.uAlpha, at.uBeta) / crest : 0;
  }
  if (there < 3) return starter.lines[0] === 'closed' && starter.lines[1] === 'closed' ? 1 : 0;
  if (poles.kind === 'none' || poles.kind === 'shortCircuit') return 1;
  const resistance =
    scenario.starter.lineResistors === undefined || starter.bypass.closed
      ? 0
      : scenario.starter.lineResistors.resistance;
  const alpha = at.uAlpha + resistance * at.iAlpha;
  const beta = at.uBeta + resistance * at.iBeta;
  if (poles.kind === 'three') return hypotenuse(alpha, beta) / crest;
  // Along the axis of the two conducting phases the drop acts; at right angles to it the source stands undisturbed.
  const axis = conductingAxis(poles.connection);
  const along = alpha * axis.alpha + beta * axis.beta;
  const source = at.vAlpha * axis.alpha + at.vBeta * axis.beta;
  return Math.sqrt(squared(along) + Math.max(0, squared(crest) - squared(source))) / crest;
}

const CONTACTORS = ['forward', 'reverse'] as const;

/** Unit vector at right angles to the axis of the open terminal. */
function conductingAxis(connection: Connection): { readonly alpha: number; readonly beta: number } {
  const angle = (connection.indexOf(-1) * 2 * Math.PI) / 3;
  return { alpha: -sine(angle), beta: cosine(angle) };
}

/**
 * What a voltage means to coils with these limits. A voltage at a limit, to rounding, leaves them as they are: it has just been
 * located there.
 *
 * @param before level until now
 */
export function voltageLevel(limits: CoilVoltageData, share: number, before: VoltageLevel): VoltageLevel {
  const pickUp = limits.pickUp * (1 + (before === 'high' ? -ROUNDING : ROUNDING));
  const dropOut = limits.dropOut * (1 + (before === 'low' ? ROUNDING : -ROUNDING));
  if (share >= pickUp) return 'high';
  return share < dropOut ? 'low' : 'between';
}

/** Relative width within which a located voltage lies at its limit. */
const ROUNDING = 1e-6;

/** Reads the voltage inside the steps of one segment. */
export function readControlVoltage(
  scenario: Scenario,
  starter: StarterState,
  model: ElectricalModel,
): (step: Step, t: number) => number {
  const y = stateBuffer();
  const at = newObservation();
  return (step, t) => {
    readState(step, t, 0, model.size + 2, y);
    model.observe(t, y, y[model.size]!, y[model.size + 1]!, at);
    return controlVoltage(scenario, starter, at);
  };
}

/** The voltage at this instant with what it is compared with; null where coils do not feel it. */
export function presentControlVoltage(
  scenario: Scenario,
  { t, flux, shaft, starter }: Pick<RunState, 't' | 'flux' | 'shaft' | 'starter'>,
  model: ElectricalModel,
): { readonly value: number; readonly limits: CoilVoltageData; readonly before: VoltageLevel } | null {
  const limits = starter.control?.data.coilVoltage ?? null;
  if (limits === null || starter.control === null) return null;
  const at = newObservation();
  model.observe(t, model.fromStationary(t, flux), shaft[0]!, 0, at);
  return { value: controlVoltage(scenario, starter, at), limits, before: starter.control.voltage };
}
