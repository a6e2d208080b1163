import type { IndependentMetrics } from './independentMetric.ts';
import { measureRun } from './measureRun.ts';
import { type Mode, type PhaseCircuit, phaseCircuit } from './phaseCircuit.ts';
import type { ScenarioShape } from './scenarioShape.ts';
import { type Closing, type LogEntry, type Opening, starterLogic } from './starterLogic.ts';
import { steadyCurrents, steadySpeed } from './steadyCircuit.ts';
import { createStepper, type Step, type Stepper, type Watcher } from './stepper.ts';

/** A whole run: every step taken, what the contacts did, and what chopping poles released. */
export interface PhaseVariableRun {
  readonly scenario: ScenarioShape;
  readonly circuit: PhaseCircuit;
  readonly stepper: Stepper;
  readonly steps: readonly Step[];
  readonly openings: readonly Opening[];
  readonly closings: readonly Closing[];
  readonly log: readonly LogEntry[];
  readonly endTime: number;
  /** Magnetic energy lost at instants when ideal poles chopped current, J. */
  readonly chopLoss: number;
}

export interface PhaseVariableOptions {
  /** Speed at t = 0 of a machine without flux, rad/s; instead of the scenario's initial state. */
  readonly initialSpeed?: number;
  readonly tolerance?: number;
}

/** Runs the phase-variable model and measures everything on it. */
export function runPhaseVariableModel(
  scenario: ScenarioShape,
  options: PhaseVariableOptions = {},
): {
  readonly metrics: IndependentMetrics;
  readonly events: readonly LogEntry[];
  readonly run: PhaseVariableRun;
} {
  const run = integrateRun(scenario, options);
  return { metrics: measureRun(run), events: run.log, run };
}

/** Integrates a scenario from t = 0 to its end time. */
export function integrateRun(scenario: ScenarioShape, options: PhaseVariableOptions = {}): PhaseVariableRun {
  const endTime = scenario.solver.endTime;
  if (endTime === 'auto') throw new Error('the phase-variable model needs an end time');
  const circuit = phaseCircuit(scenario);
  const { index, load } = circuit;
  const logic = starterLogic(scenario, index.charge);
  const stepper = createStepper(scenario, circuit, options.tolerance);
  const steps: Step[] = [];
  const y = new Float64Array(circuit.size);
  let t = 0;
  let chopLoss = 0;

  if (scenario.initial !== 'rest') {
    const direction = scenario.initial === 'runningForward' ? 1 : -1;
    const speed = steadySpeed(scenario, direction);
    if (speed === null) throw new Error('no steady state to start from');
    const synchronous = (direction * 2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
    y[index.omega] = speed;
    steadyCurrents(scenario, 1 - speed / synchronous, logic.supply(), y);
  } else y[index.omega] = options.initialSpeed ?? 0;

  const drive = (state: Float64Array) => circuit.torque(state) - load.steady(0);
  let held = y[index.omega] === 0 && load.hold > 0;
  let rubbing = Math.sign(y[index.omega]!) as Mode['rubbing'];

  function tidyCurrents(supply: Mode['supply']): void {
    const live = [0, 1, 2].filter((k) => supply[k]! >= 0);
    for (let k = 0; k < 3; k++) if (supply[k]! < 0) y[k] = 0;
    if (live.length !== 2) return;
    const [l, m] = live as [number, number];
    const shared = (y[l]! - y[m]!) / 2;
    y[l] = shared;
    y[m] = -shared;
  }

  function watch(): Watcher[] {
    const watchers: Watcher[] = logic.arcing().map((k) => ({
      value: (state) => state[k]!,
      slope: (_state, f) => f[k]!,
      direction: 0,
      act: (now, state) => logic.currentZero(k, now, state),
    }));
    const zeroSpeedSwitch = scenario.starter.zeroSpeedSwitch;
    for (const d of zeroSpeedSwitch ? ([0, 1] as const) : []) {
      const sign = d === 0 ? 1 : -1;
      const closed = logic.speedContact[d];
      if (closed && logic.speedContactOpening[d]) continue;
      const threshold = closed ? zeroSpeedSwitch!.dropOutSpeed : zeroSpeedSwitch!.pickUpSpeed;
      watchers.push({
        value: (state) => sign * state[index.omega]! - threshold,
        slope: (_state, f) => sign * f[index.omega]!,
        direction: closed ? -1 : 1,
        act: (now) => {
          if (closed) logic.speedContactDropsOut(d, now);
          else logic.speedContactCloses(d, now);
        },
      });
    }
    if (!held) {
      watchers.push({
        value: (state) => state[index.omega]!,
        slope: (_state, f) => f[index.omega]!,
        direction: 0,
        act: (now, state) => {
          state[index.omega] = 0;
          logic.log.push({ t: now, kind: 'zeroSpeed' });
          held = load.hold > 0 && Math.abs(drive(state)) <= load.hold;
          rubbing = load.hold > 0 ? (Math.sign(drive(state)) as Mode['rubbing']) : 0;
          if (held) logic.log.push({ t: now, kind: 'shaftHeld' });
        },
      });
    } else {
      for (const sign of [1, -1] as const) {
        watchers.push({
          value: (state) => sign * drive(state) - load.hold,
          slope: (state, f) => sign * circuit.torqueRate(state, f),
          direction: 1,
          // Leaving rest is decided at the top of the loop, where changes of torque by switching are seen too.
          act: () => {},
        });
      }
    }
    return watchers;
  }

  let supply = logic.supply();
  while (t < endTime) {
    const before = supply;
    logic.doDue(t, y);
    supply = logic.supply();
    const lost = [0, 1, 2].some((k) => before[k]! >= 0 && supply[k]! < 0);
    if (logic.takeChopped() && lost) {
      const stored = circuit.magneticEnergy(y);
      circuit.setMode({ supply, rubbing: 0, held });
      circuit.chop(y);
      chopLoss += stored - circuit.magneticEnergy(y);
    }
    tidyCurrents(supply);
    if (held && Math.abs(drive(y)) >= load.hold) {
      held = false;
      rubbing = Math.sign(drive(y)) as Mode['rubbing'];
      logic.log.push({ t, kind: 'shaftBreaksAway' });
    }
    const mode: Mode = { supply, rubbing: load.friction > 0 ? rubbing : 0, held };
    const stop = Math.min(endTime, logic.next());
    const reached = stepper.advance(mode, t, y, stop, watch(), steps);
    t = reached.t;
    reached.hit?.act(t, y);
    // What the event set exactly (a speed of zero) is also what the step ended with.
    steps.at(-1)!.y1.set(y);
  }

  return {
    scenario,
    circuit,
    stepper,
    steps,
    openings: logic.openings,
    closings: logic.closings,
    log: logic.log,
    endTime,
    chopLoss,
  };
}
