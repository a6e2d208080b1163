import { asReverse } from './asReverse.ts';
import { type ContactorView, contactorImpossibilities } from './contactorChecks.ts';
import { defaultAmbient } from './defaults.ts';
import { dutyImpossibilities } from './dutyChecks.ts';
import { limitImpossibilities } from './limitChecks.ts';
import { protectionImpossibilities } from './protectionChecks.ts';
import type { RuleContext } from './rule.ts';
import type { Impossibility } from './starterView.ts';
import { type StatedCages, thermalImpossibilities } from './thermalChecks.ts';

/** What the sections of the judgement say fits together, and fits machine and starter. */
export function judgementRules(context: RuleContext): void {
  const { report } = context;
  for (const { path, message, expected } of [
    ...inThermal(context),
    ...inDuty(context),
    ...inContactors(context),
    ...inLimits(context),
    ...inProtection(context),
  ])
    report(path, 'conflict', message, expected);
  settingRule(context);
}

/** Reads a value of a section: null where nothing stands, undefined where what stands was refused. */
function reader({ isStated }: RuleContext, ...section: string[]) {
  return <T>(key: string, value: T | undefined): T | null | undefined =>
    isStated(...section, key) ? value : null;
}

function inThermal(context: RuleContext): readonly Impossibility[] {
  const thermal = context.input.thermal ?? {};
  const at = reader(context, 'thermal');
  const ambient = at('ambient', thermal.ambient);
  return thermalImpossibilities(
    {
      insulationClass: at('insulationClass', thermal.insulationClass),
      ambient: ambient === null ? defaultAmbient : ambient,
      ratedRise: at('ratedRise', thermal.ratedRise),
      lockedRotorTimeCold: at('lockedRotorTimeCold', thermal.lockedRotorTimeCold),
      lockedRotorTimeHot: at('lockedRotorTimeHot', thermal.lockedRotorTimeHot),
      cageLimit: at('cageLimit', thermal.cageLimit),
      cageRatedTemperature: at('cageRatedTemperature', thermal.cageRatedTemperature),
      outerCageShare: at('outerCageShare', thermal.outerCageShare),
    },
    statedCages(context),
  );
}

function statedCages({ input, isStated }: RuleContext): StatedCages {
  if (isStated('machine', 'nameplate') || isStated('machine', 'tests')) return 'fitted';
  return input.machine?.cages?.length;
}

function inDuty(context: RuleContext): readonly Impossibility[] {
  const duty = context.input.duty ?? {};
  const at = reader(context, 'duty');
  return dutyImpossibilities({
    operationsPerHour: at('operationsPerHour', duty.operationsPerHour),
    operationsPerDay: at('operationsPerDay', duty.operationsPerDay),
    runningTime: at('runningTime', duty.runningTime),
    cyclicDurationFactor: at('cyclicDurationFactor', duty.cyclicDurationFactor),
    pluggingShare: at('pluggingShare', duty.pluggingShare),
    inchingShare: at('inchingShare', duty.inchingShare),
  });
}

function inContactors(context: RuleContext): readonly Impossibility[] {
  const { isStated, input } = context;
  const { reverse = {}, ...forward } = input.contactors ?? {};
  const first = contactorView(reader(context, 'contactors'), forward);
  const own = contactorView(reader(context, 'contactors', 'reverse'), reverse);
  return [
    ...contactorImpossibilities(first, ['contactors']),
    // What is taken over from the forward contactor has been reported there.
    ...contactorImpossibilities(asReverse(first, own), ['contactors', 'reverse']).filter(({ path }) =>
      isStated(...path),
    ),
  ];
}

function contactorView(
  at: ReturnType<typeof reader>,
  contactor: { readonly [K in keyof ContactorView]?: Exclude<ContactorView[K], null> },
): ContactorView {
  return {
    ratedCurrentAc3: at('ratedCurrentAc3', contactor.ratedCurrentAc3),
    ratedCurrentAc4: at('ratedCurrentAc4', contactor.ratedCurrentAc4),
    lifeAc4: at('lifeAc4', contactor.lifeAc4),
    lifeTable: at('lifeTable', contactor.lifeTable),
  };
}

function inLimits(context: RuleContext): readonly Impossibility[] {
  const limits = context.input.limits ?? {};
  const at = reader(context, 'limits');
  return limitImpossibilities({
    deceleration: at('deceleration', limits.deceleration),
    tippingRatio: at('tippingRatio', limits.tippingRatio),
    slidingFriction: at('slidingFriction', limits.slidingFriction),
    decelerationRadius: at('decelerationRadius', limits.decelerationRadius),
  });
}

function inProtection({ input, isStated }: RuleContext): readonly Impossibility[] {
  return protectionImpossibilities(
    { hasOverload: isStated('protection', 'overload'), curves: input.protection?.curves ?? [] },
    isStated('starter', 'control', 'overload') && input.starter?.control?.overload !== 'none',
  );
}

function settingRule({ isStated, report }: RuleContext): void {
  if (!isStated('protection', 'overload') || isStated('protection', 'overload', 'setting')) return;
  if (isStated('machine', 'nameplate', 'current') || isStated('machine', 'rated', 'current')) return;
  const message = 'is missing, and the machine states no rated current';
  const expected = 'a current such as `14.6 A`, or `current` under rated';
  report(['protection', 'overload', 'setting'], 'missingKey', message, expected);
}
