import { squared } from '../numeric/raised.ts';
import { ratedVoltage } from './ratedBase.ts';
import type { RuleContext } from './rule.ts';

/** Voltage of a test over rated voltage that is still taken for a no-load or a locked-rotor test. */
const mostVoltage = 1.3;

/** What the readings say about each other, before any circuit is known. */
export function testsRules(context: RuleContext): void {
  const { input, report } = context;
  const tests = input.machine?.tests;
  if (tests === undefined) return;
  const voltage = ratedVoltage(context);
  const between =
    tests.terminalResistance ??
    (tests.dc?.voltage === undefined || tests.dc.current === undefined
      ? undefined
      : tests.dc.voltage / tests.dc.current);

  for (const name of ['noLoad', 'lockedRotor'] as const) {
    const test = tests[name];
    const at = (key: string) => ['machine', 'tests', name, key] as const;
    if (test?.voltage !== undefined && voltage !== undefined && test.voltage > mostVoltage * voltage)
      report(
        at('voltage'),
        'conflict',
        `is more than ${mostVoltage} times the rated voltage of ${round(voltage)} V`,
        'voltages between lines of one machine',
      );
    const current = meanCurrent(test?.current);
    if (current === undefined || test?.power === undefined) continue;
    if (test.voltage !== undefined) {
      const apparent = Math.sqrt(3) * test.voltage * current;
      if (test.power >= apparent)
        report(
          at('power'),
          'conflict',
          `of ${round(test.power)} W is not below √3 × ${round(test.voltage)} V × ${round(current)} A = ${round(apparent)} VA`,
          'line voltage, line current and the power of all three phases',
        );
    }
    if (between === undefined) continue;
    // In the equivalent star each phase has half the resistance between two terminals, whatever the connection.
    const copper = 1.5 * between * squared(current);
    if (test.power <= copper)
      report(
        at('power'),
        'conflict',
        `of ${round(test.power)} W is not above the loss in the stator resistance alone, 1.5 × ${round(between)} ohm × (${round(current)} A)² = ${round(copper)} W`,
        'the power of all three phases, and the resistance between two terminals',
      );
  }
}

/** Mean of one current or of three; undefined where any is missing or wrong. */
export function meanCurrent(
  current: number | readonly (number | undefined)[] | undefined,
): number | undefined {
  if (current === undefined || typeof current === 'number') return current;
  let sum = 0;
  for (const one of current) {
    if (one === undefined) return undefined;
    sum += one;
  }
  return sum / current.length;
}

function round(value: number): number {
  return Number(value.toPrecision(4));
}
