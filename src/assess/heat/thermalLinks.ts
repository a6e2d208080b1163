import { type HeatPulse, totalHeat } from './heat.ts';
import type { ThermalLink, ThermalNode } from './thermalNetwork.ts';
import { TYPICAL_THERMAL } from './typicalThermal.ts';

/** Every path such that steady operation at rated load gives the rated rises, W/K. */
export function linksAtRatedLoad(
  loss: HeatPulse,
  windingRise: number,
  cageRise: number,
  frameRise: number,
  standstill: number,
  cages: readonly ThermalNode[],
): ThermalLink[] {
  const inside = (from: ThermalLink['from'], to: ThermalLink['to'], value: number): ThermalLink => ({
    from,
    to,
    running: value,
    standstill: value,
  });
  const toAir = totalHeat(loss) / frameRise;
  const [inner, outer] = cages;
  return [
    inside('winding', 'frame', loss.winding / (windingRise - frameRise)),
    inside('cage', 'frame', loss.cage / (cageRise - frameRise)),
    ...(inner === undefined || outer === undefined
      ? []
      : [
          inside('outerCage', 'frame', loss.outerCage / (cageRise - frameRise)),
          inside(
            'outerCage',
            'cage',
            1 / (1 / inner.heatCapacity + 1 / outer.heatCapacity) / TYPICAL_THERMAL.cageEqualising.value,
          ),
        ]),
    { from: 'frame', to: 'ambient', running: toAir, standstill: standstill * toAir },
  ];
}
