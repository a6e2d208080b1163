import { contactorTimes } from './contactorTimes.ts';
import { knownPoles } from './ratedBase.ts';
import type { RuleContext } from './rule.ts';
import { inRpm, synchronousSpeed } from './synchronousSpeed.ts';

/** Times that fit each other, and a switch that can work. */
export function starterRules(context: RuleContext): void {
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
  if (starter?.poles === 'ideal' && (starter.minimumArcingTime ?? 0) > 0) {
    const message = 'has no meaning with ideal poles, which do not arc';
    report(['starter', 'minimumArcingTime'], 'conflict', message, '`poles: arcing`, or this key left out');
  }
  const { supply } = input;
  const poles = knownPoles(context);
  const zeroSpeedSwitch = starter?.zeroSpeedSwitch;
  if (typeof zeroSpeedSwitch !== 'object' || zeroSpeedSwitch.pickUpSpeed === undefined) return;
  if (supply?.frequency === undefined || poles === undefined) return;
  const synchronous = synchronousSpeed(supply.frequency, poles);
  if (zeroSpeedSwitch.pickUpSpeed >= synchronous) {
    const message = `is not below the synchronous speed of ${inRpm(synchronous)}: the contact would never close`;
    report(['starter', 'zeroSpeedSwitch', 'pickUpSpeed'], 'conflict', message, 'a lower pick-up speed');
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
