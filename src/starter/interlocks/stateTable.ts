/** Every state that has been reached, in the order of reaching it, with where it was reached from. */
export interface StateTable {
  readonly size: () => number;
  readonly state: (index: number) => number;
  /** Index of the state before; −1 for the first. */
  readonly parent: (index: number) => number;
  /** Adds a state unless it is known; true when it was new. */
  readonly add: (state: number, parent: number) => boolean;
}

/** Spreads neighbouring states over the slots: 2³² divided by the golden ratio. */
const SPREAD = 0x9e3779b1;
/** First size, slots; doubled when half full. */
const SLOTS = 1 << 14;

/** An empty table for states that are integers from 0 to 2³¹ − 1. */
export function createStateTable(): StateTable {
  let slots = new Int32Array(SLOTS); // index + 1; 0: free
  let states = new Int32Array(SLOTS / 2);
  let parents = new Int32Array(SLOTS / 2);
  let shift = Math.clz32(SLOTS - 1);
  let size = 0;

  const slotOf = (state: number): number => {
    const last = slots.length - 1;
    let slot = Math.imul(state, SPREAD) >>> shift;
    while (slots[slot] !== 0 && states[slots[slot]! - 1] !== state) slot = (slot + 1) & last;
    return slot;
  };

  const grow = (): void => {
    slots = new Int32Array(2 * slots.length);
    shift -= 1;
    states = extended(states);
    parents = extended(parents);
    for (let index = 0; index < size; index++) slots[slotOf(states[index]!)] = index + 1;
  };

  return {
    size: () => size,
    state: (index) => states[index]!,
    parent: (index) => parents[index]!,
    add(state, parent) {
      let slot = slotOf(state);
      if (slots[slot] !== 0) return false;
      if (size === states.length) {
        grow();
        slot = slotOf(state);
      }
      states[size] = state;
      parents[size] = parent;
      size += 1;
      slots[slot] = size;
      return true;
    },
  };
}

function extended(array: Int32Array): Int32Array<ArrayBuffer> {
  const longer = new Int32Array(2 * array.length);
  longer.set(array);
  return longer;
}
