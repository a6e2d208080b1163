import { stiff } from '../../machine/breakdown.ts';
import type { RatedPoint } from '../../machine/ratedPoint.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import { type CageBodies, cageBodies } from './cageBodies.ts';
import { cageHeat } from './cageHeat.ts';
import { frameHeatCapacity } from './frameHeat.ts';
import type { HeatPulse } from './heat.ts';
import { steadyLosses } from './steadyLosses.ts';
import { linksAtRatedLoad } from './thermalLinks.ts';
import type { ThermalModel, ThermalNode, ThermalParameter } from './thermalNetwork.ts';
import { derivedParameter, givenOr } from './thermalParameter.ts';
import { TYPICAL_THERMAL } from './typicalThermal.ts';
import { windingHeatCapacity, windingLimit } from './windingHeat.ts';

/**
 * The motor's thermal model: winding and cage give their heat to core and frame, these to the cooling air. What the scenario
 * does not state is derived or typical, and says so.
 *
 * Conductances follow from steady operation at rated load (losses of the circuit at the rated slip, rises stated or typical);
 * the heat capacity of the frame follows from the slowest time constant of the whole. Standing still, only the path from the
 * frame to the air is worse. Losses count as independent of temperature. A hotter or thinner air enters through the limit of
 * the winding, as in IEC 60034-1, not through the conductances.
 *
 * @param cageIsFitted the double cage was fitted to a nameplate
 * @returns words where no model can be made
 */
export function thermalModel(
  scenario: Scenario,
  rated: RatedPoint,
  cageIsFitted = false,
): ThermalModel | string {
  const { machine, thermal } = scenario;
  if (rated.slip === null)
    return 'the rated power or speed is missing, so the losses at rated load are not known';
  const supply = stiff(scenario.supply);
  const bodies = cageBodies(machine, thermal, cageIsFitted);
  const loss = steadyLosses(machine, supply, rated.slip, bodies);
  const reference = STANDARD_LIMITS.referenceAmbient.value;

  const ambient = givenOr('cooling air', thermal?.ambient, STANDARD_LIMITS.referenceAmbient, 'standard');
  const windingRise = givenOr(
    'rise of the winding at rated load',
    thermal?.ratedRise,
    TYPICAL_THERMAL.ratedRise,
  );
  const frameRise = givenOr('rise of core and frame at rated load', null, {
    value: TYPICAL_THERMAL.frameShare.value * windingRise.value,
    unit: 'K',
    source: `${TYPICAL_THERMAL.frameShare.value} of that of the winding; ${TYPICAL_THERMAL.frameShare.source}`,
  });
  const cage = cageHeat(
    machine,
    supply,
    thermal,
    bodies,
    reference + windingRise.value,
    reference + frameRise.value,
  );
  if (typeof cage === 'string') return cage;
  const windingCapacity = windingHeatCapacity(thermal, loss.winding, reference + windingRise.value);
  const standstill = givenOr(
    'cooling at standstill over that while running',
    thermal?.standstillCooling,
    TYPICAL_THERMAL.standstillCooling,
  );
  const cageRise = cage.ratedTemperature.value - reference;
  const winding: ThermalNode = {
    name: 'winding',
    heatCapacity: windingCapacity.value,
    ratedRise: windingRise.value,
    ...windingLimit(thermal, ambient.value),
  };
  const cageNode = (name: 'cage' | 'outerCage', share: number): ThermalNode => ({
    name,
    heatCapacity: share * cage.heatCapacity.value,
    ratedRise: cageRise,
    limit: cage.limit.value,
    limitSource: cage.limit.source,
  });
  const inner = cageNode('cage', 1 - bodies.outerShare);
  const outer = bodies.outer === null ? [] : [cageNode('outerCage', bodies.outerShare)];
  const links = linksAtRatedLoad(loss, windingRise.value, cageRise, frameRise.value, standstill.value, [
    inner,
    ...outer,
  ]);
  const timeConstant = givenOr(
    'slowest time constant while running',
    thermal?.coolingTimeConstant,
    TYPICAL_THERMAL.coolingTimeConstant,
  );
  const frameCapacity = frameHeatCapacity(thermal, [winding, inner, ...outer], links, timeConstant.value);
  if (typeof frameCapacity === 'string') return frameCapacity;
  const frame: ThermalNode = {
    name: 'frame',
    heatCapacity: frameCapacity.value,
    ratedRise: frameRise.value,
    limit: null,
    limitSource: '',
  };
  return {
    nodes: [winding, inner, ...outer, frame],
    links,
    ambient: ambient.value,
    parameters: [
      ambient,
      ...lossParameters(loss, bodies),
      windingRise,
      cage.ratedTemperature,
      frameRise,
      cage.limit,
      ...Object.values(cage.lockedRotorTimes).filter((time) => time !== null),
      windingCapacity,
      cage.heatCapacity,
      ...(thermal?.frameHeatCapacity == null ? [timeConstant] : []),
      frameCapacity,
      standstill,
      ...(bodies.outer === null ? [] : [outerShareOf(bodies), equalising]),
    ],
  };
}

const equalising: ThermalParameter = givenOr(
  'equalising of the two cages',
  null,
  TYPICAL_THERMAL.cageEqualising,
);

function outerShareOf({ outerShare }: CageBodies): ThermalParameter {
  return givenOr('share of the outer cage in the heat capacity', outerShare, {
    value: 0,
    unit: '1',
    source: '',
  });
}

function lossParameters(loss: HeatPulse, bodies: CageBodies): ThermalParameter[] {
  const of = (part: string, value: number) =>
    derivedParameter(`loss at rated load, ${part}`, value, 'W', 'the circuit at the slip of rated output');
  return [
    of('winding', loss.winding),
    of(bodies.outer === null ? 'cage' : 'inner cage', loss.cage),
    ...(bodies.outer === null ? [] : [of('outer cage', loss.outerCage)]),
    of('core and bearings', loss.frame),
  ];
}
