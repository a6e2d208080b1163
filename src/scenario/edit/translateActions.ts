import { COMMAND_OF_WORD, type CommandWord, isCommandWord } from '../actionWords.ts';
import { buttonActions, type WrittenButton } from '../buttonActions.ts';
import { brakes } from '../controlWords.ts';
import type { ButtonAction, InitialState, SchemeName } from '../scenario.ts';
import type { ScenarioInput } from '../scenarioInput.ts';

/** An action as it will be written. */
export interface WrittenAction {
  /** s */
  readonly at: number;
  readonly do: string;
}

type Direction = 'forward' | 'reverse' | null;

/**
 * What hands do to a control circuit, as commands to coils that have none. A hand that did nothing there is left out.
 *
 * @param actions in SI
 * @param scheme that answered the buttons
 */
export function commandsOf(
  actions: ScenarioInput['actions'],
  scheme: SchemeName,
  initial: InitialState,
): WrittenAction[] {
  const pressed = actions.flatMap(({ at, do: word, for: time }): WrittenButton[] =>
    isCommandWord(word) ? [] : [{ at, do: word, for: time }],
  );
  let turns = directionOf(initial);
  const commands: { at: number; do: CommandWord }[] = [];
  for (const action of buttonActions(pressed)) {
    const word = commandOf(action, scheme, turns);
    if (word === null) continue;
    // Two hands at one instant: the later one counts.
    if (commands.at(-1)?.at === action.at) commands.pop();
    commands.push({ at: action.at, do: word });
    turns = word === 'start forward' ? 'forward' : word === 'start reverse' ? 'reverse' : null;
  }
  return commands;
}

function commandOf(action: ButtonAction, scheme: SchemeName, turns: Direction): CommandWord | null {
  const { button } = action;
  if (action.do === 'release') return scheme === 'jog' && button === turns ? 'plug' : null;
  if (button === 'forward' || button === 'reverse') return button === turns ? null : `start ${button}`;
  if (turns === null) return null;
  if (button === 'stop') return brakes(scheme) && scheme !== 'jog' ? 'plug' : 'coast';
  return button === 'emergencyStop' || button === 'overloadTest' ? 'coast' : null;
}

/**
 * Commands as hands on the buttons of a control circuit that does the like. A command for which it has no button is left out.
 *
 * @param actions in SI
 * @param scheme that will answer the buttons
 */
export function buttonsOf(
  actions: ScenarioInput['actions'],
  scheme: SchemeName,
  initial: InitialState,
): WrittenAction[] {
  let turns = directionOf(initial);
  return actions.flatMap(({ at, do: word }): WrittenAction[] => {
    if (!isCommandWord(word)) return [];
    const command = COMMAND_OF_WORD[word];
    const before = turns;
    turns = command === 'startForward' ? 'forward' : command === 'startReverse' ? 'reverse' : null;
    if (scheme === 'jog') return inching(at, before, turns);
    if (turns !== null) return has(scheme, turns) ? [{ at, do: `press ${turns}` }] : [];
    const reverses = command === 'plug' && (scheme === 'direct' || scheme === 'antiPlugging');
    if (reverses && before !== null)
      return [{ at, do: before === 'forward' ? 'press reverse' : 'press forward' }];
    return [{ at, do: 'press stop' }];
  });
}

/** A button is held as long as the machine is to run. */
function inching(at: number, before: Direction, turns: Direction): WrittenAction[] {
  if (before === turns) return [];
  const letGo = before === null ? [] : [{ at, do: `release ${before}` }];
  return turns === null ? letGo : [...letGo, { at, do: `hold ${turns}` }];
}

/** Plug to stop runs in one direction. */
function has(scheme: SchemeName, button: 'forward' | 'reverse'): boolean {
  return button === 'forward' || scheme !== 'plugStop';
}

function directionOf(initial: InitialState): Direction {
  if (initial === 'rest') return null;
  return initial === 'runningForward' ? 'forward' : 'reverse';
}
