import { energiseBypass, moveBypass, setRotorResistance, startRotorSteps } from './auxiliaries.ts';
import { act, releaseCoil } from './commands.ts';
import {
  type ContactorName,
  cancel,
  type Direction,
  hasFault,
  PHASES,
  type PoleState,
  type Poles,
  type Scheduled,
  type StarterState,
  schedule,
} from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';
import type { Transition } from './transition.ts';

/** Carries out the first entry of the agenda. */
export function applyScheduled(state: StarterState): Transition {
  const [entry, ...agenda] = state.agenda;
  if (entry === undefined) return { state, events: [] };
  const rest: StarterState = { ...state, agenda };
  switch (entry.kind) {
    case 'action':
      return act(rest, entry.t, entry.action.do);
    case 'energise':
      return energise(rest, entry.t, entry.contactor);
    case 'touch':
      return touch(rest, entry);
    case 'part':
      return part(rest, entry);
    case 'mayClear':
      return { state: setMayClear(rest, entry.contactor, entry.pole, true), events: [] };
    case 'contact':
      return moveContact(rest, entry.t, entry.direction, entry.closed);
    case 'bypassEnergise':
      return { state: energiseBypass(rest, entry.t), events: [] };
    case 'bypassMoves':
      return moveBypass(rest, entry.t, entry.closed);
    case 'rotorStep':
      return setRotorResistance(rest, entry.t, entry.resistance);
    case 'phaseLost':
      return losePhase(rest, entry.t, entry.phase);
  }
}

/** A supply phase is lost: its current ends at its next zero, at once where poles are ideal. */
function losePhase(state: StarterState, t: number, phase: number): Transition {
  if (state.lines[phase] !== 'closed') return { state, events: [] };
  const name = PHASES[phase]!;
  const lost: StarterState = { ...state, lines: replaceAt(state.lines, phase, 'arcing') };
  const event: StarterEvent = { t, kind: 'phaseLost', phase: name, text: `supply phase ${name} is lost` };
  if (state.data.poles !== 'ideal') return { state: lost, events: [event] };
  const cleared = clearLine(lost, t, phase, 'ideal pole');
  return { state: cleared.state, events: [event, ...cleared.events] };
}

/** The current of a lost supply phase has ended. */
export function clearLine(state: StarterState, t: number, phase: number, cause: string): Transition {
  const name = PHASES[phase]!;
  return {
    state: { ...state, lines: replaceAt(state.lines, phase, 'open') },
    events: [{ t, kind: 'phaseClears', phase: name, text: `lost supply phase ${name} clears: ${cause}` }],
  };
}

/** A pole's arc is extinguished: at a current zero, or because its circuit has been opened elsewhere. */
export function clearPole(
  state: StarterState,
  t: number,
  contactor: ContactorName,
  pole: number,
  cause: string,
): Transition {
  const cleared = cancel(
    setMayClear(setPole(state, contactor, pole, 'open'), contactor, pole, false),
    (entry) => entry.kind === 'mayClear' && entry.contactor === contactor && entry.pole === pole,
  );
  const phase = PHASES[pole]!;
  return {
    state: cleared,
    events: [
      { t, kind: 'poleClears', contactor, phase, text: `${contactor} pole ${phase} clears: ${cause}` },
    ],
  };
}

/** The speed has crossed a threshold of the zero-speed switch; the contact follows after its delay. */
export function crossThreshold(
  state: StarterState,
  t: number,
  direction: Direction,
  up: boolean,
): StarterState {
  const delay = state.data.zeroSpeedSwitch?.delay ?? 0;
  const undone = cancel(state, (entry) => entry.kind === 'contact' && entry.direction === direction);
  const marked = { ...undone, pickedUp: { ...undone.pickedUp, [direction]: up } };
  if (marked.contact[direction] === up) return marked;
  return schedule(marked, { t: t + delay, kind: 'contact', direction, closed: up });
}

function energise(state: StarterState, t: number, contactor: ContactorName): Transition {
  if (state.plugging?.contactor === contactor && state.data.zeroSpeedSwitch !== null) {
    if (!state.contact[state.plugging.braking]) {
      const text = `${contactor} coil stays dead: the zero-speed switch is open`;
      return {
        state: { ...state, plugging: null, opposing: null },
        events: [{ t, kind: 'plugRefused', contactor, text }],
      };
    }
  }
  let next: StarterState = cancel(
    { ...state, coil: { ...state.coil, [contactor]: true } },
    (entry) => entry.kind === 'part' && entry.contactor === contactor,
  );
  for (const pole of [0, 1, 2] as const)
    next = schedule(next, {
      t: t + state.data.closingTime + state.data.closingScatter[pole],
      kind: 'touch',
      contactor,
      pole,
    });
  const event: StarterEvent = {
    t,
    kind: 'coilEnergised',
    contactor,
    text: `${contactor} coil energised`,
  };
  if (state.opposing === null) {
    const steps = startRotorSteps(energiseBypass(next, t), t);
    return { state: steps.state, events: [event, ...steps.events] };
  }
  const after = state.data.lineResistors?.bypassAfter ?? null;
  if (after !== null) next = schedule(next, { t: t + after, kind: 'bypassEnergise' });
  return { state: next, events: [event] };
}

function touch(state: StarterState, entry: Scheduled & { kind: 'touch' }): Transition {
  const { contactor, pole, t } = entry;
  if (hasFault(state.data, 'deadPole', contactor, pole)) return { state, events: [] };
  const phase = PHASES[pole]!;
  return {
    state: setMayClear(setPole(state, contactor, pole, 'closed'), contactor, pole, false),
    events: [{ t, kind: 'poleTouches', contactor, phase, text: `${contactor} pole ${phase} touches` }],
  };
}

function part(state: StarterState, entry: Scheduled & { kind: 'part' }): Transition {
  const { contactor, pole, t } = entry;
  if (state.poles[contactor][pole] !== 'closed') return { state, events: [] };
  if (hasFault(state.data, 'weldedPole', contactor, pole)) return { state, events: [] };
  const phase = PHASES[pole]!;
  const parted: Transition = {
    state: setPole(state, contactor, pole, 'arcing'),
    events: [{ t, kind: 'poleParts', contactor, phase, text: `${contactor} pole ${phase} parts` }],
  };
  if (state.data.poles === 'ideal') {
    const cleared = clearPole(parted.state, t, contactor, pole, 'ideal pole');
    return { state: cleared.state, events: [...parted.events, ...cleared.events] };
  }
  const wait = state.data.minimumArcingTime;
  return {
    ...parted,
    state:
      wait > 0
        ? schedule(parted.state, { t: t + wait, kind: 'mayClear', contactor, pole })
        : setMayClear(parted.state, contactor, pole, true),
  };
}

function moveContact(state: StarterState, t: number, direction: Direction, closed: boolean): Transition {
  const moved = { ...state, contact: { ...state.contact, [direction]: closed } };
  const event: StarterEvent = {
    t,
    kind: closed ? 'switchCloses' : 'switchOpens',
    text: `zero-speed switch ${closed ? 'closes' : 'opens'} (${direction})`,
  };
  const plugging = state.plugging;
  if (!closed && plugging === null && state.opposing === direction) {
    // A start against the rotation has brought the machine to rest: from here it is a start like any other.
    const steps = startRotorSteps({ ...moved, opposing: null }, t);
    return { state: steps.state, events: [event, ...steps.events] };
  }
  if (closed || plugging === null || plugging.braking !== direction) return { state: moved, events: [event] };
  const early: StarterEvent = {
    t,
    kind: 'plugRefused',
    contactor: plugging.contactor,
    text: `the zero-speed switch has opened before the ${plugging.contactor} coil's turn`,
  };
  const released = releaseCoil(
    { ...moved, plugging: null, opposing: null },
    t,
    plugging.contactor,
    'zero-speed switch has opened',
  );
  const inTime = state.coil[plugging.contactor];
  return { state: released.state, events: [event, ...(inTime ? [] : [early]), ...released.events] };
}

function setPole(
  state: StarterState,
  contactor: ContactorName,
  pole: number,
  value: PoleState,
): StarterState {
  const poles = replaceAt(state.poles[contactor], pole, value) satisfies Poles;
  return { ...state, poles: { ...state.poles, [contactor]: poles } };
}

function setMayClear(
  state: StarterState,
  contactor: ContactorName,
  pole: number,
  value: boolean,
): StarterState {
  const mayClear = replaceAt(state.mayClear[contactor], pole, value);
  return { ...state, mayClear: { ...state.mayClear, [contactor]: mayClear } };
}

function replaceAt<T>(triple: readonly [T, T, T], at: number, value: T): readonly [T, T, T] {
  return [at === 0 ? value : triple[0], at === 1 ? value : triple[1], at === 2 ? value : triple[2]];
}
