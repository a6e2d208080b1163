import { type Step, stepOf } from '../../src/simulate/step.ts';
import type { Watch } from '../../src/simulate/watches.ts';

/** A step whose components are known functions of time. */
export function makeStep(t0: number, t1: number, ...components: ((t: number) => number)[]): Step {
  return stepOf(t0, t1, (component, t) => components[component]!(t));
}

/** An event function on the first component, as the speed watches have it. */
export function makeWatch(
  crossing: Watch['crossing'],
  level = 0,
  probing: Watch['probing'] = 'electrical',
): Watch {
  return {
    condition: { kind: 'nearSpeed' },
    crossing,
    probing,
    g: (step, t) => step.value(0, t) - level,
  };
}
