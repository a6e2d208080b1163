import type { Supply } from '../scenario/scenario.ts';
import type { Circuit } from './circuit.ts';
import type { ElectricalModel } from './electricalModel.ts';
import { generalModel } from './generalModel.ts';
import { noPoles } from './noPoles.ts';
import { type Connection, supplyVector } from './supplyVector.ts';
import { threePoles } from './threePoles.ts';
import { connectedStator, openStator, openTerminal } from './topology.ts';
import { twoPoles } from './twoPoles.ts';

/** Which terminals carry current, and the supply phases they are on. */
export interface ConductingSet {
  readonly kind: 'three' | 'two' | 'none';
  readonly connection: Connection;
}

/**
 * The electrical equations of a circuit in one conducting set: the plain model when every branch is linear and there is no
 * core, otherwise the general one.
 *
 * @param frame axes while three poles conduct: those of the applied sequence, or stationary ones for cross-checks
 */
export function connectedModel(
  circuit: Circuit,
  supply: Pick<Supply, 'lineVoltage' | 'frequency' | 'angle'>,
  poles: ConductingSet,
  frame: 'auto' | 'stationary' = 'auto',
): ElectricalModel {
  const plain = circuit.core === null && circuit.saturation === null;
  switch (poles.kind) {
    case 'three': {
      const applied = supplyVector(supply, poles.connection);
      return plain
        ? threePoles(circuit, applied, frame)
        : generalModel(circuit, connectedStator(applied, frame));
    }
    case 'two':
      return plain
        ? twoPoles(circuit, supply, poles.connection)
        : generalModel(circuit, openTerminal(supply, poles.connection));
    case 'none':
      return plain ? noPoles(circuit) : generalModel(circuit, openStator(circuit));
  }
}
