import { derivedValue, type Note } from './origin.ts';
import type { LoadData, LoadTorque } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';

type TorqueInput = Exclude<ScenarioInput['load']['torque'], 'none' | readonly unknown[]>;

/**
 * Fills in the load: a list of torques, coefficients in place of points.
 *
 * @param input load as stated, in SI
 * @param note takes down what was not given
 */
export function resolveLoad(input: ScenarioInput['load'], note: Note): LoadData {
  const { inertia, torque } = input;
  if (torque === 'none') return { inertia, torques: [] };
  if (!Array.isArray(torque)) return { inertia, torques: [resolveTorque(torque, 'torque', note)] };
  return { inertia, torques: torque.map((one, index) => resolveTorque(one, `torque.${index}`, note)) };
}

function resolveTorque(input: TorqueInput, path: string, note: Note): LoadTorque {
  switch (input.kind) {
    case 'friction': {
      const { kind, torque } = input;
      if (input.breakaway === undefined) note(`${path}.breakaway`, `${torque} N m`, 'default');
      return { kind, torque, breakaway: input.breakaway ?? torque };
    }
    case 'gravity':
      return { kind: input.kind, torque: input.torque };
    case 'viscous': {
      if (input.coefficient !== undefined) return { kind: input.kind, coefficient: input.coefficient };
      const coefficient = stated(input.torque) / stated(input.atSpeed);
      note(`${path}.coefficient`, derivedValue(coefficient, 'N m s/rad'), 'derived');
      return { kind: input.kind, coefficient };
    }
    case 'fan': {
      if (input.coefficient !== undefined) return { kind: input.kind, coefficient: input.coefficient };
      const coefficient = stated(input.torque) / stated(input.atSpeed) ** 2;
      note(`${path}.coefficient`, derivedValue(coefficient, 'N m s^2/rad^2'), 'derived');
      return { kind: input.kind, coefficient };
    }
    default:
      return input satisfies never;
  }
}

/** Holds by the definition of the load: without a coefficient both torque and speed are stated. */
function stated(value: number | undefined): number {
  if (value === undefined) throw new Error('a load without a complete torque law passed validation');
  return value;
}
