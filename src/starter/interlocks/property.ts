import type { ControlData, SchemeName } from '../../scenario/scenario.ts';

/** What the exhaustive check asks of a control circuit. */
export type PropertyId =
  | 'neverBothCommanded'
  | 'neverBothCommandedBriefly'
  | 'neverBothClosed'
  | 'emergencyStop'
  | 'overloadDropsBoth'
  | 'stopEndsRunning'
  | 'noStartAfterReset'
  | 'noStartAfterPowerReturns'
  | 'noStartByTurning'
  | 'heldButton'
  | 'bothButtonsStartNothing'
  | 'brakeEndsWithSwitch'
  | 'antiPlugging'
  | 'changeoverTime';

/** A property in words. */
export interface Property {
  readonly id: PropertyId;
  /** One sentence, without its full stop. */
  readonly title: string;
  /** What exactly is judged, and when. */
  readonly description: string;
}

/** Every property, in the order of the tables. */
export const PROPERTIES: readonly Property[] = [
  {
    id: 'neverBothCommanded',
    title: 'The two contactors are never commanded together once armatures rest',
    description:
      'Once every armature, relay and switch contact has come to rest, at most one contactor coil is energised.',
  },
  {
    id: 'neverBothCommandedBriefly',
    title: 'The two contactors are not commanded together even for the travel of an armature',
    description: 'At most one contactor coil is energised, at rest or while a device is still moving.',
  },
  {
    id: 'neverBothClosed',
    title: 'The two contactors are never closed together',
    description: 'The armatures are never both in, not even briefly: both in is a short circuit.',
  },
  {
    id: 'emergencyStop',
    title: 'The emergency stop acts as its category says',
    description:
      'Category 0: while it is pressed both coils are dead at once, and the contactors out. Category 1: while it is pressed ' +
      'nothing drives the machine, a contactor brakes only while the zero-speed switch shows rotation, the time limit runs, and ' +
      'when it has run out both coils are dead.',
  },
  {
    id: 'overloadDropsBoth',
    title: 'A tripped overload relay drops both contactors',
    description: 'While it is tripped both coils are dead at once, and the contactors out.',
  },
  {
    id: 'stopEndsRunning',
    title: 'Stop ends running',
    description: 'While the stop button is pressed nothing drives the machine; a contactor may brake it.',
  },
  {
    id: 'noStartAfterReset',
    title: 'After an emergency stop or a trip nothing starts by itself',
    description:
      'Once the emergency stop is released or the overload relay reset, with no start button pressed, no contactor coil becomes ' +
      'energised before a start button is pressed. Shaft at rest or coasting.',
  },
  {
    id: 'noStartAfterPowerReturns',
    title: 'When the supply returns nothing starts by itself',
    description:
      'Once the supply is back, with no start button pressed, no contactor coil becomes energised before a start button is pressed, and ' +
      'no contactor is found closed. Shaft at rest or coasting.',
  },
  {
    id: 'noStartByTurning',
    title: 'Turning the shaft starts nothing',
    description:
      'A shaft turned from rest by hand or by an overhauling load energises no contactor coil while nobody presses a start button, nor ' +
      'when the supply returns or a trip is reset while it turns.',
  },
  {
    id: 'heldButton',
    title: 'A start button held down does not start the machine by itself',
    description:
      'A start button held while the supply returns, the emergency stop is released or the overload relay is reset energises no ' +
      'contactor coil before it is pressed again.',
  },
  {
    id: 'bothButtonsStartNothing',
    title: 'Both start buttons together drive nothing',
    description: 'While both start buttons are pressed no contactor coil is commanded.',
  },
  {
    id: 'brakeEndsWithSwitch',
    title: 'Braking ends with the zero-speed switch',
    description:
      'Once the speed is below drop-out, or turned round, and every device at rest, no contactor brakes. With memory relays, ' +
      'braking does not begin a second time before the machine has been driven again.',
  },
  {
    id: 'antiPlugging',
    title: 'A direction stays blocked while the machine turns the other way',
    description:
      'No contactor coil becomes energised while the zero-speed switch shows, or should show, rotation against it.',
  },
  {
    id: 'changeoverTime',
    title: 'The change-over time is kept',
    description:
      'No contactor coil becomes energised before the other contactor has been out for the change-over time, and a contactor that is in resets the timer of the other.',
  },
];

/** Schemes in which a contactor brakes until the zero-speed switch opens. */
const BRAKING: readonly SchemeName[] = ['plugStop', 'plugStopBoth', 'jog'];
/** Schemes in which each start button's break contact stands in the other direction's circuit. */
const BUTTON_INTERLOCK: readonly SchemeName[] = ['direct', 'plugStopBoth', 'antiPlugging', 'jog'];

/** Why a property says nothing about a starter; null where it applies. */
export function whyNotApplicable(property: PropertyId, control: ControlData): string | null {
  switch (property) {
    case 'overloadDropsBoth':
      return control.overload === null ? 'there is no overload relay' : null;
    case 'bothButtonsStartNothing':
      if (BUTTON_INTERLOCK.includes(control.scheme)) return null;
      return control.scheme === 'plugStop'
        ? 'there is one start button'
        : 'there is no push-button interlock';
    case 'brakeEndsWithSwitch':
      return BRAKING.includes(control.scheme) ? null : 'no contactor brakes';
    case 'antiPlugging':
      return control.scheme === 'antiPlugging' ? null : 'plugging is not blocked';
    case 'changeoverTime':
      return control.changeoverTimer > 0 ? null : 'there is no change-over timer';
    default:
      return null;
  }
}
