import { type Edit, joinEdits } from '../../scenario/edit/edit.ts';
import type { RunAnswer, RunOrder } from './protocol.ts';

/** A text and how it is run; what is seen of it is asked for at each run. */
export type Newest = Omit<RunOrder, 'edits' | 'detail'>;

/** What stands in line: the newest text, and the changes that came after it. */
export interface RunQueue {
  /** Another text: what was in line before it is dropped, and the answer under way is not shown. */
  open(order: Newest): void;
  /** Changes to whatever text is the newest. */
  edit(edits: readonly Edit[]): void;
  /** Runs the newest text again. */
  again(change: Partial<Pick<RunOrder, 'units' | 'hidden'>>): void;
}

/** Whom the queue tells. */
export interface RunQueueEnds {
  run(order: Omit<RunOrder, 'detail'>): Promise<RunAnswer>;
  /** An answer about the newest text. */
  show(answer: RunAnswer): void;
  /** Whether a run of newer input is under way. */
  busy(pending: boolean): void;
  fail(error: unknown): void;
}

/**
 * One run at a time, always of the newest input: changes that come while a run is under way are joined and go next. An answer is shown
 * unless another text has been opened since it was asked for.
 */
export function runQueue(first: Newest, ends: RunQueueEnds): RunQueue {
  let newest: Newest = first;
  let edits: readonly Edit[] = [];
  let generation = 0;
  let waiting = false;
  let working = false;

  async function work(): Promise<void> {
    if (working) return;
    working = true;
    ends.busy(true);
    while (waiting) {
      waiting = false;
      const order = { ...newest, edits };
      const asked = generation;
      edits = [];
      try {
        const answer = await ends.run(order);
        if (asked === generation) {
          // A change that makes no scenario is told and forgotten: its answer has the text before it.
          newest = { ...newest, text: answer.text };
          ends.show(answer);
        }
      } catch (error) {
        ends.fail(error);
      }
    }
    working = false;
    ends.busy(false);
  }

  function ask(): void {
    waiting = true;
    void work();
  }

  return {
    open(order) {
      generation++;
      newest = order;
      edits = [];
      ask();
    },
    edit(more) {
      edits = joinEdits([...edits, ...more]);
      ask();
    },
    again(change) {
      newest = { ...newest, ...change };
      ask();
    },
  };
}
