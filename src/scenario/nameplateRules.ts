import { maxRatedSlip, maxSlipToTellPoles, nameplatePowerMismatch } from './bounds.ts';
import { codeLetterOf, codeLetterRange, kvaPerHorsepower } from './codeLetter.ts';
import { polesFromSpeed, ratedFrequency, ratedVoltage } from './ratedBase.ts';
import type { RuleContext } from './rule.ts';
import { inRpm, synchronousSpeed } from './synchronousSpeed.ts';

/** The catalogue value and the letter on the plate may be those of neighbouring ratings; more is a contradiction. */
const codeLetterMargin = 0.1;

/** Designs whose torque may be greatest with the rotor held (NEMA C and D, IEC H and HE). */
const highStartingTorque = ['C', 'D', 'H', 'HY', 'HE', 'HEY'];

/** Slip that design D exceeds and no other does. Source: NEMA MG 1-1.19, from memory. */
const designDSlip = 0.05;

/** Slip that designs A, B, C stay below with a wide margin, small machines of many poles included. */
const otherDesignSlip = 0.08;

/** What the values of a nameplate say about each other, before any circuit is known. */
export function nameplateRules(context: RuleContext): void {
  const { input, isStated } = context;
  if (input.machine?.nameplate === undefined || !isStated('machine', 'nameplate')) return;
  const slip = speedRules(context);
  powerRules(context);
  lockedRotorRules(context);
  torqueRules(context);
  designRules(context, slip);
}

type Plate = NonNullable<NonNullable<RuleContext['input']['machine']>['nameplate']>;

function plateOf({ input }: RuleContext): Plate {
  return input.machine?.nameplate ?? {};
}

const at = (key: string) => ['machine', 'nameplate', key] as const;

/** Speed against poles and frequency. Returns the rated slip where it is known and possible. */
function speedRules(context: RuleContext): number | undefined {
  const { isStated, report, input } = context;
  const { speed, slip } = plateOf(context);
  if (isStated(...at('speed')) && isStated(...at('slip'))) {
    report(at('slip'), 'conflict', 'stands beside speed, which says the same', 'one of the two');
    return undefined;
  }
  const frequency = ratedFrequency(context);
  if (slip !== undefined) {
    if (slip <= maxRatedSlip) return slip;
    const message = `of ${percent(slip)} is more than any cage motor has at rated output`;
    report(at('slip'), 'conflict', message, `a slip up to ${percent(maxRatedSlip)}`);
    return undefined;
  }
  if (speed === undefined || frequency === undefined) return undefined;
  const statesPoles = isStated('machine', 'poles');
  const poles = statesPoles ? input.machine?.poles : polesFromSpeed(speed, frequency);
  if (poles === undefined) return undefined;
  const synchronous = synchronousSpeed(frequency, poles);
  const rated = 1 - speed / synchronous;
  const words = `the synchronous speed of ${inRpm(synchronous)} (${poles} poles, ${frequency} Hz)`;
  if (rated <= 0) {
    report(at('speed'), 'conflict', `is not below ${words}`, 'a lower speed, or another number of poles');
  } else if (!statesPoles && isSynchronous(speed, frequency)) {
    const message = `is a synchronous speed at ${frequency} Hz; a motor runs a little below it`;
    report(at('speed'), 'conflict', message, 'the speed at rated output, such as `1455 rpm`');
  } else if (!statesPoles && rated > maxSlipToTellPoles) {
    const message = `does not tell the number of poles: it lies ${percent(rated)} below ${words}`;
    const next = inRpm(synchronousSpeed(frequency, poles + 2));
    const expected = `\`poles\` under machine (${poles + 2} poles turn at ${next}), or another speed`;
    report(at('speed'), 'conflict', message, expected);
  } else if (rated > maxRatedSlip) {
    const message = `lies ${percent(rated)} below ${words}, more than any cage motor does`;
    report(at('speed'), 'conflict', message, 'speed, poles and frequency of one rating');
  } else return rated;
  return undefined;
}

/** Efficiency × power factor × √3 × voltage × current against power. */
function powerRules(context: RuleContext): void {
  const { power, current, powerFactor, efficiency } = plateOf(context);
  const voltage = ratedVoltage(context);
  if (power === undefined || current === undefined || voltage === undefined) return;
  const wrong = (key: 'powerFactor' | 'efficiency') =>
    plateOf(context)[key] === undefined && context.isStated(...at(key));
  if (wrong('powerFactor') || wrong('efficiency')) return;
  // One that is not stated cannot exceed 1.
  const unknown = powerFactor === undefined || efficiency === undefined;
  const apparent = Math.sqrt(3) * voltage * current;
  const shaft = apparent * (powerFactor ?? 1) * (efficiency ?? 1);
  const deviation = shaft / power - 1;
  if (unknown ? deviation > -nameplatePowerMismatch : Math.abs(deviation) <= nameplatePowerMismatch) return;
  const factors = [
    ...(efficiency === undefined ? [] : [`efficiency ${percent(efficiency)}`]),
    ...(powerFactor === undefined ? [] : [`power factor ${round(powerFactor)}`]),
    `√3`,
    `${round(voltage)} V`,
    `${round(current)} A`,
  ].join(' × ');
  const limit = unknown ? 'at most ' : '';
  const message = `of ${kilo(power)} kW contradicts ${factors} = ${limit}${kilo(shaft)} kW`;
  const expected = `values of one rating, within ${percent(nameplatePowerMismatch)} (kW or hp? the current of this voltage and connection?)`;
  context.report(at('power'), 'conflict', message, expected);
}

/** Locked-rotor current against rated current and code letter. */
function lockedRotorRules(context: RuleContext): void {
  const { report } = context;
  const { power, current, lockedRotorCurrent, codeLetter } = plateOf(context);
  if (lockedRotorCurrent === undefined) return;
  const multiple = 'ofRated' in lockedRotorCurrent ? lockedRotorCurrent.ofRated : undefined;
  const fromMultiple = multiple === undefined || current === undefined ? undefined : multiple * current;
  const amperes = 'amperes' in lockedRotorCurrent ? lockedRotorCurrent.amperes : fromMultiple;
  if (amperes === undefined) return;
  if (current !== undefined && amperes <= current) {
    const message = `of ${round(amperes)} A is not above the rated current of ${round(current)} A`;
    report(at('lockedRotorCurrent'), 'conflict', message, 'a multiple such as `6.8 times`, or more amperes');
  }
  const voltage = ratedVoltage(context);
  if (codeLetter === undefined || power === undefined || voltage === undefined) return;
  const range = codeLetterRange(codeLetter);
  if (range === null) return;
  const kva = kvaPerHorsepower(voltage, amperes, power);
  if (kva >= range.from * (1 - codeLetterMargin) && kva < range.below * (1 + codeLetterMargin)) return;
  const upTo = Number.isFinite(range.below) ? ` to ${range.below}` : ' upwards';
  const message = `${codeLetter} stands for ${range.from}${upTo} kVA/hp, and ${round(amperes)} A are ${round(kva)} kVA/hp`;
  const expected = `code letter ${codeLetterOf(kva)}, or another locked-rotor current`;
  report(at('codeLetter'), 'conflict', message, expected);
}

/** Breakdown torque against rated and locked-rotor torque. */
function torqueRules(context: RuleContext): void {
  const { isStated, report } = context;
  const { breakdownTorque, lockedRotorTorque, design } = plateOf(context);
  if (breakdownTorque === undefined) return;
  if (breakdownTorque <= 1) {
    const message = 'is not above rated torque: the motor could not carry its rated load';
    report(at('breakdownTorque'), 'conflict', message, 'a multiple above 1, such as `2.8 times`');
  }
  if (isStated(...at('design')) && (design === undefined || highStartingTorque.includes(design))) return;
  if (lockedRotorTorque === undefined || breakdownTorque >= lockedRotorTorque) return;
  const message = `of ${round(breakdownTorque)} times is below the locked-rotor torque of ${round(lockedRotorTorque)} times`;
  const expected =
    'the greatest torque; only designs C, D and H start with more (state `design` if it is one)';
  report(at('breakdownTorque'), 'conflict', message, expected);
}

/** Only what is clear-cut: the slip of design D, and star-delta starting of the Y designs. */
function designRules(context: RuleContext, slip: number | undefined): void {
  const { input, report } = context;
  const { design } = plateOf(context);
  if (design === undefined) return;
  if (slip !== undefined && design === 'D' && slip < designDSlip) {
    const message = `D has a slip of ${percent(designDSlip)} or more; speed and poles give ${percent(slip)}`;
    report(at('design'), 'conflict', message, 'another design letter or another speed');
  }
  if (slip !== undefined && ['A', 'B', 'C'].includes(design) && slip > otherDesignSlip) {
    const message = `${design} has a slip below ${percent(designDSlip)}; speed and poles give ${percent(slip)}`;
    report(at('design'), 'conflict', message, '`D`, or another speed');
  }
  const isStarDelta = design.endsWith('Y');
  const connection = context.isStated('machine', 'connection') ? input.machine?.connection : 'star';
  if (isStarDelta && connection === 'star') {
    const message = `${design} is started in star and runs in delta`;
    report(at('design'), 'conflict', message, '`connection: delta` under machine, or a design without Y');
  }
}

function percent(value: number): string {
  return `${Number((value * 100).toPrecision(3))} %`;
}

function round(value: number): number {
  return Number(value.toPrecision(4));
}

function kilo(watts: number): number {
  return Number((watts / 1000).toPrecision(4));
}

/** True at the synchronous speed of some number of poles, within a per mille. */
function isSynchronous(speed: number, frequency: number): boolean {
  const pairs = (2 * Math.PI * frequency) / speed;
  return Math.abs(pairs - Math.round(pairs)) <= 1e-3 * pairs;
}
