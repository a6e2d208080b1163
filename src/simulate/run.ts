import type { Circuit } from '../machine/circuit.ts';
import { connectedModel } from '../machine/connectedModel.ts';
import { deadModel } from '../machine/deadModel.ts';
import type { ElectricalModel } from '../machine/electricalModel.ts';
import { reconnectFlux } from '../machine/reconnectFlux.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { afterShaftEvent } from '../shaft/afterShaftEvent.ts';
import { brakedShaft, modeWithBrake } from '../shaft/brakedShaft.ts';
import { reviewShaft, type ShaftNote } from '../shaft/reviewShaft.ts';
import { shaftOf } from '../shaft/shaft.ts';
import { reconnectWinding } from '../starter/auxiliaries.ts';
import { conduction } from '../starter/conduction.ts';
import { setVoltage, tripOverload } from '../starter/control/inputs.ts';
import { extinguishDeadArcs } from '../starter/extinguish.ts';
import { clearLine } from '../starter/lines.ts';
import { nextScheduled, PHASES } from '../starter/starter.ts';
import { blockBridge, followBrake } from '../starter/stopDevices.ts';
import type { Transition } from '../starter/transition.ts';
import { applyScheduled, clearPole, crossThreshold, followUp } from '../starter/transitions.ts';
import { circuitSource, feedSource, insertedNow } from './circuitSource.ts';
import { presentControlVoltage, readControlVoltage, voltageLevel } from './controlVoltage.ts';
import {
  circlingStatus,
  endStatus,
  failureStatus,
  OVERSPEED,
  overspeedStatus,
  shortCircuitStatus,
} from './endStatus.ts';
import type { WorkCount } from './integrate.ts';
import { integrateSegment, momentarySegment } from './integrateSegment.ts';
import { interruptionEnergy } from './interruption.ts';
import { lineCurrents, mayTrip, withResetAllowed } from './overloadInRun.ts';
import { goneBelow, isGone, isStiff } from './residualFlux.ts';
import { endPlanner, LONGEST_AFTER_LAST_ACTION } from './runEnd.ts';
import { runRecord } from './runRecord.ts';
import { initialRunState, type RunState } from './runState.ts';
import { type Segment, stateBuffer } from './segment.ts';
import { type Blocked, closedByBoth, describeShortCircuit } from './shortCircuit.ts';
import { SimulationError } from './simulationError.ts';
import type { RunStatus } from './status.ts';
import { thermalMemory } from './thermalMemory.ts';
import { EVENT_WIDTH } from './tolerances.ts';
import { type RunEvent, readableTrajectory, type ShortCircuit, type Trajectory } from './trajectory.ts';
import {
  fluxGoneWatch,
  nearSpeedWatch,
  overloadWatch,
  overspeedWatch,
  shaftWatches,
  starterWatches,
  voltageWatches,
  type Watch,
} from './watches.ts';

/**
 * Integrates a scenario from t = 0: smooth segments between scheduled changes and located events. Never throws for what
 * happens in the run; the status says how it ended.
 *
 * Source: the integrator is the method 8(5,3) of Dormand and Prince as given by Hairer, Nørsett, Wanner, Solving
 * Ordinary Differential Equations I, II.10; the machine is the model in arbitrary axes of the textbooks (Krause,
 * Analysis of Electric Machinery).
 *
 * @param blocked a contactor kept from closing again, to find out when the other one's arcs would have ended
 * @throws ScenarioError where the machine is to be running at t = 0 and cannot drive its load
 */
export function runTrajectory(scenario: Scenario, blocked: Blocked | null = null): Trajectory {
  const free = shaftOf(scenario);
  const braked = brakedShaft(free, scenario.starter.brake?.torque ?? 0);
  let shaft = free;
  const circuits = circuitSource(scenario);
  const feeds = feedSource(scenario, circuits);
  const synchronous = (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
  const planEnd = endPlanner(scenario);
  const automatic = scenario.solver.endTime === 'auto';
  const tLast = scenario.actions.at(-1)?.at ?? 0;
  const tLimit =
    scenario.solver.endTime === 'auto' ? tLast + LONGEST_AFTER_LAST_ACTION : scenario.solver.endTime;
  const stats: WorkCount = { evaluations: 0, steps: 0 };
  const segments: Segment[] = [];
  let interruptionLoss = 0;
  let shortCircuit: ShortCircuit | null = null;
  let endAt: number | null = null;
  let state: RunState = initialRunState(scenario, shaft);
  let atInstant = { t: 0, changes: 0 };
  const record = runRecord(scenario, state);
  const overload = scenario.starter.control?.overload ?? null;
  const nothing = goneBelow(scenario);

  const finish = (status: RunStatus): Trajectory =>
    readableTrajectory({
      scenario,
      shaft: free,
      status,
      segments,
      shortCircuit,
      interruptionLoss,
      stats,
      ...record.kept(),
    });

  function note(...noted: readonly Omit<RunEvent, 'speed'>[]): void {
    record.note(state.shaft[0]!, ...noted);
  }

  /** More changes at one instant than any list of actions explains; the run must still be readable. */
  function isCircling(): boolean {
    const circles = atInstant.changes > MOST_AT_ONE_INSTANT;
    if (circles && segments.length === 0) segments.push(beforeAnything());
    return circles;
  }

  function take(transition: Transition): void {
    atInstant = { t: state.t, changes: atInstant.t === state.t ? atInstant.changes + 1 : 1 };
    const held = followBrake(state.starter, transition.state, state.t);
    const settled = extinguishDeadArcs(held.state, state.t);
    const wound = reconnectWinding(settled.state, state.t, conduction(settled.state).kind === 'none');
    note(...transition.events, ...held.events, ...settled.events, ...wound.events);
    if (wound.state.winding !== state.starter.winding) reconnect(wound.state.winding === 'star');
    state = { ...state, starter: wound.state };
    record.starterIs(state.t, state.starter);
    const forgets = scenario.starter.control?.overload?.memory === 'lost';
    if (forgets && transition.events.some(({ kind }) => kind === 'supplyLost')) forgetHeat();
  }

  /** An overload relay whose memory lives on the supply is cold again. */
  function forgetHeat(): void {
    state = { ...state, heat: [0, 0, 0] };
    record.heatIs(state.t, [0, 0, 0]);
  }

  /** Counts what ideal poles chop; before the first segment it is no part of the run, whose energy counts from there. */
  function chop(circuit: Circuit, poles: Parameters<typeof interruptionEnergy>[3]): void {
    if (scenario.starter.poles === 'ideal' && segments.length > 0)
      interruptionLoss += interruptionEnergy(circuit, scenario.supply, state.flux, poles);
  }

  /** The state at t = 0 with all poles open. */
  function beforeAnything(): Segment {
    const inserted = insertedNow(scenario, state.starter);
    const circuit = circuits(inserted);
    const model = connectedModel(circuit, scenario.supply, { kind: 'none', connection: [-1, -1, -1] });
    const setting = { scenario, shaft, circuit, inserted, model, kind: 'none', openPhase: null } as const;
    return momentarySegment({ ...setting, thermal: null }, state);
  }

  /** Carries the fluxes across a change between delta and star, in which no current flows any more. */
  function reconnect(star: boolean): void {
    const circuit = circuits(insertedNow(scenario, state.starter));
    const poles = { kind: 'none', connection: [-1, -1, -1] } as const;
    chop(circuit, poles);
    const open = connectedModel(circuit, scenario.supply, poles);
    const currentless = open.toStationary(state.t, open.fromStationary(state.t, state.flux), 0);
    const order = scenario.starter.windingOrder ?? DEFAULT_WINDING_ORDER;
    state = { ...state, flux: reconnectFlux(currentless, star, order) };
  }

  function takeShaft(mode: RunState['mode'], notes: readonly ShaftNote[]): void {
    for (const { kind, text } of notes) note({ t: state.t, kind, text });
    state = { ...state, mode };
  }

  take(followUp({ state: state.starter, events: [] }, 0, 'the control voltage is on'));

  while (true) {
    // Everything scheduled for this instant happens before the conducting set is looked at again.
    if (isCircling()) return finish(circlingStatus(state.t));
    while (nextScheduled(state.starter) <= state.t && !isCircling()) {
      const [entry] = state.starter.agenda;
      if (entry?.kind === 'touch' && entry.contactor === blocked?.contactor && state.t >= blocked.since)
        state = { ...state, starter: { ...state.starter, agenda: state.starter.agenda.slice(1) } };
      else take(applyScheduled(withResetAllowed(state)));
    }
    const poles = conduction(state.starter);
    if (poles.kind === 'shortCircuit') {
      shortCircuit = describeShortCircuit(
        scenario,
        state.t,
        poles.terminal,
        record.events,
        closedByBoth(state.starter, poles.terminal),
        (again, without) => runTrajectory(again, without).events,
      );
      const phase = PHASES[poles.terminal];
      const text = `line-to-line short circuit: both contactors conduct on terminal ${phase}`;
      note({ t: state.t, kind: 'shortCircuit', text, ...(phase && { phase }) });
      if (segments.length === 0) segments.push(beforeAnything());
      return finish(shortCircuitStatus(shortCircuit));
    }
    const inserted = insertedNow(scenario, state.starter);
    const { circuit, supply } = feeds(inserted, poles.direct);
    const dead = poles.kind === 'none' && isStiff(circuit) && isGone(state.flux, nothing);
    if (dead) state = { ...state, flux: state.flux.map(() => 0) };
    const model = dead
      ? deadModel(state.flux.length)
      : connectedModel(circuit, supply, poles, scenario.solver.frame);
    const share = presentControlVoltage(scenario, state, model);
    if (share !== null) {
      const level = voltageLevel(share.limits, share.value, share.before);
      if (level !== share.before) {
        take(followUp(setVoltage(state.starter, state.t, level, 'voltage'), state.t, ENOUGH));
        continue;
      }
    }
    chop(circuit, poles);
    if ((shaft === braked) !== state.starter.braked) {
      shaft = state.starter.braked ? braked : free;
      state = { ...state, mode: modeWithBrake(shaft, state.mode, state.shaft, torqueNow(model, state)) };
    }
    const review = reviewShaft(shaft, state.mode, state.shaft, torqueNow(model, state));
    takeShaft(review.mode, review.notes);

    const plan = automatic ? planEnd(state, shaft) : { kind: 'open' as const };
    if (plan.kind === 'at') endAt = Math.min(endAt ?? plan.t, plan.t);
    else endAt = null;
    const tEnd = Math.min(endAt ?? tLimit, tLimit);
    if (state.t >= tEnd) return finish(endStatus(state, synchronous, automatic, endAt !== null));

    const memory =
      state.heat === null || overload === null
        ? null
        : thermalMemory(overload, state.heat, lineCurrents(model, poles.kind), 1 / scenario.supply.frequency);
    const watches = [
      // The limit of flux fires at half of it, so that the same fluxes turned to other axes are below it for certain.
      ...starterWatches(state.starter, model, scenario.starter.zeroSpeedSwitch),
      ...shaftWatches(model, shaft, state.mode),
      overspeedWatch(model, OVERSPEED * synchronous),
      ...(poles.kind === 'none' && isStiff(circuit) && !dead ? [fluxGoneWatch(model, nothing / 2)] : []),
      ...(memory === null || !mayTrip(state.starter) ? [] : [overloadWatch(memory)]),
      ...(share === null
        ? []
        : voltageWatches(share.before, share.limits, readControlVoltage(scenario, state.starter, model))),
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
      const openPhase = poles.kind === 'two' ? PHASES[poles.connection.indexOf(-1)]! : null;
      const setting = {
        scenario,
        shaft,
        circuit,
        inserted,
        model,
        kind: poles.kind,
        openPhase,
        thermal: memory,
      };
      const done = integrateSegment(setting, state, tStop, watches, stats, segments, record.heatIs);
      state = done.state;
      fired = done.fired;
    } catch (error) {
      if (!(error instanceof SimulationError)) throw error;
      return finish(failureStatus(error));
    }
    if (fired?.condition.kind === 'overspeed') return finish(overspeedStatus(state.t));
    if (fired !== null) handle(fired, model);
  }

  /** Carries out what an event function's crossing means. */
  function handle(watch: Watch, model: ElectricalModel): void {
    const { condition } = watch;
    const t = state.t;
    switch (condition.kind) {
      case 'currentZero': {
        const { arc } = condition;
        const cause = 'its current zero';
        if (arc.kind === 'pole') take(clearPole(state.starter, t, arc.contactor, arc.pole, cause));
        else if (arc.kind === 'line') take(clearLine(state.starter, t, arc.phase, cause));
        else take(blockBridge(state.starter, t));
        return;
      }
      case 'threshold':
        state = { ...state, starter: crossThreshold(state.starter, t, condition.direction, condition.up) };
        return;
      case 'shaft': {
        const after = afterShaftEvent(
          shaft,
          state.mode,
          condition.event,
          state.shaft,
          torqueNow(model, state),
        );
        state = { ...state, shaft: after.state };
        takeShaft(after.mode, after.notes);
        return;
      }
      case 'overload':
        take(
          followUp(
            tripOverload(state.starter, t, 'overload relay trips: its heat has reached the trip level'),
            t,
            '',
          ),
        );
        return;
      case 'controlVoltage':
        take(followUp(setVoltage(state.starter, t, condition.level, 'voltage'), t, ENOUGH));
        return;
      case 'overspeed':
      case 'fluxGone':
        return;
      case 'nearSpeed':
        note({ t, kind: 'settled', text: 'the speed has settled' });
        return;
    }
  }
}

/** Changes at one instant beyond which they go round in a circle; 1000 actions may share an instant. */
const MOST_AT_ONE_INSTANT = 3000;

/** Cause of what picks up when the voltage has only been too low for that. */
const ENOUGH = 'the control voltage is enough to pick up';

/** Order of delta windings where nothing is said. */
const DEFAULT_WINDING_ORDER = 'AB';

/** Air-gap torque at the state's fluxes, N·m; it does not depend on speed. */
function torqueNow(model: ElectricalModel, state: RunState): number {
  return model.derivatives(
    state.t,
    Float64Array.from(model.fromStationary(state.t, state.flux)),
    0,
    stateBuffer(),
  );
}
