import type { ActionShape, ScenarioShape } from './scenarioShape.ts';

/** One pole's opening. */
export interface PoleOpening {
  partedAt: number | null;
  partingCurrent: number;
  clearedAt: number | null;
  /** ∫|i| dt from parting to clearing, A·s. */
  arcCharge: number;
}

export interface Opening {
  readonly contactor: 0 | 1;
  readonly releasedAt: number;
  readonly poles: readonly [PoleOpening, PoleOpening, PoleOpening];
}

export interface Closing {
  readonly contactor: 0 | 1;
  readonly energisedAt: number;
  readonly touchedAt: [number | null, number | null, number | null];
  /** First touch after which current can flow. */
  circuitAt: number | null;
}

export interface LogEntry {
  readonly t: number;
  readonly kind: string;
  readonly contactor?: 'forward' | 'reverse';
  readonly phase?: 'A' | 'B' | 'C';
}

export interface StarterLogic {
  /** Next instant known in advance, s. */
  next(): number;
  /** Performs everything due at t; currents and charges are read from the state. */
  doDue(t: number, y: Float64Array): void;
  /** Supply phase on each terminal; −1 throughout while no circuit exists. */
  supply(): [number, number, number];
  /** Terminals with a parted pole that still conducts. */
  arcing(): number[];
  /** Terminal k's current has just passed zero. */
  currentZero(k: number, t: number, y: Float64Array): void;
  /** Contacts of the zero-speed switch that are closed, forward and reverse. */
  readonly speedContact: [boolean, boolean];
  /** True while the contact's opening is under way. */
  readonly speedContactOpening: [boolean, boolean];
  speedContactCloses(direction: 0 | 1, t: number): void;
  speedContactDropsOut(direction: 0 | 1, t: number): void;
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
const RANK = { action: 0, release: 1, part: 2, energise: 3, touch: 4, speedContact: 1 } as const;

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
  const speedContactOpening: [boolean, boolean] = [false, false];
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
  const conducts = (c: number, k: number) => poles[c]![k]!.state !== 'open';
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
    const pole = poles[c]![k]!;
    opening.partedAt = t;
    opening.partingCurrent = Math.abs(y[k]!);
    pole.opening = opening;
    pole.chargeMark = y[chargeAt + k]!;
    log.push({ t, kind: 'poleParts', contactor: NAMES[c]!, phase: PHASES[k]! });
    const shunted = conducts(1 - c, k);
    const currentless = liveTerminals().length < 2 || shunted;
    pole.state = 'arcing';
    if (starter.poles === 'ideal' || currentless) {
      if (!currentless) chopped = true;
      clear(c, k, t, y);
    }
  }

  function touch(c: 0 | 1, k: number, closing: Closing, t: number, y: Float64Array): void {
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
  function changeTo(c: 0 | 1, t: number): void {
    const other = c === 0 ? 1 : 0;
    cancel(`energise${other}`);
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
    if (kind === 'startForward') changeTo(0, t);
    else if (kind === 'startReverse') changeTo(1, t);
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
      changeTo(target, t);
    }
  }

  function speedContactDropsOut(direction: 0 | 1, t: number): void {
    speedContactOpening[direction] = true;
    schedule(t + starter.zeroSpeedSwitch!.delay, RANK.speedContact, 'speedContact', (now) => {
      speedContact[direction] = false;
      speedContactOpening[direction] = false;
      log.push({ t: now, kind: 'switchOpens', contactor: NAMES[direction] });
      if (heldBy?.contact === direction) {
        release(heldBy.target, now);
        heldBy = null;
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
  }

  return {
    openings,
    closings,
    log,
    speedContact,
    speedContactOpening,
    speedContactDropsOut,
    speedContactCloses(direction, t) {
      speedContact[direction] = true;
      log.push({ t, kind: 'switchCloses', contactor: NAMES[direction] });
    },
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
      if (live.length < 2) return out;
      for (const k of live) out[k] = supplyOf[conducts(0, k) ? 0 : 1]![k]!;
      return out;
    },
    arcing: () => [0, 1, 2].filter((k) => poles.some((contactor) => contactor[k]!.state === 'arcing')),
    currentZero(k, t, y) {
      // With two poles left both carry the same current and pass zero together.
      const passing = liveTerminals().length === 2 ? [0, 1, 2] : [k];
      for (const terminal of passing) {
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
      if (liveTerminals().length >= 2) return;
      for (let c = 0; c < 2; c++) {
        for (let j = 0; j < 3; j++) if (poles[c]![j]!.state === 'arcing') clear(c, j, t, y);
      }
    },
    takeChopped() {
      const was = chopped;
      chopped = false;
      return was;
    },
  };
}
