import { supplyVector } from '../machine/supplyVector.ts';
import { hypotenuse } from '../numeric/hypotenuse.ts';
import { polarAngle } from '../numeric/polarAngle.ts';
import { steadySpeed } from '../shaft/steadySpeed.ts';
import { supplyPhases } from '../starter/conduction.ts';
import { crossings } from './crossing.ts';
import { largest } from './extremum.ts';
import { found, type Measurement, type MetricGroup, missing } from './measurement.ts';
import type { Metric, MetricKey } from './metric.ts';
import type { ReversalOperation } from './operations.ts';
import { resistorHeatMetrics, stressMetrics } from './plantMetrics.ts';
import { completeStartHeat, UP_TO_SPEED } from './startMetrics.ts';
import { currentMetrics, heatMetrics, kineticEnergy, rotorHeat, torqueMetrics } from './windowMetrics.ts';

const TURN = 2 * Math.PI;

/** Figures of the change-over, from the command to the touch that completes the reversed circuit. */
export function changeoverMetrics(m: Measurement): MetricGroup {
  const { reversal } = m.operations;
  const { trajectory } = m.quadrature;
  const keys = [
    'commandToTouch',
    'partingToTouch',
    'extinctionToTouch',
    'arcMargin',
    'residualVoltage',
    'residualAngle',
    'supplyAngleAtTouch',
  ] as const;
  if (reversal === null || (reversal.touch === null && trajectory.shortCircuit === null))
    return allMissing(keys, reversal === null ? NO_REVERSAL : NO_TOUCH);
  if (reversal.touch === null) {
    const fault = trajectory.shortCircuit?.t ?? trajectory.tEnd;
    return {
      ...allMissing(keys, 'the run ends in a short circuit at the touch'),
      commandToTouch: found('commandToTouch', fault - reversal.command, { time: fault }),
      ...(reversal.parting !== null && {
        partingToTouch: found('partingToTouch', fault - reversal.parting, { time: fault }),
      }),
      arcMargin: arcMargin(m, reversal),
    };
  }
  const { touch, command, parting } = reversal;
  const lastExtinction = trajectory.events.findLast(
    (event) =>
      event.kind === 'poleClears' &&
      event.contactor === reversal.outgoing &&
      event.t >= (parting ?? command) &&
      event.t <= touch,
  );
  const before = trajectory.at(touch, 'left');
  const { supply } = trajectory.scenario;
  const applied = supplyVector(supply, supplyPhases(trajectory.scenario.starter, reversal.incoming));
  const phasor = applied.sequence === 1 ? applied.positive : applied.negative;
  const supplyAngle = polarAngle(phasor[1], phasor[0]) + applied.sequence * applied.omega * touch;
  const crest = supply.lineVoltage * Math.sqrt(2 / 3);
  const residual = hypotenuse(before.uAlpha, before.uBeta);
  const angle = supplyAngle - polarAngle(before.uBeta, before.uAlpha);
  const phi = (applied.omega * touch + supply.angle) % TURN;
  const at = { time: touch };
  return {
    commandToTouch: found('commandToTouch', touch - command, at),
    partingToTouch:
      parting === null
        ? missing('partingToTouch', 'the outgoing contactor did not part')
        : found('partingToTouch', touch - parting, at),
    extinctionToTouch:
      lastExtinction === undefined
        ? missing('extinctionToTouch', 'no arc was extinguished before the touch')
        : found('extinctionToTouch', touch - lastExtinction.t, at),
    arcMargin: arcMargin(m, reversal),
    residualVoltage: found('residualVoltage', residual / crest, at),
    residualAngle:
      residual > NO_RESIDUAL * crest
        ? found('residualAngle', angle - TURN * Math.round(angle / TURN), at)
        : missing('residualAngle', 'no residual voltage is left'),
    supplyAngleAtTouch: found('supplyAngleAtTouch', phi < 0 ? phi + TURN : phi, at),
  };
}

/** Below this fraction of the crest a residual voltage has no angle worth stating. */
const NO_RESIDUAL = 1e-9;

/** Figures from the reversing command to zero speed and to the end. */
export function plugMetrics(m: Measurement): MetricGroup {
  const { reversal } = m.operations;
  const stopKeys = [
    'stopTimeFromParting',
    'stopTimeFromTouch',
    'stopRevolutions',
    'plugI2tA',
    'plugI2tB',
    'plugI2tC',
    'plugStatorHeat',
    'plugRotorHeat',
    'plugRotorHeatMultiple',
    'plugToStartHeatRatio',
    'plugLineResistorHeat',
    'plugRotorResistorHeat',
  ] as const;
  const peakKeys = [
    'plugPeakCurrent',
    'plugWorstCycleCurrent',
    'plugMinimumTorque',
    'plugMaximumTorque',
    'plugCouplingTorque',
    'plugVoltageDip',
  ] as const;
  if (reversal === null) return allMissing([...peakKeys, ...stopKeys], NO_REVERSAL);
  const peaks = {
    ...currentMetrics(m, 'plug', reversal.command, reversal.to),
    ...torqueMetrics(m, 'plug', reversal.command, reversal.to),
    ...stressMetrics(m, 'plug', reversal.touch ?? reversal.command, reversal.to),
  };
  const { zero, command, parting, touch } = reversal;
  if (zero !== null && (touch === null || touch > zero))
    return { ...peaks, ...allMissing(stopKeys, STOPPED_BEFORE) };
  if (zero === null)
    return {
      ...peaks,
      ...allMissing(stopKeys, interrupted(m, reversal, 'the machine does not come to zero speed')),
    };
  const { trajectory } = m.quadrature;
  const heat = rotorHeat(m, command, zero);
  const startHeat = completeStartHeat(m);
  const turned = Math.abs(trajectory.at(zero).position - trajectory.at(command).position) / TURN;
  return {
    ...peaks,
    stopTimeFromParting:
      parting === null
        ? missing('stopTimeFromParting', 'the outgoing contactor did not part')
        : found('stopTimeFromParting', zero - parting, { time: zero }),
    stopTimeFromTouch:
      touch === null
        ? missing('stopTimeFromTouch', NO_TOUCH)
        : found('stopTimeFromTouch', zero - touch, { time: zero }),
    stopRevolutions: found('stopRevolutions', turned, { time: zero }),
    ...heatMetrics(m, 'plug', command, zero),
    ...resistorHeatMetrics(m, command, zero),
    plugRotorHeatMultiple: found('plugRotorHeatMultiple', heat / kineticEnergy(m, command)),
    plugToStartHeatRatio:
      typeof startHeat === 'string'
        ? missing('plugToStartHeatRatio', startHeat)
        : found('plugToStartHeatRatio', heat / startHeat),
  };
}

/** What follows zero speed: creep after the switch has opened, or the run-up in the other direction. */
export function aftermathMetrics(m: Measurement): MetricGroup {
  const { reversal } = m.operations;
  const { trajectory } = m.quadrature;
  const creepKeys = ['switchOpeningTime', 'switchOpeningSpeed', 'creepSpeed', 'creepRevolutions'] as const;
  const runUpKeys = [
    'reversalTime',
    'reversalRotorHeat',
    'reversalRotorHeatMultiple',
    'reversalToStartHeatRatio',
  ] as const;
  if (reversal === null) return allMissing([...creepKeys, ...runUpKeys], NO_REVERSAL);
  const { switchOpening, direction, zero, command, touch, to } = reversal;
  if (switchOpening !== null) {
    const reversed = largest(
      m.quadrature,
      'speed',
      direction === 1 ? 'smallest' : 'largest',
      switchOpening,
      to,
    );
    const turned =
      zero === null ? 0 : (-direction * (trajectory.at(to).position - trajectory.at(zero).position)) / TURN;
    return {
      switchOpeningTime: found('switchOpeningTime', switchOpening - (touch ?? command), {
        time: switchOpening,
      }),
      switchOpeningSpeed: found('switchOpeningSpeed', trajectory.at(switchOpening).speed, {
        time: switchOpening,
      }),
      creepSpeed:
        reversed !== null && reversed.value > 0
          ? found('creepSpeed', reversed.value, { time: reversed.time })
          : found('creepSpeed', 0),
      creepRevolutions: found('creepRevolutions', Math.max(0, turned)),
      ...allMissing(runUpKeys, 'the zero-speed switch ended the plugging'),
    };
  }
  const creep = allMissing(creepKeys, 'no zero-speed switch ended the plugging');
  // Resistors or a star connection that are still in when the operation ends decide where the run-up leads.
  const inserted = trajectory.segments.findLast((segment) => segment.t0 <= to)?.inserted;
  const target = steadySpeed(trajectory.scenario, direction === 1 ? -1 : 1, inserted);
  if (touch === null) return { ...creep, ...allMissing(runUpKeys, NO_TOUCH) };
  if (target === null)
    return {
      ...creep,
      ...allMissing(runUpKeys, 'circuit and load give no steady speed in the other direction'),
    };
  const way = target > 0 ? 'up' : 'down';
  const [reached] = crossings(m.quadrature, 'speed', UP_TO_SPEED * target, way, touch, to);
  if (reached === undefined)
    return { ...creep, ...allMissing(runUpKeys, interrupted(m, reversal, 'the speed was not reached')) };
  const heat = rotorHeat(m, command, reached);
  const startHeat = completeStartHeat(m);
  return {
    ...creep,
    reversalTime: found('reversalTime', reached - touch, { time: reached }),
    reversalRotorHeat: found('reversalRotorHeat', heat),
    reversalRotorHeatMultiple: found('reversalRotorHeatMultiple', heat / kineticEnergy(m, command)),
    reversalToStartHeatRatio:
      typeof startHeat === 'string'
        ? missing('reversalToStartHeatRatio', startHeat)
        : found('reversalToStartHeatRatio', heat / startHeat),
  };
}

/** Why a run without a reversal has none of its figures. */
export const NO_REVERSAL = 'no plug or reversal takes place in this run';
const STOPPED_BEFORE = 'the shaft comes to rest by itself before the incoming contactor completes a circuit';
const NO_TOUCH = 'the incoming contactor completed no circuit in this run';

/** Why something was not reached: the next action came first, or the run was over. */
function interrupted(m: Measurement, reversal: ReversalOperation, what: string): string {
  return reversal.to < m.quadrature.trajectory.tEnd
    ? `${what} before the action at ${reversal.to} s`
    : `${what} in this run`;
}

function allMissing(keys: readonly MetricKey[], why: string): MetricGroup {
  return Object.fromEntries(keys.map((key) => [key, missing(key, why)]));
}

/** Pole pair by pole pair over the exchanged phases. */
function arcMargin(m: Measurement, reversal: ReversalOperation): Metric {
  const { trajectory } = m.quadrature;
  const { shortCircuit } = trajectory;
  if (shortCircuit?.welded)
    return missing('arcMargin', 'a pole of the outgoing contactor is welded: it never clears');
  if (shortCircuit !== null)
    return found('arcMargin', shortCircuit.t - shortCircuit.lastExtinction, { time: shortCircuit.t });
  const exchanged = trajectory.scenario.starter.exchangedPhases;
  let smallest: { value: number; time: number; phase: 'A' | 'B' | 'C' } | null = null;
  for (const phase of ['A', 'B', 'C'] as const) {
    if (!exchanged.includes(phase)) continue;
    const touch = trajectory.events.find(
      (event) =>
        event.kind === 'poleTouches' &&
        event.contactor === reversal.incoming &&
        event.phase === phase &&
        event.t >= reversal.command,
    );
    if (touch === undefined) continue;
    const extinction = trajectory.events.findLast(
      (event) =>
        event.kind === 'poleClears' &&
        event.contactor === reversal.outgoing &&
        event.phase === phase &&
        event.t >= (reversal.parting ?? reversal.command) &&
        event.t <= touch.t,
    );
    if (extinction === undefined) continue;
    const value = touch.t - extinction.t;
    if (smallest === null || value < smallest.value) smallest = { value, time: touch.t, phase };
  }
  if (smallest === null) return missing('arcMargin', 'no pole of an exchanged phase changed over');
  return found('arcMargin', smallest.value, { time: smallest.time, phase: smallest.phase });
}
