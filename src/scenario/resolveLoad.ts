import { squared } from '../numeric/raised.ts';
import { derivedValue, type Note } from './origin.ts';
import type { CouplingData, GearData, LoadData, LoadTorque } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import { stated } from './stated.ts';

type TorqueInput = Exclude<ScenarioInput['load']['torque'], 'none' | readonly unknown[]>;

/**
 * Fills in the load: a list of torques, coefficients in place of points.
 *
 * @param input load as stated, in SI
 * @param note takes down what was not given
 */
export function resolveLoad(input: ScenarioInput['load'], note: Note): LoadData {
  const { inertia, gear, coupling } = input;
  return {
    inertia,
    ...(gear === undefined ? {} : { gear: resolveGear(gear, note) }),
    ...(coupling === undefined ? {} : { coupling: resolveCoupling(coupling, note) }),
    torques: resolveTorques(input.torque, note),
  };
}

function resolveGear(gear: NonNullable<ScenarioInput['load']['gear']>, note: Note): GearData {
  const { ratio, efficiency } = gear;
  if (gear.backwardEfficiency === undefined)
    note('gear.backwardEfficiency', String(efficiency), 'assumed', 'as efficiency');
  return { ratio, efficiency, backwardEfficiency: gear.backwardEfficiency ?? efficiency };
}

function resolveCoupling(coupling: NonNullable<ScenarioInput['load']['coupling']>, note: Note): CouplingData {
  const { stiffness, damping } = coupling;
  if (coupling.backlash === undefined) note('coupling.backlash', '0 deg', 'default');
  return { stiffness, damping, backlash: coupling.backlash ?? 0 };
}

function resolveTorques(torque: ScenarioInput['load']['torque'], note: Note): LoadTorque[] {
  if (torque === 'none') return [];
  if (!Array.isArray(torque)) return [resolveTorque(torque, 'torque', note)];
  return torque.map((one, index) => resolveTorque(one, `torque.${index}`, note));
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
      const coefficient = stated(input.torque, 'torque') / stated(input.atSpeed, 'atSpeed');
      note(`${path}.coefficient`, derivedValue(coefficient, 'N m s/rad'), 'derived');
      return { kind: input.kind, coefficient };
    }
    case 'fan': {
      if (input.coefficient !== undefined) return { kind: input.kind, coefficient: input.coefficient };
      const coefficient = stated(input.torque, 'torque') / squared(stated(input.atSpeed, 'atSpeed'));
      note(`${path}.coefficient`, derivedValue(coefficient, 'N m s^2/rad^2'), 'derived');
      return { kind: input.kind, coefficient };
    }
    case 'constantPower':
      return { kind: input.kind, power: input.power, baseSpeed: input.baseSpeed };
    case 'table': {
      if (input.direction === undefined) note(`${path}.direction`, 'opposes motion', 'default');
      return { kind: input.kind, points: input.points, mirrored: input.direction !== 'as given' };
    }
    default:
      return input satisfies never;
  }
}
