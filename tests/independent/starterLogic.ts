import { auxiliaryLogic } from './auxiliaryLogic.ts';
import type { InsertedParts } from './phaseCircuit.ts';
import type { ActionShape, ScenarioShape } from './scenarioShape.ts';
import type { Closing, LogEntry, Opening, PoleOpening } from './switchingRecord.ts';

export interface StarterLogic {
  /** Next instant known in advance, s. */
  next(): number;
  /** Performs everything due at t; currents and charges are read from the state. */
  doDue(t: number, y: Float64Array): void;
  /** Supply phase on each terminal; −1 throughout while no circuit exists. */
  supply(): [number, number, number];
  /** What stands in the circuit besides machine and source. */
  inserted(): InsertedParts;
  /** Terminals whose current may end at its next zero: behind a parted pole, or a supply phase that is being lost. */
  arcing(): number[];
  /** Terminal k's current has just passed zero. */
  currentZero(k: number, t: number, y: Float64Array): void;
  /** Contacts of the zero-speed switch that are closed, forward and reverse. */
  readonly speedContact: [boolean, boolean];
  /** The speed has picked up, and has not fallen below drop-out since; the contact follows after its delay. */
  readonly pickedUp: [boolean, boolean];
  speedCrosses(direction: 0 | 1, up: boolean, t: number): void;
  /** True once after ideal poles have interrupted current. */
  takeChopped(): boolean;
  readonly openings: readonly Opening[];
  readonly closings: readonly Closing[];
  readonly log: LogEntry[];
}

/** Instants closer than this are one instant, s. */
const SAME_INSTANT = 1e-12;

const NAMES = ['forward', 'reverse'] as const;
const PHASES = ['A', 'B', 'C'] as const;
const EXCHANGED = { AB: [1, 0, 2], BC: [0, 2, 1], CA: [2, 1, 0] } as const;

/** Order of what falls on the same instant: contacts part before others touch. */
const RANK = {
  action: 0,
  release: 1,
  part: 2,
  energise: 3,
  touch: 4,
  speedContact: 1,
  auxiliary: 5,
} as const;

interface Task {
  readonly t: number;
  readonly rank: number;
  readonly tag: string;
  readonly run: (t: number, y: Float64Array) => void;
}

interface Pole {
  state: 'open' | 'closed' | 'arcing';
  opening: PoleOpening | null;
  /** Charge reading at the last current zero or at parting. */
  chargeMark: number;
}

/**
 * Coils, poles and zero-speed switch of a two-contactor reverser. Contactor 0 is forward.
 * @param chargeAt position of ∫i dt of terminal A in the state
 */
export function starterLogic(scenario: ScenarioShape, chargeAt: number): StarterLogic {
  const { starter } = scenario;
  const supplyOf = [[0, 1, 2] as const, EXCHANGED[starter.exchangedPhases]] as const;
  const newPole = (): Pole => ({ state: 'open', opening: null, chargeMark: 0 });
  const poles = [0, 1].map(() => [newPole(), newPole(), newPole()]);
  const coil = [false, false];
  const speedContact: [boolean, boolean] = [false, false];
  const pickedUp: [boolean, boolean] = [false, false];
  /** Supply phases: lost ones first arc, then are open. */
  const lines: ('closed' | 'arcing' | 'open')[] = ['closed', 'closed', 'closed'];
  const faulty = (kind: 'weldedPole' | 'deadPole', c: number, k: number) =>
    (starter.faults ?? []).some((f) => f.kind === kind && f.contactor === NAMES[c] && f.pole === PHASES[k]);
  /** The direction of rotation that the last command works against. */
  let opposed: 0 | 1 | null = null;
  let heldBy: { target: 0 | 1; contact: 0 | 1 } | null = null;
  let chopped = false;
  let tasks: Task[] = [];
  const openings: Opening[] = [];
  const closings: Closing[] = [];
  const log: LogEntry[] = [];

  const schedule = (t: number, rank: number, tag: string, run: Task['run']) =>
    tasks.push({ t, rank, tag, run });
  const cancel = (tag: string) => {
    tasks = tasks.filter((task) => task.tag !== tag);
  };
  const auxiliary = auxiliaryLogic(scenario, {
    at: (t, tag, run) => schedule(t, RANK.auxiliary, tag, run),
    cancel,
    log,
  });
  const conducts = (c: number, k: number) =>
    poles[c]![k]!.state !== 'open' && lines[supplyOf[c]![k]!] !== 'open';
  const liveTerminals = () => [0, 1, 2].filter((k) => conducts(0, k) || conducts(1, k));

  function clear(c: number, k: number, t: number, y: Float64Array): void {
    const pole = poles[c]![k]!;
    if (pole.opening) {
      pole.opening.arcCharge += Math.abs(y[chargeAt + k]! - pole.chargeMark);
      pole.opening.clearedAt = t;
    }
    pole.state = 'open';
    log.push({ t, kind: 'poleClears', contactor: NAMES[c]!, phase: PHASES[k]! });
  }

  function part(c: number, k: number, opening: PoleOpening, t: number, y: Float64Array): void {
    if (faulty('weldedPole', c, k)) return;
    const pole = poles[c]![k]!;
    opening.partedAt = t;
    opening.partingCurrent = Math.abs(y[k]!);
    pole.opening = opening;
    pole.chargeMark = y[chargeAt + k]!;
    log.push({ t, kind: 'poleParts', contactor: NAMES[c]!, phase: PHASES[k]! });
    const shunted = conducts(1 - c, k);
    const currentless = liveTerminals().length < 2 || shunted || !conducts(c, k);
    pole.state = 'arcing';
    if (starter.poles === 'ideal' || currentless) {
      if (!currentless) chopped = true;
      clear(c, k, t, y);
      endDeadArcs(t, y);
    }
  }

  /** Arcs without a circuit end at once: of poles, and of supply phases that are being lost. */
  function endDeadArcs(t: number, y: Float64Array): void {
    const none = liveTerminals().length < 2;
    for (let c = 0; c < 2; c++) {
      for (let k = 0; k < 3; k++) {
        if (poles[c]![k]!.state === 'arcing' && (none || !conducts(c, k))) clear(c, k, t, y);
      }
    }
    for (let phase = 0; phase < 3; phase++) {
      if (lines[phase] !== 'arcing') continue;
      const fed = liveTerminals().some((k) => feeds(phase, k));
      if (none || liveTerminals().length < 2 || !fed) loseForGood(phase, t);
    }
  }

  /** True when a terminal hangs on a supply phase. */
  const feeds = (phase: number, k: number) => [0, 1].some((c) => conducts(c, k) && supplyOf[c]![k] === phase);

  function loseForGood(phase: number, t: number): void {
    lines[phase] = 'open';
    log.push({ t, kind: 'phaseClears', phase: PHASES[phase]! });
  }

  function touch(c: 0 | 1, k: number, closing: Closing, t: number, y: Float64Array): void {
    if (faulty('deadPole', c, k)) return;
    const other = 1 - c;
    if (conducts(other, k)) {
      if (supplyOf[0]![k] !== supplyOf[1]![k]) {
        throw new Error(`line-to-line short circuit at ${t} s on terminal ${PHASES[k]}`);
      }
      if (poles[other]![k]!.state === 'arcing') clear(other, k, t, y);
    }
    poles[c]![k]!.state = 'closed';
    closing.touchedAt[k] = t;
    log.push({ t, kind: 'poleTouches', contactor: NAMES[c]!, phase: PHASES[k]! });
    if (closing.circuitAt === null && liveTerminals().length >= 2) closing.circuitAt = t;
  }

  function energise(c: 0 | 1, t: number): void {
    if (coil[c]) return;
    coil[c] = true;
    log.push({ t, kind: 'coilEnergised', contactor: NAMES[c]! });
    const closing: Closing = { contactor: c, energisedAt: t, touchedAt: [null, null, null], circuitAt: null };
    closings.push(closing);
    auxiliary.energised(t);
    for (let k = 0; k < 3; k++) {
      const at = t + starter.closingTime + starter.closingScatter[k]!;
      schedule(at, RANK.touch, `touch${c}`, (now, y) => touch(c, k, closing, now, y));
    }
  }

  function release(c: 0 | 1, t: number): void {
    cancel(`energise${c}`);
    cancel(`touch${c}`);
    if (!coil[c]) return;
    coil[c] = false;
    log.push({ t, kind: 'coilReleased', contactor: NAMES[c]! });
    auxiliary.released(t);
    const blank = (): PoleOpening => ({ partedAt: null, partingCurrent: 0, clearedAt: null, arcCharge: 0 });
    const opening: Opening = { contactor: c, releasedAt: t, poles: [blank(), blank(), blank()] };
    openings.push(opening);
    opening.poles.forEach((record, k) => {
      if (poles[c]![k]!.state !== 'closed') return;
      const at = t + starter.openingTime + starter.openingScatter[k]!;
      schedule(at, RANK.part, `part${c}`, (now, y) => part(c, k, record, now, y));
    });
  }

  /** Drops the other contactor if it is in, then pulls this one in after the change-over delay. */
  function changeTo(c: 0 | 1, t: number, plugs: boolean): void {
    const other = c === 0 ? 1 : 0;
    cancel(`energise${other}`);
    const turns = starter.zeroSpeedSwitch ? speedContact[other] && !speedContact[c] : coil[other]!;
    opposed = plugs || turns ? other : null;
    auxiliary.commanded(plugs, opposed !== null, t);
    if (!coil[other]) {
      energise(c, t);
      return;
    }
    release(other, t);
    schedule(t + starter.changeoverDelay, RANK.energise, `energise${c}`, (now) => energise(c, now));
  }

  function act(kind: ActionShape, t: number): void {
    log.push({ t, kind: 'action' });
    heldBy = null;
    if (kind === 'startForward') changeTo(0, t, false);
    else if (kind === 'startReverse') changeTo(1, t, false);
    else if (kind === 'coast') {
      release(0, t);
      release(1, t);
    } else {
      const running = coil[0] ? 0 : 1;
      if (!coil[running]) throw new Error(`plug at ${t} s: no contactor is in`);
      const target = running === 0 ? 1 : 0;
      if (starter.zeroSpeedSwitch) {
        if (!speedContact[running]) throw new Error(`plug at ${t} s: the zero-speed contact is open`);
        heldBy = { target, contact: running };
      }
      changeTo(target, t, true);
    }
  }

  function speedCrosses(direction: 0 | 1, up: boolean, t: number): void {
    const tag = `speedContact${direction}`;
    pickedUp[direction] = up;
    // A crossing back before the delay is over takes the first one back.
    cancel(tag);
    if (speedContact[direction] === up) return;
    schedule(t + starter.zeroSpeedSwitch!.delay, RANK.speedContact, tag, (now) => {
      speedContact[direction] = up;
      log.push({ t: now, kind: up ? 'switchCloses' : 'switchOpens', contactor: NAMES[direction] });
      if (up) return;
      if (heldBy?.contact === direction) {
        opposed = null;
        release(heldBy.target, now);
        heldBy = null;
      } else if (opposed === direction) {
        // A start against the rotation has become a start like any other.
        opposed = null;
        auxiliary.atRest(now);
      }
    });
  }

  for (const action of scenario.actions) {
    schedule(action.at, RANK.action, 'action', (now) => act(action.do, now));
  }
  if (scenario.initial !== 'rest') {
    const running = scenario.initial === 'runningForward' ? 0 : 1;
    coil[running] = true;
    for (const pole of poles[running]!) pole.state = 'closed';
    speedContact[running] = starter.zeroSpeedSwitch !== null;
    pickedUp[running] = speedContact[running];
  }
  for (const fault of starter.faults ?? []) {
    if (fault.kind !== 'lostPhase') continue;
    const phase = PHASES.indexOf(fault.phase);
    schedule(fault.from, RANK.action, 'phaseLost', (now, y) => {
      lines[phase] = 'arcing';
      log.push({ t: now, kind: 'phaseLost', phase: fault.phase });
      if (starter.poles === 'ideal') {
        if (liveTerminals().length >= 2 && liveTerminals().some((k) => feeds(phase, k))) chopped = true;
        loseForGood(phase, now);
      }
      endDeadArcs(now, y);
    });
  }

  return {
    openings,
    closings,
    log,
    speedContact,
    pickedUp,
    speedCrosses,
    next: () => tasks.reduce((least, task) => Math.min(least, task.t), Number.POSITIVE_INFINITY),
    doDue(t, y) {
      for (;;) {
        const due = tasks
          .filter((task) => task.t <= t + SAME_INSTANT)
          .sort((a, b) => a.rank - b.rank || a.t - b.t)[0];
        if (!due) return;
        tasks = tasks.filter((task) => task !== due);
        due.run(t, y);
      }
    },
    supply() {
      const out: [number, number, number] = [-1, -1, -1];
      const live = liveTerminals();
      auxiliary.currentless(live.length < 2);
      if (live.length < 2) return out;
      for (const k of live) out[k] = supplyOf[conducts(0, k) ? 0 : 1]![k]!;
      return out;
    },
    inserted: auxiliary.inserted,
    arcing: () =>
      liveTerminals().filter(
        (k) =>
          poles.some((contactor) => contactor[k]!.state === 'arcing') ||
          lines.some((line, phase) => line === 'arcing' && feeds(phase, k)),
      ),
    currentZero(k, t, y) {
      // With two poles left both carry the same current and pass zero together.
      const passing = liveTerminals().length === 2 ? [0, 1, 2] : [k];
      for (const terminal of passing) {
        for (let phase = 0; phase < 3; phase++) {
          if (lines[phase] === 'arcing' && feeds(phase, terminal)) loseForGood(phase, t);
        }
        for (let c = 0; c < 2; c++) {
          const pole = poles[c]![terminal]!;
          if (pole.state !== 'arcing') continue;
          if (t >= pole.opening!.partedAt! + starter.minimumArcingTime) clear(c, terminal, t, y);
          else {
            pole.opening!.arcCharge += Math.abs(y[chargeAt + terminal]! - pole.chargeMark);
            pole.chargeMark = y[chargeAt + terminal]!;
          }
        }
      }
      endDeadArcs(t, y);
    },
    takeChopped() {
      const was = chopped;
      chopped = false;
      return was;
    },
  };
}
