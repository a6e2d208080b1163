import { isCommandWord, meaningOf } from './actionWords.ts';
import { buttonActions, type WrittenButton } from './buttonActions.ts';
import { withUnit } from './field.ts';
import { mostActions } from './limits.ts';
import type { RuleContext } from './rule.ts';

/** Actions in ascending order, each with something to act on, and an end after the last. */
export function actionRules(context: RuleContext): void {
  const { input, isStated, report } = context;
  const actions = input.actions ?? [];
  // Two hands may press two buttons at once.
  const together = isStated('starter', 'control');
  for (const [index, action] of actions.entries()) {
    const before = index === 0 ? undefined : actions[index - 1];
    if (action?.at === undefined || before?.at === undefined || action.at > before.at) continue;
    if (together && action.at === before.at) continue;
    const relation = action.at === before.at ? 'is the time of' : 'is earlier than';
    const expected = `a time ${together ? 'not before' : 'after'} ${before.at} s (actions ascend in time)`;
    report(['actions', index, 'at'], 'conflict', `${relation} the action before it`, expected);
  }
  durationRule(context);
  if (!together) plugRules(context);
  endRule(context);
}

/** Only a button that is let go by itself has a time. */
function durationRule({ input, isStated, report }: RuleContext): void {
  for (const [index, action] of (input.actions ?? []).entries()) {
    if (action?.do === undefined || !isStated('actions', index, 'for')) continue;
    if (!isCommandWord(action.do) && meaningOf(action.do).letsGo) continue;
    const message = `has no meaning with \`${action.do}\``;
    const expected = 'press forward, reverse, stop or reset, or this key left out';
    report(['actions', index, 'for'], 'conflict', message, expected);
  }
}

/** A plug needs something that runs and a word about what ends it. */
function plugRules({ input, isStated, report }: RuleContext): void {
  const actions = input.actions ?? [];
  let isConnected: boolean | undefined = isStated('initial') ? undefined : false;
  if (input.initial !== undefined) isConnected = input.initial !== 'rest';
  for (const [index, action] of actions.entries()) {
    if (action?.do === 'plug' && isConnected === false) {
      const message = 'has no start since the plug or coast before it, so nothing is known to run';
      const expected = 'a start before it, or `initial: running forward`';
      report(['actions', index, 'do'], 'conflict', message, expected);
    }
    // After a plug the reversing contactor drops out by itself; what follows must start anew.
    if (action?.do === undefined) isConnected = undefined;
    else isConnected = action.do === 'start forward' || action.do === 'start reverse';
  }

  const plugs = actions.findIndex((action) => action?.do === 'plug');
  if (plugs >= 0 && !isStated('starter', 'zeroSpeedSwitch')) {
    const message = 'plugs, and the starter does not say whether a zero-speed switch ends it';
    const expected =
      '`zeroSpeedSwitch` under starter: its speeds, or `off` (the motor then runs up again in reverse)';
    report(['actions', plugs, 'do'], 'conflict', message, expected);
  }
}

function endRule({ input, isStated, report }: RuleContext): void {
  const actions = input.actions ?? [];
  const pressed: WrittenButton[] = actions.flatMap((action, index) => {
    if (action?.at === undefined || action.do === undefined || isCommandWord(action.do)) return [];
    if (action.for === undefined && isStated('actions', index, 'for')) return [];
    return [{ at: action.at, do: action.do, for: action.for }];
  });
  const buttons = buttonActions(pressed.toSorted((a, b) => a.at - b.at));
  if (buttons.length > mostActions) {
    const message = `comes to ${buttons.length} presses and releases`;
    report(['actions'], 'outOfRange', message, `at most ${mostActions} together`);
  }
  const written = actions.at(-1)?.at;
  const endTime = input.solver?.endTime;
  if (typeof endTime !== 'number' || written === undefined) return;
  const last = Math.max(written, buttons.at(-1)?.at ?? 0);
  if (endTime > last) return;
  const letGo = last > written ? `, a button let go at ${withUnit(last, 's')}` : '';
  const message = `is not after the last action${letGo}`;
  report(['solver', 'endTime'], 'conflict', message, `\`auto\` or a time after ${withUnit(last, 's')}`);
}
