import { assertProtection } from './assertProtection.ts';
import { contactorImpossibilities } from './contactorChecks.ts';
import { CYCLE_OF_WORD } from './cycleWords.ts';
import { isDay } from './dayInput.ts';
import type { Demand, Demands } from './demands.ts';
import { dutyImpossibilities } from './dutyChecks.ts';
import type { ContactorData, DutyData, LimitsData, ThermalData, TitleBlock } from './judgementData.ts';
import { limitImpossibilities } from './limitChecks.ts';
import type { Scenario } from './scenario.ts';
import type { Impossibility } from './starterView.ts';
import { CLASS_WITH_LETTER, thermalImpossibilities } from './thermalChecks.ts';

/** Takes down what is impossible about the sections of the judgement. */
export function assertJudgement(scenario: Scenario, demands: Demands): void {
  const { titleBlock, thermal, duty, contactors, limits, protection, alternatives } = scenario;
  if (titleBlock !== undefined) assertTitleBlock(titleBlock, demands);
  if (thermal !== undefined) assertThermal(thermal, scenario.machine?.cages?.length, demands);
  if (duty !== undefined) assertDuty(duty, demands);
  if (contactors !== undefined) {
    assertContactor(contactors?.forward, 'forward', demands);
    assertContactor(contactors?.reverse, 'reverse', demands);
    known('contactors', contactors, MECHANICAL_LIVES, demands);
  }
  if (limits !== undefined) assertLimits(limits, demands);
  if (protection !== undefined) assertProtection(protection, scenario.starter, demands);
  if (alternatives !== undefined) {
    known('alternatives', alternatives, ALTERNATIVES, demands);
    if (alternatives?.mechanicalBrake)
      demands.group('alternatives.mechanicalBrake', alternatives.mechanicalBrake, {
        torque: 'positive',
        delay: 'notNegative',
      });
  }
}

type NumbersOf<T> = Readonly<Partial<Record<keyof T & string, Demand>>>;

const MECHANICAL_LIVES = { interlockMechanicalLife: 'positive', switchMechanicalLife: 'positive' } as const;

const ALTERNATIVES = {
  injectionCurrent: 'positive',
  injectionDelay: 'notNegative',
  lineResistance: 'positive',
  deadTime: 'notNegative',
} as const;

const THERMAL: NumbersOf<ThermalData> = {
  ratedRise: 'positive',
  altitude: 'finite',
  lockedRotorTimeCold: 'positive',
  lockedRotorTimeHot: 'positive',
  cageLimit: 'finite',
  cageRatedTemperature: 'finite',
  windingHeatCapacity: 'positive',
  cageHeatCapacity: 'positive',
  frameHeatCapacity: 'positive',
  coolingTimeConstant: 'positive',
  standstillCooling: 'share',
  outerCageShare: 'fraction',
  noLoadStartsPerHour: 'positive',
};

const DUTY: NumbersOf<DutyData> = {
  operationsPerHour: 'positive',
  operationsPerDay: 'positive',
  runningTime: 'notNegative',
  cyclicDurationFactor: 'fraction',
  operationsSince: 'notNegative',
};

const CONTACTOR: NumbersOf<ContactorData> = {
  ratedVoltage: 'positive',
  ratedCurrentAc4: 'positive',
  lifeAc3: 'positive',
  lifeAc4: 'positive',
  mechanicalLife: 'positive',
  makingCapacity: 'positive',
  breakingCapacity: 'positive',
  bounceTime: 'notNegative',
  operationsPerHourAc3: 'positive',
  operationsPerHourAc4: 'positive',
};

const LIMITS: NumbersOf<LimitsData> = {
  instantaneousTrip: 'positive',
  voltageDip: 'fraction',
  couplingTorque: 'positive',
  gearboxTorque: 'positive',
  keyTorque: 'positive',
  brakeTorque: 'positive',
  deceleration: 'positive',
  tippingRatio: 'positive',
  slidingFriction: 'positive',
  reverseCreep: 'notNegative',
  deadTimeMargin: 'notNegative',
  stopTime: 'positive',
  stopAngle: 'positive',
  contactLife: 'positive',
};

/** Holds the numbers of a group that are not null, nor stated not to apply where that may be, to what they must be. */
function known(
  path: string,
  object: object,
  numbers: Readonly<Record<string, Demand>>,
  { group }: Demands,
  mayBe: readonly unknown[] = [null],
): void {
  const there = Object.entries(numbers).filter(([key]) => !mayBe.includes(Reflect.get(object ?? {}, key)));
  group(path, object, Object.fromEntries(there));
}

function tell(found: readonly Impossibility[], { conflict }: Demands): void {
  for (const { path, message, expected } of found) conflict(path.join('.'), message, expected);
}

function assertTitleBlock(block: TitleBlock, { report }: Demands): void {
  for (const key of ['plant', 'tag', 'revision', 'prepared', 'checked'] as const) {
    const value: unknown = block?.[key];
    if (value !== null && (typeof value !== 'string' || value === ''))
      report(`titleBlock.${key}`, value, 'one line of text, or null');
  }
  assertDay('titleBlock.date', block?.date, report);
}

function assertDay(path: string, value: unknown, report: Demands['report']): void {
  if (value !== null && (typeof value !== 'string' || !isDay(value)))
    report(path, value, 'a day as YYYY-MM-DD, or null');
}

function assertThermal(thermal: ThermalData, cages: number | undefined, demands: Demands): void {
  demands.group('thermal', thermal, { ambient: 'finite' });
  known('thermal', thermal, THERMAL, demands);
  if (thermal?.insulationClass !== null)
    demands.word('thermal.insulationClass', thermal?.insulationClass, Object.keys(CLASS_WITH_LETTER));
  if (thermal?.outerCageShare === 1) demands.report('thermal.outerCageShare', 1, 'a number below 1');
  tell(thermalImpossibilities(thermal ?? {}, cages), demands);
}

function assertDuty(duty: DutyData, demands: Demands): void {
  demands.word('duty.cycle', duty?.cycle, Object.values(CYCLE_OF_WORD));
  demands.group('duty', duty, { pluggingShare: 'share', inchingShare: 'share' });
  known('duty', duty, DUTY, demands);
  assertDay('duty.contactsChanged', duty?.contactsChanged, demands.report);
  tell(dutyImpossibilities(duty ?? {}), demands);
}

function assertContactor(contactor: ContactorData, which: 'forward' | 'reverse', demands: Demands): void {
  const path = `contactors.${which}`;
  const { group, report } = demands;
  group(path, contactor, { ratedCurrentAc3: 'positive' });
  known(path, contactor, CONTACTOR, demands);
  const { lifeTable } = contactor ?? {};
  if (lifeTable !== null && (lifeTable?.length ?? 0) < 2)
    report(`${path}.lifeTable`, 'too few points', 'two points or more, or null');
  for (const [j, point] of (lifeTable ?? []).entries())
    group(`${path}.lifeTable.${j}`, point, { current: 'positive', operations: 'positive' });
  tell(contactorImpossibilities(contactor ?? {}, ['contactors', which]), demands);
}

function assertLimits(limits: LimitsData, demands: Demands): void {
  known('limits', limits, LIMITS, demands, [null, 'none']);
  known('limits', limits, { decelerationRadius: 'positive' }, demands);
  tell(limitImpossibilities(limits ?? {}), demands);
}
