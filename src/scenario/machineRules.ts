import { ratedPowerMismatch } from './bounds.ts';
import { knownPoles, ratedFrequency, ratedVoltage } from './ratedBase.ts';
import type { RuleContext } from './rule.ts';
import { inRpm, synchronousSpeed } from './synchronousSpeed.ts';

/** Rated output against poles, frequency and voltage. */
export function machineRules(context: RuleContext): void {
  const { input, isStated, report } = context;
  const { machine } = input;
  const rated = machine?.rated;
  const here = (key: string) => isStated('machine', 'rated', key);

  if (
    isStated('machine', 'rated') &&
    !here('power') &&
    !here('speed') &&
    !(here('current') && here('torque'))
  ) {
    const message = 'does not fix a current and a torque at rated output';
    report(['machine', 'rated'], 'conflict', message, 'power, or speed, or both current and torque');
  }
  const frequency = ratedFrequency(context);
  const poles = knownPoles(context);
  if (rated?.speed !== undefined && frequency !== undefined && poles !== undefined) {
    const synchronous = synchronousSpeed(frequency, poles);
    if (rated.speed >= synchronous) {
      const message = `is not below the synchronous speed of ${inRpm(synchronous)}`;
      report(
        ['machine', 'rated', 'speed'],
        'conflict',
        message,
        'a motoring speed, or another number of poles',
      );
    }
  }
  if (rated?.power !== undefined && rated.torque !== undefined && rated.speed !== undefined) {
    const fromTorque = rated.torque * rated.speed;
    if (Math.abs(rated.power - fromTorque) > ratedPowerMismatch * fromTorque) {
      const kilowatts = Number((fromTorque / 1000).toPrecision(3));
      const message = `does not fit torque times speed, which is ${kilowatts} kW`;
      report(['machine', 'rated', 'power'], 'conflict', message, 'power, torque and speed of one rating');
    }
  }
  const voltage = ratedVoltage(context);
  if (rated?.power !== undefined && rated.current !== undefined && voltage !== undefined) {
    const apparent = Math.sqrt(3) * voltage * rated.current;
    if (rated.power > apparent) {
      const kilo = (value: number) => Number((value / 1000).toPrecision(3));
      const message = `of ${kilo(rated.power)} kW is more than √3 × voltage × current, ${kilo(apparent)} kVA`;
      report(
        ['machine', 'rated', 'power'],
        'conflict',
        message,
        'power, voltage and current of one rating (kW or hp?)',
      );
    }
  }
}
