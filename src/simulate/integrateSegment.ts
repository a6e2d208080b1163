import type { Circuit } from '../machine/circuit.ts';
import type { ElectricalModel } from '../machine/electricalModel.ts';
import type { Inserted } from '../machine/inserted.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { loadCoefficients } from '../shaft/loadTorque.ts';
import type { Shaft } from '../shaft/shaft.ts';
import { isHeld } from '../shaft/shaftMode.ts';
import { shaftPowers } from '../shaft/shaftPowers.ts';
import { firstCrossing } from './firstCrossing.ts';
import { integrate, type WorkCount } from './integrate.ts';
import type { RunState } from './runState.ts';
import { type Segment, segmentProblem, stateSize } from './segment.ts';
import { momentaryStep, type Step } from './step.ts';
import type { Heat, ThermalMemory } from './thermalMemory.ts';
import { stateScales } from './tolerances.ts';
import type { Watch } from './watches.ts';

/**
 * Share of the tolerance with which saturating circuits are integrated: currents swing more for the same error of flux, and a measured
 * magnetising curve has bends in its slope that error control sees too late. Measured on a 3 hp machine plugged at the knee, tolerance 1e-9:
 * with a tenth the peak current was 4e-7 off and a current at parting 2e-5, with a hundredth both are better than 1e-8, for 40 % more evaluations.
 */
const SATURATED_TOLERANCE = 0.01;

/**
 * Longest step in supply periods. Peaks, heat and events are read from the interpolant, whose error grows with the eighth power of the step: over a
 * residual voltage that decays without current, read to 4e-8 of the supply without this limit, it is below 1e-8 with it. Elsewhere steps are
 * shorter anyway.
 */
const LONGEST_STEP = 1;

/** What does not change within a segment. */
export interface SegmentSetting extends Pick<Segment, 'kind' | 'openPhase'> {
  readonly scenario: Scenario;
  readonly shaft: Shaft;
  readonly circuit: Circuit;
  readonly inserted: Inserted;
  readonly model: ElectricalModel;
  /** The overload relay's memory over this segment; null: there is none. */
  readonly thermal: ThermalMemory | null;
}

/**
 * Integrates up to `tStop` or the first event and stores the segment.
 *
 * @param segments the segment is added to its end, also when the integration fails: what has been integrated stays readable
 * @returns state at the segment's end, and the event that ended it
 * @throws SimulationError when the integration cannot go on
 */
export function integrateSegment(
  setting: SegmentSetting,
  from: RunState,
  tStop: number,
  watches: readonly Watch[],
  stats: WorkCount,
  segments: Segment[],
  record: (t: number, heat: Heat) => void = () => {},
): { readonly state: RunState; readonly fired: Watch | null } {
  const { scenario, shaft, circuit, inserted, model, kind, openPhase, thermal } = setting;
  const { mode } = from;
  // The angle counts from the segment's beginning.
  const shaftStates = from.shaft.map((value, i) => (i === 1 ? 0 : value));
  const y0 = [...model.fromStationary(from.t, from.flux), ...shaftStates];
  const size = stateSize(model, shaft);
  const scales = stateScales(scenario, circuit);
  const shaftScales = [scales.speed, scales.position, scales.speed, scales.twist];
  const rtol = scenario.solver.relativeTolerance * (circuit.saturation === null ? 1 : SATURATED_TOLERANCE);
  const absoluteTolerance = Array.from({ length: size }, (_, i) => {
    const scale = i < model.size ? scales.flux : shaftScales[i - model.size]!;
    return rtol * scale;
  });
  const problem = segmentProblem(model, shaft, mode);
  const period = 1 / scenario.supply.frequency;
  const options = {
    relativeTolerance: rtol,
    absoluteTolerance,
    stats,
    maxSteps: scenario.solver.maxSteps,
    // A shaft alone coasts along a smooth curve.
    longestStep: model.size === 0 ? Number.POSITIVE_INFINITY : LONGEST_STEP * period,
  };
  const steps: Step[] = [];
  const load = loadCoefficients(shaft, mode);
  const store = (tEnd: number) =>
    segments.push({
      t0: from.t,
      t1: tEnd,
      kind,
      openPhase,
      frame: model.frame,
      model,
      size,
      circuit,
      inserted,
      shaft,
      mode,
      load,
      powers: shaftPowers(shaft, mode, load),
      held: isHeld(mode),
      position0: from.position,
      steps,
    });
  let heat = from.heat;
  const warm = (step: Step, t: number) => {
    if (thermal === null) return;
    heat = thermal.advance(step, t);
    record(t, heat);
  };
  let fired: Watch | null = null;
  let tEnd = tStop;
  try {
    for (const whole of integrate(problem, from.t, y0, tStop, options)) {
      // The solver's last end differs from the stop time by a rounding now and then.
      const step = whole.t1 > tStop ? whole.until(tStop) : whole;
      const crossing = firstCrossing(step, watches, period);
      if (crossing === null) {
        steps.push(step);
        warm(step, step.t1);
        continue;
      }
      fired = crossing.watch;
      tEnd = crossing.t;
      steps.push(step.until(tEnd));
      warm(step, tEnd);
      break;
    }
  } catch (error) {
    // What has been integrated stays readable; at the very start that is the initial state alone.
    if (steps.length === 0) steps.push(momentaryStep(from.t, y0));
    store(steps.at(-1)!.t1);
    throw error;
  }
  const last = steps.at(-1)!;
  if (fired === null && last.t1 < tStop) steps[steps.length - 1] = last.until(tStop);
  store(tEnd);
  const y = Array.from({ length: size }, (_, i) => last.value(i, tEnd));
  const theta = y[model.size + 1]!;
  const state: RunState = {
    ...from,
    t: tEnd,
    flux: model.toStationary(tEnd, y, theta),
    shaft: y.slice(model.size),
    position: from.position + theta,
    heat,
  };
  return { state, fired };
}

/** A segment without length: the state of a run that ends before anything is integrated, so that it can be read. */
export function momentarySegment(setting: SegmentSetting, from: RunState): Segment {
  const { shaft, circuit, inserted, model, kind, openPhase } = setting;
  const shaftStates = from.shaft.map((value, i) => (i === 1 ? 0 : value));
  const y0 = [...model.fromStationary(from.t, from.flux), ...shaftStates];
  const load = loadCoefficients(shaft, from.mode);
  return {
    t0: from.t,
    t1: from.t,
    kind,
    openPhase,
    frame: model.frame,
    model,
    size: stateSize(model, shaft),
    circuit,
    inserted,
    shaft,
    mode: from.mode,
    load,
    powers: shaftPowers(shaft, from.mode, load),
    held: isHeld(from.mode),
    position0: from.position,
    steps: [momentaryStep(from.t, y0)],
  };
}
