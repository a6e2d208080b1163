import { type ElectricalModel, type FluxVector, newObservation } from './electricalModel.ts';
import { FLOW_COUNT } from './flows.ts';

/**
 * No pole conducts and the residual flux is gone: nothing is left to integrate. It saves a coasting shaft the short steps that
 * the time constant of the iron's winding would go on asking for.
 *
 * @param fluxCount length of the flux vector
 */
export function deadModel(fluxCount: number): ElectricalModel {
  const nothing: FluxVector = new Array<number>(fluxCount).fill(0);
  const zero = newObservation();
  const observe: ElectricalModel['observe'] = (_t, _y, _omegaM, _thetaM, out) => {
    Object.assign(out, zero);
  };
  return {
    size: 0,
    frame: 'none: no flux is left',
    derivatives: () => 0,
    observe,
    observeFlows: (_t, _y, _omegaM, _thetaM, out) => {
      out.fill(0, 0, FLOW_COUNT);
    },
    fromStationary: () => [],
    toStationary: () => nothing,
    terminalCurrent: () => 0,
  };
}
