import type { ControlData, SchemeName } from '../../scenario/scenario.ts';

/** A control circuit as textbooks draw it: no relay that remembers, none that asks for a reset. */
const PLAIN = {
  memoryRelay: false,
  readyRelay: false,
  emergencyStop: { category: 0 },
  changeoverTimer: 0,
  mechanicalInterlock: true,
  relayTime: 0,
  scanTime: 0,
  coilVoltage: null,
  // That there is one counts here, not when it trips.
  overload: { setting: 1, tripClass: '10', start: 'cold', memory: 'kept' },
} as const satisfies Omit<ControlData, 'scheme'>;

const BRAKING: readonly SchemeName[] = ['plugStop', 'plugStopBoth', 'jog'];
const SCHEMES: readonly SchemeName[] = ['throughStop', 'direct', 'antiPlugging', ...BRAKING];

/** Every scheme in its plain form. */
export const PLAIN_CONTROLS: readonly ControlData[] = SCHEMES.map((scheme) => ({ ...PLAIN, scheme }));

/** What makes them better: a memory relay where a contactor brakes, and a ready relay. */
export const IMPROVED_CONTROLS: readonly ControlData[] = PLAIN_CONTROLS.flatMap((plain) => {
  const memoryRelay = BRAKING.includes(plain.scheme);
  const remembers: ControlData = { ...plain, memoryRelay };
  return [...(memoryRelay ? [remembers] : []), { ...remembers, readyRelay: true }];
});
