import { iecPole } from './iecContact.ts';
import { iecFuse, iecHeater } from './iecDevice.ts';
import type { SymbolSet } from './symbolSet.ts';
import { HALF } from './threePole.ts';
import { usDisconnect, usPole } from './usContact.ts';
import { usFuse, usHeater } from './usDevice.ts';

/** Symbols of the power circuit, one pole each, in a conductor that runs downwards. */
export interface PowerArt {
  readonly disconnector: string;
  readonly fuse: string;
  readonly pole: string;
  readonly heater: string;
}

/** Symbols of a set. */
export const POWER_ART: Readonly<Record<SymbolSet, PowerArt>> = {
  iec: {
    disconnector: iecPole(HALF, true),
    fuse: iecFuse(HALF),
    pole: iecPole(HALF, false),
    heater: iecHeater(HALF),
  },
  us: {
    disconnector: usDisconnect(HALF),
    fuse: usFuse(HALF),
    pole: usPole(HALF),
    heater: usHeater(HALF),
  },
};
