import type { Circuit } from '../machine/circuit.ts';
import { circuitOf } from '../machine/circuit.ts';
import type { ElectricalModel } from '../machine/electricalModel.ts';
import { noPoles } from '../machine/noPoles.ts';
import { supplyVector } from '../machine/supplyVector.ts';
import { threePoles } from '../machine/threePoles.ts';
import { twoPoles } from '../machine/twoPoles.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { holds, type Shaft, shaftOf } from '../shaft/shaft.ts';
import { type Conduction, conduction } from '../starter/conduction.ts';
import { extinguishDeadArcs } from '../starter/extinguish.ts';
import { nextScheduled } from '../starter/starter.ts';
import type { Transition } from '../starter/transition.ts';
import { applyScheduled, clearPole, crossThreshold, PHASES } from '../starter/transitions.ts';
import { endStatus, failureStatus, OVERSPEED, overspeedStatus, shortCircuitStatus } from './endStatus.ts';
import { firstCrossing } from './firstCrossing.ts';
import { interruptionEnergy } from './interruption.ts';
import { integrate, type Step, type WorkCount } from './odexAdapter.ts';
import { endPlanner, LONGEST_AFTER_LAST_ACTION } from './runEnd.ts';
import { directionOf, initialRunState, type RunState } from './runState.ts';
import { type Segment, segmentProblem, stateSize } from './segment.ts';
import { type Blocked, describeShortCircuit } from './shortCircuit.ts';
import { SimulationError } from './simulationError.ts';
import type { RunStatus } from './status.ts';
import { EVENT_WIDTH, stateScales } from './tolerances.ts';
import { type RunEvent, readableTrajectory, type ShortCircuit, type Trajectory } from './trajectory.ts';
import { nearSpeedWatch, overspeedWatch, shaftWatch, starterWatches, type Watch } from './watches.ts';

/**
 * Integrates a scenario from t = 0: smooth segments between scheduled changes and located events. Never throws for
 * what happens in the run; the status says how it ended.
 *
 * @param blocked a contactor kept from closing again, to find out when the other one's arcs would have ended
 */
export function runTrajectory(scenario: Scenario, blocked: Blocked | null = null): Trajectory {
  const shaft = shaftOf(scenario);
  const circuit = circuitOf(scenario.machine, scenario.supply);
  const period = 1 / scenario.supply.frequency;
  const synchronous = (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
  const planEnd = endPlanner(scenario, shaft);
  const automatic = scenario.solver.endTime === 'auto';
  const tLast = scenario.actions.at(-1)?.at ?? 0;
  const tLimit =
    scenario.solver.endTime === 'auto' ? tLast + LONGEST_AFTER_LAST_ACTION : scenario.solver.endTime;
  const stats: WorkCount = { evaluations: 0, steps: 0 };
  const segments: Segment[] = [];
  const events: RunEvent[] = [];
  let interruptionLoss = 0;
  let shortCircuit: ShortCircuit | null = null;
  let endAt: number | null = null;
  let state: RunState = initialRunState(scenario, shaft);

  const finish = (status: RunStatus): Trajectory =>
    readableTrajectory({ scenario, shaft, status, segments, events, shortCircuit, interruptionLoss, stats });

  function take(transition: Transition): void {
    const settled = extinguishDeadArcs(transition.state, state.t);
    events.push(...transition.events, ...settled.events);
    state = { ...state, starter: settled.state };
  }

  while (true) {
    // Everything scheduled for this instant happens before the conducting set is looked at again.
    while (nextScheduled(state.starter) <= state.t) {
      const [entry] = state.starter.agenda;
      if (entry?.kind === 'touch' && entry.contactor === blocked?.contactor && state.t >= blocked.since)
        state = { ...state, starter: { ...state.starter, agenda: state.starter.agenda.slice(1) } };
      else take(applyScheduled(state.starter));
    }
    const poles = conduction(state.starter);
    if (poles.kind === 'shortCircuit') {
      shortCircuit = describeShortCircuit(
        scenario,
        state.t,
        poles.terminal,
        events,
        (again, without) => runTrajectory(again, without).events,
      );
      const phase = PHASES[poles.terminal];
      const text = `line-to-line short circuit: both contactors conduct on terminal ${phase}`;
      events.push({ t: state.t, kind: 'shortCircuit', text, ...(phase && { phase }) });
      return finish(shortCircuitStatus(shortCircuit));
    }
    const model = electricalModel(scenario, circuit, poles);
    if (scenario.starter.poles === 'ideal')
      interruptionLoss += interruptionEnergy(circuit, state.flux, poles);
    state = releaseIfOverpowered(state, model, shaft, events);

    const plan = automatic ? planEnd(state) : { kind: 'open' as const };
    if (plan.kind === 'at') endAt = Math.min(endAt ?? plan.t, plan.t);
    else endAt = null;
    const tEnd = Math.min(endAt ?? tLimit, tLimit);
    if (state.t >= tEnd) return finish(endStatus(state, automatic, endAt !== null));

    const watches = [
      ...starterWatches(state.starter, model, scenario.starter.zeroSpeedSwitch),
      shaftWatch(model, shaft, state.held),
      overspeedWatch(model, OVERSPEED * synchronous),
      ...(plan.kind === 'whenNear' ? [nearSpeedWatch(model, plan.target, plan.band)] : []),
    ];
    const tStop = Math.min(nextScheduled(state.starter), tEnd);
    // An event a rounding before a scheduled change leaves nothing to integrate.
    if (tStop - state.t <= EVENT_WIDTH) {
      state = { ...state, t: tStop };
      continue;
    }
    let fired: Watch | null;
    try {
      fired = integrateSegment(model, poles, tStop, watches);
    } catch (error) {
      if (!(error instanceof SimulationError)) throw error;
      return finish(failureStatus(error));
    }
    if (fired?.condition.kind === 'overspeed') return finish(overspeedStatus(state.t));
    if (fired !== null) handle(fired, model);
  }

  /** Integrates up to `tStop` or the first event, stores the segment, and moves the state to its end. */
  function integrateSegment(
    model: ElectricalModel,
    poles: Exclude<Conduction, { kind: 'shortCircuit' }>,
    tStop: number,
    watches: readonly Watch[],
  ): Watch | null {
    const y0 = [...model.fromStationary(state.t, state.flux), state.omegaM, 0];
    const scales = stateScales(scenario);
    const rtol = scenario.solver.relativeTolerance;
    const absoluteTolerance = Array.from({ length: stateSize(model) }, (_, i) => {
      const scale = i < model.size ? scales.flux : i === model.size ? scales.speed : scales.position;
      return rtol * scale;
    });
    const problem = segmentProblem(model, shaft, state.friction, state.held);
    const options = { relativeTolerance: rtol, absoluteTolerance, stats, maxSteps: scenario.solver.maxSteps };
    const steps: Step[] = [];
    const store = (tEnd: number) =>
      segments.push({
        t0: state.t,
        t1: tEnd,
        kind: poles.kind,
        openPhase: poles.kind === 'two' ? PHASES[poles.connection.indexOf(-1)]! : null,
        frame: model.frame,
        friction: state.friction,
        held: state.held,
        model,
        position0: state.position,
        steps,
      });
    let fired: Watch | null = null;
    let tEnd = tStop;
    try {
      for (const whole of integrate(problem, state.t, y0, tStop, options)) {
        // The solver's last end differs from the stop time by a rounding now and then.
        const step = { ...whole, t1: Math.min(whole.t1, tStop) };
        const crossing = firstCrossing(step, watches, period);
        if (crossing === null) {
          steps.push(step);
          continue;
        }
        fired = crossing.watch;
        tEnd = crossing.t;
        steps.push({ ...step, t1: tEnd });
        break;
      }
    } catch (error) {
      // What has been integrated stays readable; at the very start that is the initial state alone.
      if (steps.length === 0) steps.push({ t0: state.t, t1: state.t, value: (component) => y0[component]! });
      store(steps.at(-1)!.t1);
      throw error;
    }
    const last = steps.at(-1)!;
    if (fired === null && last.t1 < tStop) steps[steps.length - 1] = { ...last, t1: tStop };
    store(tEnd);
    const y = Array.from({ length: stateSize(model) }, (_, i) => last.value(i, tEnd));
    const theta = y[model.size + 1]!;
    state = {
      ...state,
      t: tEnd,
      flux: model.toStationary(tEnd, y, theta),
      omegaM: y[model.size]!,
      position: state.position + theta,
    };
    return fired;
  }

  /** Carries out what an event function's crossing means. */
  function handle(watch: Watch, model: ElectricalModel): void {
    const { condition } = watch;
    const t = state.t;
    switch (condition.kind) {
      case 'currentZero':
        take(clearPole(state.starter, t, condition.contactor, condition.pole, 'its current zero'));
        return;
      case 'threshold':
        state = { ...state, starter: crossThreshold(state.starter, t, condition.direction, condition.up) };
        return;
      case 'zeroSpeed': {
        const drive = torqueAtRest(model, state) - shaft.gravity;
        const held = holds(shaft, drive);
        events.push({ t, kind: 'zeroSpeed', text: 'speed passes through zero' });
        if (held) events.push({ t, kind: 'shaftHeld', text: 'dry friction holds the shaft at rest' });
        // Exactly zero, so that the next segment does not find the same crossing again.
        state = { ...state, omegaM: 0, held, friction: held ? 0 : directionOf(drive) };
        return;
      }
      case 'breakaway':
        state = breakAway(state, torqueAtRest(model, state) - shaft.gravity, events);
        return;
      case 'overspeed':
        return;
      case 'nearSpeed':
        events.push({ t, kind: 'settled', text: 'the speed has settled' });
        return;
    }
  }
}

function electricalModel(
  scenario: Scenario,
  circuit: Circuit,
  poles: Exclude<Conduction, { kind: 'shortCircuit' }>,
): ElectricalModel {
  switch (poles.kind) {
    case 'three':
      return threePoles(circuit, supplyVector(scenario.supply, poles.connection), scenario.solver.frame);
    case 'two':
      return twoPoles(circuit, scenario.supply, poles.connection);
    case 'none':
      return noPoles(circuit);
  }
}

/** Air-gap torque at the state's fluxes, N·m. */
function torqueAtRest(model: ElectricalModel, state: RunState): number {
  return model.derivatives(state.t, model.fromStationary(state.t, state.flux), 0, []);
}

/** A held shaft whose torque already exceeds the breakaway torque (ideal poles make the torque jump) is let go. */
function releaseIfOverpowered(
  state: RunState,
  model: ElectricalModel,
  shaft: Shaft,
  events: RunEvent[],
): RunState {
  if (!state.held) return state;
  const drive = torqueAtRest(model, state) - shaft.gravity;
  return holds(shaft, drive) ? state : breakAway(state, drive, events);
}

function breakAway(state: RunState, drive: number, events: RunEvent[]): RunState {
  events.push({ t: state.t, kind: 'shaftBreaksAway', text: 'torque overcomes the breakaway torque' });
  return { ...state, held: false, friction: directionOf(drive) };
}
