import type { RunEvent } from '../../simulate/trajectory.ts';
import type { BenchRun } from './run.ts';

/** Something that is seen or heard on the bench. */
export interface SequenceItem {
  /** From the decisive instant, s. */
  readonly after: number;
  /** "reverse contactor in" */
  readonly words: string;
  /** Motor shaft then, rad/s, where it matters; null: it does not. */
  readonly speed: number | null;
}

/** What happens from the decisive instant on, in order, as much as fits on a sheet. */
export interface Sequence {
  readonly items: readonly SequenceItem[];
  /** How many more there are. */
  readonly more: number;
}

/** Items that fit in a row. */
const MOST_ITEMS = 8;

/** What a run shows from its decisive instant on. */
export function sequenceOf({ trajectory, test }: BenchRun): Sequence {
  const seen = trajectory.events.flatMap((event): SequenceItem[] => {
    if (event.t < test.mark) return [];
    const item = itemOf(event);
    return item === null ? [] : [{ after: event.t - test.mark, ...item }];
  });
  const items = withoutRepetition(seen);
  return { items: items.slice(0, MOST_ITEMS), more: Math.max(0, items.length - MOST_ITEMS) };
}

/** Two poles or directions may say the same at one instant. */
function withoutRepetition(items: readonly SequenceItem[]): SequenceItem[] {
  return items.filter(
    (item, k) => !items.slice(0, k).some((one) => one.words === item.words && one.after === item.after),
  );
}

function itemOf(event: RunEvent): Omit<SequenceItem, 'after'> | null {
  const { kind, contactor, speed } = event;
  const plain = (words: string) => ({ words, speed: null });
  switch (kind) {
    case 'relayPicksUp':
      return contactor === undefined ? null : plain(`${contactor} contactor in`);
    case 'relayDropsOut':
      return contactor === undefined ? null : plain(`${contactor} contactor out`);
    case 'contactorSticks':
      return plain(`${contactor} contactor stays in`);
    case 'interlockBlocks':
      return plain(`${contactor} contactor held back by the interlock`);
    case 'switchOpens':
      return { words: 'zero-speed switch opens', speed };
    case 'timerElapses':
      return event.device === 'limitTimer' ? plain('braking time limit over') : null;
    case 'overloadTrips':
      return plain('overload relay trips');
    case 'resetRefused':
      return plain('overload relay cannot be reset yet');
    case 'supplyReturns':
      return { words: 'supply back', speed };
    case 'emergencyStopReleased':
      return { words: 'emergency stop released', speed };
    case 'overloadResets':
      return { words: 'overload relay reset', speed };
    case 'voltageDips':
      return plain('control voltage below drop-out');
    default:
      return null;
  }
}
