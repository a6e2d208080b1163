import { type AssumedInertia, assumedLoadInertia } from '../estimate/assumedLoadInertia.ts';
import { DROP_OUT_SHARE, FRICTION_SHARE, PICK_UP_OVER_DROP_OUT } from '../estimate/typicalDrive.ts';
import { parseQuantity } from '../scenario/parseQuantity.ts';
import { polesFromSpeed } from '../scenario/ratedBase.ts';
import { synchronousSpeed } from '../scenario/synchronousSpeed.ts';
import type { NewScenarioAnswers, SufficientAnswers } from './newScenarioAnswers.ts';

/** What a new scenario says where nobody said anything, as it will stand in the file. */
export interface NewScenarioAssumptions {
  /** At the load's own shaft. */
  readonly loadInertia: { readonly text: string; readonly source: string };
  /** Dry friction at the load's own shaft. */
  readonly friction: string;
  /** Speed of the fan's own shaft at which its torque is stated. */
  readonly fanSpeed: string;
  readonly dropOutSpeed: string;
  readonly pickUpSpeed: string;
}

/** Radians per second in one r/min. */
const RPM = Math.PI / 30;

/**
 * Works out what stands in for the answers that are missing.
 *
 * @param answers valid each by itself, with a speed or a number of poles
 */
export function newScenarioAssumptions(answers: SufficientAnswers): NewScenarioAssumptions {
  const power = parseQuantity(answers.power, 'power');
  const frequency = parseQuantity(answers.frequency, 'frequency');
  const speed = speedOf(answers, 'speed');
  const poles = typeof answers.poles === 'number' ? answers.poles : polesFromSpeed(speed ?? 0, frequency);
  const synchronous = synchronousSpeed(frequency, poles);
  const ratio = typeof answers.gearRatio === 'number' ? answers.gearRatio : 1;
  const dropOut = speedOf(answers, 'switchOffSpeed') ?? DROP_OUT_SHARE * synchronous;
  return {
    loadInertia: behindGear(assumedLoadInertia(power, frequency, poles), ratio),
    friction: `${digits(((FRICTION_SHARE * power) / (speed ?? synchronous)) * ratio, 2)} N m`,
    fanSpeed: rpm((speed ?? synchronous) / ratio),
    dropOutSpeed: rpm(dropOut),
    pickUpSpeed: rpm(PICK_UP_OVER_DROP_OUT * dropOut),
  };
}

/** An inertia at the motor shaft as it is at a shaft that turns slower by the ratio. */
function behindGear({ value, source }: AssumedInertia, ratio: number) {
  const behind = ratio === 1 ? '' : ', referred to its own shaft by the ratio squared';
  return { text: `${digits(value * ratio * ratio, 3)} kg m^2`, source: `${source}${behind}` };
}

function speedOf(answers: NewScenarioAnswers, key: 'speed' | 'switchOffSpeed'): number | null {
  const answer = answers[key];
  return typeof answer !== 'string' || answer === 'off' ? null : parseQuantity(answer, 'speed');
}

function rpm(speed: number): string {
  return `${digits(speed / RPM, 4)} rpm`;
}

function digits(value: number, count: number): number {
  return Number(value.toPrecision(count));
}
