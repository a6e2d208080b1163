import { steadyState } from '../../machine/steadyState.ts';
import type { Quadrature } from '../../measure/quadrature.ts';
import { squared } from '../../numeric/raised.ts';
import type { CycleName, Scenario, TripClass } from '../../scenario/scenario.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import { overloadConstants } from '../../starter/overloadRelay.ts';
import type { CyclePhase, DutyCycle } from '../heat/dutyCycle.ts';
import type { OperationWindows } from '../heat/operationWindows.ts';
import { relayStretch, steadyStretch } from './relayStretches.ts';
import { type RelayStretch, type RelayUse, stopsUntilTrip } from './stopsUntilTrip.ts';

/** What the overload relay makes of the operations. */
export interface RelayJudgement {
  /** A r.m.s. */
  readonly setting: number;
  readonly tripClass: TripClass;
  /** One operation after another without running or pause, from a cold relay and from the steady heat of its setting. */
  readonly withoutPause: { readonly cold: RelayUse; readonly warm: RelayUse };
  /** In the duty's rhythm; null: that is not known. */
  readonly atDuty: { readonly cold: RelayUse; readonly warm: RelayUse } | null;
}

/**
 * Feeds the run's currents to the overload relay of the control circuit, or to the one under protection.
 *
 * @param cycle the duty's; null: not known
 */
export function relayJudgement(
  scenario: Scenario,
  quadrature: Quadrature,
  windows: OperationWindows,
  kind: CycleName,
  cycle: DutyCycle | null,
): RelayJudgement | string {
  const relay = scenario.starter.control?.overload ?? scenario.protection?.overload ?? null;
  if (relay === null) return 'an overload relay is missing';
  const constants = overloadConstants(relay.tripClass);
  const { tau, k } = constants;
  const { start, stop, zero, stopKind } = windows;
  const startStretch = relayStretch(quadrature, start, tau);
  const braking = stopKind === 'reversal' && zero !== null ? { from: stop.from, to: zero } : stop;
  const stopStretch = relayStretch(quadrature, braking, tau);
  const reversal =
    stopKind === 'reversal' ? [relayStretch(quadrature, stop, tau)] : [stopStretch, startStretch];
  const current = runningCurrent(scenario, windows.direction);
  const stretches = (phase: CyclePhase): readonly RelayStretch[] => {
    switch (phase.name) {
      case 'start':
        return [startStretch];
      case 'stop':
        return [stopStretch];
      case 'reversal':
        return reversal;
      case 'running':
        return [steadyStretch(current, phase.pulse.duration, tau)];
      case 'rest':
        return [steadyStretch(0, phase.pulse.duration, tau)];
    }
  };
  const atOnce = {
    startCoast: [startStretch],
    startPlugStop: [startStretch, stopStretch],
    fullReversal: reversal,
  }[kind];
  const both = (operation: readonly RelayStretch[]) => ({
    cold: stopsUntilTrip(constants, relay.setting, operation, 0),
    warm: stopsUntilTrip(constants, relay.setting, operation, 1 / squared(k)),
  });
  return {
    setting: relay.setting,
    tripClass: relay.tripClass,
    withoutPause: both(atOnce),
    atDuty: cycle === null ? null : both(cycle.flatMap(stretches)),
  };
}

/** Under the load at steady speed, A r.m.s. */
function runningCurrent(scenario: Scenario, direction: 1 | -1): number {
  const { machine, supply } = scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  const speed = steadySpeed(scenario, direction) ?? 0;
  return steadyState(machine, supply, 1 - (direction * speed) / synchronous).current;
}
