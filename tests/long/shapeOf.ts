import { isCommand, type Scenario, type StarterFault } from '../../src/scenario/scenario.ts';
import type { FaultShape, ScenarioShape } from '../independent/scenarioShape.ts';

/** A scenario as the phase-variable model reads it; it knows commands and three kinds of fault. */
export function shapeOf(scenario: Scenario): ScenarioShape {
  const { faults, ...starter } = scenario.starter;
  return {
    ...scenario,
    starter: { ...starter, ...(faults && { faults: faults.map(faultShape) }) },
    actions: scenario.actions.map((action) => {
      if (!isCommand(action)) throw new Error('the phase-variable model has no buttons');
      const { at, do: kind } = action;
      if (kind === 'brake' || kind === 'injectDc')
        throw new Error(`the phase-variable model does not know ${kind}`);
      return { at, do: kind };
    }),
  };
}

function faultShape(fault: StarterFault): FaultShape {
  if (fault.kind === 'lostPhase' || fault.kind === 'weldedPole' || fault.kind === 'deadPole') return fault;
  throw new Error(`the phase-variable model does not know the fault ${fault.kind}`);
}
