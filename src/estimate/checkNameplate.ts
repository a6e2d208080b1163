import { maxRatedSlip, nameplatePowerMismatch } from '../scenario/bounds.ts';
import type { Nameplate } from '../scenario/nameplate.ts';
import { nameplateError, short } from './nameplateError.ts';

/** Breakdown torque below which no motor could be rated; every standard demands at least 1.6. */
const LEAST_BREAKDOWN = 1.1;

/** Difference of two torques that is the rounding of a catalogue's two digits. */
const ROUNDING = 0.02;

/** Designs whose torque may be greatest with the rotor held; their breakdown torque is counted further up the curve. */
const STRONG_STARTERS = /^[CDH]/;

/**
 * Refuses a nameplate whose numbers are impossible one by one or contradict each other before any circuit is looked at.
 *
 * @throws ScenarioError with the item, the value, the reason and what could be right
 */
export function checkNameplate(nameplate: Nameplate): void {
  const { power, lineVoltage, frequency, poles, speed, current } = nameplate;
  for (const [item, value] of Object.entries({ power, lineVoltage, frequency, current }))
    if (value !== null && !(value > 0 && Number.isFinite(value)))
      throw nameplateError(
        item as keyof Nameplate,
        String(value),
        'is no positive number',
        'a value above 0',
      );
  if (!(Number.isInteger(poles / 2) && poles > 0))
    throw nameplateError('poles', String(poles), 'is no number of poles', '2, 4, 6, 8 …');
  for (const item of ['powerFactor', 'efficiency'] as const) {
    const value = nameplate[item];
    if (value !== null && !(value > 0 && value < 1))
      throw nameplateError(item, String(value), 'is not between 0 and 1', 'more than 0 and less than 1');
  }
  if (speed !== null) checkSpeed(speed, frequency, poles);
  if (current !== null) checkPower(nameplate, current);
  if (nameplate.inertia !== null && !(nameplate.inertia > 0))
    throw nameplateError(
      'inertia',
      `${nameplate.inertia} kg m^2`,
      'is no positive inertia',
      'a value above 0',
    );
  checkTorques(nameplate);
}

function checkSpeed(speed: number, frequency: number, poles: number): void {
  const synchronous = (4 * Math.PI * frequency) / poles;
  const rpm = (value: number) => `${Number(((value * 30) / Math.PI).toFixed(1))} rpm`;
  const slip = 1 - speed / synchronous;
  if (slip <= 0)
    throw nameplateError(
      'speed',
      rpm(speed),
      `is not below the synchronous speed of ${rpm(synchronous)} at ${frequency} Hz and ${poles} poles`,
      'the speed at rated output, or another number of poles',
    );
  if (slip > maxRatedSlip)
    throw nameplateError(
      'speed',
      rpm(speed),
      `is a slip of ${short(100 * slip)} % at ${poles} poles`,
      `${rpm((1 - maxRatedSlip) * synchronous)} to ${rpm(synchronous)}, or another number of poles`,
    );
}

function checkPower(nameplate: Nameplate, current: number): void {
  const { power, lineVoltage, powerFactor, efficiency } = nameplate;
  const apparent = Math.sqrt(3) * lineVoltage * current;
  const product = powerFactor === null || efficiency === null ? null : powerFactor * efficiency * apparent;
  if (product !== null && Math.abs(product - power) > nameplatePowerMismatch * power)
    throw nameplateError(
      'power',
      `${short(power / 1000)} kW`,
      `does not fit √3 × voltage × current × power factor × efficiency, which is ${short(product / 1000)} kW`,
      `agreement within ${100 * nameplatePowerMismatch} %; with this power the current would be ` +
        `${short((current * power) / product)} A`,
    );
  const needed = power / apparent;
  const known = powerFactor ?? efficiency;
  if (product === null && needed >= (known ?? 1))
    throw nameplateError(
      'current',
      `${short(current)} A`,
      known === null
        ? `is too little: ${short(power / 1000)} kW at ${short(lineVoltage)} V need more than that`
        : `is too little: ${powerFactor === null ? 'power factor' : 'efficiency'} would be ${short(needed / known)}`,
      `more than ${short((current * needed) / (known ?? 1))} A`,
    );
  const LEAST = 0.2;
  if (needed < LEAST)
    throw nameplateError(
      'current',
      `${short(current)} A`,
      `makes efficiency × power factor ${short(needed)}, less than any motor has`,
      `at most ${short((current * needed) / LEAST)} A`,
    );
}

function checkTorques({ lockedRotorTorque, breakdownTorque, design }: Nameplate): void {
  if (lockedRotorTorque !== null && !(lockedRotorTorque > 0))
    throw nameplateError(
      'lockedRotorTorque',
      String(lockedRotorTorque),
      'is no positive multiple',
      'above 0',
    );
  if (breakdownTorque === null) return;
  if (!(breakdownTorque >= LEAST_BREAKDOWN))
    throw nameplateError(
      'breakdownTorque',
      `${short(breakdownTorque)} times rated torque`,
      'leaves no motor that could carry its rated torque',
      `a multiple of rated torque of at least ${LEAST_BREAKDOWN}`,
    );
  const mayStartStrongest = design !== null && STRONG_STARTERS.test(design);
  if (
    !mayStartStrongest &&
    lockedRotorTorque !== null &&
    breakdownTorque < (1 - ROUNDING) * lockedRotorTorque
  )
    throw nameplateError(
      'breakdownTorque',
      `${short(breakdownTorque)} times rated torque`,
      `is less than the locked-rotor torque of ${short(lockedRotorTorque)} times, and it is the largest from rest on`,
      `at least ${short(lockedRotorTorque)}`,
    );
}
