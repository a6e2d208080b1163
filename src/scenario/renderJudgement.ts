import { WORD_OF_CYCLE } from './cycleWords.ts';
import type { ContactorData, ContactorsData, JudgementData, Limit, ProtectionData } from './judgementData.ts';
import { writeQuantity as write } from './writeQuantity.ts';

type Rendered = Readonly<Record<string, unknown>>;

/** The sections of the judgement of a file, in SI units with all digits; what is not known is left out. */
export function renderJudgement(scenario: JudgementData): Rendered {
  const { titleBlock, thermal, duty, contactors, limits, protection, alternatives } = scenario;
  return {
    ...(titleBlock === undefined ? {} : { titleBlock: withUnits(titleBlock, {}) }),
    ...(thermal === undefined ? {} : { thermal: withUnits(thermal, THERMAL_UNITS) }),
    ...(duty === undefined
      ? {}
      : { duty: { ...withUnits(duty, { runningTime: 's' }), cycle: WORD_OF_CYCLE[duty.cycle] } }),
    ...(contactors === undefined ? {} : { contactors: renderContactors(contactors) }),
    ...(limits === undefined ? {} : { limits: withUnits(limits, LIMIT_UNITS) }),
    ...(protection === undefined ? {} : { protection: renderProtection(protection) }),
    ...(alternatives === undefined
      ? {}
      : {
          alternatives: {
            ...withUnits(alternatives, ALTERNATIVE_UNITS),
            ...(alternatives.mechanicalBrake === null
              ? {}
              : { mechanicalBrake: withUnits(alternatives.mechanicalBrake, { torque: 'N m', delay: 's' }) }),
          },
        }),
  };
}

const THERMAL_UNITS = {
  ratedRise: 'K',
  ambient: 'degC',
  altitude: 'm',
  lockedRotorTimeCold: 's',
  lockedRotorTimeHot: 's',
  cageLimit: 'degC',
  cageRatedTemperature: 'degC',
  windingHeatCapacity: 'J/K',
  cageHeatCapacity: 'J/K',
  frameHeatCapacity: 'J/K',
  coolingTimeConstant: 's',
} as const;

const LIMIT_UNITS = {
  instantaneousTrip: 'A',
  couplingTorque: 'N m',
  gearboxTorque: 'N m',
  keyTorque: 'N m',
  brakeTorque: 'N m',
  deceleration: 'm/s^2',
  decelerationRadius: 'm',
  reverseCreep: 'rad',
  deadTimeMargin: 's',
  stopTime: 's',
  stopAngle: 'rad',
} as const;

const CONTACTOR_UNITS = {
  ratedVoltage: 'V',
  ratedCurrentAc3: 'A',
  ratedCurrentAc4: 'A',
  makingCapacity: 'A',
  breakingCapacity: 'A',
  bounceTime: 's',
} as const;

const ALTERNATIVE_UNITS = {
  injectionCurrent: 'A',
  injectionDelay: 's',
  lineResistance: 'ohm',
  deadTime: 's',
} as const;

/** Every key that is known: a number with its unit where it has one, anything else as it is. */
function withUnits<T extends object>(
  group: T,
  units: { readonly [K in keyof T]?: string },
): Readonly<Record<string, unknown>> {
  const unitOf = new Map<string, unknown>(Object.entries(units));
  return Object.fromEntries(
    Object.entries(group)
      .filter(([, value]) => value !== null)
      .map(([key, value]: [string, Limit | object | string]) => {
        const unit = unitOf.get(key);
        return [key, typeof value === 'number' && typeof unit === 'string' ? write(value, unit) : value];
      }),
  );
}

function renderContactors(contactors: ContactorsData): Rendered {
  const { forward, reverse, ...lives } = contactors;
  const first = renderContactor(forward);
  const second = renderContactor(reverse);
  return {
    ...first,
    ...(JSON.stringify(first) === JSON.stringify(second) ? {} : { reverse: second }),
    ...withUnits(lives, {}),
  };
}

function renderContactor(contactor: ContactorData): Rendered {
  const { lifeTable } = contactor;
  return {
    ...withUnits(contactor, CONTACTOR_UNITS),
    ...(lifeTable === null
      ? {}
      : { lifeTable: lifeTable.map((point) => withUnits(point, { current: 'A' })) }),
  };
}

function renderProtection({ overload, curves }: ProtectionData): Rendered {
  return {
    ...(overload === null
      ? {}
      : { overload: { setting: write(overload.setting, 'A'), class: overload.tripClass } }),
    curves: curves.map(({ name, kind, points }) => ({
      name,
      kind,
      points: points.map((point) => withUnits(point, { current: 'A', time: 's' })),
    })),
  };
}
