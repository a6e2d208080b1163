import { COMMAND_OF_WORD, isCommandWord } from './actionWords.ts';
import { buttonActions, type WrittenButton } from './buttonActions.ts';
import type { Action, Command } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/** Commands as they are, or every press and release that the buttons come to; the rules admit only one of the two. */
export function resolveActions(input: ScenarioInput['actions']): Action[] {
  const commands: Command[] = [];
  const buttons: WrittenButton[] = [];
  for (const { at, do: what, for: duration } of input) {
    if (isCommandWord(what)) commands.push({ at, do: COMMAND_OF_WORD[what] });
    else buttons.push({ at, do: what, for: duration });
  }
  return [...commands, ...buttonActions(buttons)];
}
