import type { PropertyId } from '../../../../src/starter/interlocks/property.ts';

/**
 * What each scheme is expected to do, written from its description in words and from common practice (no source) before the
 * check existed; what the check has taught since says so. The reasons speak of the circuit, not of the program.
 *
 * depends on speed: holds while the speed takes longer from drop-out to pick-up than the devices take to settle, and fails on a
 * machine that is faster.
 */
export type Expected = 'holds' | 'broken' | 'does not apply' | 'depends on speed';

/** What is expected of a starter, each with its reason. */
export type Row = Readonly<Record<PropertyId, readonly [Expected, string]>>;

const contactInterlock = [
  'holds',
  "each contactor's break contact opens the other's coil circuit once it is in",
] as const;
const mechanical = [
  'holds',
  'the mechanical interlock keeps one armature out while the other is in',
] as const;
const categoryZero = ['holds', 'its break contact stands in the feed of both coils'] as const;
const overload = ['holds', 'its break contact stands in the feed of both coils'] as const;
const stopOpens = [
  'holds',
  'the stop contact stands in series with everything that starts or holds in',
] as const;
const sealIsGone = ['holds', 'the hold-in contact has opened: only a button closes a coil again'] as const;
const noSwitch = ['holds', 'no coil circuit closes through a contact that the speed moves'] as const;
const heldStarts = [
  'broken',
  'the held button closes its coil as soon as the feed is back: nothing asks for a fresh press',
] as const;
const readyAsks = [
  'holds',
  'the ready relay has dropped with the feed, and reset does not set it while a start button is pressed',
] as const;
const bothOpen = ['holds', "each button's break contact opens the other's circuit: both are open"] as const;
const oneWins = ['does not apply', 'one of the two wins; there is no push-button interlock'] as const;
const oneButton = ['does not apply', 'there is only one start button'] as const;
const noBrake = ['does not apply', 'no contactor brakes'] as const;
const noBlock = ['does not apply', 'plugging is not blocked'] as const;
const noTimer = ['does not apply', 'there is no change-over timer'] as const;
export const timed = {
  changeoverTime: [
    'holds',
    "each timer runs from the other contactor's drop-out and stands in its own coil circuit",
  ],
} as const satisfies Partial<Row>;

export const throughStop: Row = {
  neverBothCommanded: contactInterlock,
  neverBothCommandedBriefly: [
    'broken',
    'both start buttons at the same instant energise both coils until the first break contact opens',
  ],
  neverBothClosed: mechanical,
  emergencyStop: categoryZero,
  overloadDropsBoth: overload,
  stopEndsRunning: stopOpens,
  noStartAfterReset: sealIsGone,
  noStartAfterPowerReturns: sealIsGone,
  noStartByTurning: noSwitch,
  heldButton: heldStarts,
  bothButtonsStartNothing: oneWins,
  brakeEndsWithSwitch: noBrake,
  antiPlugging: noBlock,
  changeoverTime: noTimer,
};

export const direct: Row = {
  ...throughStop,
  neverBothCommandedBriefly: [
    'holds',
    "both buttons open each other's coil; otherwise one coil waits for the other's armature",
  ],
  bothButtonsStartNothing: bothOpen,
};

export const antiPlugging: Row = {
  ...direct,
  noStartByTurning: ['holds', 'the zero-speed switch only opens coil circuits here'],
  antiPlugging: ['holds', "the switch's break contact stands in the coil circuit of the opposite direction"],
};

/** A braking branch closes through the zero-speed switch and the other contactor's break contact, and through nothing else. */
const plainBrake = {
  neverBothCommandedBriefly: [
    'broken',
    'a start command and the braking branch of a turning machine can close while both armatures are still out',
  ],
  noStartAfterReset: [
    'broken',
    'the machine still turns: the braking branch is closed as soon as the feed is back',
  ],
  noStartAfterPowerReturns: [
    'broken',
    'the machine coasts: the braking branch is closed as soon as the supply is back',
  ],
  noStartByTurning: [
    'broken',
    'the switch cannot tell a hand from a motor: turned above pick-up, the braking contactor closes',
  ],
  brakeEndsWithSwitch: ['holds', 'the switch stands in series with the braking branch'],
} as const satisfies Partial<Row>;

export const plugStop: Row = {
  ...throughStop,
  ...plainBrake,
  bothButtonsStartNothing: oneButton,
};

export const bothWaysPlain: Row = { ...direct, ...plainBrake };

const memoryDropped = [
  'holds',
  'the memory relay has dropped with the feed and needs a contactor to be in before it picks up again',
] as const;

export const withMemory = {
  neverBothCommandedBriefly: [
    'depends on speed',
    'the braking branch is closed only once its contactor has driven the machine; a shaft that is thrown back to pick-up before the ' +
      'memory relay has dropped closes it beside a held start button',
  ],
  noStartAfterReset: memoryDropped,
  noStartAfterPowerReturns: memoryDropped,
  noStartByTurning: ['holds', 'the memory relay needs a contactor to have been in: a hand does not set it'],
  brakeEndsWithSwitch: [
    'depends on speed',
    'switch and memory relay have dropped at the end of braking; a machine that reaches a pick-up speed before the braking ' +
      'contactor and the memory relay have dropped is braked once more',
  ],
} as const satisfies Partial<Row>;

export const withLockout = {
  noStartByTurning: [
    'depends on speed',
    'no contactor is in: the solenoid keeps the switch from being actuated, unless (found by the check) the shaft reaches pick-up before it has fallen back',
  ],
} as const satisfies Partial<Row>;

export const withReady = { heldButton: readyAsks } as const satisfies Partial<Row>;

export const limited = [
  'holds',
  'its contact ends running, the braking branches stay, and the late contact of the time limit opens the feed',
] as const;
export const endsRunning = ['holds', 'its contact ends running, and nothing brakes'] as const;

export const categoryOne = { emergencyStop: { category: 1, limit: 3 } } as const;
