import { raised, squared } from '../numeric/raised.ts';
import { assumedFrictionShare, coreXOverR } from './defaults.ts';
import { derivedValue, type Note } from './origin.ts';
import type { Referral } from './resolveCircuit.ts';
import type { RatedCircuit } from './resolveMachine.ts';
import type { CoreData, MachineData, MechanicalLossData } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import { synchronousSpeed } from './synchronousSpeed.ts';

/**
 * Fills in iron loss, friction and windage. What is stated wins over what an estimation found; what neither gives is absent.
 *
 * @param input machine as stated, in SI
 * @param circuit with its rating
 * @param referral how stated impedances are meant
 * @param note takes down what was not given
 */
export function resolveLosses(
  input: Pick<ScenarioInput['machine'], 'ironLoss' | 'mechanicalLoss'>,
  circuit: RatedCircuit,
  referral: Referral,
  note: Note,
): Pick<MachineData, 'core' | 'mechanicalLoss'> {
  const core =
    input.ironLoss === undefined
      ? circuit.part.core
      : typeof input.ironLoss === 'number'
        ? coreOf(input.ironLoss, circuit, note)
        : {
            R: referral.ohms('ironLoss.resistance', input.ironLoss.resistance),
            L: referral.henrys('ironLoss.inductance', input.ironLoss.inductance),
          };
  const mechanicalLoss =
    input.mechanicalLoss === undefined
      ? circuit.part.mechanicalLoss
      : mechanicalLossOf(input.mechanicalLoss, circuit, note);
  if (core === undefined) note('ironLoss', '0 W', 'default');
  if (mechanicalLoss === undefined) note('mechanicalLoss', '0 W', 'default');
  return {
    ...(core === undefined ? {} : { core }),
    ...(mechanicalLoss === undefined ? {} : { mechanicalLoss }),
  };
}

/**
 * The winding that stands for the iron: 3·E²·R/(R² + ω²L²) = P with ωL/R fixed, E the air-gap voltage per phase at rated
 * voltage and no load, V/√3·Lm/(Lls + Lm).
 */
function coreOf(loss: number, { part, rating }: RatedCircuit, note: Note): CoreData {
  const airGap = ((rating.lineVoltage / Math.sqrt(3)) * part.Lm) / (part.Lls + part.Lm);
  const R = (3 * squared(airGap)) / (loss * (1 + squared(coreXOverR)));
  const L = (coreXOverR * R) / (2 * Math.PI * rating.frequency);
  note('core.resistance', derivedValue(R, 'ohm'), 'derived', 'from ironLoss');
  note(
    'core.inductance',
    derivedValue(L * 1e3, 'mH'),
    'derived',
    'a tenth of its resistance at rated frequency',
  );
  return { R, L };
}

function mechanicalLossOf(
  input: NonNullable<ScenarioInput['machine']['mechanicalLoss']>,
  { poles, rating }: RatedCircuit,
  note: Note,
): MechanicalLossData {
  const synchronous = synchronousSpeed(rating.frequency, poles);
  const fromPower = (power: number) => power / raised(synchronous, 3);
  let loss: MechanicalLossData;
  if (typeof input === 'number') {
    note('mechanicalLoss.frictionShare', `${assumedFrictionShare * 100} %`, 'assumed', 'common practice');
    loss = {
      friction: (assumedFrictionShare * input) / synchronous,
      windage: fromPower((1 - assumedFrictionShare) * input),
    };
    note('mechanicalLoss.friction', derivedValue(loss.friction, 'N m'), 'derived');
  } else {
    const { kind, value } = input.windage;
    loss = { friction: input.friction, windage: kind === 'power' ? fromPower(value) : value };
    if (kind === 'coefficient') return loss;
  }
  note('mechanicalLoss.windageCoefficient', derivedValue(loss.windage, 'N m s^2/rad^2'), 'derived');
  return loss;
}
