import { type SourcedValue, STANDARD_LIMITS } from '../../assess/standardLimits.ts';
import type { Suitability } from '../../assess/suitability.ts';
import type { Scenario } from '../../scenario/scenario.ts';

/** Name of a row of the table of sourced limits. */
type LimitName = keyof typeof STANDARD_LIMITS;

/** What decides whether a limit was used. */
interface Use {
  readonly scenario: Scenario;
  readonly suitability: Suitability;
  /** All sources and remarks of the judgement. */
  readonly texts: readonly string[];
}

type Rule = (use: Use) => boolean;

const insulated: Rule = ({ scenario }) => scenario.thermal?.insulationClass != null;
const ofClass =
  (name: '130' | '155' | '180'): Rule =>
  ({ scenario }) =>
    scenario.thermal?.insulationClass === name;
const heated: Rule = ({ suitability }) => typeof suitability.heating !== 'string';
const worn: Rule = ({ suitability }) => suitability.wear !== null;
const generic =
  (is: boolean): Rule =>
  ({ suitability: { wear } }) =>
    wear !== null && [wear.forward, wear.reverse].some(({ basis }) => basis.generic === is);
const bounced: Rule = ({ suitability: { wear } }) =>
  wear !== null &&
  [wear.forward, wear.reverse].some(({ makings }) =>
    Object.values(makings).some((making) => making.wear !== null),
  );
const judgedBy =
  (...keys: readonly string[]): Rule =>
  ({ suitability }) =>
    suitability.criteria.some(({ key, limit }) => keys.includes(key) && limit !== null);

/** Limits whose source is repeated word for word where they are used are looked up there; the others have a rule. */
const RULES: Partial<Readonly<Record<LimitName, Rule>>> = {
  rise130: ofClass('130'),
  rise155: ofClass('155'),
  rise180: ofClass('180'),
  referenceAmbient: heated,
  referenceAltitude: insulated,
  altitudeStep: ({ scenario }) => (scenario.thermal?.altitude ?? 0) > STANDARD_LIMITS.referenceAltitude.value,
  coldestAmbient: insulated,
  hottestAmbient: insulated,
  highestAltitude: insulated,
  durabilityMakeMultiple: bounced,
  durabilityBreakAc3: worn,
  durabilityVoltageAc3: worn,
  durabilityBreakAc4: worn,
  durabilityVoltageAc4: worn,
  genericLifeAc3: generic(true),
  genericLifeAc4: generic(true),
  lifeScatterGeneric: generic(true),
  lifeScatterStated: generic(false),
  leastArcMargin: judgedBy('deadTimeMargin'),
  longestArc: judgedBy('deadTimeMargin'),
  torsionalStep: judgedBy('shaftTorque'),
  gravity: judgedBy('tipping', 'sliding'),
};

/** The rows of the table of sourced limits that this judgement stands on. */
export function usedLimits(scenario: Scenario, suitability: Suitability): readonly SourcedValue[] {
  const use: Use = { scenario, suitability, texts: textsOf(suitability) };
  return Object.entries(STANDARD_LIMITS)
    .filter(([name, { source }]) => {
      const rule = RULES[name as LimitName];
      return rule === undefined ? use.texts.some((text) => text.includes(source)) : rule(use);
    })
    .map(([, limit]) => limit);
}

function textsOf({ criteria, heating, wear }: Suitability): string[] {
  return [
    ...criteria.flatMap(({ source, remark }) => [source, remark]),
    ...(typeof heating === 'string'
      ? []
      : [
          ...heating.model.nodes.map(({ limitSource }) => limitSource),
          ...heating.model.parameters.map(({ source }) => source),
        ]),
    ...(wear === null ? [] : [wear.forward.categoryReason, wear.reverse.categoryReason]),
  ];
}
