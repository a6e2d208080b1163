/**
 * What a state remembers of the past, in the bits from `memoryShift` on.
 *
 * Since when a contactor coil must not become energised by itself, in three bits:
 */
export const SINCE = {
  /** A start button has been pressed, or something has cut the coils off: nothing is forbidden. */
  nothing: 0,
  /** An emergency stop released or a relay reset after the feed was dead, no start button pressed. */
  reset: 1,
  /** The same while the feed was still alive: braking may go on, nothing may start. */
  earlyReset: 2,
  /** The supply has returned, no start button pressed. */
  supply: 3,
  /** As reset or supply, with a start button held. */
  held: 4,
  /** Everything has come to rest, nobody at the buttons. */
  rest: 5,
} as const;

/** The three bits of `SINCE`. */
export const SINCE_BITS = 7;
/** The shaft has been turned from rest by hand or load; what the switch shows, or will show, comes from that. */
export const TURNED = 8;
/** While devices were moving the speed has already crossed one of the switch's thresholds. */
export const CROSSED = 16;
/** Braking has begun since the machine was last driven, or it has not been driven yet. */
export const BRAKED = 32;
