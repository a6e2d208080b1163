import type { RuleContext } from './rule.ts';

/** Commands in ascending order, each with something to act on, and an end after the last. */
export function actionRules({ input, isStated, report }: RuleContext): void {
  const actions = input.actions ?? [];
  for (const [index, action] of actions.entries()) {
    const before = index === 0 ? undefined : actions[index - 1];
    if (action?.at === undefined || before?.at === undefined || action.at > before.at) continue;
    const relation = action.at === before.at ? 'is the time of' : 'is earlier than';
    const message = `${relation} the action before it`;
    report(
      ['actions', index, 'at'],
      'conflict',
      message,
      `a time after ${before.at} s (actions ascend in time)`,
    );
  }

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

  const last = actions.at(-1)?.at;
  const endTime = input.solver?.endTime;
  if (typeof endTime === 'number' && last !== undefined && endTime <= last) {
    const message = 'is not after the last action';
    report(['solver', 'endTime'], 'conflict', message, `\`auto\` or a time after ${last} s`);
  }
}
