import { isIdle } from '../starter/conduction.ts';
import { LONGEST_AFTER_LAST_ACTION } from './runEnd.ts';
import type { RunState } from './runState.ts';
import type { SimulationError } from './simulationError.ts';
import type { RunStatus } from './status.ts';
import type { ShortCircuit } from './trajectory.ts';

/**
 * Status of a run that came to its end time.
 *
 * @param synchronous speed, rad/s
 * @param automatic the end time was found by the run itself
 * @param planned an end had been found; false: the longest time allowed is over
 */
export function endStatus(
  at: RunState,
  synchronous: number,
  automatic: boolean,
  planned: boolean,
): RunStatus {
  const { plugging, data } = at.starter;
  const time = at.t;
  if (plugging !== null && data.zeroSpeedSwitch !== null)
    return {
      code: 'switchNeverOpened',
      time,
      message:
        `the run ends at ${Number(time.toPrecision(6))} s, before the zero-speed switch has opened` +
        (at.starter.coil[plugging.contactor] ? `; the ${plugging.contactor} coil is still energised` : '') +
        backwards(at, plugging.braking, synchronous),
    };
  if (automatic && !planned && !isIdle(at.starter))
    return {
      code: 'notSettled',
      time,
      message:
        `${LONGEST_AFTER_LAST_ACTION} s after the last action the machine has not come to a steady state; ` +
        'does the load stall it?',
    };
  return automatic
    ? { code: 'finished', time, message: 'every action has done its work' }
    : { code: 'endTimeReached', time, message: 'the stated end time is reached' };
}

/** Slower than this share of synchronous speed nothing is said about running up. */
const RUN_UP = 0.05;

/** A machine that is plugged through standstill runs up in the other direction. */
function backwards(at: RunState, braking: 'forward' | 'reverse', synchronous: number): string {
  const share = ((braking === 'forward' ? -1 : 1) * at.shaft[0]!) / synchronous;
  if (share < RUN_UP) return '';
  return ` and the machine has run up in the other direction to ${Math.round(100 * share)} % of synchronous speed`;
}

/**
 * A run ends when the shaft turns faster than this multiple of synchronous speed: far beyond what a rotor withstands (the
 * overspeed test of IEC 60034-1 is 1.2 times the highest rated speed; from memory) and beyond the model's use.
 */
export const OVERSPEED = 3;

/** Status of a run in which the load ran away with the shaft. */
export function overspeedStatus(time: number): RunStatus {
  return {
    code: 'overspeed',
    time,
    message:
      `at ${time.toFixed(3)} s the load has driven the shaft to ${OVERSPEED} times synchronous speed and nothing holds it; ` +
      'does it need a holding brake, or a larger machine?',
  };
}

/** Status of a run that ended in a line-to-line short circuit. */
export function shortCircuitStatus(fault: ShortCircuit): RunStatus {
  const current =
    fault.prospectiveCurrent === null
      ? 'nothing in the scenario limits the current (no source impedance is given)'
      : `prospective current ${Number(fault.prospectiveCurrent.toPrecision(3))} A r.m.s.`;
  const late = (fault.lastExtinction - fault.t) * 1000;
  if (fault.welded)
    return {
      code: 'lineToLineShortCircuit',
      time: fault.t,
      message:
        `line-to-line short circuit at ${fault.t.toFixed(4)} s: a pole of the closing contactor touched on terminal ` +
        `${fault.phase} while the other contactor's pole there is welded; ${current}; only an interlock that feels the ` +
        'welded contactor, mechanical or by break contacts linked to its main poles, keeps the other from closing',
    };
  if (fault.bothClosed)
    return {
      code: 'lineToLineShortCircuit',
      time: fault.t,
      message:
        `line-to-line short circuit at ${fault.t.toFixed(4)} s: both contactors are closed on terminal ${fault.phase}; ${current}; ` +
        'no dead time helps, only an interlock that keeps one of them out',
    };
  return {
    code: 'lineToLineShortCircuit',
    time: fault.t,
    message:
      `line-to-line short circuit at ${fault.t.toFixed(4)} s: a pole of the closing contactor touched on terminal ` +
      `${fault.phase} while the other contactor's arc still burned there; ${current}; the last arc would have ` +
      `ended ${late.toPrecision(3)} ms later; lengthen the dead time`,
  };
}

/** Status of a run whose integration failed. */
export function failureStatus(error: SimulationError): RunStatus {
  const advice =
    error.code === 'stepLimit'
      ? 'are there parameters with extremely short time constants? otherwise raise solver.maxSteps'
      : 'is a parameter extreme?';
  return {
    code: error.code,
    time: error.time,
    message: `the integration stopped at ${error.time.toPrecision(6)} s: ${error.message}; ${advice}`,
  };
}

/** Status of a run whose contacts change without end while no time passes. */
export function circlingStatus(time: number): RunStatus {
  return {
    code: 'stepLimit',
    time,
    message:
      `contacts change without end at one instant, ${time.toPrecision(6)} s; are operating times 0 where coils feel the ` +
      'dip that their own contactor makes? give contactors and relays their times',
  };
}
