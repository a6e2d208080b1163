import { stiff } from '../../machine/breakdown.ts';
import { steadyState } from '../../machine/steadyState.ts';
import { PHASE_NAMES } from '../../measure/measurement.ts';
import { integral, type Quadrature } from '../../measure/quadrature.ts';
import { squared } from '../../numeric/raised.ts';
import type { PhaseName, Scenario } from '../../scenario/scenario.ts';
import { lockedRotorTimes } from '../heat/lockedRotorTimes.ts';
import type { OperationWindows } from '../heat/operationWindows.ts';
import type { ThermalParameter } from '../heat/thermalNetwork.ts';

/** How much of the locked-rotor withstand one operation uses. */
export interface WithstandUse {
  /** ∫i² dt of start and stop in the phase with most, A²·s. */
  readonly I2t: number;
  readonly phase: PhaseName;
  /** Of the circuit at rest on a stiff supply, A r.m.s. */
  readonly lockedRotorCurrent: number;
  /** Share of I_LR²·t from cold and from hot; null: that time is not stated. */
  readonly cold: WithstandShare | null;
  readonly hot: WithstandShare | null;
}

/** One share and the time it stands on. */
export interface WithstandShare {
  readonly share: number;
  readonly time: ThermalParameter;
}

/** I²t of start and stop together, as if nothing cooled between them, over that of the locked rotor. */
export function withstandUse(
  scenario: Scenario,
  quadrature: Quadrature,
  { start, stop }: OperationWindows,
): WithstandUse {
  const perPhase = PHASE_NAMES.map(
    (phase) =>
      integral(quadrature, `i${phase}2`, start.from, start.to) +
      integral(quadrature, `i${phase}2`, stop.from, stop.to),
  );
  const I2t = Math.max(...perPhase);
  const lockedRotorCurrent = steadyState(scenario.machine, stiff(scenario.supply), 1).current;
  const times = lockedRotorTimes(scenario.thermal);
  const shareOf = (time: ThermalParameter | null) =>
    time && { share: I2t / (squared(lockedRotorCurrent) * time.value), time };
  return {
    I2t,
    phase: PHASE_NAMES[perPhase.indexOf(I2t)]!,
    lockedRotorCurrent,
    cold: shareOf(times.cold),
    hot: shareOf(times.hot),
  };
}
