import type { ControlCircuit } from '../control/controlCircuit.ts';
import { circuitModel } from './circuitModel.ts';
import { type Counterexample, describePath } from './describePath.ts';
import { type After, followMove } from './followMove.ts';
import { BIT_OF, judgeState } from './judgeState.ts';
import { BRAKED, SINCE } from './memory.ts';
import { eachMove, type Move, movingDevices } from './moves.ts';
import type { ExploreOptions } from './options.ts';
import type { PropertyId } from './property.ts';
import { createStateTable, type StateTable } from './stateTable.ts';

/** What the exhaustive check has found. */
export interface Exploration {
  /** States reached, with what they remember of the past. */
  readonly states: number;
  /** Properties that fail, each with one of its shortest counterexamples, in the order of `PROPERTIES`. */
  readonly broken: readonly Counterexample[];
}

/**
 * Explores every state that a control circuit can reach, breadth first from a dead installation at rest, under every sequence of
 * hands, trips, losses of supply and speeds, and every order in which its devices may move.
 */
export function exploreControl(circuit: ControlCircuit, options: ExploreOptions): Exploration {
  const model = circuitModel(circuit, options);
  const table = createStateTable();
  const memory = SINCE.rest | (options.memoryRelay ? BRAKED : 0);
  table.add((2 << model.levelShift) | (memory << model.memoryShift), -1);
  let open = options.properties.reduce((mask, id) => mask | BIT_OF[id], 0);
  const found = new Map<PropertyId, Counterexample>();
  const before = { state: 0, energised: 0, moving: 0 };
  const out: After = { state: 0, energised: 0, moving: 0, broken: 0 };
  let index = 0;
  const visit = (next: number, move: Move): void => {
    followMove(model, options, before, next, move, out);
    let broken = out.broken;
    if (table.add(out.state, index))
      broken |= judgeState(model, options, out.state, out.energised, out.moving === 0);
    broken &= open;
    if (broken === 0) return;
    open &= ~broken;
    const path = pathTo(table, index, out.state);
    for (const property of options.properties)
      if ((broken & BIT_OF[property]) !== 0) found.set(property, describePath(model, property, path));
  };
  for (; index < table.size(); index++) {
    before.state = table.state(index);
    before.energised = model.energised(before.state);
    before.moving = movingDevices(model, before.state, before.energised);
    eachMove(model, before.state, before.energised, before.moving, visit);
  }
  return {
    states: table.size(),
    broken: options.properties.flatMap((property) => found.get(property) ?? []),
  };
}

function pathTo(table: StateTable, last: number, state: number): number[] {
  const path = [state];
  for (let at = last; at >= 0; at = table.parent(at)) path.unshift(table.state(at));
  return path;
}
