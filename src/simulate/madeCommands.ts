import type { Command } from '../scenario/scenario.ts';
import type { RunEvent } from './trajectory.ts';

/**
 * What the contactors were made to do by a control circuit, in the words of commands: each with the time of the event from outside
 * that led to it. A coil that drops because the zero-speed switch opened ends a plug, one that a dip of its voltage drops or lets in
 * again goes on with what it was doing, and one that is released before its contactor is in has done nothing: none is a command.
 */
export function madeCommands(events: readonly RunEvent[]): readonly Command[] {
  const commands: Command[] = [];
  const inVain = vainCoilEvents(events);
  for (const event of events) {
    const made = inVain.has(event) ? null : (freed(event, events) ?? commandOf(event, events, commands));
    if (made === null) continue;
    const at = commands.findIndex((command) => command.at === made.at);
    if (at < 0) commands.push(made);
    else if (made.do !== 'coast') commands[at] = made;
  }
  return commands.toSorted((a, b) => a.at - b.at);
}

/**
 * True where a coil that feels the voltage drops or picks up because the whole supply is lost or back, and not because of a dip: the
 * first change of that coil since.
 */
export function comesWithSupply(event: RunEvent, events: readonly RunEvent[]): boolean {
  const supply = events.findLast(
    ({ kind, t }) => t <= event.t && (kind === 'supplyLost' || kind === 'supplyReturns'),
  );
  const expected = event.kind === 'coilReleased' ? 'supplyLost' : 'supplyReturns';
  if (supply?.kind !== expected) return false;
  return !events.some(
    ({ kind, contactor, t }) =>
      kind === event.kind && contactor === event.contactor && t > supply.t && t < event.t,
  );
}

/** Energising and release of coils whose contactor was not in meanwhile. */
export function vainCoilEvents(events: readonly RunEvent[]): ReadonlySet<RunEvent> {
  const vain = new Set<RunEvent>();
  for (const contactor of ['forward', 'reverse'] as const) {
    const own = events.filter((event) => event.contactor === contactor && MOVES.includes(event.kind));
    let isIn = own[0]?.kind === 'relayDropsOut' || own[0]?.kind === 'coilReleased';
    for (const [i, event] of own.entries()) {
      if (event.kind === 'relayPicksUp') isIn = true;
      if (event.kind === 'relayDropsOut') isIn = false;
      const next = own[i + 1];
      if (event.kind !== 'coilEnergised' || isIn || next?.kind !== 'coilReleased') continue;
      vain.add(event);
      vain.add(next);
    }
  }
  return vain;
}

const MOVES: readonly RunEvent['kind'][] = ['coilEnergised', 'coilReleased', 'relayPicksUp', 'relayDropsOut'];

/** A contactor that the mechanical interlock has held back obeys when the other one lets it: from that one's release on. */
function freed(event: RunEvent, events: readonly RunEvent[]): Command | null {
  const { kind, contactor, t } = event;
  if (kind !== 'relayPicksUp' || contactor === undefined) return null;
  const asked = events.findLast(
    (own) => own.kind === 'coilEnergised' && own.contactor === contactor && own.t <= t,
  );
  if (asked === undefined || !isHeldBack(asked, events)) return null;
  const other = events.findLast(
    (own) => own.kind === 'coilReleased' && own.contactor !== contactor && own.t <= t,
  );
  if (other?.rootTime === undefined) return null;
  return { at: other.rootTime, do: wordOf(asked) };
}

function isHeldBack(asked: RunEvent, events: readonly RunEvent[]): boolean {
  return events.some(
    ({ kind, contactor, t }) => kind === 'interlockBlocks' && contactor === asked.contactor && t === asked.t,
  );
}

function wordOf({ contactor, purpose }: RunEvent): Command['do'] {
  if (purpose === 'brake') return 'plug';
  return contactor === 'forward' ? 'startForward' : 'startReverse';
}

function commandOf(event: RunEvent, events: readonly RunEvent[], before: readonly Command[]): Command | null {
  const { kind, contactor, rootTime, rootKind } = event;
  if (contactor === undefined || rootTime === undefined) return null;
  if (rootKind === 'voltage' && !comesWithSupply(event, events)) return null;
  if (kind === 'coilEnergised' || kind === 'purposeChanges')
    return isHeldBack(event, events) ? null : { at: rootTime, do: wordOf(event) };
  if (kind !== 'coilReleased' || event.endsPlug === true) return null;
  return before.at(-1)?.do === 'coast' ? null : { at: rootTime, do: 'coast' };
}
