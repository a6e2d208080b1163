import { type HeatPulse, NO_HEAT, type OperationHeat } from '../../src/assess/heat/heat.ts';
import type {
  NodeName,
  ThermalLink,
  ThermalModel,
  ThermalNode,
} from '../../src/assess/heat/thermalNetwork.ts';
import type { ThermalData } from '../../src/scenario/scenario.ts';

/** Nothing is known of how the motor heats. */
export const NO_THERMAL: ThermalData = {
  insulationClass: null,
  ratedRise: null,
  ambient: 40,
  altitude: 0,
  lockedRotorTimeCold: null,
  lockedRotorTimeHot: null,
  cageLimit: null,
  cageRatedTemperature: null,
  windingHeatCapacity: null,
  cageHeatCapacity: null,
  frameHeatCapacity: null,
  coolingTimeConstant: null,
  standstillCooling: null,
  outerCageShare: null,
  noLoadStartsPerHour: null,
};

const node = (name: NodeName, heatCapacity: number, limit: number | null): ThermalNode => ({
  name,
  heatCapacity,
  ratedRise: 80,
  limit,
  limitSource: limit === null ? '' : 'test',
});

const link = (from: NodeName, to: ThermalLink['to'], running: number, standstill = running): ThermalLink => ({
  from,
  to,
  running,
  standstill,
});

/** A cage alone in air of 40 °C: 1000 J/K, 10 W/K, so a time constant of 100 s; limit 140 °C. */
export const ONE_BODY: ThermalModel = {
  nodes: [node('cage', 1000, 140)],
  links: [link('cage', 'ambient', 10)],
  ambient: 40,
  parameters: [],
};

/** Invented: three bodies of a motor of some kilowatts, cooled less at rest. */
export const THREE_BODIES: ThermalModel = {
  nodes: [node('winding', 3000, 145), node('cage', 1500, 300), node('frame', 20_000, null)],
  links: [link('winding', 'frame', 12), link('cage', 'frame', 5), link('frame', 'ambient', 18, 5)],
  ambient: 40,
  parameters: [],
};

/** The same with an outer cage as a body of its own. */
export const FOUR_BODIES: ThermalModel = {
  ...THREE_BODIES,
  nodes: [
    THREE_BODIES.nodes[0]!,
    node('cage', 900, 300),
    node('outerCage', 600, 300),
    THREE_BODIES.nodes[2]!,
  ],
  links: [...THREE_BODIES.links, link('outerCage', 'frame', 2), link('outerCage', 'cage', 15)],
};

/** Heat of a pulse; what is left out is zero. */
export function pulse(parts: Partial<HeatPulse>): HeatPulse {
  return { ...NO_HEAT, ...parts };
}

/** Start, running and stop of an invented motor of some kilowatts. */
export const SOME_HEAT: OperationHeat = {
  start: pulse({ winding: 4000, cage: 5000, outerCage: 2000, frame: 50, duration: 0.8 }),
  running: pulse({ winding: 250, cage: 120, outerCage: 40, frame: 150, duration: 1 }),
  stop: pulse({ winding: 9000, cage: 14_000, outerCage: 6000, frame: 40, duration: 0.5 }),
  stopKind: 'braking',
};
