import { WORD_OF_SCHEME } from './controlWords.ts';
import type { Demands } from './demands.ts';
import type { ControlData, StarterData } from './starterData.ts';

/** Shares of rated voltage at which a coil can move. */
const COIL = { least: 0.1, most: 1 } as const;

/** Takes down what is impossible about a control circuit by itself. */
export function assertControl(control: ControlData, starter: StarterData, demands: Demands): void {
  const { group, report, word, flags } = demands;
  const here = (key: string) => `starter.control.${key}`;
  if (typeof control !== 'object' || control === null) {
    report('starter.control', control, 'a control circuit, or this key left out');
    return;
  }
  word(here('scheme'), control.scheme, Object.keys(WORD_OF_SCHEME));
  flags('starter.control', control, ['memoryRelay', 'readyRelay', 'mechanicalInterlock']);
  group('starter.control', control, {
    changeoverTimer: 'notNegative',
    relayTime: 'notNegative',
    scanTime: 'notNegative',
  });
  const { emergencyStop, coilVoltage, overload } = control;
  const category: unknown = emergencyStop?.category;
  if (category !== 0 && category !== 1) report(here('emergencyStop.category'), category, '0 or 1');
  if (category === 1) group(here('emergencyStop'), emergencyStop, { limit: 'positive' });
  if (coilVoltage !== null) assertCoils(coilVoltage, demands);
  if (overload !== null) {
    group(here('overload'), overload, { setting: 'positive' });
    word(here('overload.tripClass'), overload?.tripClass, ['5', '10A', '10', '20', '30']);
    word(here('overload.start'), overload?.start, ['cold', 'warm']);
    word(here('overload.memory'), overload?.memory, ['kept', 'lost']);
  }
  if (starter.changeoverDelay !== 0)
    report('starter.changeoverDelay', starter.changeoverDelay, '0 beside a control circuit');
}

function assertCoils(coils: NonNullable<ControlData['coilVoltage']>, { report }: Demands): void {
  const path = 'starter.control.coilVoltage';
  for (const key of ['pickUp', 'dropOut'] as const) {
    const share: unknown = coils?.[key];
    if (!(typeof share === 'number' && share >= COIL.least && share <= COIL.most))
      report(`${path}.${key}`, share, `a number from ${COIL.least} to ${COIL.most}`);
  }
  if (coils?.dropOut >= coils?.pickUp) report(`${path}.dropOut`, coils.dropOut, 'a number below pickUp');
}
