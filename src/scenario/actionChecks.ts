import { brakes } from './controlWords.ts';
import { type Action, type ActionKind, type ButtonName, isCommand } from './scenario.ts';
import type { ControlView, Impossibility, StarterView } from './starterView.ts';

/** What is done at some instant. */
export type Deed =
  | { readonly do: ActionKind }
  | { readonly do: 'press' | 'release'; readonly button: ButtonName };

/** What fits the actions of a circuit's opposite: a command's button, a button's command. */
const COMMAND_FOR: Readonly<Partial<Record<ButtonName, string>>> = {
  forward: '`start forward`',
  reverse: '`start reverse`',
  stop: '`coast` or `plug`',
  emergencyStop: '`coast`',
};

/**
 * Commands where buttons decide, buttons where there are none.
 *
 * @param view the starter
 * @param deeds in order; undefined where one is not known
 */
export function actionImpossibilities(
  view: StarterView,
  deeds: readonly (Deed | undefined)[],
): readonly Impossibility[] {
  return deeds.flatMap((deed, index): Impossibility[] => {
    const words = deed && wrongWith(view.control, deed);
    return words ? [{ path: ['actions', index, 'do'], ...words }] : [];
  });
}

type Words = Omit<Impossibility, 'path'>;

function wrongWith(control: ControlView | null, deed: Deed): Words | undefined {
  if (!('button' in deed)) {
    if (control === null) return undefined;
    const message = 'is a command to the coils, and with a control circuit only its buttons are pressed';
    return { message, expected: buttonFor(deed.do, control) };
  }
  if (control !== null) return missingButton(control, deed.button);
  const command = COMMAND_FOR[deed.button];
  return {
    message: 'needs a control circuit, which is not stated',
    expected: `\`control\` under starter${command === undefined ? '' : `, or the command ${command}`}`,
  };
}

function buttonFor(command: ActionKind, { scheme }: ControlView): string {
  if (command === 'startForward') return '`press forward`';
  if (command === 'startReverse') return '`press reverse`';
  if (command === 'coast') return '`press stop` or `press emergency stop`';
  if (command === 'brake' || command === 'injectDc')
    return 'no `control`: brake and direct current are commanded without one';
  if (scheme === 'jog') return '`release forward` or `release reverse`';
  if (scheme !== undefined && brakes(scheme)) return '`press stop`';
  return '`press reverse` (or `press forward`), and a scheme that then reverses';
}

function missingButton(control: ControlView, button: ButtonName): Words | undefined {
  if (button === 'reverse' && control.scheme === 'plugStop')
    return {
      message: 'acts on a button that is not there: plug to stop runs in one direction',
      expected: 'the forward button, or the scheme `plug to stop both directions`',
    };
  if (button === 'reset' && control.readyRelay === false)
    return {
      message: 'acts on a button that is not there: only the ready relay has a reset button',
      expected: '`readyRelay: yes` under control, or `reset overload` for the overload relay',
    };
  if ((button === 'overloadTest' || button === 'overloadReset') && control.hasOverload === false)
    return {
      message: 'acts on an overload relay that is not there',
      expected: '`overload` under control with its setting and class',
    };
  return undefined;
}

/** The deed of an action. */
export function deedOf(action: Action): Deed {
  return isCommand(action) ? { do: action.do } : { do: action.do, button: action.button };
}
