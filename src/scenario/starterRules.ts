import { contactorTimes } from './contactorTimes.ts';
import { knownPoles } from './ratedBase.ts';
import type { RuleContext } from './rule.ts';
import { inRpm, synchronousSpeed } from './synchronousSpeed.ts';

/** Times that fit each other, and a switch that can work. */
export function starterRules(context: RuleContext): void {
  const { input, isStated, report } = context;
  const starter = input.starter;
  const here = (key: string) => isStated('starter', key);

  if (!here('control')) changeoverRules(context);
  if (starter?.poles === 'ideal' && (starter.minimumArcingTime ?? 0) > 0) {
    const message = 'has no meaning with ideal poles, which do not arc';
    report(['starter', 'minimumArcingTime'], 'conflict', message, '`poles: arcing`, or this key left out');
  }
  switchRules(context);
}

/** One statement of the change-over, of a length the contactors reach. */
function changeoverRules(context: RuleContext): void {
  const { input, isStated, report } = context;
  const starter = input.starter;
  const here = (key: string) => isStated('starter', key);
  if (here('deadTime') && here('changeoverDelay')) {
    const message = 'stands beside changeoverDelay; each fixes the other';
    report(['starter', 'deadTime'], 'conflict', message, 'deadTime or changeoverDelay, never both');
  } else if (starter?.deadTime !== undefined && timesAreValid(context)) {
    const times = contactorTimes(starter);
    if (times.changeoverDelay < 0) {
      const least = Number(((times.closingTime - times.openingTime) * 1000).toPrecision(6));
      const message = 'is shorter than the contactors can make it (closing time less opening time)';
      report(['starter', 'deadTime'], 'conflict', message, `at least ${least} ms, or a shorter closingTime`);
    }
  }
}

/** Contacts that can close: pick-up speeds below synchronous speed. */
function switchRules(context: RuleContext): void {
  const { supply, starter } = context.input;
  const theSwitch = starter?.zeroSpeedSwitch;
  const poles = knownPoles(context);
  if (typeof theSwitch !== 'object' || supply?.frequency === undefined || poles === undefined) return;
  const synchronous = synchronousSpeed(supply.frequency, poles);
  const pickUps = [
    { path: ['pickUpSpeed'], speed: theSwitch.pickUpSpeed },
    { path: ['reverse', 'pickUpSpeed'], speed: theSwitch.reverse?.pickUpSpeed },
  ];
  for (const { path, speed } of pickUps) {
    if (speed === undefined || speed < synchronous) continue;
    const message = `is not below the synchronous speed of ${inRpm(synchronous)}: the contact would never close`;
    context.report(['starter', 'zeroSpeedSwitch', ...path], 'conflict', message, 'a lower pick-up speed');
  }
}

/** A time that is stated but wrong has been reported already; nothing is concluded from it. */
function timesAreValid({ input, isStated }: RuleContext): boolean {
  const { closingTime, openingTime, poles } = input.starter ?? {};
  const known: readonly (readonly [string, unknown])[] = [
    ['closingTime', closingTime],
    ['openingTime', openingTime],
    ['poles', poles],
  ];
  return known.every(([key, value]) => value !== undefined || !isStated('starter', key));
}
