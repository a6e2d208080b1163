import { contradiction } from './contradiction.ts';
import type {
  AlternativesData,
  JudgementData,
  LimitsData,
  ProtectionData,
  TitleBlock,
} from './judgementData.ts';
import { derivedValue, type Note } from './origin.ts';
import { resolveContactors } from './resolveContactors.ts';
import { resolveDuty } from './resolveDuty.ts';
import { resolveThermal } from './resolveThermal.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/** A section as stated. */
type Section<K extends keyof ScenarioInput & keyof JudgementData> = NonNullable<ScenarioInput[K]>;

/**
 * Fills in the sections of the judgement; one that is not stated stays absent.
 *
 * @param input as stated, in SI
 * @param ratedCurrent of the machine, A; null where it is not known
 * @param noteIn takes notes for a section
 */
export function resolveJudgement(
  input: ScenarioInput,
  ratedCurrent: number | null,
  noteIn: (section: string) => Note,
): JudgementData {
  const { titleBlock, thermal, duty, contactors, limits, protection, alternatives } = input;
  return {
    ...(titleBlock === undefined ? {} : { titleBlock: resolveTitleBlock(titleBlock) }),
    ...(thermal === undefined ? {} : { thermal: resolveThermal(thermal, noteIn('thermal')) }),
    ...(duty === undefined ? {} : { duty: resolveDuty(duty, noteIn('duty')) }),
    ...(contactors === undefined ? {} : { contactors: resolveContactors(contactors, noteIn('contactors')) }),
    ...(limits === undefined ? {} : { limits: resolveLimits(limits) }),
    ...(protection === undefined
      ? {}
      : { protection: resolveProtection(protection, ratedCurrent, noteIn('protection')) }),
    ...(alternatives === undefined ? {} : { alternatives: resolveAlternatives(alternatives) }),
  };
}

function resolveTitleBlock(input: Section<'titleBlock'>): TitleBlock {
  return {
    plant: input.plant ?? null,
    tag: input.tag ?? null,
    revision: input.revision ?? null,
    prepared: input.prepared ?? null,
    checked: input.checked ?? null,
    date: input.date ?? null,
  };
}

function resolveLimits(input: Section<'limits'>): LimitsData {
  return {
    instantaneousTrip: input.instantaneousTrip ?? null,
    voltageDip: input.voltageDip ?? null,
    couplingTorque: input.couplingTorque ?? null,
    gearboxTorque: input.gearboxTorque ?? null,
    keyTorque: input.keyTorque ?? null,
    brakeTorque: input.brakeTorque ?? null,
    deceleration: input.deceleration ?? null,
    decelerationRadius: input.decelerationRadius ?? null,
    tippingRatio: input.tippingRatio ?? null,
    slidingFriction: input.slidingFriction ?? null,
    reverseCreep: input.reverseCreep ?? null,
    deadTimeMargin: input.deadTimeMargin ?? null,
    stopTime: input.stopTime ?? null,
    stopAngle: input.stopAngle ?? null,
    contactLife: input.contactLife ?? null,
  };
}

function resolveProtection(
  input: Section<'protection'>,
  ratedCurrent: number | null,
  note: Note,
): ProtectionData {
  return {
    overload: input.overload === undefined ? null : resolveOverload(input.overload, ratedCurrent, note),
    curves: input.curves ?? [],
  };
}

function resolveOverload(
  input: NonNullable<Section<'protection'>['overload']>,
  ratedCurrent: number | null,
  note: Note,
): ProtectionData['overload'] {
  const setting = input.setting ?? ratedCurrent;
  if (setting === null) {
    const message = 'states no setting, and no rated current is known';
    throw contradiction('protection.overload', 'a group of keys', message, 'a setting such as `14.6 A`');
  }
  if (input.setting === undefined)
    note('overload.setting', derivedValue(setting, 'A'), 'derived', 'rated current of the machine');
  return { setting, tripClass: input.class };
}

function resolveAlternatives(input: Section<'alternatives'>): AlternativesData {
  return {
    mechanicalBrake: input.mechanicalBrake ?? null,
    injectionCurrent: input.injectionCurrent ?? null,
    injectionDelay: input.injectionDelay ?? null,
    lineResistance: input.lineResistance ?? null,
    deadTime: input.deadTime ?? null,
  };
}
