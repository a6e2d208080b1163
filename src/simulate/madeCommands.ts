import type { Command } from '../scenario/scenario.ts';
import type { RunEvent } from './trajectory.ts';

/**
 * What the contactors were made to do by a control circuit, in the words of commands: each with the time of the event from outside
 * that led to it. A coil that drops because the zero-speed switch opened ends a plug and is no command.
 */
export function madeCommands(events: readonly RunEvent[]): readonly Command[] {
  const commands: Command[] = [];
  for (const event of events) {
    const made = commandOf(event, commands);
    if (made === null) continue;
    const at = commands.findIndex((command) => command.at === made.at);
    if (at < 0) commands.push(made);
    else if (made.do !== 'coast') commands[at] = made;
  }
  return commands.toSorted((a, b) => a.at - b.at);
}

function commandOf(event: RunEvent, before: readonly Command[]): Command | null {
  const { kind, contactor, purpose, rootTime } = event;
  if (contactor === undefined || rootTime === undefined) return null;
  if (kind === 'coilEnergised' || kind === 'purposeChanges') {
    const start = contactor === 'forward' ? 'startForward' : 'startReverse';
    return { at: rootTime, do: purpose === 'brake' ? 'plug' : start };
  }
  if (kind !== 'coilReleased' || event.endsPlug === true) return null;
  return before.at(-1)?.do === 'coast' ? null : { at: rootTime, do: 'coast' };
}
