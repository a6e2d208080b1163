import { logarithm } from '../../numeric/logarithm.ts';
import { raised } from '../../numeric/raised.ts';
import type { ContactorData } from '../../scenario/scenario.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import { lifeFromTable } from './lifeTable.ts';

/** How long contacts last if every operation breaks the same current against the same voltage. */
export interface ContactLife {
  /** The number to expect. */
  readonly operations: number;
  /** Lower end of the range in which the number of operations may be expected. */
  readonly low: number;
  /** Upper end of that range, number of operations. */
  readonly high: number;
  /** No life of this device is known: typical contacts stand for it. */
  readonly generic: boolean;
  /** Words: what the figure stands on. */
  readonly origin: string;
  /** What a reader must know; may be empty. */
  readonly remark: string;
}

/** What a device's lives stand on, whatever it breaks. */
export interface LifeBasis {
  /** No life of this device is known: typical contacts stand for it. */
  readonly generic: boolean;
  /** Life over the expected one at the low end of the range, a ratio < 1. */
  readonly lowFactor: number;
  /** Life over the expected one at the high end of the range, a ratio > 1. */
  readonly highFactor: number;
  /** Words: where life and range come from. */
  readonly origin: string;
}

/**
 * How two points of one category are joined: life ∝ 1/current^1.4, no unit. Least-squares fit of the logarithms of a manufacturer's
 * catalogue (1.396) that goes through the rated current; the catalogue reaches from 0.2 to 1 times it.
 */
export const LIFE_EXPONENT = 1.4;

/** Currents below this multiple of the rated current count as this: how little they wear is not known. Common practice, no source. */
export const LEAST_CURRENT = 0.05;

/**
 * Knows which lives of a device are stated. A range of a factor of 2 either way about stated lives, and of 4 about the
 * generic curve (the two contact materials of one catalogue differ threefold in AC-4): common practice, no source.
 */
export function lifeBasis(device: ContactorData): LifeBasis {
  const { lifeAc3, lifeAc4, lifeTable } = device;
  const stated = [
    lifeTable === null ? '' : 'table of life against breaking current',
    lifeAc3 === null ? '' : 'life in AC-3',
    lifeAc4 === null ? '' : 'life in AC-4',
  ].filter((words) => words !== '');
  const generic = stated.length === 0;
  const factor = generic ? STANDARD_LIMITS.lifeScatterGeneric.value : STANDARD_LIMITS.lifeScatterStated.value;
  const range = `range of a factor of ${factor} either way: common practice, no source`;
  return {
    generic,
    lowFactor: 1 / factor,
    highFactor: factor,
    origin: generic
      ? `generic curve, not this device: ${STANDARD_LIMITS.genericLifeAc3.value} operations at the rated current in AC-3, ${STANDARD_LIMITS.genericLifeAc4.value} at six times it in AC-4 (sintered contacts, a manufacturer's catalogue); ${range}`
      : `stated: ${stated.join(', ')}; ${range}`,
  };
}

/**
 * Operations until the contacts are at their end if every one breaks the same current against the same recovery voltage.
 *
 * Two curves of life against current are known or assumed: one at full recovery voltage, from the device's table or through
 * its AC-4 point (6·Ie in AC-4), and one at 0.17 of the rated voltage through its AC-3 point (Ie in AC-3); each goes on with the
 * exponent `LIFE_EXPONENT` where there is no table. Between the two voltages the logarithm of life follows
 * that of the voltage, beyond full voltage too; less voltage never shortens life. (The rule: common practice, no source.)
 *
 * @param current A r.m.s.; that of `equivalentBreakingCurrent`
 * @param recoveryVoltage V r.m.s. line to line
 * @param ratedVoltage where the device states none, V: that of the supply
 */
export function lifeAtBreaking(
  device: ContactorData,
  current: number,
  recoveryVoltage: number,
  ratedVoltage: number,
): ContactLife {
  const basis = lifeBasis(device);
  const remarks: string[] = [];
  const least = LEAST_CURRENT * device.ratedCurrentAc3;
  if (current < least)
    remarks.push(`the current counts as ${LEAST_CURRENT} of the rated one, below which wear is not known`);
  const at = Math.max(current, least);
  const full = lifeAtFullVoltage(device, at, remarks);
  const little = Math.max(full, lifeAtLittleVoltage(device, at, remarks) ?? full);
  const weight = voltageWeight(recoveryVoltage / (device.ratedVoltage ?? ratedVoltage), remarks);
  const operations = raised(full, weight) * raised(little, 1 - weight);
  return {
    operations,
    low: operations * basis.lowFactor,
    high: operations * basis.highFactor,
    generic: basis.generic,
    origin: basis.origin,
    remark: remarks.join('; '),
  };
}

/** Share of the rated voltage: the test of conventional operational performance of IEC 60947-4-1 (from memory). */
const HIGHEST_TEST_VOLTAGE = 1.05;

/** 0 at the voltage of the AC-3 test and below, 1 at the full one, in the logarithm. */
function voltageWeight(share: number, remarks: string[]): number {
  const little = STANDARD_LIMITS.durabilityVoltageAc3.value;
  const full = STANDARD_LIMITS.durabilityVoltageAc4.value;
  if (share <= little) return 0;
  if (share > HIGHEST_TEST_VOLTAGE)
    remarks.push('the recovery voltage exceeds that of every test: extrapolated');
  return logarithm(share / little) / logarithm(full / little);
}

function lifeAtFullVoltage(device: ContactorData, current: number, remarks: string[]): number {
  const { lifeTable, ratedCurrentAc3, ratedCurrentAc4, lifeAc3, lifeAc4 } = device;
  if (lifeTable !== null && lifeTable.length > 0) {
    const { operations, remark } = lifeFromTable(lifeTable, current, LIFE_EXPONENT);
    if (remark !== '') remarks.push(remark);
    return operations;
  }
  const rated = ratedCurrentAc4 ?? ratedCurrentAc3;
  if (lifeAc4 !== null && ratedCurrentAc4 === null)
    remarks.push('the rated current in AC-4 is taken as that in AC-3 (assumed)');
  if (lifeAc4 === null && lifeAc3 !== null)
    remarks.push(
      `the life in AC-4 is taken as 1/${GENERIC_RATIO} of that in AC-3 (sintered contacts, a manufacturer's catalogue)`,
    );
  const life = lifeAc4 ?? (lifeAc3 === null ? STANDARD_LIMITS.genericLifeAc4.value : lifeAc3 / GENERIC_RATIO);
  const testCurrent = STANDARD_LIMITS.durabilityBreakAc4.value * (lifeAc4 === null ? ratedCurrentAc3 : rated);
  return life * raised(testCurrent / current, LIFE_EXPONENT);
}

/** Null where only a table is stated: it then holds at every voltage. */
function lifeAtLittleVoltage(device: ContactorData, current: number, remarks: string[]): number | null {
  const { lifeTable, ratedCurrentAc3, ratedCurrentAc4, lifeAc3, lifeAc4 } = device;
  if (lifeAc3 === null && lifeTable !== null) {
    remarks.push('the table holds at full recovery voltage; with less the contacts last longer');
    return null;
  }
  if (lifeAc3 === null && lifeAc4 !== null)
    remarks.push(
      `the life in AC-3 is taken as ${GENERIC_RATIO} times that in AC-4 (sintered contacts, a manufacturer's catalogue)`,
    );
  const life = lifeAc3 ?? (lifeAc4 === null ? STANDARD_LIMITS.genericLifeAc3.value : lifeAc4 * GENERIC_RATIO);
  const rated = lifeAc3 === null && lifeAc4 !== null ? (ratedCurrentAc4 ?? ratedCurrentAc3) : ratedCurrentAc3;
  return life * raised((STANDARD_LIMITS.durabilityBreakAc3.value * rated) / current, LIFE_EXPONENT);
}

/** Life in AC-3 over life in AC-4. */
const GENERIC_RATIO = STANDARD_LIMITS.genericLifeAc3.value / STANDARD_LIMITS.genericLifeAc4.value;
