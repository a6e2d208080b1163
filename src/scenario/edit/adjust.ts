import { contactorTimes } from '../contactorTimes.ts';
import { brakes, SCHEME_OF_WORD } from '../controlWords.ts';
import { synchronousSpeed } from '../synchronousSpeed.ts';
import { adjustLoadTorque } from './adjustLoadTorque.ts';
import { adjustSource } from './adjustSource.ts';
import type { Draft } from './draft.ts';
import type { AdjustableKey } from './edit.ts';
import { poleCount } from './poleCount.ts';
import { isSame, writeRounded } from './writeRounded.ts';

/** Pick-up over drop-out speed of a switch that a hand puts in. Common practice, no source. */
const PICK_UP_OVER_DROP_OUT = 2;

/** Turns; far above the rounding of angles, far below a degree. */
const SAME_TURN = 1e-9;

/** Share of the way from drop-out to synchronous speed at which a pick-up speed comes to lie that would be above it. */
const PICK_UP_BELOW_SYNCHRONOUS = 0.5;

/**
 * Turns an adjustable quantity of a scenario.
 *
 * @param value SI; null takes the element out
 * @returns why that cannot be, or null where it was done
 */
export function adjust(draft: Draft, key: AdjustableKey, value: number | null): string | null {
  switch (key) {
    case 'loadInertia':
      return given(value, (inertia) => {
        const before = draft.at('load', 'inertia');
        draft.set(['load', 'inertia'], writeRounded(inertia, 'inertia', before, 'kg m^2'));
      });
    case 'loadTorque':
      return value === null ? ALWAYS_THERE : adjustLoadTorque(draft, value);
    case 'deadTime':
      return given(value, (time) => adjustDeadTime(draft, time));
    case 'closingAngle':
      return given(value, (angle) => {
        const turns = ((draft.input.supply.angle ?? 0) - angle) / (2 * Math.PI);
        // The same angle, a turn or two away.
        if (Math.abs(turns - Math.round(turns)) < SAME_TURN) return;
        const before = draft.at('supply', 'angle');
        draft.set(['supply', 'angle'], writeRounded(angle, 'angle', before, 'deg'));
      });
    case 'lineResistance':
      return adjustLineResistance(draft, value);
    case 'dropOutSpeed':
      return value === null ? removeSwitch(draft) : adjustDropOut(draft, value);
    case 'sourcePower':
      return adjustSource(draft, value);
    default:
      return key satisfies never;
  }
}

const ALWAYS_THERE = 'it cannot be taken out';

function given(value: number | null, set: (value: number) => void): string | null {
  if (value === null) return ALWAYS_THERE;
  set(value);
  return null;
}

/** With a control circuit its timer stands for the dead time, which is then what comes out. */
function adjustDeadTime(draft: Draft, time: number): void {
  const { starter } = draft.input;
  if (starter?.control !== undefined) {
    if (time === (starter.control.changeoverTimer ?? 0)) return;
    const path = ['starter', 'control', 'changeoverTimer'];
    draft.set(path, writeRounded(time, 'time', draft.at(...path), 'ms'));
    return;
  }
  const times = contactorTimes(starter ?? {});
  if (isSame(time, times.changeoverDelay + times.closingTime - times.openingTime)) return;
  const statesNone = starter?.closingTime === undefined && starter?.openingTime === undefined;
  if (statesNone && (times.closingTime > 0 || times.openingTime > 0)) {
    // Beside a dead time alone the operating times would count as zero.
    draft.set(['starter', 'closingTime'], writeRounded(times.closingTime, 'time', undefined, 'ms'));
    draft.set(['starter', 'openingTime'], writeRounded(times.openingTime, 'time', undefined, 'ms'));
  }
  const least = times.closingTime - times.openingTime;
  const before = draft.at('starter', 'deadTime') ?? draft.at('starter', 'changeoverDelay');
  if (draft.at('starter', 'deadTime') === undefined) draft.rename(['starter', 'changeoverDelay'], 'deadTime');
  const rounded = writeRounded(time, 'time', before, 'ms');
  draft.set(['starter', 'deadTime'], rounded);
  // The shortest dead time may have more digits than a hand means.
  if (time >= least && contactorTimes({ ...times, deadTime: round4(time) }).changeoverDelay < 0)
    draft.set(['starter', 'deadTime'], `${least * 1e3} ms`);
}

function round4(value: number): number {
  return Number(value.toPrecision(4));
}

function adjustLineResistance(draft: Draft, value: number | null): string | null {
  if (value === null) {
    draft.remove('starter', 'lineResistors');
    return null;
  }
  const path = ['starter', 'lineResistors', 'resistance'];
  draft.set(path, writeRounded(value, 'resistance', draft.at(...path), 'ohm'));
  return null;
}

function adjustDropOut(draft: Draft, value: number): string | null {
  const found = draft.input.starter?.zeroSpeedSwitch ?? 'off';
  const ratio = found === 'off' ? PICK_UP_OVER_DROP_OUT : found.pickUpSpeed / found.dropOutSpeed;
  const poles = poleCount(draft.input);
  const highest =
    poles === null ? Number.POSITIVE_INFINITY : synchronousSpeed(draft.input.supply.frequency, poles);
  if (value >= highest) return 'it is not below the synchronous speed, so the contact would never close';
  const wanted = value * ratio;
  const pickUp = wanted < highest ? wanted : value + PICK_UP_BELOW_SYNCHRONOUS * (highest - value);
  if (found === 'off') {
    draft.set(['starter', 'zeroSpeedSwitch'], {
      dropOutSpeed: writeRounded(value, 'speed', undefined, 'rpm'),
      pickUpSpeed: writeRounded(pickUp, 'speed', undefined, 'rpm'),
    });
    return null;
  }
  const path = ['starter', 'zeroSpeedSwitch'];
  const write = (key: string, speed: number) =>
    draft.set([...path, key], writeRounded(speed, 'speed', draft.at(...path, key), 'rpm'));
  write('dropOutSpeed', value);
  if (value >= found.pickUpSpeed) write('pickUpSpeed', pickUp);
  return null;
}

function removeSwitch(draft: Draft): string | null {
  const { control, faults } = draft.input.starter ?? {};
  const scheme = control && SCHEME_OF_WORD[control.scheme];
  if (scheme !== undefined && (brakes(scheme) || scheme === 'antiPlugging'))
    return `the scheme \`${control?.scheme}\` needs its zero-speed switch`;
  if (faults?.some(({ kind }) => kind === 'zero-speed switch') === true)
    return 'a fault of the zero-speed switch is chosen';
  draft.set(['starter', 'zeroSpeedSwitch'], 'off');
  return null;
}
